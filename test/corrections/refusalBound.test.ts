import { afterAll, describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { scopeOf } from '../../server/core/corrections/balance/row.ts';
import type { Correction } from '../../server/core/corrections/correction.ts';
import { isWithin } from '../../server/core/corrections/kinds/isWithin.ts';
import { correctText } from '../../server/core/report/correctText.ts';
import { plainPaint } from '../../server/core/report/rows.ts';
import { hullMesh } from '../benchmark/hullMesh.ts';
import { timesOf } from '../benchmark/measure.ts';
import { plainLoop } from '../benchmark/plainLoop.ts';
import { missesOf } from '../builder/figures.ts';
import { floatPlainly } from '../builder/plainFloater.ts';
import { service } from '../helpers/analysed.ts';
import { corrected, outOfLimits } from '../helpers/corrected.ts';
import { isLong } from '../helpers/long.ts';
import { type AnyBoat, boatOfAnyKind } from './boatsOfAllKinds.ts';
import { gramsOf, heldByBound, leastFor } from './bound.ts';

/*
 * Boats of all kinds against a bound of our own: HiGHS (highs-js 1.15.3) over all bays at once, each filled in any way that
 * the stock can be laid, with things moved besides. Nothing that is refused may be had by it; what is offered costs little
 * over the least for the same aim, and floats as is said by the other way of floating too (test/builder/plainFloater.ts).
 */

const BOATS = isLong ? 300 : 10;
/** Boats of which the offer is floated once more by the other, slower way. */
const FLOATED = isLong ? 40 : 3;
/** Of a limit: what the other way of floating may find besides. */
const OTHER_WAY = 0.05;
/** Less is within what a scale shows, and its ratio says nothing, g. */
const LEAST = 2;

interface Case {
  readonly seed: number;
  readonly boat: AnyBoat;
  readonly analysis: Analysis;
  readonly outcome: 'within' | 'offered' | 'refused';
  /** What mends all that is asked. */
  readonly offer: Correction | undefined;
  /** Processor time of all its corrections, ms. */
  readonly took: number;
}

const cases: readonly Case[] = (() => {
  const made: Case[] = [];
  let previous: Analysis | undefined;
  for (let seed = 0; seed < BOATS; seed++) {
    const boat = boatOfAnyKind(seed);
    const analysis = service.analyse(boat.text, previous).settled.all();
    previous = analysis;
    const { boatToTrim, corrections } = analysis;
    if (!boatToTrim) throw new Error(`boat ${seed} has no aim`);
    const asked = scopeOf(analysis.boat);
    const before = process.cpuUsage();
    corrections.all();
    const { user, system } = process.cpuUsage(before);
    const offer = corrections.all().find(({ condition, left }) => condition === asked && left.length === 0);
    made.push({
      seed,
      boat,
      analysis,
      offer,
      took: (user + system) / 1e3,
      outcome: isWithin(boatToTrim) ? 'within' : offer ? 'offered' : 'refused',
    });
  }
  return made;
})();

const quantile = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(part * (values.length - 1))] ?? Number.NaN;

const told: string[] = [`${BOATS} boats of all kinds`];
const share = (some: readonly unknown[], of: readonly unknown[]) => `${some.length} of ${of.length}`;

afterAll(() => {
  if (!isLong) return;
  const mesh = hullMesh(100_000);
  const { processor: plain } = timesOf(() => plainLoop(mesh, 0.04), 400);
  const [middle, tenth] = [0.5, 0.9].map(
    part =>
      quantile(
        cases.map(({ took }) => took),
        part,
      ) / plain,
  );
  told.push(
    `  corrections in plain loops over 100,000 triangles: ${middle!.toFixed(0)}, ${tenth!.toFixed(0)} (middle, worst tenth)`,
  );
  console.log(told.join('\n'));
});

