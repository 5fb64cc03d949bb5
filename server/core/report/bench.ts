import type { FileUnits } from '../../../schema/units.ts';
import type { Boat, Part } from '../boat/boat.ts';
import type { Move } from '../corrections/room/movers.ts';
import { bundleWords, countWords } from '../corrections/room/pieceEntry.ts';
import type { Piece } from '../corrections/room/slots.ts';
import { wayOf } from '../corrections/words/correctionTitle.ts';
import { boundsOf } from '../geometry/cut/solids.ts';
import { bare, exactText } from '../wording/exactText.ts';
import { massText, tapeStep, tapeText } from '../wording/numbers.ts';
import { endsCounted, heightFromWords, stationsCount, stationTape } from '../wording/places.ts';

/** A piece at the bench: how to cut it, where it goes and how it is fixed; `purpose` when it is not to stay aboard. */
export function cutLines(
  piece: Piece,
  name: string,
  boat: Boat,
  purpose: 'stays' | 'comes out' = 'stays',
): readonly string[] {
  const { slot, station, offset } = piece;
  const { units } = boat;
  const exact = (metres: number) => exactText(metres, units);
  const at = fillsRoom(piece, boat) ? exact : (metres: number) => tapeText(metres, units);
  const [abreast, layers] = slot.strips;
  const section = `${bare(exact(slot.breadth / abreast))} x ${exact(slot.depth / layers)}`;
  const bundled = bundleWords(slot);
  const stock = boat.stock[slot.material].strip ? 'strip' : 'block';
  const cut = slot.isShot
    ? `  ${name}: ${massText(piece.mass, units)} of lead shot, poured ${exact(slot.depth)} deep over ${at(station[1] - station[0])} between two dams ${exact(slot.breadth)} broad`
    : piece.counts.length > 0
      ? `  ${name}: ${countWords(piece, boat)} of ${slot.material}, ${inRows(piece)}`
      : `  ${name}: ${at(station[1] - station[0])} of ${section} ${slot.material} ${stock}${bundled === '' ? '' : `, ${bundled}`}, ${onScale(piece, boat)}`;
  return [
    cut,
    `    from ${endsCounted(station, 'station', units).map(at).join(' to ')} ${stationsCount(units)}, ${sideWords(offset, units)}, its middle ${heightWords(slot.height, units)}${slot.bay.inside === null ? '' : `, inside “${slot.bay.inside}”`}`,
    ...nearestEnd(piece, boat).map(words => `    ${words}`),
    `    ${fixing(piece, purpose)}`,
  ];
}

/** It is cut as long as its room, which need not end on the tape's marks. */
const fillsRoom = ({ counts, slot, station }: Piece, { units }: Boat): boolean =>
  counts.length === 0 && tapeStep(units) <= 0.001 && [0, 1].every(end => isNear(station[end]!, slot.station[end]!));

const isNear = (one: number, other: number): boolean => Math.abs(one - other) < 1e-4;

/** A part that is moved: where it stood and where it stands then. */
export function moveLines({ part, moved, along, across }: Move, { units }: Boat): readonly string[] {
  const place = ({ from, to }: Part): string => {
    const station =
      to[0] - from[0] > 1e-6
        ? `${endsCounted([from[0], to[0]], 'station', units)
            .map(end => tapeText(end, units))
            .join(' to ')} ${stationsCount(units)}`
        : `${stationTape(from[0], units)} ${stationsCount(units)}`;
    return across === 0 ? station : `${station}, ${sideWords((from[1] + to[1]) / 2, units)}`;
  };
  return [
    `  ${part.name}: move it ${wayOf({ part, moved, along, across }, units)}`,
    `    from ${place(part)}`,
    `    to ${place(moved)}`,
  ];
}

/** Foam too light for the scale is cut by its sizes alone. */
function onScale(piece: Piece, { units }: Boat): string {
  const text = massText(piece.mass, units);
  return /[1-9]/.test(text) ? `${text} on the scale` : 'too light for the scale';
}

/** A place athwart by the marks of the tape, with its side. */
function sideWords(offset: number, units: FileUnits): string {
  const size = tapeText(Math.abs(offset), units);
  return /[1-9]/.test(size) ? `${size} ${offset > 0 ? 'to starboard' : 'to port'}` : 'on the centreline';
}

/** A height by the marks of the tape, over or under the baseline. */
function heightWords(height: number, units: FileUnits): string {
  if (units.origin?.heights === 'waterline') return heightFromWords(height, units);
  const size = tapeText(Math.abs(height), units);
  if (!/[1-9]/.test(size)) return 'at the height of the keel';
  return `${size} ${height > 0 ? 'above' : 'below'} the keel`;
}

/** How whole pieces lie: in a row, or in several abreast. */
function inRows({ slot }: Piece): string {
  const cube = Math.cbrt(Math.max(...slot.pieces) / slot.density);
  const rows = Math.round(slot.breadth / Math.min(cube, slot.breadth));
  return rows > 1 ? `in ${rows} rows side by side, fore and aft` : 'in a row fore and aft';
}

/** Where the piece is from the nearest end of a compartment, its own if it lies in one: easier to reach than the bow tip. */
function nearestEnd({ station: [from, to], slot }: Piece, boat: Boat): readonly string[] {
  const { inside } = slot.bay;
  const near = boat.compartments.filter(({ name }) => inside === null || name === inside);
  const marks = near.flatMap(compartment => {
    const bounds = boundsOf(compartment.form);
    return [
      { at: bounds.from[0], end: `forward end of “${compartment.name}”` },
      { at: bounds.to[0], end: `after end of “${compartment.name}”` },
    ];
  });
  const distances = marks.flatMap(({ at, end }) => [
    { edge: 'forward', away: from - at, end },
    { edge: 'after', away: to - at, end },
  ]);
  const [nearest] = distances.sort((a, b) => Math.abs(a.away) - Math.abs(b.away));
  if (!nearest) return [];
  if (Math.abs(nearest.away) < tapeStep(boat.units) / 2) return [`its ${nearest.edge} edge at the ${nearest.end}`];
  const way = nearest.away < 0 ? 'forward of' : 'aft of';
  return [`its ${nearest.edge} edge ${tapeText(Math.abs(nearest.away), boat.units)} ${way} the ${nearest.end}`];
}

function fixing({ slot }: Piece, purpose: 'stays' | 'comes out'): string {
  if (purpose === 'comes out')
    return 'fix it so that it comes out again: with tape, hook-and-loop or a pin, not with glue';
  if (slot.isShot)
    return 'shake it level and cover it for the first trial, then set it with a little epoxy or wax, so that it cannot run';
  if (slot.bay.inside !== null)
    return 'fix it with tape or hook-and-loop, so that it cannot slide when the boat pitches';
  return slot.material === 'lead'
    ? 'tape it for the first trial, then bed it in silicone or epoxy on a degreased hull'
    : 'tape it for the first dive, then glue it with an adhesive that does not eat foam';
}

export function cautions(pieces: readonly Piece[]): readonly string[] {
  const has = (material: string) => pieces.some(piece => piece.slot.material === material);
  return [
    ...(has('lead')
      ? [
          '  Lead is poisonous: gloves, no sanding or melting indoors, wash your hands, keep it from children, pets and ponds.',
        ]
      : []),
    ...(has('foam') ? ['  Cut foam away from yourself, clamp it, and do not breathe the dust.'] : []),
    '  The first dive after a change is on a line, in shallow clear water. Local rules come first.',
  ];
}
