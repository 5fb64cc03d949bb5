import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chanceOutside,
  chanceUnder,
  counted,
  stretchesAbove,
  stretchesOff,
} from '../../server/core/corrections/balance/price.ts';

const size = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
const open = fc.option(fc.double({ min: 0, max: 10, noNaN: true }));

describe('what it costs to come nearer to a limit, told in stretches', () => {
  it('is in all the price of a miss by the chance that is added on the way (normal distribution)', () => {
    fc.assert(
      fc.property(size, open, size, (usual, left, missed) => {
        const stretches = stretchesAbove(usual, left, missed);
        const sigma = counted(left, usual);
        const far = stretches.reduce((sum, stretch) => sum + stretch.size, 0);
        const paid = stretches.reduce((sum, stretch) => sum + stretch.size * stretch.price, 0);
        expect(paid / missed).toBeCloseTo(chanceUnder(0, sigma) - chanceUnder(far, sigma), 9);
      }),
    );
    fc.assert(
      fc.property(size, fc.double({ min: 0.1, max: 1, noNaN: true }), open, size, (limit, part, left, missed) => {
        const stretches = stretchesOff(limit, part * limit, left, missed);
        const sigma = counted(left, limit);
        expect(stretches.reduce((sum, stretch) => sum + stretch.size, 0)).toBeCloseTo(part * limit, 6);
        const paid = stretches.reduce((sum, stretch) => sum + stretch.size * stretch.price, 0);
        // Beside the chance, the least price of a whole limit: 2 % of that of a miss.
        const chance = chanceOutside(part * limit, limit, sigma) - chanceOutside(0, limit, sigma);
        expect(paid / missed).toBeCloseTo(chance + 0.02 * part, 9);
      }),
    );
  });

  it('grows towards the limit', () => {
    fc.assert(
      fc.property(size, open, size, (limit, left, missed) => {
        const prices = (stretches: readonly { readonly price: number }[]) => stretches.map(({ price }) => price);
        const above = prices(stretchesAbove(limit, left, missed));
        const off = prices(stretchesOff(limit, 0.75 * limit, left, missed));
        expect(above).toEqual([...above].sort((a, b) => b - a));
        expect(off).toEqual([...off].sort((a, b) => a - b));
      }),
    );
  });

  it('is the tail of the normal distribution (tabled at one and two standard deviations; from memory)', () => {
    expect(chanceUnder(1, 1)).toBeCloseTo(0.158655, 6);
    expect(chanceUnder(-3, 1.5)).toBeCloseTo(1 - 0.02275, 5);
    expect(chanceOutside(0, 2, 2)).toBeCloseTo(0.317311, 6);
  });

  it('is a step where nothing is open', () => {
    expect([-0.5, 0, 0.5].map(above => chanceUnder(above, 0))).toEqual([1, 0, 0]);
    expect([-1.5, -0.5, 0.5, 1.5].map(off => chanceOutside(off, 1, 0))).toEqual([1, 0, 0, 1]);
  });

  it('counts the hand, and of what is open half of the limit at the most', () => {
    expect(counted(null, 2)).toBeCloseTo(0.15 * 2, 12);
    expect(counted(0.4, 2)).toBeCloseTo(Math.hypot(0.4, 0.3), 12);
    expect(counted(100, 2)).toBe(1);
  });
});
