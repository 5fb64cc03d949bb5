import type { Boat, Part } from '../../boat/boat.ts';
import type { BoatSource } from '../../boat/source.ts';
import { assembleBodies, type Bodies, type BodyCache } from '../../bodies/assemble.ts';
import {
  conditionsOf,
  type LoadedCondition,
  type LyingEverywhere,
  submergedOf,
} from '../../conditions/loadingCondition.ts';
import { floatSubmerged, type Submerged } from '../../conditions/submerged.ts';
import { floatSurfaced, type Surfaced } from '../../conditions/surfaced.ts';
import { transitOf } from '../../conditions/transit.ts';
import { FIGURES } from '../../figures/table.ts';
import type { EntryText, Finding } from '../../findings/finding.ts';
import { judgeIn } from '../../judges/judge.ts';
import { judgeTransit } from '../../judges/judgeTransit.ts';
import type { Steps } from '../../steps/steps.ts';
import { priceOfMiss } from '../balance/price.ts';
import { cheapestPieces, type MoverShift, type Solution } from '../balance/program.ts';
import { type BalanceRow, isInScope, type Scope } from '../balance/row.ts';
import type { CorrectedBoat } from '../correction.ts';
import { inOthers } from '../room/inOthers.ts';
import type { Move } from '../room/movers.ts';
import { type Mover, moveOf } from '../room/movers.ts';
import { nameFor, type PartSchema, partOfEntry, pieceAsEntry } from '../room/pieceEntry.ts';
import { meets, type Piece, type Slot } from '../room/slots.ts';
import { cutPiece, cutsAbout } from './rounding.ts';
import type { Candidate } from './search.ts';

/** Rounds of cutting, floating and solving again with what the cut pieces really do. */
const MOST_ROUNDS = 4;
/** Gains below this part of the price of a miss are not worth another round. */
const NO_GAIN = 0.01;

/** The boat with pieces in it and parts moved, and which they are. */
export type DoneBoat = Pick<CorrectedBoat, 'pieces' | 'parts' | 'moves' | 'boat'>;

export interface Workbench {
  readonly boat: Boat;
  readonly source: BoatSource;
  readonly others: readonly LoadedCondition[];
  /** kg. */
  readonly mass: number;
  readonly cache: BodyCache;
  readonly scope: Scope;
  readonly schema: PartSchema;
  /** The balances of the boat without the pieces, on paper at first, then drawn up with the pieces as last laid. */
  readonly rowsFor: (laid: DoneBoat | null) => readonly BalanceRow[];
  /** What a floated boat comes to, g of lead: its pieces, their work, and the chance to miss a limit. */
  readonly scoreOf: (laid: CorrectedBoat) => number;
}

/** A floated boat that keeps all limits aimed at, and what it comes to. */
export interface Realised {
  readonly laid: CorrectedBoat;
  readonly score: number;
}

/**
 * Cuts and floats a candidate. Lengths are rounded to the tape first; then the pieces, as cut, are slid to where they
 * balance best, because a millimetre of place is finer than a gram. Solved again with what they really do until the full
 * model is content and nothing is gained any more; null when it never is.
 */
export function* realise(candidate: Candidate, bench: Workbench): Steps<Realised | null> {
  let laid: CorrectedBoat | null = null;
  let best: Realised | null = null;
  const { slots, movers } = candidate;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (round > 0) yield;
    const rows: readonly BalanceRow[] | null = laid ? bench.rowsFor(laid) : null;
    const near: ReadonlyMap<Slot, number> = new Map(laid?.pieces.map(piece => [piece.slot, piece.mass]));
    const solution: Solution | null = rows ? cheapestPieces(slots, rows, { near, movers }) : candidate.solution;
    const done: Work | null = solution && cutAndSlide(solution, rows, bench);
    if (round > 0) yield;
    const next: CorrectedBoat | null = done && lay(done.pieces, done.moves, bench);
    if (!next) break;
    laid = next;
    if (laid.left.length > 0) continue;
    const score = bench.scoreOf(laid);
    const gain = best ? best.score - score : Number.POSITIVE_INFINITY;
    if (gain > 0) best = { laid, score };
    if (gain < NO_GAIN * priceOfMiss(bench.mass)) break;
  }
  return best;
}

export interface Work {
  readonly pieces: readonly Piece[];
  readonly moves: readonly Move[];
}

/**
 * The shares cut to the tape, at the places where they then balance best; cut to the nearest marks unless only others balance.
 * Null for a share too small to cut.
 */
