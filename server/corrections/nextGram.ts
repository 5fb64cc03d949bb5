import type { Boat, Part } from '../boat/boat.ts';
import { assembleBodies, type BodyShelf } from '../bodies/assemble.ts';
import { floatSubmerged, type Submerged } from '../conditions/submerged.ts';
import { floatSurfaced, type Surfaced } from '../conditions/surfaced.ts';
import { boxForm } from '../geometry/box.ts';
import type { Correction } from './correction.ts';
import type { Piece } from './levers.ts';
import type { Row } from './program.ts';

/** What one more gram of a piece, about its middle, would change in the figure of each balance: m, rad or a fraction. */
export interface NextGram {
  readonly piece: Piece;
  readonly changes: readonly { readonly row: Row; readonly change: number }[];
}

const GRAM = 1e-3;

/**
 * The next gram of each piece, by floating the boat with it: what a gram does to a metacentric height is in none of the
 * linear balances, which hold the surface where it is.
 */
export function nextGramsOf(correction: Correction, rows: readonly Row[], shelf: BodyShelf): readonly NextGram[] {
  const { boat, pieces, parts } = correction;
  return pieces.map((piece, i) => {
    const more: Boat = { ...boat, payload: [...boat.payload, gramOf(parts[i]!, piece)] };
    const bodies = assembleBodies(more, shelf);
    const after = { surfaced: floatSurfaced(bodies, boat.length), submerged: floatSubmerged(bodies) };
    const changes = rows.flatMap(row => {
      const [was, is] = [figureOf(row, correction), figureOf(row, after)];
      return was === null || is === null ? [] : [{ row, change: is - was }];
    });
    return { piece, changes };
  });
}

/** A gram of the same material in the middle of the piece, as broad and deep as the piece is. */
function gramOf(part: Part, { lever, station, offset }: Piece): Part {
  const middle = (station[0] + station[1]) / 2;
  const half = GRAM / lever.massPerLength / 2;
  const from = [middle - half, offset - lever.breadth / 2, lever.height - lever.depth / 2] as const;
  const to = [middle + half, offset + lever.breadth / 2, lever.height + lever.depth / 2] as const;
  const isWet = part.form !== null;
  return {
    ...part,
    mass: GRAM,
    centroid: [middle, offset, lever.height],
    form: isWet ? boxForm(from, to) : null,
    volume: isWet ? GRAM / lever.density : 0,
    from,
    to,
  };
}

interface Floated {
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
}

/** The figure that a balance is about; null where the boat has none. */
function figureOf({ name }: Row, { surfaced, submerged }: Floated): number | null {
  const afloat = surfaced.status === 'afloat' ? surfaced : null;
  const neutral = submerged.status === 'neutral' ? submerged : null;
  switch (name) {
    case 'surfaced draft':
      return afloat?.attitude.draft ?? null;
    case 'surfaced trim':
      return afloat?.attitude.trim ?? null;
    case 'surfaced heel':
      return afloat?.attitude.heel ?? null;
    case 'surfaced metacentric height':
      return afloat?.gm ?? null;
    case 'submerged trim':
      return neutral?.trim ?? null;
    case 'submerged heel':
      return neutral?.heel ?? null;
    case 'neutral fill':
      return neutral?.fill ?? null;
    case 'submerged stiffness in trim':
      return neutral?.bgEffectiveLongitudinal ?? null;
    case 'submerged stiffness in heel':
      return neutral?.bgEffective ?? null;
  }
}
