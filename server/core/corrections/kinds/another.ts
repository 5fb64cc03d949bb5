import type { FileUnits } from '../../../../schema/units.ts';
import { toSi, unitNamed } from '../../../../schema/units.ts';
import { cheapestPieces } from '../balance/program.ts';
import { knownChance } from '../balance/prospect.ts';
import type { BalanceRow } from '../balance/row.ts';
import { chanceOfAll, type LimitKept, limitsKept } from '../balance/sureness.ts';
import type { Correction } from '../correction.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { type Mover, moversOf } from '../room/movers.ts';
import { findSlots, type Piece, type Slot } from '../room/slots.ts';
import { openIn } from '../search/balances.ts';
import { benchFor } from '../search/correct.ts';
import { lay, movesOf, type Work } from '../search/realise.ts';
import { cutPiece } from '../search/rounding.ts';

/** What another bit of lead would do to the chance to be within all limits in the water. */
export interface Another {
  /** kg. */
  readonly mass: number;
  /** The bay where it does best. */
  readonly bay: string;
  /** How likely all limits are kept then, 0..1. */
  readonly chance: number;
}

/** How likely a correction keeps all the limits that it sets out to keep, as well as the boat is known, 0..1; null where nobody can tell. */
export const chanceOf = (correction: Correction, boatToTrim: BoatToTrim): number | null =>
  knownChance(keptBy(correction, boatToTrim));

/** Every limit that a correction sets out to keep. */
export const keptBy = (correction: Correction, boatToTrim: BoatToTrim): readonly LimitKept[] =>
  limitsKept(correction, correction.condition, openIn(boatToTrim));

/**
 * What another 10 g of lead (half an ounce) would do, on a piece of the correction or in a bay without one, laid as well as
 * it can be with all else slid to suit, and floated by the full model. Null where there is no room for it, and for a
 * correction that takes pieces out or carries them now and then only.
 */
export function another(correction: Correction, boatToTrim: BoatToTrim): Another | null {
  const { kind, condition, pieces } = correction;
  if (kind === 'recut' || kind === 'carry' || kind === 'nearest' || chanceOf(correction, boatToTrim) === null)
    return null;
  const bench = benchFor(boatToTrim, condition, 1);
  const rows = bench.rowsFor(correction);
  const movers = moversOf(correction, boatToTrim);
  const open = openIn(boatToTrim);
  const ways = withMore(pieces, boatToTrim).flatMap(({ piece, at, more }): readonly Another[] => {
    const slid = slideAll(at < pieces.length ? pieces.with(at, piece) : [...pieces, piece], rows, movers, boatToTrim);
    const laid = slid && lay(slid.pieces, slid.moves, bench);
    if (!laid) return [];
    return [{ mass: more, bay: piece.slot.bay.name, chance: chanceOfAll(limitsKept(laid, condition, open)) }];
  });
  return ways.sort((a, b) => b.chance - a.chance)[0] ?? null;
}

/** Pieces of these masses where they balance best, a limit missed where they cannot keep all. */
function slideAll(
  pieces: readonly Piece[],
  rows: readonly BalanceRow[],
  movers: readonly Mover[],
  { boat }: BoatToTrim,
): Work | null {
  const cut = new Map(pieces.map(({ slot, mass }) => [slot, mass]));
  const solution = cheapestPieces([...cut.keys()], rows, { cut, movers, elastic: true });
  if (!solution) return null;
  const slid = solution.shares.flatMap(
    (share, i) => cutPiece({ ...share, counts: pieces[i]!.counts }, boat.units) ?? [],
  );
  return slid.length === pieces.length ? { pieces: slid, moves: movesOf(solution.shifts, boat) } : null;
}

interface WithMore {
  readonly piece: Piece;
  /** Which of the pieces it stands for; behind the last: a new one. */
  readonly at: number;
  /** kg. */
  readonly more: number;
}

/** Each lead piece with a little more of it, and a little in each bay for lead that has none of them. */
function withMore(pieces: readonly Piece[], { boat }: BoatToTrim): readonly WithMore[] {
  const lead = pieces.flatMap((piece, at) => (piece.slot.material === 'lead' ? [{ piece, at }] : []));
  const none = findSlots(boat)
    .filter(({ material, bay }) => material === 'lead' && !pieces.some(({ slot }) => slot.bay.name === bay.name))
    .map(slot => ({ piece: nothingIn(slot), at: pieces.length }));
  return [...lead, ...none].flatMap(({ piece, at }) => {
    const { slot } = piece;
    const kind = nearestKind(slot, bitOf(boat.units));
    const more = kind === null ? bitOf(boat.units) : slot.pieces[kind]!;
    const mass = piece.mass + more;
    if (mass / slot.massPerLength > slot.station[1] - slot.station[0]) return [];
    const counts = slot.pieces.map((_, k) => (piece.counts[k] ?? 0) + Number(k === kind));
    return [{ piece: { ...piece, mass, counts }, at, more }];
  });
}

const nothingIn = (slot: Slot): Piece => ({ slot, mass: 0, station: slot.station, offset: 0, counts: [] });

/** 10 g, or half an ounce, kg. */
const bitOf = ({ mass }: FileUnits): number =>
  mass === 'oz' || mass === 'lb' ? toSi(0.5, unitNamed('oz', 'mass')!) : 0.01;

/** Of the stock's whole pieces the one nearest to a mass; null where the stock is cut. */
const nearestKind = ({ pieces }: Slot, mass: number): number | null =>
  pieces.length === 0
    ? null
    : pieces.reduce((best, each, k) => (Math.abs(each - mass) < Math.abs(pieces[best]! - mass) ? k : best), 0);
