import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { finish } from '../../server/core/steps/steps.ts';
import {
  nextReading,
  type Open,
  type Readable,
  type Readables,
  type ReadingRow,
  takenBy,
  UNREAD,
} from '../../server/core/trials/nextReading.ts';
import { readablesOf } from '../../server/core/trials/readables.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { PROBE } from '../helpers/probe.ts';

const sum = (...inputs: readonly number[]): ReadingRow => ({ inputs, loads: [] });
const sumsOf = (rows: readonly (readonly number[])[]) => rows.map(row => sum(...row));

/** What some rows leave open that were read, each with an uncertainty of one: by the inverse of the normal equations. */
function openAfter(known: readonly (readonly number[])[], size: number): Open<readonly number[]> {
  const rows = new Matrix([...known.map(row => [...row]), new Array<number>(size).fill(0)]);
  const covariance = inverse(Matrix.eye(size).add(rows.transpose().mmul(rows)));
  return {
    see: ({ inputs }) => inputs,
    seeInput: at => Array.from({ length: size }, (_, i) => Number(i === at)),
    covariance: (a, b) =>
      Matrix.rowVector([...a])
        .mmul(covariance)
        .mmul(Matrix.columnVector([...b]))
        .get(0, 0),
  };
}

describe('what a reading would leave of a figure that is a sum of inputs', () => {
  // Two inputs, each of standard uncertainty one; a figure 3·x + 4·y; x read with an uncertainty of a half. Then
  // var x = 1/(1 + 4) = 0.2, and of the figure 9·0.2 + 16 = 17.8. The sum x + y read exactly: 3·x + 4·y = 3.5·(x + y) +
  // 0.5·(y - x), and y - x keeps its variance of 2: 0.5. (Conditional normal distributions, by hand.)
  it.each([
    ['nothing', [], 25],
    ['x with ± 0.5', [[2, 0]], 17.8],
    [
      'x with ± 0.5, twice',
      [
        [2, 0],
        [2, 0],
      ],
      9 / 9 + 16,
    ],
    ['the sum, all but exactly', [[1e4, 1e4]], 0.5],
    ['something else', [[0, 0]], 25],
  ] as const)('%s', (_, rows, expected) => {
    expect(25 - takenBy(sumsOf(rows), sum(3, 4), UNREAD)).toBeCloseTo(expected, 6);
  });
  it.each([
    [10, 1],
    [1000, 21],
  ])('of %i inputs that could be measured the work comes in steps', (count, expected) => {
    const each = (at: number): Readable<number> => ({ what: at, tells: { of: 'input', at, weight: 2 }, trouble: 1 });
    const set: Readables<number> = {
      trouble: 1,
      *find() {
        return Array.from({ length: count }, (_, at) => each(at));
      },
    };
    const work = nextReading(sum(...Array.from({ length: count }, (_, at) => 1 + at)), UNREAD, [set]);
    let steps = 0;
    for (; !work.next().done; steps++);
    expect(steps).toBe(expected);
  });
  it('is the same whether all is read at once or one after the other, and no reading makes it more', () => {
    // Nothing is known to so many digits that its square would be nought.
    const told = fc.double({ min: -3, max: 3, noNaN: true }).map(value => (Math.abs(value) < 1e-6 ? 0 : value));
    const row = fc.array(told, { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(row, fc.array(row, { maxLength: 4 }), row, (figure, rows, more) => {
        const atOnce = takenBy(sumsOf([...rows, more]), sum(...figure), UNREAD);
        const before = takenBy(sumsOf(rows), sum(...figure), UNREAD);
        const then = takenBy([sum(...more)], figure, openAfter(rows, 4));
        expect(then).toBeGreaterThanOrEqual(0);
        expect(before + then).toBeCloseTo(atOnce, 6);
      }),
    );
  });
});

const least = (readables: readonly Readable<string>[]): Readables<string> => ({
  trouble: Math.min(...readables.map(({ trouble }) => trouble)),
  *find() {
    yield;
    return readables;
  },
});
const next = (
  figure: readonly number[],
  known: readonly (readonly number[])[],
  ...sets: readonly (readonly Readable<string>[])[]
) => finish(nextReading(figure, openAfter(known, figure.length), sets.map(least)));

describe('the reading that takes most of the uncertainty for its trouble', () => {
  const readable = (what: string, row: readonly number[], trouble: number): Readable<string> => ({
    what,
    tells: { of: 'boat', rows: [sum(...row)] },
    trouble,
  });
  it.each([
    ['the larger share at the same trouble', [readable('x', [9, 0], 10), readable('y', [0, 9], 10)], 'y'],
    ['the nearer one where it tells nearly as much', [readable('x', [9, 0], 5), readable('y', [0, 9], 60)], 'x'],
    ['nothing that takes less than a twentieth', [readable('x', [0.1, 0], 1)], undefined],
  ])('%s', (_, readables, what) => {
    expect(next([3, 4], [], readables)?.what).toBe(what);
  });
  it('is not what is known already', () => {
    const readables = [readable('x', [9, 0], 10), readable('y', [0, 9], 10)];
    expect(next([3, 4], [[0, 20]], readables)?.what).toBe('x');
  });
  it('says as a share what is left', () => {
    expect(next([3, 4], [], [readable('x', [2, 0], 1)])?.left).toBeCloseTo(Math.sqrt(17.8 / 25), 9);
  });
  it('is looked for no further where all the rest could be no better', () => {
    const far: Readables<string> = {
      trouble: 11,
      find: () => {
        throw new Error('Nobody need look.');
      },
    };
    const all = least([readable('x', [9, 9], 10)]);
    expect(finish(nextReading(sum(3, 3), UNREAD, [all, far]))?.what).toBe('x');
    expect(() => finish(nextReading(sum(3, 3), UNREAD, [least([readable('x', [9, 0], 10)]), far]))).toThrow();
  });
  it('leaves the same of one input read alone as of a row with nothing else in it', () => {
    // Nothing is known to so many digits that its square would be nought.
    const told = fc.double({ min: -3, max: 3, noNaN: true }).map(value => (Math.abs(value) < 1e-6 ? 0 : value));
    const row = fc.array(told, { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(
        row,
        fc.array(row, { maxLength: 3 }),
        fc.nat(3),
        fc.double({ min: 1, max: 9, noNaN: true }),
        (...drawn) => {
          const [figure, known, at, weight] = drawn;
          const alone: Readable<string> = { what: 'x', tells: { of: 'input', at, weight }, trouble: 1 };
          const asRow = readable(
            'x',
            [0, 1, 2, 3].map(i => (i === at ? weight : 0)),
            1,
          );
          const [one, other] = [alone, asRow].map(each => next(figure, known, [each])?.left ?? 1);
          expect(one).toBeCloseTo(other!, 6);
        },
      ),
    );
  });
});

describe('of a whole boat', () => {
  const SPRAT = readFileSync(new URL('../../samples/sprat.boat.yaml', import.meta.url), 'utf8');
  const nextOf = (text: string) => heard(text).said.openQuestions.filter(({ code }) => code === 'weigh-next');
  it('two scales come first where everything has its usual tolerance', () => {
    for (const text of [SPRAT, PROBE]) {
      const [first, ...others] = nextOf(text);
      expect(others).toEqual([]);
      expect(first!.message).toMatch(
        /^Weigh the boat on two scales: submerged trim ± \d\.\d° would become ± \d\.\d°\. Drained and dry,/,
      );
    }
  });
});

describe('of a boat that was read', () => {
  const text = readFileSync(new URL('../../samples/dunlin.boat.yaml', import.meta.url), 'utf8');
  const dunlin = heard(text);
  const { inputs } = dunlin.filedUncertainties!;
  const sumOfMasses = [...dunlin.boat.shells, ...dunlin.boat.compartments, ...dunlin.boat.payload].reduce(
    (whole, { mass }) => whole + mass,
    0,
  );
  const grams = `${(1e3 * sumOfMasses).toFixed(1)} g`;
  const weighed = heard(boatText`
    ${text.trimEnd()}
      - { date: 2026-12-01, condition: bench, scales: [{ reads: ${grams} }] }
  `);
  /** What the whole boat on the scale would leave of a figure, as a part, as it is known beforehand and as it comes. */
  function leftOf(condition: 'surfaced' | 'submerged', name: string) {
    const [before, after] = [dunlin, weighed].map(each => each.uncertainties!.conditions[condition]![name]!);
    const { cache, variations } = dunlin.kept;
    const set = { source: dunlin.filed.source, cache, variations, trials: dunlin.trials, inputs };
    const scale = readablesOf(set)
      .flatMap(({ find }) => finish(find()))
      .find(({ what }) => what.kind === 'boat' && what.way === 'scale')!;
    const { figure, open } = dunlin.learned!.verdict!.openAbout(before!, inputs)!;
    const now = open.covariance(figure, figure);
    const taken = scale.tells.of === 'boat' ? takenBy(scale.tells.rows, figure, open) : 0;
    return { now, sigma: before!.sigma, foreseen: Math.sqrt(1 - taken / now), found: after!.sigma / before!.sigma };
  }

  it.each([
    ['surfaced', 'trim'],
    ['surfaced', 'heel'],
    ['surfaced', 'gm'],
    ['submerged', 'trim'],
    ['submerged', 'heel'],
  ] as const)('what is left open of its %s %s is known before it is weighed', (condition, name) => {
    const { now, sigma, foreseen, found } = leftOf(condition, name);
    expect(Math.sqrt(now) / sigma).toBeCloseTo(1, 1);
    expect(foreseen / found).toBeCloseTo(1, 1);
  });
  it('what the explanations differ in is told by the scale, no less than was foreseen', () => {
    for (const [condition, name] of [
      ['surfaced', 'draft'],
      ['submerged', 'fill'],
    ] as const) {
      const { foreseen, found } = leftOf(condition, name);
      expect(foreseen).toBeLessThan(0.93);
      expect(found).toBeLessThan(foreseen);
    }
    const [next] = dunlin.said.openQuestions.filter(({ code }) => code === 'weigh-next');
    expect(next!.message).toMatch(/^Weigh the whole boat: surfaced draft ± 0\.\d+ mm would become ± 0\.\d+ mm\./);
  });
});