function cutAndSlide({ shares, shifts }: Solution, rows: readonly BalanceRow[] | null, bench: Workbench): Work | null {
  const { boat } = bench;
  const nearest = whole(shares.map(share => cutPiece(share, boat.units)));
  const movers = shifts.map(({ mover }) => mover);
  if (!nearest || !rows) return nearest && { pieces: nearest, moves: movesOf(shifts, boat) };
  for (const pieces of cutsAbout(nearest, shares, boat.units)) {
    const slid = slide(pieces, rows, movers, bench);
    if (slid) return slid;
  }
  return { pieces: nearest, moves: movesOf(shifts, boat) };
}

export const movesOf = (shifts: readonly MoverShift[], boat: Boat): readonly Move[] =>
  shifts.flatMap(({ mover, along, across }) => moveOf(mover, [along, across], boat) ?? []);

const whole = (cut: readonly (Piece | null)[]): readonly Piece[] | null =>
  cut.every(piece => piece !== null) ? (cut as readonly Piece[]) : null;

/** The pieces with their masses as cut, at the places that then balance best; null when there are none. */
export function slide(
  pieces: readonly Piece[],
  rows: readonly BalanceRow[],
  movers: readonly Mover[],
  { boat }: Workbench,
): Work | null {
  const cut = new Map<Slot, number>(pieces.map(piece => [piece.slot, piece.mass]));
  const solution = cheapestPieces([...cut.keys()], rows, { cut, movers });
  if (!solution) return null;
  const slid = whole(solution.shares.map((share, i) => cutPiece({ ...share, counts: pieces[i]!.counts }, boat.units)));
  return slid && { pieces: slid, moves: movesOf(solution.shifts, boat) };
}

/** Writes the pieces as entries, reads them back as the file will, moves what is moved, and floats the boat with it all. */
export function lay(
  pieces: readonly Piece[],
  moves: readonly Move[],
  { boat, source, others, cache, scope, schema }: Workbench,
): CorrectedBoat | null {
  const moved = boat.payload.map(part => moves.find(move => move.part === part)?.moved ?? part);
  if (moves.some(move => isInTheWay(move, moved))) return null;
  const parts: Part[] = [];
  const entries: EntryText[] = [];
  for (const piece of pieces) {
    const name = nameFor(piece, [
      ...boat.payload,
      ...boat.ashore,
      ...boat.shells,
      ...boat.compartments,
      ...boat.tanks,
      ...parts,
    ]);
    const entry = pieceAsEntry(piece, name, boat);
    const part = partOfEntry(entry, boat.payload.length + parts.length, boat, schema);
    // Bays may overlap, and what is moved may come to lie in one; two things cannot lie in one place.
    const others = [...parts, ...moves.map(move => move.moved)];
    if (!part || others.some(other => other.inside === part.inside && meets(part, other))) return null;
    parts.push(part);
    entries.push(entry);
  }
  const corrected: Boat = { ...boat, payload: [...moved, ...parts] };
  const bodies = assembleBodies(corrected, cache);
  const surfaced = floatSurfaced(bodies, boat.length);
  const submerged = floatSubmerged(bodies, submergedOf(boat).loading);
  const lying: LyingEverywhere = { surfaced, submerged, others: inOthers({ boat: corrected, source, others }, cache) };
  const left = conditionsOf(lying)
    .filter(({ condition }) => isInScope(condition, scope, boat))
    .flatMap(inCondition => judgeIn(corrected, inCondition, FIGURES))
    .filter(breaksLimit);
  const isWell = scope === 'both' && left.length === 0;
  const onTheWay = isWell ? judgedOnTheWay(corrected, bodies, surfaced, submerged) : [];
  return { ...lying, pieces, parts, entries, moves, boat: corrected, source, left, onTheWay };
}

function judgedOnTheWay(boat: Boat, bodies: Bodies, surfaced: Surfaced, submerged: Submerged): readonly Finding[] {
  if (surfaced.status !== 'afloat' || submerged.status !== 'neutral') return [];
  const transit = transitOf(bodies, surfaced, submerged, boat.length);
  return judgeTransit(boat, transit);
}

/** What is only remarked on, such as a boat touchy to trim, is no reason not to trim it. */
export const breaksLimit = ({ severity }: Finding): boolean => severity !== 'information';

/** It would come to lie where something else is that it did not lie with before. */
const isInTheWay = ({ part, moved }: Move, payload: readonly Part[]): boolean =>
  payload.some(other => other !== moved && other.inside === part.inside && meets(moved, other) && !meets(part, other));
