import type { Boat } from '../../boat/boat.ts';
import {
  asksNothing,
  conditionsOf,
  type InCondition,
  type LyingEverywhere,
} from '../../conditions/loadingCondition.ts';
import { figuredIn } from '../../figures/figured.ts';
import { outsideBy } from '../../figures/limit.ts';
import { FIGURES } from '../../figures/table.ts';
import type { Steps } from '../../steps/steps.ts';
import { cheapestPieces, type MoverShift, priceOf, type SlotShare } from '../balance/program.ts';
import { type BalanceRow, scopeOf } from '../balance/row.ts';
import type { CorrectedBoat, Correction } from '../correction.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { findMovers, type Mover } from '../room/movers.ts';
import { type Slot, slotSets } from '../room/slots.ts';
import { asCorrection, isListing } from '../search/correct.ts';
import { lay, movesOf, type Workbench } from '../search/realise.ts';
import { cutPiece } from '../search/rounding.ts';
import { nearestTitle } from '../words/correctionTitle.ts';

/** Pieces of less than this are not worth cutting for a compromise, kg of lead or what foam counts as. */
const TRIFLE = 0.002;

/** A compromise that leaves more than this part of what is wrong is none. */
const WORTH_IT = 0.8;
/** Pieces are left out that together bring less than this part of what all of them bring. */
const WORTH_A_PIECE = 0.1;

/** Times that the balances are drawn up anew with the pieces aboard. */
const ROUNDS = 3;

/**
 * The nearest that can be had when nothing meets all limits, by pieces and a few moves: which limits give way is said in the
 * title, never hidden. Null when it would hardly take away any of what is wrong, or would break more limits than the `before` ones.
 */
export function* nearestCorrection(boatToTrim: BoatToTrim, bench: Workbench, before: number): Steps<Correction | null> {
  const { boat } = boatToTrim;
  let nearest: CorrectedBoat | null = null;
  let left = WORTH_IT * missOf(boatToTrim);
  let isShort = false;
  const onPaper = bench.rowsFor(null);
  for (const slots of slotSets(boat, isListing(onPaper))) {
    const moving = foremost(slots, onPaper, boatToTrim);
    for (const movers of moving.length > 0 ? [[], moving] : [[]]) {
      let rows = onPaper;
      for (let round = 0; round < ROUNDS; round++) {
        yield;
        const few = worthwhile(slots, rows, movers);
        const solution = cheapestPieces(few.slots, rows, { elastic: true, movers });
        if (!solution) break;
        const pieces = solution.shares.filter(isWorthCutting).flatMap(share => cutPiece(share, boat.units) ?? []);
        const moves = movesOf(solution.shifts, boat);
        const laid = pieces.length + moves.length > 0 ? lay(pieces, moves, bench) : null;
        if (!laid) break;
        const isWorse = liesOver(laid) || laid.left.length > before;
        // What is moved besides must bring something.
        const miss = isWorse ? Number.POSITIVE_INFINITY : missOf(laid) * (moves.length > 0 ? 1 + WORTH_A_PIECE : 1);
        if (miss < left) [nearest, left, isShort] = [laid, miss, few.isShort];
        rows = bench.rowsFor(laid);
      }
    }
  }
  if (!nearest) return null;
  const correction = asCorrection(nearest, scopeOf(boat), boatToTrim);
  if (nearest.left.length === 0) return correction;
  return {
    ...correction,
    kind: 'nearest',
    title: nearestTitle(correction),
    note: isShort ? 'More pieces would bring less than a tenth of what these bring, so there are none.' : null,
  };
}

/** Things moved for a compromise at most: those that move the most weight the furthest when all may. */
const MOST_MOVED = 2;

function foremost(slots: readonly Slot[], rows: readonly BalanceRow[], boatToTrim: BoatToTrim): readonly Mover[] {
  const shifts = cheapestPieces(slots, rows, { elastic: true, movers: findMovers(boatToTrim) })?.shifts ?? [];
  const moment = ({ mover, along, across }: MoverShift): number => mover.part.mass * Math.hypot(along, across);
  return shifts
    .filter(shift => moment(shift) > 0)
    .sort((a, b) => moment(b) - moment(a))
    .slice(0, MOST_MOVED)
    .map(({ mover }) => mover);
}

const isWorthCutting = ({ mass, slot }: SlotShare): boolean => mass * priceOf(slot) > TRIFLE;

/** The slots without those that hardly matter: pieces are weighed against what they bring. */
function worthwhile(slots: readonly Slot[], rows: readonly BalanceRow[], movers: readonly Mover[]) {
  const costOf = (set: readonly Slot[]) =>
    cheapestPieces(set, rows, { elastic: true, movers })?.cost ?? Number.POSITIVE_INFINITY;
  const whole = cheapestPieces(slots, rows, { elastic: true, movers });
  const used = (whole?.shares ?? []).filter(isWorthCutting).map(({ slot }) => slot);
  let few: readonly Slot[] = used;
  const dearest = (whole?.cost ?? 0) + WORTH_A_PIECE * (costOf([]) - (whole?.cost ?? 0));
  // Ends: each round takes one away.
  while (few.length > 1) {
    const shorter = few.map(slot => {
      const set = few.filter(other => other !== slot);
      return { set, cost: costOf(set) };
    });
    const cheapest = shorter.reduce((least, one) => (one.cost < least.cost ? one : least));
    if (cheapest.cost > dearest) break;
    few = cheapest.set;
  }
  return { slots: few, isShort: few.length < used.length };
}

/** How far a boat that does not even float, or cannot hang, is counted to be outside its limits, in limits. */
const NOT_AT_ALL = 100;

/** How far a boat is outside its limits, by the full model: the sum over its figures of what is too much, in limits. */
export const missOf = (lying: LyingEverywhere & { readonly boat: Boat }): number =>
  conditionsOf(lying).reduce((sum, inCondition) => sum + missIn(lying.boat, inCondition), 0);

function missIn(boat: Boat, inCondition: InCondition): number {
  if (asksNothing(inCondition.condition, boat)) return 0;
  const all = figuredIn(boat, inCondition, FIGURES);
  if (all.length === 0) return NOT_AT_ALL;
  return all.reduce((sum, { limit, off }) => sum + (limit && off !== null ? outsideBy(limit, off) : 0), 0);
}

/** Past this heel or trim the linear balances, and so the compromise, mean nothing, rad. */
const FAR_OVER = Math.PI / 9;

const liesOver = (laid: CorrectedBoat): boolean =>
  conditionsOf(laid).some(({ condition, where, state }) => {
    if (asksNothing(condition, laid.boat)) return false;
    if (state.status === 'afloat') return isFar(state.attitude.trim) || isFar(state.attitude.heel);
    return state.status === 'neutral' ? isFar(state.trim) || isFar(state.heel) : where === 'afloat';
  });

const isFar = (tilt: number): boolean => Math.abs(tilt) > FAR_OVER;
