import { expect, test } from 'vitest';
import { shownOf } from '../../server/core/trials/pool/likeliest.ts';
import type { Explanation } from '../../server/core/trials/pool/weigh.ts';

const MARK = { name: 'the water near the bow' };
const TRIM = { name: 'the trim under water' };

/** An explanation by its odds and the readings that it strikes out. */
const explanation = (odds: number, ...struck: readonly object[]): Explanation =>
  ({
    odds,
    load: null,
    items: struck.map(reading => ({ cause: { kind: 'slip', of: { reading } } })),
  }) as unknown as Explanation;

const several = (odds: number): Explanation =>
  ({ odds, items: [], load: { cause: { kind: 'several' } } }) as unknown as Explanation;

const shown = (...explanations: readonly Explanation[]): number => explanations.indexOf(shownOf(explanations)!);

test('the boat is shown as the likeliest explanation has it', () => {
  expect(shown(explanation(0.6), explanation(0.4, MARK))).toBe(0);
  expect(shown(explanation(0.6, MARK), explanation(0.4))).toBe(0);
});

test('not where it alone strikes out a reading that nearly all others believe', () => {
  expect(shown(explanation(0.3, TRIM), explanation(0.25, MARK), explanation(0.25, MARK), explanation(0.2))).toBe(1);
  expect(shown(explanation(0.3, TRIM), explanation(0.3), explanation(0.2, MARK), explanation(0.2))).toBe(1);
});

test('what cannot be named is no boat, but believes readings like any other', () => {
  expect(shown(several(0.5), explanation(0.3, TRIM), explanation(0.2))).toBe(2);
  expect(shown(several(0.6), explanation(0.4, TRIM))).toBe(1);
  expect(shownOf([several(1)])).toBeNull();
});

test('a boat is shown even where every explanation strikes out another reading', () => {
  expect(shown(explanation(0.3, TRIM), explanation(0.3, MARK), several(0.4))).toBe(0);
});
