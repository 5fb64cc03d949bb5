import { normalBelow } from '../../statistics/normalBelow.ts';
import type { Normal } from './space.ts';

/** A number that is even over a stretch, of mean 0 and standard deviation 1, lies between minus and plus this. */
export const EVEN_REACH = Math.sqrt(3);

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** How likely a normal number lies within reach. */
export function withinBounds(mean: number, variance: number): number {
  const sigma = Math.sqrt(variance);
  return Math.max(normalBelow((EVEN_REACH - mean) / sigma) - normalBelow((-EVEN_REACH - mean) / sigma), LEAST);
}

/** Less likely than this is not told apart. */
const LEAST = 1e-6;

/**
 * Normal numbers of which one lies within reach: the mean and covariance that they have then (the moments of a truncated
 * normal distribution; from memory, held to numerical integration in the tests).
 */
export function withinReach({ mean, covariance }: Normal, k: number): Normal {
  const [m, v] = [mean[k]!, covariance[k]![k]!];
  const sigma = Math.sqrt(v);
  const [low, high] = [(-EVEN_REACH - m) / sigma, (EVEN_REACH - m) / sigma];
  const inside = normalBelow(high) - normalBelow(low);
  // All of it outside: it lies at the nearer end.
  if (inside <= LEAST) return moved({ mean, covariance }, k, Math.sign(m) * EVEN_REACH, v * LEAST);
  const shift = (density(low) - density(high)) / inside;
  const left = 1 + (low * density(low) - high * density(high)) / inside - shift ** 2;
  return moved({ mean, covariance }, k, m + sigma * shift, v * Math.max(left, LEAST));
}

/** One of them known otherwise, the others following. */
function moved({ mean, covariance }: Normal, k: number, to: number, variance: number): Normal {
  const v = covariance[k]![k]!;
  const answer = covariance.map(row => row[k]! / v);
  return {
    mean: mean.map((value, i) => value + answer[i]! * (to - mean[k]!)),
    covariance: covariance.map((row, i) => row.map((value, n) => value + answer[i]! * answer[n]! * (variance - v))),
  };
}
