import { normalBelow } from '../../statistics/normalBelow.ts';
import type { Stretch } from './row.ts';

/*
 * What it is worth not to miss a limit. A boat out of one limit costs its builder another day at the pool: far more than
 * any lead, which is counted here in grams so that both can be weighed against each other in one sum.
 */

/** A limit missed for certain is worth avoiding at the price of this part of the boat's mass in lead (common practice, no source). */
const PRICE_OF_MISS = 0.1;

/** The price of missing one limit for certain by a boat of this mass (kg), g of lead. */
export const priceOfMiss = (mass: number): number => 1e3 * PRICE_OF_MISS * mass;

/** Of a limit: what sawing, laying and the readings leave open besides what the file does (common practice, no source). */
const LEFT_BY_HAND = 0.15;
/** Of a limit: where more than this is open, a place within it makes little difference, but some (common practice, no source). */
const MOST_COUNTED = 0.5;

/** One standard uncertainty of a figure with that of the hand, as the limit is wide; what the file leaves open may be unknown. */
export const withHand = (open: number | null, limit: number): number => Math.hypot(open ?? 0, LEFT_BY_HAND * limit);

/** The same as it is counted when what to do is chosen. */
export const counted = (open: number | null, limit: number): number =>
  Math.min(withHand(open, limit), MOST_COUNTED * limit);

/** The chance to be outside a limit to either side when aimed so far off its middle. */
export const chanceOutside = (off: number, limit: number, sigma: number): number =>
  sigma > 0 ? normalBelow((off - limit) / sigma) + normalBelow((-off - limit) / sigma) : Number(Math.abs(off) > limit);

/** The chance to be under a least figure when aimed so far above it. */
export const chanceUnder = (above: number, sigma: number): number =>
  sigma > 0 ? normalBelow(-above / sigma) : Number(above < 0);

/** Ends of the stretches that the way from an aim to as far as it may be missed is told in, as parts of that way. */
const OFF_ENDS = [0, 0.4, 0.75, 1] as const;
/** Ends of those above a least figure, in standard uncertainties. */
const NEAR_ENDS = [0, 0.75, 1.75] as const;

/** Even with nothing open it is better to be in the middle: the least price of a whole limit, as a part of that of missing it. */
const LEAST_PRICE = 0.02;

/** Stretches from an aim to `slack`, within `limit`: dearer outwards, as the chance to be out grows. `missed` in g of lead. */
export function stretchesOff(limit: number, slack: number, open: number | null, missed: number): readonly Stretch[] {
  const sigma = counted(open, limit);
  return between(OFF_ENDS).map(([from, to]) => {
    const [near, far] = [from * slack, to * slack];
    const more = chanceOutside(far, limit, sigma) - chanceOutside(near, limit, sigma);
    return { size: far - near, price: missed * (more / (far - near) + LEAST_PRICE / limit) };
  });
}

/** Stretches above a least figure, dearest next to it; `usual` is the size of the limit, and none tells of any. */
export function stretchesAbove(usual: number, open: number | null, missed: number): readonly Stretch[] {
  if (!(usual > 0)) return [];
  const sigma = counted(open, usual);
  return between(NEAR_ENDS).map(([from, to]) => {
    const less = chanceUnder(from * sigma, sigma) - chanceUnder(to * sigma, sigma);
    return { size: (to - from) * sigma, price: (missed * less) / ((to - from) * sigma) };
  });
}

const between = (ends: readonly number[]): readonly (readonly [number, number])[] =>
  ends.slice(1).map((end, i) => [ends[i]!, end] as const);
