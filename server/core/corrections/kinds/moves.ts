import type { Steps } from '../../steps/steps.ts';
import { cheapestPieces } from '../balance/program.ts';
import type { Correction } from '../correction.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { findMovers, type Mover } from '../room/movers.ts';
import { asCorrection, benchFor, PART_OF_LIMIT, scoreIn } from '../search/correct.ts';
import { realise } from '../search/realise.ts';

/** Combined with moves, pieces must come to less than this part of what they come to alone. */
const SAVES_MUCH = 0.7;

/**
 * Moves that bring both conditions within their limits and cost nothing: of one thing, the freest and lightest first; where
 * none will do alone, of two. What a thing weighs does not change, so only trim and heel can be mended so.
 */
export function* proposeMoves(boatToTrim: BoatToTrim): Steps<Correction | null> {
  const movers = findMovers(boatToTrim.boat, boatToTrim.bodies.mass);
  const pairs = movers.flatMap((one, i) => movers.slice(i + 1).map(other => [one, other]));
  const bench = benchFor(boatToTrim, 'both', PART_OF_LIMIT);
  const rows = bench.rowsFor(null);
  for (const set of [...movers.map(one => [one]), ...pairs]) {
    yield;
    const solution = cheapestPieces([], rows, { movers: set });
    if (!solution) continue;
    const realised = realise({ slots: [], movers: set, solution, rank: solution.cost }, bench);
    if (realised && realised.laid.moves.length > 0) return asCorrection(realised.laid, 'both', boatToTrim);
  }
  return null;
}

/** Pieces with one thing moved, where that saves much of what the pieces alone come to; `alone` null when they cannot. */
export function* combine(
  boatToTrim: BoatToTrim,
  alone: Correction | null,
  correctMoving: (movers: readonly Mover[]) => Steps<Correction | null>,
): Steps<Correction | null> {
  const scoreOf = scoreIn(boatToTrim, 'both');
  const bar = alone ? SAVES_MUCH * scoreOf(alone) : Number.POSITIVE_INFINITY;
  let best: { readonly correction: Correction; readonly score: number } | null = null;
  for (const mover of findMovers(boatToTrim.boat, boatToTrim.bodies.mass)) {
    const correction = yield* correctMoving([mover]);
    if (!correction) continue;
    const score = scoreOf(correction);
    if (score < bar && (!best || score < best.score)) best = { correction, score };
  }
  return best?.correction ?? null;
}
