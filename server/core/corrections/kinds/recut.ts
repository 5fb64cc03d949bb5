import { freeName } from '../../boat/arrangement.ts';
import type { Bay, Boat, Part } from '../../boat/boat.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import type { Change, EntryText } from '../../findings/finding.ts';
import { capital } from '../../wording/capital.ts';
import { massText, tapeStep, tapeText } from '../../wording/numbers.ts';
import { type Correction, type Recut, renamed } from '../correction.ts';
import { asFiled, type BoatToTrim } from '../room/boatToTrim.ts';
import { materialOf } from '../room/pieceEntry.ts';
import type { Piece, Slot } from '../room/slots.ts';
import { addedWays, allWithin, titleOf } from '../words/correctionTitle.ts';

/** The boat without the lead and foam that may be moved; null when there is none. How it lies is still how it lay. */
export function withoutLoose(boatToTrim: BoatToTrim): BoatToTrim | null {
  const { boat, cache } = boatToTrim;
  const payload = boat.payload.filter(part => part.fixed);
  if (payload.length === boat.payload.length) return null;
  const bare: Boat = { ...boat, payload };
  return { ...boatToTrim, boat: bare, bodies: assembleBodies(bare, cache) };
}

/**
 * The room of loose pieces themselves, for those that lie in no bay: they can be cut shorter where they are. Strips only,
 * for what is left of another form is of no form that is known.
 */
export function ownRooms({ payload, bays }: Pick<Boat, 'payload' | 'bays'>): readonly Slot[] {
  return payload.flatMap((part): readonly Slot[] => {
    const { from, to, material, inside } = part;
    if (part.fixed || part.copies > 1 || (material !== 'lead' && material !== 'foam') || !part.written?.station.isRange)
      return [];
    const [length, breadth, depth] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
    const volume = length * breadth * depth;
    const isStrip = inside !== null || Math.abs(part.volume - volume) < SAME_VOLUME * volume;
    if (volume <= 0 || !isStrip) return [];
    if (bays.some(bay => bay.takes === material && bay.inside === inside && liesIn(part, bay))) return [];
    const middle = (from[1] + to[1]) / 2;
    return [
      {
        bay: { path: part.path, name: part.name, takes: material, inside, from, to },
        material,
        isShot: false,
        density: part.mass / volume,
        breadth,
        depth,
        strips: [1, 1],
        massPerLength: part.mass / length,
        pieces: [],
        station: [from[0], to[0]],
        offset: [middle, middle],
        height: (from[2] + to[2]) / 2,
      },
    ];
  });
}

/** A form fills the box about it to within this part: a strip. */
const SAME_VOLUME = 0.01;

const HAIR = 1e-4;

const liesIn = (part: Part, { from, to }: Bay): boolean =>
  ([0, 1, 2] as const).every(axis => part.from[axis] > from[axis] - HAIR && part.to[axis] < to[axis] + HAIR);

/** What becomes of a piece of the correction: it was a loose piece of the file, or is new. */
interface Fate {
  readonly piece: Piece;
  readonly entry: EntryText;
  readonly was: Part | null;
  readonly name: string;
}

/**
 * A correction of the boat without its loose pieces, said as changes to those pieces: one of the same material, strip and
 * height in the same room is recut and slid where it stands in the file; the others are taken out, new ones added.
 */
export function asRecut(correction: Correction, boatToTrim: BoatToTrim): Recut {
  const left = new Set(boatToTrim.boat.payload.filter(part => !part.fixed));
  const same = correction.pieces.map(piece => {
    const found = [...left].find(part => isCutAlike(part, piece));
    if (found) left.delete(found);
    return found ?? null;
  });
  const taken = boatToTrim.boat.payload.filter(part => !left.has(part));
  const fates: Fate[] = [];
  for (const [i, piece] of correction.pieces.entries()) {
    const was = same[i] ?? null;
    const name = was?.name ?? freeName(correction.parts[i]!.name, [...taken, ...boatToTrim.boat.ashore, ...fates]);
    fates.push({ piece, entry: correction.entries[i]!, was, name });
  }
  const changes = fates.flatMap(({ entry, was, name, piece }): readonly Change[] =>
    was
      ? rewritten(was, piece, entry, boatToTrim)
      : [{ kind: 'append', path: ['payload'], entry: renamed(entry, name) }],
  );
  return {
    ...correction,
    kind: 'recut',
    removed: [...left],
    title: recutTitle(fates, [...left], boatToTrim),
    parts: correction.parts.map((part, i) => ({ ...part, name: fates[i]!.name })),
    entries: fates.map(({ entry, name }) => renamed(entry, name)),
    changes: [...changes, ...[...left].map(part => ({ kind: 'remove', path: part.path }) as const)],
  };
}

