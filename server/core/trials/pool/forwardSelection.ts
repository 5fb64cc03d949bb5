import type { Steps } from '../../steps/steps.ts';
import { type Estimated, estimate, type Modelled, type Observed } from '../estimation/gaussNewton.ts';
import { dot, leastSquaresFrom } from '../estimation/leastSquares.ts';
import type { Pool } from './pool.ts';

/** Unknowns that are chosen at most, and how much each must lessen the sum (Akaike's criterion; from memory). */
const MOST = 6;
const WORTH_IT = 2;

/**
 * The few unknowns among candidates that bring the readings near by the least weighted change, the others held: chosen one
 * after the other as long as each is worth it, by the slopes at what the file says. Null where none is.
 */
export function selectForward(pool: Pool, candidates: readonly number[]): readonly number[] | null {
  const filed = pool.model(
    pool.inputs.map(() => 0),
    true,
  );
  if (!filed) return null;
  let chosen: readonly number[] = [];
  let cost = costWith(filed, pool.observations, chosen);
  // Ends: each round adds one.
  while (chosen.length < MOST) {
    const tried = candidates
      .filter(k => !chosen.includes(k))
      .map(k => ({ k, cost: costWith(filed, pool.observations, [...chosen, k]) }))
      .sort((a, b) => a.cost - b.cost);
    const [best] = tried;
    if (!best || cost - best.cost < WORTH_IT) break;
    chosen = [...chosen, best.k];
    cost = best.cost;
  }
  return chosen.length > 0 ? chosen : null;
}

/** The least sum with only these unknowns free, by straight lines. */
function costWith({ values, slopes }: Modelled, observed: readonly Observed[], free: readonly number[]): number {
  const aims = observed.map(({ value, sigma }, i) => (value - values[i]!) / sigma);
  if (free.length === 0) return dot(aims, aims);
  const rows = observed.map(({ sigma }, i) => free.map(k => slopes[i]![k]! / sigma));
  const believed = free.map(() => 0);
  return leastSquaresFrom(believed, rows, aims)?.sum ?? Number.POSITIVE_INFINITY;
}

/** The estimate with only these unknowns free, the others as the file has them. */
export function solveFor(pool: Pool, free: readonly number[]): Steps<Estimated | null> {
  const whole = (few: readonly number[]): readonly number[] => {
    const unknowns = pool.inputs.map(() => 0);
    for (const [i, k] of free.entries()) unknowns[k] = few[i]!;
    return unknowns;
  };
  return estimate({
    observed: pool.observations,
    least: free.map(() => Number.NEGATIVE_INFINITY),
    start: free.map(() => 0),
    model: (few, afresh) => {
      const modelled = pool.model(whole(few), afresh);
      return modelled && { ...modelled, slopes: modelled.slopes.map(row => free.map(k => row[k]!)) };
    },
  });
}
