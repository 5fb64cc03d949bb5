import type { Estimated, Observed } from '../estimation/gaussNewton.ts';
import { dot } from '../estimation/leastSquares.ts';

/** How a reading stands to all the others. */
export interface Standing {
  /** What the other readings, and what was believed beforehand, say that it should have been. */
  readonly expected: number;
  /** Standard uncertainty of that. */
  readonly sigma: number;
  /** How far the reading is from it, in standard uncertainties of the difference. */
  readonly score: number;
}

/**
 * Past this a reading fits nothing: a good one goes so far once in a thousand (Baarda's level for testing one reading at
 * a time, A Testing Procedure for Use in Geodetic Networks, 1968; from memory).
 */
export const SLIP_SCORE = 3.29;

/**
 * Each reading against all others, as if the estimate had been made without it: the normalised residual of Baarda's
 * data snooping, what is believed beforehand counting as readings too. With v the residual and q the part of the
 * reading's variance that the residual keeps, the others expect value - v/q, and the score is v/(sigma·√q).
 */
export function standings(
  estimated: Pick<Estimated, 'unknowns' | 'covariance' | 'modelled'>,
  observed: readonly Observed[],
): readonly Standing[] {
  const { modelled, covariance, unknowns } = estimated;
  const { values, slopes } = modelled;
  const spread = unknowns.map((_, i) => covariance[i]!);
  return observed.map(({ value, sigma }, i) => {
    const slope = slopes[i]!;
    const known = dot(
      slope,
      spread.map(row => dot(row, slope)),
    );
    const kept = 1 - known / sigma ** 2;
    const residual = value - values[i]!;
    // A reading that alone decides an unknown leaves no residual: it cannot be told from a right one.
    if (kept < LEAST_KEPT) return { expected: value, sigma: Number.POSITIVE_INFINITY, score: 0 };
    return {
      expected: value - residual / kept,
      sigma: Math.sqrt(known / kept),
      score: residual / (sigma * Math.sqrt(kept)),
    };
  });
}

const LEAST_KEPT = 1e-6;
