import { describe, expect, it } from 'vitest';
import { normalBelow } from '../../server/core/statistics/normalBelow.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { cholesky } from '../../server/core/trials/estimation/cholesky.ts';
import {
  evidenceOf,
  evidenceOfPair,
  judgeThings,
  narrowed,
  type PriorPiece,
  type SupposedThing,
  withOpen,
} from '../../server/core/trials/estimation/hypothesis.ts';
import { mixed } from '../../server/core/trials/estimation/mixture.ts';
import { scaleLike } from '../../server/core/trials/estimation/scale.ts';
import { knownWith, misfit, type Space, type Straight, spaceOf } from '../../server/core/trials/estimation/space.ts';
import { EVEN_REACH, withinReach } from '../../server/core/trials/estimation/truncated.ts';
import { leastSquaresFrom } from '../helpers/leastSquaresFrom.ts';
import { seeded } from '../helpers/seeded.ts';

/** Simpson's rule. */
function integral(f: (x: number) => number, from: number, to: number, steps = 4000): number {
  const h = (to - from) / steps;
  let sum = f(from) + f(to);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (sum * h) / 3;
}
const normal = (x: number, mean: number, sigma: number): number =>
  Math.exp(-(((x - mean) / sigma) ** 2) / 2) / (sigma * Math.sqrt(2 * Math.PI));

const spaceOfAll = (straight: Straight): Space | null => finish(spaceOf(straight));

/** Two readings, one x, one w. */
const small = (): Space => spaceOfAll({ rest: [3, 1], slopes: [[1], [0.5]], errors: [0.5, 0.7], columns: [[2, -1]] })!;

