import type { partSchema } from '../../../../schema/hull.ts';
import { countedAt } from '../../../../schema/places.ts';
import { readQuantity } from '../../../../schema/quantity.ts';
import type { FileUnits } from '../../../../schema/units.ts';
import { freeName } from '../../boat/arrangement.ts';
import type { Boat, Part } from '../../boat/boat.ts';
import { readPart } from '../../boat/readPart.ts';
import type { EntryText } from '../../findings/finding.ts';
import { createShapes } from '../../geometry/shapes/shapes.ts';
import { bare, exactText } from '../../wording/exactText.ts';
import { massText } from '../../wording/numbers.ts';
import { endsCounted } from '../../wording/places.ts';
import type { Piece, Slot } from './slots.ts';

/** The cautions that go with the material, in the entry's own comment; local rules and qualified people come first. */
const CAUTION = {
  lead: 'lead: no dust or fumes, wash hands, away from children',
  foam: 'foam: cut away from yourself, mind the dust',
} as const;

/** Names for pieces, none of them taken: after their bays. */
export function nameFor(piece: Piece, taken: readonly { readonly name: string }[]): string {
  const { bay, material } = piece.slot;
  const what = piece.slot.isShot ? 'shot' : material;
  const wanted = bay.name.toLowerCase().includes(what) ? bay.name : `${what} ${bay.name}`;
  return freeName(wanted, taken);
}

/** The schema of a payload entry for the file's units; costly to make, so made once. */
export type PartSchema = ReturnType<typeof partSchema>;

/**
 * The part that the entry will be when the file is read again: read by the same schema, so that what is offered is what
 * one gets. Null would be our own bug: an entry that does not read.
 */
export function partOfEntry(entry: EntryText, index: number, boat: Boat, schema: PartSchema): Part | null {
  const read = schema.safeParse(Object.fromEntries(entry.fields.map(([key, text]) => [key, scalar(text)])));
  if (!read.success) return null;
  const stock = { lead: boat.stock.lead.density, foam: boat.stock.foam.density, shot: boat.stock.lead.shot };
  return readPart(
    read.data,
    ['payload', index],
    { units: boat.units, scale: boat.scale, stock, meshes: () => null, roomsOf: () => [], shapes: createShapes() },
    [],
  );
}

const scalar = (text: string): string | boolean => (text === 'false' ? false : text);

/** As the handbook has it. */
export const materialOf = ({ material, isShot }: Slot): string => (isShot ? 'lead shot' : material);

/** The piece as it shall stand in the file, in the file's own units. */
export function pieceAsEntry(piece: Piece, name: string, boat: Boat): EntryText {
  const { units } = boat;
  const { slot } = piece;
  const at = (metres: number) => exactText(metres, units);
  const isWhole = piece.counts.length > 0;
  const fields: (readonly [string, string])[] = [
    ['name', name],
    ['material', materialOf(slot)],
    ['mass', weightText(piece.mass, units)],
  ];
  fields.push(['box', `${bare(at(slot.breadth))} x ${at(slot.depth)}`]);
  const [start, end] = endsCounted(piece.station, 'station', units);
  // Whole pieces are as long as their mass makes them: the program works it out, and their middle is what one measures.
  fields.push([
    'station',
    isWhole
      ? at(countedAt((piece.station[0] + piece.station[1]) / 2, 'station', units))
      : `${bare(at(start))} to ${at(end)}`,
  ]);
  if (Math.abs(piece.offset) > 1e-9) fields.push(['offset', at(piece.offset)]);
  fields.push(['height', at(countedAt(slot.height, 'height', units))]);
  if (slot.bay.inside !== null) fields.push(['in', slot.bay.inside]);
  fields.push(['fixed', 'false']);
  // A cut piece's length is in its stations: said here too it would be false once the piece is recut.
  const bundled = bundleWords(slot);
  const what = slot.isShot
    ? 'poured between two dams; '
    : isWhole
      ? `${countWords(piece, boat)}; `
      : bundled === ''
        ? ''
        : `${bundled}; `;
  return { fields, comment: `${what}${CAUTION[slot.material]}` };
}

/** Read back, a mass is this near to what was meant (relative): a sliver of foam weighs hundredths of a gram. */
const WEIGHED_AS_WRITTEN = 0.02;

/** A mass with the digits that it takes to be near. */
function weightText(mass: number, units: FileUnits): string {
  for (let finer = 0; finer < 4; finer++) {
    const text = massText(mass, units, finer);
    const read = readQuantity(text, 'mass', units);
    if (read.ok && Math.abs(read.value.value - mass) <= WEIGHED_AS_WRITTEN * mass) return text;
  }
  return massText(mass, units, 4);
}

/** How strips are bundled: "2 strips abreast in 3 layers"; empty for a single one. */
export function bundleWords({ strips: [abreast, layers] }: Slot): string {
  if (abreast * layers === 1) return '';
  const side = abreast > 1 ? `${abreast} strips abreast` : 'strips';
  return layers > 1 ? `${side} in ${layers} layers` : side;
}

/** "2 x 10 g and 1 x 5 g". */
export const countWords = ({ slot, counts }: Piece, { units }: Boat): string =>
  counts.flatMap((count, k) => (count > 0 ? [`${count} x ${massText(slot.pieces[k]!, units)}`] : [])).join(' and ');
