import { normalBelow } from '../../statistics/normalBelow.ts';

/** A normal part of a mixture: its share, 0..1 of all, its mean and standard deviation. */
export interface NormalPart {
  readonly odds: number;
  readonly value: number;
  readonly sigma: number;
}

/** How often a normal number lies within one and within two standard deviations. */
const WITHIN = [0.6827, 0.9545] as const;
/** Halvings of the way to the answer. */
const HALVINGS = 40;

/**
 * One standard uncertainty of what is a mixture about a value that is shown: the root of its mean square away from that, but no
 * more than it takes for one and two of them to hold as much of it as of a normal distribution. What is far away and hardly
 * likely else makes the mean square that of a boat that nobody believes in (coverage instead of moments: JCGM 101:2008, 7.7, in
 * kind; from memory).
 */
export function coveringSigma(parts: readonly NormalPart[], shown: number): number {
  const all = parts.reduce((sum, { odds }) => sum + odds, 0);
  const meanSquare = parts.reduce((sum, { odds, value, sigma }) => sum + odds * (sigma ** 2 + (value - shown) ** 2), 0);
  const most = Math.sqrt(meanSquare / all);
  const within = (reach: number): number =>
    parts.reduce((sum, { odds, value, sigma }) => sum + odds * between(shown - value, reach, sigma), 0) / all;
  const holds = (sigma: number): boolean => WITHIN.every((share, i) => within((i + 1) * sigma) >= share);
  let [low, high] = [0, most];
  if (!holds(high)) return most;
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** The chance of a normal number about `off` to lie within reach. */
const between = (off: number, reach: number, sigma: number): number =>
  sigma > 0 ? normalBelow((off + reach) / sigma) - normalBelow((off - reach) / sigma) : Number(Math.abs(off) <= reach);