describe('boats of all kinds', { timeout: 3_600_000 }, () => {
  const refused = cases.filter(({ outcome }) => outcome === 'refused');
  const offered = cases.filter(({ outcome }) => outcome === 'offered');

  test('no refusal is refuted by the bound', () => {
    const refuted = refused.filter(({ analysis }) => heldByBound(analysis.boatToTrim!, scopeOf(analysis.boat)));
    told.push(`  refused: ${share(refused, cases)}, refuted by the bound: ${share(refuted, refused)}`);
    expect(refused.length).toBeGreaterThan(0.1 * BOATS);
    expect(refuted.map(({ seed }) => seed)).toEqual([]);
  });

  test('each refusal says what is in the way or what would do it, and nearly all the latter', () => {
    const words = refused.map(({ seed, analysis }) => ({ seed, text: correctText(analysis, false, plainPaint) }));
    const isTold = (text: string) => /would (?:keep|meet) every limit/.test(text);
    const isSaid = (text: string) => isTold(text) || / it takes more than one change, or wider limits\./.test(text);
    const bare = words.filter(({ text }) => !isSaid(text) || !/In the way|On paper|still out/.test(text));
    const remedied = words.filter(({ text }) => isTold(text));
    const without = words.filter(({ text }) => !isTold(text)).map(({ seed }) => seed);
    told.push(
      `  refusals with what would do it: ${share(remedied, refused)} (not: ${without.join(', ')}), bare: ${share(bare, refused)}`,
    );
    expect(bare.map(({ seed }) => seed)).toEqual([]);
    expect(remedied.length).toBeGreaterThan(0.85 * refused.length);
  });

  test('the price is little over the least for the same aim', () => {
    const priced = offered.flatMap(({ analysis, offer }) => {
      if (!offer || offer.pieces.length === 0 || offer.kind === 'recut' || offer.carried.length > 0) return [];
      const least = leastFor(analysis.boatToTrim!, offer, scopeOf(analysis.boat));
      const price = gramsOf(offer.pieces);
      return least === null || price < LEAST ? [] : [price / Math.max(least, LEAST)];
    });
    const pieces = offered.map(({ offer }) => offer!.pieces.length);
    told.push(
      `  price over the least, of ${priced.length}: ${[0.5, 0.9, 1].map(part => quantile(priced, part).toFixed(3)).join(', ')} (middle, worst tenth, worst)`,
      `  pieces: ${[0, 1, 2, 3, 4, 5].map(count => `${count}: ${pieces.filter(n => n === count).length}`).join(', ')}`,
    );
    expect(priced.length).toBeGreaterThan(0.1 * BOATS);
    expect(quantile(priced, 0.5)).toBeLessThan(1.02);
    if (isLong) expect(quantile(priced, 0.9)).toBeLessThan(1.15);
  });

  test('every offer, written into the file, is the boat that was offered', () => {
    let written = 0;
    for (const { seed, analysis } of cases) {
      for (const correction of analysis.corrections.all()) {
        const again = service.analyse(corrected(analysis, correction), analysis);
        const asked = scopeOf(analysis.boat);
        const isAll =
          correction.condition === asked && correction.left.length === 0 && correction.onTheWay.length === 0;
        if (isAll) expect({ seed, title: correction.title, out: outOfLimits(again) }).toMatchObject({ out: [] });
        for (const [now, then] of again.others.map((other, i) => [other, correction.others[i]!] as const)) {
          expect({ seed, title: correction.title, status: now.state.status }).toMatchObject({
            status: then.state.status,
          });
          if (now.state.status === 'neutral' && then.state.status === 'neutral')
            expect(now.state.trim).toBeCloseTo(then.state.trim, 5);
          if (now.state.status === 'afloat' && then.state.status === 'afloat')
            expect(now.state.attitude.trim).toBeCloseTo(then.state.attitude.trim, 5);
        }
        written++;
      }
    }
    expect(written).toBeGreaterThan(0.5 * BOATS);
  });

  test('what is offered floats as is said by the other way of floating too', () => {
    const out = offered.slice(0, FLOATED).flatMap(({ seed, offer }) => {
      const worst = Math.max(...missesOf(floatPlainly(offer!.boat), offer!.boat).map(({ by }) => Math.abs(by)));
      return worst > 1 + OTHER_WAY ? [{ seed, worst }] : [];
    });
    expect(out).toEqual([]);
  });
});
