import type { Boat, Part } from '../../boat/boat.ts';
import { assembleBodies, type BodyCache } from '../../bodies/assemble.ts';
import { floatSubmerged } from '../../conditions/submerged.ts';
import { floatSurfaced } from '../../conditions/surfaced.ts';
import { transitOf } from '../../conditions/transit.ts';
import type { EntryText, Finding } from '../../findings/finding.ts';
import { judgePassage } from '../../judges/judgePassage.ts';
import { judgeSubmerged } from '../../judges/judgeSubmerged.ts';
import { judgeSurfaced } from '../../judges/judgeSurfaced.ts';
import { cheapestPieces, type Row, type Share } from '../balance/program.ts';
import type { FloatedBoat, Scope } from '../correction.ts';
import { nameFor, type PartSchema, partOfEntry, pieceAsEntry } from '../room/pieceEntry.ts';
import { meets, type Piece, type Slot } from '../room/slots.ts';
import { cutPiece, cutsAbout } from './rounding.ts';
import type { Candidate } from './search.ts';

/** Rounds of cutting, floating and solving again with what the cut pieces really do. */
const MOST_ROUNDS = 4;

/** The boat with pieces in it, and which they are. */
export type LaidPieces = Pick<FloatedBoat, 'pieces' | 'parts' | 'boat'>;

export interface Workbench {
  readonly boat: Boat;
  readonly cache: BodyCache;
  readonly scope: Scope;
  readonly schema: PartSchema;
  /** The balances of the boat without the pieces, on paper at first, then drawn up with the pieces as last laid. */
  readonly rowsFor: (laid: LaidPieces | null) => readonly Row[];
}

/**
 * Cuts and floats a candidate. Lengths are rounded to the tape first; then the pieces, as cut, are slid to where they
 * balance best, because a millimetre of place is finer than a gram. Solved again with what they really do until the full
 * model is content; null when it never is.
 */
export function realise(candidate: Candidate, bench: Workbench): FloatedBoat | null {
  let laid: FloatedBoat | null = null;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const rows = laid ? bench.rowsFor(laid) : null;
    const near = new Map(laid?.pieces.map(piece => [piece.slot, piece.mass]));
    const shares = rows ? cheapestPieces(candidate.slots, rows, { near })?.shares : candidate.solution.shares;
    if (!shares) return null;
    const pieces = cutAndSlide(shares, rows, bench);
    if (!pieces) return null;
    laid = lay(pieces, bench);
    if (!laid || laid.left.length === 0) return laid;
  }
  return null;
}

/**
 * The shares cut to the tape, at the places where they then balance best; cut to the nearest marks unless only others balance.
 * Null for a share too small to cut.
 */
function cutAndSlide(shares: readonly Share[], rows: readonly Row[] | null, bench: Workbench): readonly Piece[] | null {
  const { units } = bench.boat;
  const nearest = whole(shares.map(share => cutPiece(share, units)));
  if (!nearest || !rows) return nearest;
  for (const pieces of cutsAbout(nearest, shares, units)) {
    const slid = slide(pieces, rows, bench);
    if (slid) return slid;
  }
  return nearest;
}

const whole = (cut: readonly (Piece | null)[]): readonly Piece[] | null =>
  cut.every(piece => piece !== null) ? (cut as readonly Piece[]) : null;

/** The pieces with their masses as cut, at the places that then balance best; null when there are none. */
function slide(pieces: readonly Piece[], rows: readonly Row[], { boat }: Workbench): readonly Piece[] | null {
  const cut = new Map<Slot, number>(pieces.map(piece => [piece.slot, piece.mass]));
  const shares = cheapestPieces([...cut.keys()], rows, { cut })?.shares;
  return shares ? whole(shares.map((share, i) => cutPiece({ ...share, counts: pieces[i]!.counts }, boat.units))) : null;
}

/** Writes the pieces as entries, reads them back as the file will, and floats the boat with them. */
export function lay(pieces: readonly Piece[], { boat, cache, scope, schema }: Workbench): FloatedBoat | null {
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
    // Bays may overlap; two pieces cannot lie in one place.
    if (!part || parts.some(other => other.inside === part.inside && meets(part, other))) return null;
    parts.push(part);
    entries.push(entry);
  }
  const corrected: Boat = { ...boat, payload: [...boat.payload, ...parts] };
  const bodies = assembleBodies(corrected, cache);
  const surfaced = floatSurfaced(bodies, boat.length);
  const submerged = floatSubmerged(bodies);
  const left = [
    ...(scope === 'submerged' ? [] : judgeSurfaced(corrected, surfaced)),
    ...(scope === 'surfaced' ? [] : judgeSubmerged(corrected, submerged)),
  ].filter(breaksLimit);
  if (scope === 'both' && left.length === 0 && surfaced.status === 'afloat' && submerged.status === 'neutral') {
    const transit = transitOf(bodies, surfaced, submerged.fill, boat.length);
    left.push(...judgePassage(corrected, { transit, otherEquilibria: [], range: null, tanks: [] }).filter(breaksLimit));
  }
  return { pieces, parts, entries, boat: corrected, surfaced, submerged, left };
}

/** What is only remarked on, such as a boat touchy to trim, is no reason not to trim it. */
export const breaksLimit = ({ severity }: Finding): boolean => severity !== 'information';
