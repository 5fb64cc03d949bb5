import type { FileUnits } from '../../../../schema/units.ts';
import { tapeStep } from '../../wording/numbers.ts';
import type { SlotShare } from '../balance/program.ts';
import type { Piece } from '../room/slots.ts';

/** Least pieces worth cutting: of lead kg, of foam m3, which is about a gram of lift (common practice, no source). */
const LIGHTEST = 0.0005;
const LEAST_FOAM = 1e-6;

/**
 * A share of the solution as a piece that can be cut and laid: length and ends on the tape's marks, inside its room, mass
 * as the scale will show it. Null for a share too small to cut.
 */
export function cutPiece(
  share: SlotShare,
  units: FileUnits,
  toMark: (marks: number) => number = Math.round,
): Piece | null {
  const { slot } = share;
  if (slot.pieces.length > 0) return wholePiece(share, units);
  const step = tapeStep(units);
  const wanted = share.mass / slot.massPerLength;
  const [first, last] = marksWithin(slot.station, step);
  if (share.mass < (slot.material === 'lead' ? LIGHTEST : LEAST_FOAM * slot.density) || wanted < step / 2) return null;
  const marks = Math.max(1, toMark(wanted / step));
  const station =
    marks > last - first ? wholeRoom(slot.station, units) : onMarks(share.station, marks, [first, last], step);
  if (station[1] - station[0] < step - HAIR) return null;
  return {
    slot,
    mass: scaleMass((station[1] - station[0]) * slot.massPerLength),
    station,
    offset: onMark(share.offset, slot.offset, step),
    counts: [],
  };
}

/**
 * The shares cut to the nearest marks, then with one or more of them cut to the mark on the other side, as a builder would
 * where the nearest marks add up to too much or too little.
 */
export function* cutsAbout(
  nearest: readonly Piece[],
  shares: readonly SlotShare[],
  units: FileUnits,
): Generator<readonly Piece[]> {
  const others = shares.map((share, i) =>
    [cutPiece(share, units, Math.floor), cutPiece(share, units, Math.ceil)].find(
      piece => piece !== null && piece.mass !== nearest[i]!.mass,
    ),
  );
  const choices = others.flatMap((other, i) => (other ? [{ other, i }] : []));
  for (let chosen = 0; chosen < 1 << choices.length; chosen++) {
    const pieces = [...nearest];
    for (const [bit, { other, i }] of choices.entries()) if ((chosen >> bit) & 1) pieces[i] = other;
    yield pieces;
  }
}

/** So many whole pieces side by side, their middle on the tape's marks; their masses are as they are. */
function wholePiece({ slot, station, offset, counts }: SlotShare, units: FileUnits): Piece | null {
  const made = counts.reduce((sum, count, k) => sum + count * slot.pieces[k]!, 0);
  if (made === 0) return null;
  const step = tapeStep(units);
  const half = made / slot.massPerLength / 2;
  const middle = onMark(station, [slot.station[0] + half, slot.station[1] - half], step);
  return {
    slot,
    mass: made,
    station: [middle - half, middle + half],
    offset: onMark(offset, slot.offset, step),
    counts,
  };
}

type Stretch = readonly [least: number, most: number];

/** m. */
const HAIR = 1e-9;
const MILLIMETRE = 0.001;
/** Places are written to this, m. */
const WRITTEN = 1e-4;

/** So many marks long, its ends on marks. */
function onMarks(middle: number, marks: number, [first, last]: Stretch, step: number): Stretch {
  const start = clamp(Math.round(middle / step - marks / 2), first, last - marks) * step;
  return [start, start + marks * step];
}

/** A piece that fills its room ends where the room does, if need be between marks; an inch tape has nothing between its marks. */
function wholeRoom(room: Stretch, units: FileUnits): Stretch {
  const tape = tapeStep(units);
  const step = tape > MILLIMETRE ? tape : WRITTEN;
  const [first, last] = marksWithin(room, step);
  return [first * step, last * step];
}

/** The first and the last of the tape's marks in a stretch, by number. */
const marksWithin = ([least, most]: Stretch, step: number): Stretch => [
  Math.ceil(least / step - 1e-6),
  Math.floor(most / step + 1e-6),
];

/** The mark in a stretch that is nearest to a place; its middle where it is too short to have one. */
function onMark(place: number, stretch: Stretch, step: number): number {
  const [first, last] = marksWithin(stretch, step);
  if (first > last) return (stretch[0] + stretch[1]) / 2;
  return clamp(Math.round(place / step), first, last) * step;
}

/** What the scale shows, kg: whole grams, or less where a gram would be more than a hundredth of the piece. */
function scaleMass(mass: number): number {
  const step = mass < 1e-4 ? 1e-6 : mass < 0.001 ? 1e-5 : mass < 0.1 ? 1e-4 : 1e-3;
  return Math.round(mass / step) * step;
}

const clamp = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), most);