describe('readings by straight lines', () => {
  it('x and w by the readings are those of weighted least squares (JCGM 102 in kind; ml-matrix)', () => {
    const random = seeded(3);
    const draw = (rows: number, columns: number) =>
      Array.from({ length: rows }, () => Array.from({ length: columns }, random.normal));
    const [slopes, columns, rest] = [draw(7, 4), draw(3, 7), draw(1, 7)[0]!];
    const errors = [0.3, 0.5, 1, 0.2, 2, 0.7, 0.4];
    const space = spaceOfAll({ rest, slopes, errors, columns })!;
    const fit = leastSquaresFrom(
      new Array(7).fill(0),
      slopes.map((row, i) => [...row, ...columns.map(column => column[i]!)].map(slope => slope / errors[i]!)),
      rest.map((value, i) => value / errors[i]!),
    )!;
    // w standard normal as three open columns.
    const { open } = { open: [0, 1, 2] };
    const thing: SupposedThing = { logShare: 0, basis: identity(3), pieces: [standard(3)] };
    const { w } = judgeThings(narrowed(space, [], open), [thing]);
    const known = knownWith(space, open, w);
    for (const [k, value] of fit.solution.slice(0, 4).entries()) expect(known.x[k]).toBeCloseTo(value, 10);
    for (const [k, value] of fit.solution.slice(4).entries()) expect(known.w.mean[k]).toBeCloseTo(value, 10);
    const unit = (size: number, at: number) => Array.from({ length: size }, (_, i) => (i === at ? 1 : 0));
    for (let a = 0; a < 7; a++) {
      for (let b = 0; b < 7; b++) {
        const weights = (at: number) => ({ x: unit(4, at), w: unit(3, at - 4) });
        expect(known.covariance(weights(a), weights(b))).toBeCloseTo(fit.covariance[a]![b]!, 10);
      }
    }
  });
  it.each([
    ['a dozen readings', 12, 0, 0],
    ['as many as are heard', 300, 5, 60],
  ])('of %s the work comes in steps', (_, count, least, most) => {
    const random = seeded(5);
    const draw = (rows: number, columns: number) =>
      Array.from({ length: rows }, () => Array.from({ length: columns }, random.normal));
    const ofOneEach = Array.from({ length: count }, (_, i) => Array.from({ length: count }, (_, k) => Number(i === k)));
    const work = spaceOf({
      rest: draw(1, count)[0]!,
      slopes: draw(count, 60),
      errors: new Array(count).fill(0.5),
      columns: [...ofOneEach, ...draw(12, count)],
    });
    let steps = 0;
    for (; !work.next().done; steps++);
    expect(steps).toBeGreaterThanOrEqual(least);
    expect(steps).toBeLessThanOrEqual(most);
  });
  it('a matrix that is not positive definite has no triangle (Cholesky’s condition)', () => {
    expect(cholesky([[4]])).toEqual([[2]]);
    expect(cholesky([[0]])).toBeNull();
    expect(
      cholesky([
        [1, 1],
        [1, 1],
      ]),
    ).toBeNull();
    expect(
      cholesky([
        [1, 2],
        [2, 1],
      ]),
    ).toBeNull();
  });
  it('columns that were averaged out come back as least squares over all of them has them (ml-matrix)', () => {
    const random = seeded(11);
    const draw = (rows: number, columns: number) =>
      Array.from({ length: rows }, () => Array.from({ length: columns }, random.normal));
    const [slopes, columns, rest] = [draw(6, 2), draw(4, 6), draw(1, 6)[0]!];
    const errors = [0.3, 0.5, 1, 0.2, 2, 0.7];
    const space = spaceOfAll({ rest, slopes, errors, columns })!;
    const [open, places] = [
      [1, 3],
      [0, 2],
    ];
    const thing: SupposedThing = { logShare: 0, basis: identity(2), pieces: [standard(2)] };
    const all = withOpen(space, open, places, judgeThings(narrowed(space, open, places), [thing]).w);
    const order = [...open, ...places];
    const fit = leastSquaresFrom(
      new Array(6).fill(0),
      slopes.map((row, i) => [...row, ...order.map(k => columns[k]![i]!)].map(slope => slope / errors[i]!)),
      rest.map((value, i) => value / errors[i]!),
    )!;
    for (const [a] of order.entries()) {
      expect(all.mean[a]).toBeCloseTo(fit.solution[2 + a]!, 10);
      for (const [b] of order.entries()) expect(all.covariance[a]![b]).toBeCloseTo(fit.covariance[2 + a]![2 + b]!, 10);
    }
  });
  it('evidence is the integral of the likelihood over all that is open (numerical integration)', () => {
    const likelihood = (w: number) =>
      integral(x => normal(3, x + 2 * w, 0.5) * normal(1, 0.5 * x - w, 0.7) * normal(x, 0, 1), -8, 8, 400);
    const withoutW = likelihood(0);
    const over = (prior: (w: number) => number) => integral(w => likelihood(w) * prior(w), -6, 6, 400);
    const space = small();
    const none = narrowed(space, [], [0]).logEvidence;
    const open = narrowed(space, [0], []).logEvidence;
    expect(open - none).toBeCloseTo(Math.log(over(w => normal(w, 0, 1)) / withoutW), 5);
    const piece = (middle: number, sigma: number, share: number): PriorPiece => ({
      ...standard(1),
      logShare: Math.log(share),
      middle: [[0, middle]],
      spread: [[[0, sigma]]],
    });
    const things: readonly SupposedThing[] = [
      { logShare: Math.log(0.3), basis: [[1]], pieces: [piece(1, 0.2, 0.5), piece(-1, 0.4, 0.5)] },
      { logShare: Math.log(0.7), basis: [[2]], pieces: [piece(0.4, 0.1, 1)] },
    ];
    const prior = (w: number) => 0.15 * normal(w, 1, 0.2) + 0.15 * normal(w, -1, 0.4) + 0.7 * normal(w, 0.8, 0.2);
    expect(evidenceOf(narrowed(space, [], [0]), things) - none).toBeCloseTo(Math.log(over(prior) / withoutW), 4);
    const { w } = judgeThings(narrowed(space, [], [0]), things);
    const total = over(prior);
    const mean = over(x => x * prior(x)) / total;
    expect(w.mean[0]).toBeCloseTo(mean, 3);
    expect(w.covariance[0]![0]).toBeCloseTo(over(x => (x - mean) ** 2 * prior(x)) / total, 3);
  });
  it('of a pair of columns in closed form as by elimination', () => {
    const random = seeded(11);
    const space = spaceOfAll({
      rest: [3, 1, -2],
      slopes: [[1], [0.5], [0.2]],
      errors: [0.5, 0.7, 0.3],
      columns: Array.from({ length: 4 }, () => [random.normal(), random.normal(), random.normal()]),
    })!;
    for (const [a, b] of [
      [0, 1],
      [1, 3],
      [2, 0],
    ] as const)
      expect(evidenceOfPair(space, a, b)).toBeCloseTo(narrowed(space, [a, b], []).logEvidence, 10);
  });
  it('misfit is chi-square with x open', () => {
    // By hand: covariance [1.25 0.5; 0.5 0.74] of the readings 3 - 2·0.5 and 1 + 0.5.
    const [a, b, c, d] = [1.25, 0.5, 0.5, 0.74];
    const [y, z] = [2, 1.5];
    const expected = (d * y * y - (b + c) * y * z + a * z * z) / (a * d - b * c);
    expect(misfit(small(), [0], [0.5])).toBeCloseTo(expected, 10);
  });
});

