import { type Fit, leastSquares } from '../../server/core/trials/estimation/leastSquares.ts';

/** Least squares where each unknown is believed beforehand, give or take one: a row more for each. */
export const leastSquaresFrom = (
  believed: readonly number[],
  rows: readonly (readonly number[])[],
  values: readonly number[],
): Fit | null =>
  leastSquares(
    [...rows, ...believed.map((_, i) => believed.map((__, k) => (i === k ? 1 : 0)))],
    [...values, ...believed],
  );
