import type { Steps } from '../../steps/steps.ts';
import { cheapestPieces } from '../balance/program.ts';
import { type BalanceRow, scopeOf } from '../balance/row.ts';
import type { Correction } from '../correction.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { findMovers, type Mover } from '../room/movers.ts';
import { type Slot, slotSets } from '../room/slots.ts';
import { asCorrection, benchFor, isListing, PART_OF_LIMIT, scoreIn } from '../search/correct.ts';
import { type Realised, realise } from '../search/realise.ts';

/** Combined with moves, pieces must come to less than this part of what they come to alone. */
const SAVES_MUCH = 0.7;

/** Things that pieces are combined with the move of, one after the other, at most. */
const MOST_COMBINED = 2;

/** Taking something out and fixing it elsewhere is worth avoiding at this part of its mass in lead (common practice, no source). */
const PRICE_OF_MOVING = 0.002;

/**
 * The move that brings all conditions within their limits and costs nothing: of what the file frees, else of the lightest
 * thing that will do it surely; where no one thing will do, of two. What a thing weighs does not change, so only trim and heel can be mended so.
 */
export function* proposeMoves(boatToTrim: BoatToTrim): Steps<Correction | null> {
  const movers = findMovers(boatToTrim);
  const pairs = movers.flatMap((one, i) => movers.slice(i + 1).map(other => [one, other]));
  const alone = (isFreed: boolean) => movers.filter(({ part }) => part.fixed !== isFreed).map(one => [one]);
  for (const sets of [alone(true), alone(false), pairs]) {
    const best = yield* bestMove(sets, boatToTrim);
    yield;
    if (best) return asCorrection(best.laid, scopeOf(boatToTrim.boat), boatToTrim);
  }
  return null;
}

function* bestMove(sets: readonly (readonly Mover[])[], boatToTrim: BoatToTrim): Steps<Realised | null> {
  const bench = benchFor(boatToTrim, scopeOf(boatToTrim.boat), PART_OF_LIMIT);
  const rows = bench.rowsFor(null);
  let best: Realised | null = null;
  for (const movers of sets) {
    yield;
    const solution = cheapestPieces([], rows, { movers });
    const rank = (solution?.cost ?? 0) + priceOfMoving(movers);
    if (!solution || (best && rank >= best.score)) continue;
    const realised: Realised | null = yield* realise({ slots: [], movers, solution, rank }, bench);
    if (!realised || realised.laid.moves.length === 0) continue;
    const score = realised.score + priceOfMoving(movers);
    if (!best || score < best.score) best = { ...realised, score };
  }
  return best;
}

/** g of lead; what the file frees is easily moved. */
const priceOfMoving = (movers: readonly Mover[]): number =>
  movers.reduce((sum, { part }) => sum + (part.fixed ? 1e3 * PRICE_OF_MOVING * part.mass : 0), 0);

/** Pieces alone, and how sure what is combined has to be where it does not save much. */
interface Alone {
  readonly correction: Correction;
  /** 0..1. */
  readonly sure: number;
}

/**
 * Pieces with one thing moved, where that saves much of what the pieces alone come to, or is much surer and comes to less;
 * `alone` null when pieces cannot do it.
 */
export function* combine(
  boatToTrim: BoatToTrim,
  alone: Alone | null,
  correctMoving: (movers: readonly Mover[]) => Steps<Correction | null>,
  sureOf: (correction: Correction) => number,
): Steps<Correction | null> {
  const scoreOf = scoreIn(boatToTrim, scopeOf(boatToTrim.boat));
  const ofPieces = alone ? scoreOf(alone.correction) : Number.POSITIVE_INFINITY;
  const rows = benchFor(boatToTrim, scopeOf(boatToTrim.boat), PART_OF_LIMIT).rowsFor(null);
  const sets = slotSets(boatToTrim.boat, isListing(rows));
  const onPaper: { readonly mover: Mover; readonly cost: number }[] = [];
  for (const mover of findMovers(boatToTrim)) {
    yield;
    onPaper.push({ mover, cost: leastCost(sets, rows, mover) });
  }
  const promising = onPaper
    .filter(({ cost }) => cost < ofPieces)
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MOST_COMBINED);
  let best: { readonly correction: Correction; readonly score: number } | null = null;
  for (const { mover } of promising) {
    const correction = yield* correctMoving([mover]);
    if (!correction) continue;
    const score = scoreOf(correction) + priceOfMoving([mover]);
    const isWorth = score < SAVES_MUCH * ofPieces || (score < ofPieces && sureOf(correction) > (alone?.sure ?? 0));
    if (isWorth && (!best || score < best.score)) best = { correction, score };
  }
  return best?.correction ?? null;
}

/** What pieces come to on paper, laid in whichever way costs least, with one thing moved. */
const leastCost = (sets: readonly (readonly Slot[])[], rows: readonly BalanceRow[], mover: Mover): number =>
  Math.min(...sets.map(slots => cheapestPieces(slots, rows, { movers: [mover] })?.cost ?? Number.POSITIVE_INFINITY));
