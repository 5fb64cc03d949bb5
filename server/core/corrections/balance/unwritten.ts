import type { OpenLoads } from './open.ts';
import type { BalancedFigure } from './row.ts';

/**
 * What nobody wrote down, as long as nothing of the whole boat was read: in three boats of ten something is aboard that the
 * file does not have, or lies elsewhere (common practice, no source; what trials may be explained by comes to about as much
 * for a boat of ten parts).
 */
export const CHANCE_OF_UNWRITTEN = 0.3;

/** What it weighs beside the boat, and its moments beside those of the boat's mass at its length; one standard uncertainty each. */
const SHARE = { mass: 0.014, along: 0.004, across: 0.0004 } as const;

const BY: Readonly<Partial<Record<BalancedFigure, keyof typeof SHARE>>> = {
  draft: 'mass',
  fill: 'mass',
  reserve: 'mass',
  trim: 'along',
  heel: 'across',
};

/** What is left open of each balance where something is not written down. `mass` is the boat's, kg; `length` in m. */
export function withUnwritten(open: OpenLoads, mass: number, length: number): OpenLoads {
  const loadOf = (figure: string): number => {
    const by = BY[figure as BalancedFigure];
    return by ? SHARE[by] * mass * (by === 'mass' ? 1 : length) : 0;
  };
  return Object.fromEntries(
    Object.entries(open).map(([condition, there = {}]) => [
      condition,
      Object.fromEntries(
        Object.entries(there).map(([figure, load]) => [
          figure,
          { ...load, sigma: Math.hypot(load.sigma, loadOf(figure)) },
        ]),
      ),
    ]),
  );
}