function recutTitle(fates: readonly Fate[], out: readonly Part[], boatToTrim: BoatToTrim): string {
  const { boat } = boatToTrim;
  const kept = fates.filter(({ was, piece }) => was && !isSame(was, piece, boatToTrim));
  const added = fates.flatMap(({ was, piece }) => (was ? [] : [piece]));
  const recut = kept.map(({ name, piece: { slot, mass, station } }) => {
    const size = slot.material === 'lead' ? massText(mass, boat.units) : tapeText(station[1] - station[0], boat.units);
    return `recut “${name}” to ${size}`;
  });
  const removed = out.length > 0 ? [`remove ${out.map(({ name }) => `“${name}”`).join(', ')}`] : [];
  const inserts = added.length > 0 ? addedWays(added, boat).map(words => [`insert ${words}`]) : [[]];
  const short = [
    ...(kept.length > 0 ? [`recut ${piecesWords(kept.length)}`] : []),
    ...(out.length > 0 ? [`remove ${piecesWords(out.length)}`] : []),
    ...inserts.at(-1)!,
  ];
  const ways = [...inserts.map(insert => [...recut, ...removed, ...insert]), short];
  return titleOf(
    ways.map(way => capital(way.join(', '))),
    allWithin(boatToTrim),
  );
}

const piecesWords = (count: number): string => (count === 1 ? 'a loose piece' : `${count} loose pieces`);

function isCutAlike(part: Part, { slot }: Piece): boolean {
  if (slot.bay.path === part.path) return true;
  const middle = (part.from[2] + part.to[2]) / 2;
  return (
    part.copies === 1 &&
    part.material === materialOf(slot) &&
    part.inside === slot.bay.inside &&
    part.from[0] > slot.bay.from[0] - HAIR &&
    part.to[0] < slot.bay.to[0] + HAIR &&
    part.written?.station.isRange === true &&
    slot.pieces.length === 0 &&
    Math.abs(part.to[1] - part.from[1] - slot.breadth) < HAIR &&
    Math.abs(part.to[2] - part.from[2] - slot.depth) < HAIR &&
    Math.abs(middle - slot.height) < HAIR
  );
}

/** It lies where it lay, but for what the trials have it off a mark of the tape. */
function isSame(part: Part, { station, offset }: Piece, boatToTrim: BoatToTrim): boolean {
  const filed = asFiled(part, boatToTrim);
  const off = (axis: 0 | 1) =>
    HAIR + Math.min(Math.abs(part.from[axis] - filed.from[axis]), tapeStep(boatToTrim.boat.units) / 2);
  return (
    Math.abs(part.from[0] - station[0]) < off(0) &&
    Math.abs(part.to[0] - station[1]) < off(0) &&
    Math.abs((part.from[1] + part.to[1]) / 2 - offset) < off(1)
  );
}

/** The keys of the entry that differ when a piece is cut and laid anew. */
function rewritten(part: Part, piece: Piece, entry: EntryText, boatToTrim: BoatToTrim): readonly Change[] {
  if (isSame(part, piece, boatToTrim)) return [];
  const fields = new Map(entry.fields);
  const replace = (key: string): readonly Change[] => {
    const text = fields.get(key);
    return text === undefined ? [] : [{ kind: 'replace', place: { on: 'value', path: [...part.path, key] }, text }];
  };
  const isMoved = Math.abs((part.from[1] + part.to[1]) / 2 - piece.offset) >= HAIR;
  const offset = fields.get('offset') ?? '0';
  const sideways: readonly Change[] = !isMoved
    ? []
    : part.written?.offset
      ? [{ kind: 'replace', place: { on: 'value', path: [...part.path, 'offset'] }, text: offset }]
      : [{ kind: 'add-key', path: part.path, key: 'offset', text: offset }];
  return [...(part.massFrom === 'scale' ? replace('mass') : []), ...replace('station'), ...sideways];
}
