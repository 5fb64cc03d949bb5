import type { Boat, Part } from '../../boat/boat.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import type { Steps } from '../../steps/steps.ts';
import { capital } from '../../wording/capital.ts';
import { massText } from '../../wording/numbers.ts';
import { stationTape } from '../../wording/places.ts';
import { scopeOf } from '../balance/row.ts';
import { ownRooms } from '../kinds/recut.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { isBallast } from '../room/movers.ts';
import { type Piece, type Slot, slotSets } from '../room/slots.ts';
import { correctWith } from '../search/correct.ts';
import { piecesWords } from '../words/correctionTitle.ts';

/**
 * What would do it if lead of which the file does not say that it stays were cut shorter where it lies: how much of it stays,
 * between which stations, and which pieces besides. Floated by the full model; null where that would not do, or there is none.
 */
export function* ballastAdvice(boatToTrim: BoatToTrim): Steps<string | null> {
  const { boat, cache } = boatToTrim;
  const lead = boat.payload.filter(part => isBallast(part) && part.fixed && !part.pinned && part.material !== 'foam');
  const rooms = lead.flatMap(part => roomOf(part, boat));
  if (rooms.length === 0) return null;
  const cut = lead.filter(({ path }) => rooms.some(({ bay }) => bay.path === path));
  const bare: Boat = { ...boat, payload: boat.payload.filter(part => !cut.includes(part)) };
  const without: BoatToTrim = { ...boatToTrim, boat: bare, bodies: assembleBodies(bare, cache) };
  const sets = slotSets(bare, false).map(slots => [...slots, ...rooms]);
  const correction = yield* correctWith(without, scopeOf(boat), sets);
  if (!correction) return null;
  const { pieces } = correction;
  const fates = cut.map(part => fateOf(part, pieces, boat));
  const added = pieces.filter(({ slot }) => !rooms.includes(slot));
  const besides = added.length > 0 ? `, and with ${piecesWords(added, boat)}` : '';
  // Of a strip the file tells the section, so that what is left of it can be written.
  const isOffered = cut.every(part => stripOf(part).length > 0);
  const mend = isOffered ? ' If it may be cut, add “fixed: false” to it: then that is offered.' : '';
  return `${capital(fates.join(' and '))}${besides}, it would keep every limit.${mend}`;
}

/** What becomes of it: "with “keel lead” cut from 640 g to 520 g, station 210 mm to 480 mm". */
function fateOf({ name, path, mass }: Part, pieces: readonly Piece[], { units }: Boat): string {
  const piece = pieces.find(({ slot }) => slot.bay.path === path);
  if (!piece) return `without “${name}”`;
  const [from, to] = piece.station.map(station => stationTape(station, units));
  return `with “${name}” cut from ${massText(mass, units)} to ${massText(piece.mass, units)}, station ${from} to ${to}`;
}

const stripOf = (part: Part): readonly Slot[] =>
  ownRooms({ payload: [{ ...part, fixed: false, material: 'lead' }], bays: [] });

/** The room that it takes up, as a strip; nothing for what has no length. */
function roomOf(part: Part, boat: Boat): readonly Slot[] {
  const known = stripOf(part);
  if (known.length > 0) return known;
  const { from, to, mass, volume, inside, path, name } = part;
  const length = to[0] - from[0];
  if (!(length > 0) || part.copies > 1) return [];
  const { density: ofStock } = boat.stock.lead;
  const density = volume > 0 ? mass / volume : ofStock;
  // Of an unknown section: as if it were square.
  const side = Math.sqrt(mass / length / density);
  const middle = (from[1] + to[1]) / 2;
  return [
    {
      bay: { path, name, takes: 'lead', inside, from, to },
      material: 'lead',
      isShot: false,
      density,
      breadth: side,
      depth: side,
      strips: [1, 1],
      massPerLength: mass / length,
      pieces: [],
      station: [from[0], to[0]],
      offset: [middle, middle],
      height: part.centroid[2],
    },
  ];
}