const identity = (size: number) =>
  Array.from({ length: size }, (_, i) => Array.from({ length: size }, (__, k) => (i === k ? 1 : 0)));
const standard = (size: number): PriorPiece => ({
  logShare: 0,
  middle: [],
  spread: Array.from({ length: size }, (_, k) => [[k, 1] as const]),
  even: [],
  facts: { middle: [], spread: [] },
});

describe('distributions', () => {
  it('the normal distribution function at tabled points (NIST Handbook 1.3.6.7.1; from memory)', () => {
    for (const [z, below] of [
      [0, 0.5],
      [1, 0.8413447],
      [-1, 0.1586553],
      [1.96, 0.9750021],
      [3, 0.9986501],
    ] as const)
      expect(normalBelow(z)).toBeCloseTo(below, 6);
  });
  it.each([
    [0.5, 1],
    [2.5, 0.6],
    [-1, 3],
  ])('a normal number of mean %f and sigma %f kept within reach (numerical integration)', (mean, sigma) => {
    const over = (f: (x: number) => number) => integral(x => f(x) * normal(x, mean, sigma), -EVEN_REACH, EVEN_REACH);
    const total = over(() => 1);
    const middle = over(x => x) / total;
    const variance = over(x => (x - middle) ** 2) / total;
    // Another number that goes half with it.
    const found = withinReach(
      {
        mean: [mean, 0],
        covariance: [
          [sigma ** 2, sigma ** 2 / 2],
          [sigma ** 2 / 2, sigma ** 2],
        ],
      },
      0,
    );
    expect(found.mean[0]).toBeCloseTo(middle, 4);
    expect(found.covariance[0]![0]).toBeCloseTo(variance, 4);
    expect(found.mean[1]).toBeCloseTo((middle - mean) / 2, 4);
  });
  it('pieces of a scale add up to one that is even over its logarithm', () => {
    const pieces = scaleLike(1, 100, 1.35);
    const at = (x: number) =>
      (x * pieces.reduce((sum, { middle, sigma }) => sum + normal(x, middle, sigma), 0)) / pieces.length;
    const even = 1 / Math.log(100);
    for (const x of [2, 3, 5, 10, 20, 50]) expect(Math.abs(at(x) / even - 1)).toBeLessThan(0.05);
  });
  it('the variance of a mixture is that within and that between', () => {
    const { mean, covariance } = mixed([
      { weight: 1, mean: [0], covariance: [[1]] },
      { weight: 3, mean: [4], covariance: [[2]] },
    ]);
    expect(mean[0]).toBe(3);
    expect(covariance[0]![0]).toBeCloseTo(0.25 + 1.5 + 3, 12);
  });
});
