import { describe, expect, test } from 'vitest';
import { chanceOutside, chanceUnder } from '../../server/core/corrections/balance/price.ts';
import { chanceOfAll, limitsKept } from '../../server/core/corrections/balance/sureness.ts';
import { proposeCorrections } from '../../server/core/corrections/propose.ts';
import { openIn } from '../../server/core/corrections/search/balances.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { heard } from '../helpers/analysed.ts';
import { boatToTrimOf } from '../helpers/boatToTrim.ts';
import { corrected, outOfLimits } from '../helpers/corrected.ts';
import { probe } from '../helpers/probe.ts';

describe('chances', () => {
  // Tables of the normal distribution (from memory): 1 standard deviation 68.27 %, 1.96 of them 95.00 %, 2 one-sided 97.72 %.
  test.each([
    ['one sigma', 1 - chanceOutside(0, 1, 1), 0.6827],
    ['1.96 sigma', 1 - chanceOutside(0, 1.96, 1), 0.95],
    ['at the edge of a wide limit', 1 - chanceOutside(10, 10, 1), 0.5],
    ['two sigma above a least figure', 1 - chanceUnder(2, 1), 0.9772],
    ['nothing open', 1 - chanceOutside(0.5, 1, 0), 1],
  ])('of %s', (_, found, known) => {
    expect(found).toBeCloseTo(known, 4);
  });
});

describe('a boat only just within its limits by its figures', { timeout: 60_000 }, () => {
  /*
   * The probe's 800 g battery 0.16 mm aft: 128 of the 148 g·mm that the limit of submerged trim allows. A gram in the bow bay
   * 150 mm forward of the middle makes that nothing.
   */
  const text = probe(['150 to 250 mm', '150.16 to 250.16 mm']);
  // As if all of the file were known: only sawing, laying and reading leave something open.
  const edge = boatToTrimOf(text);

  test('is offered what makes it surer, and that does', () => {
    expect(outOfLimits(heard(text))).toEqual([]);
    const [first] = finish(proposeCorrections(edge));
    const sureOf = (floating: typeof edge | NonNullable<typeof first>) =>
      chanceOfAll(limitsKept(floating, 'both', openIn(edge)));
    expect(first!.kind).not.toBe('nearest');
    expect(sureOf(first!)).toBeGreaterThan(1.1 * sureOf(edge));
    expect(outOfLimits(heard(corrected(heard(text), first!)))).toEqual([]);
  });

  test('in the middle of them there is nothing to offer', () => {
    expect(heard(probe()).corrections.all()).toEqual([]);
  });
});
