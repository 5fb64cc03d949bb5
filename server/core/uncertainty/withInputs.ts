import type { Boat, Entry } from '../boat/boat.ts';
import { formsReady } from '../boat/formsReady.ts';
import { USES, type Use } from '../boat/formUse.ts';
import type { PlacedForm } from '../boat/placed.ts';
import { readCompartment, readShell, readTank } from '../boat/readHull.ts';
import type { ReadingContext } from '../boat/readingContext.ts';
import { readPart } from '../boat/readPart.ts';
import { readWater } from '../boat/readWater.ts';
import { type BoatSource, entriesIn, type Source } from '../boat/source.ts';
import { createShapes, type Shapes } from '../geometry/shapes/shapes.ts';
import { finish, pacer, type Steps } from '../steps/steps.ts';
import type { Edit, Editable } from './edits.ts';
import type { Input, ListName } from './input.ts';

/** New values of inputs, SI. */
export type Changes = ReadonlyMap<Input, number>;

/** Entries that are read again in one step. */
const STEP = 50;

/**
 * The boat as it would be if those inputs had other values, with what it would have been read from: their entries are read
 * again, with all that follows in them (volume from mass and density, centroid, sizes left out); every other entry is the
 * same object as before. An entry that cannot be with such a value (a length of nothing) stays as it was.
 */
export const sourceWith = (source: BoatSource, changes: Changes): BoatSource =>
  finish(sourceWithSteps(source, changes));

/** The same in steps. */
export function* sourceWithSteps(source: BoatSource, changes: Changes): Steps<BoatSource> {
  const edits = editsOf(changes);
  const place: Rereading = { around: source.around, placings: createShapes() };
  function* reread<T extends Editable, E extends Entry>(
    list: ListName,
    sources: readonly Source<T, E>[],
    reader: EntryReader<T, E>,
  ): Steps<readonly Source<T, E>[]> {
    const all: Source<T, E>[] = [];
    const isDue = pacer(STEP);
    for (const [i, one] of sources.entries()) {
      const steps = edits.get(keyOf(list, i));
      all.push(steps ? yield* againSteps(one, steps, place, reader) : one);
      if (steps && isDue(1)) yield;
    }
    return all;
  }
  const shells = yield* reread('shells', source.shells, READERS.shells);
  const compartments = yield* reread('compartments', source.compartments, READERS.compartments);
  const tanks = yield* reread('tanks', source.tanks, READERS.tanks);
  const payload = yield* reread('payload', source.payload, READERS.payload);
  const water = waterWith(source, changes);
  const boat: Boat = {
    ...source.boat,
    water: water === source.water || water === null ? source.boat.water : readWater(water, []),
    shells: entriesIn(shells),
    compartments: entriesIn(compartments),
    tanks: entriesIn(tanks),
    payload: entriesIn(payload),
  };
  return { ...source, boat, water, shells, compartments, tanks, payload };
}

/** The boat alone. */
export const withInputs = (source: BoatSource, changes: Changes): Boat => sourceWith(source, changes).boat;

/** One edit to an entry, and by how much. */
export interface Step {
  readonly edit: Edit;
  readonly by: number;
}

const keyOf = (list: ListName, index: number): string => `${list} ${index}`;

function editsOf(changes: Changes): ReadonlyMap<string, readonly Step[]> {
  const edits = new Map<string, Step[]>();
  for (const [{ target, value }, to] of changes) {
    if (target.on !== 'entries' || to === value) continue;
    for (const { list, index } of target.at) {
      const key = keyOf(list, index);
      const steps = edits.get(key) ?? [];
      steps.push({ edit: target.edit, by: to - value });
      edits.set(key, steps);
    }
  }
  return edits;
}

/** What an entry is read again with: as before, but for meshes in other places. */
export interface Rereading {
  readonly around: ReadingContext;
  readonly placings: Shapes;
}

/** How an entry of a list is read, and what its forms are for. */
interface EntryReader<T, E> {
  readonly read: (entry: T, path: Entry['path'], around: ReadingContext, findings: []) => E | null;
  readonly use: (entry: T) => Use;
}

/** By the list that the entry stands in. */
export const READERS = {
  shells: { read: readShell, use: USES.shells },
  compartments: { read: readCompartment, use: USES.compartments },
  tanks: { read: readTank, use: USES.tanks },
  payload: { read: readPart, use: USES.payload },
} as const;

/** An entry read again after some edits, what takes long of it made in steps. */
export function* againSteps<T extends Editable, E extends Entry>(
  source: Source<T, E>,
  steps: readonly Step[],
  place: Rereading,
  { read, use }: EntryReader<T, E>,
): Steps<Source<T, E>> {
  // Once: what is made of a table stands with its rows, and an edit makes new ones.
  const { changed, within } = edited(source.checked, steps, place);
  if (isMeshed(changed) || isTabulated(changed)) yield* formsReady(changed, { around: within, ...use(changed) });
  const entry = read(changed, source.entry.path, within, []);
  return entry ? { checked: changed, entry } : source;
}

function edited<T extends Editable>(checked: T, steps: readonly Step[], { around, placings }: Rereading) {
  const changed = steps.reduce((sum, { edit, by }) => edit(sum, by), checked);
  // Placings of a mesh are remembered few at a time: those that are only tried shall not push out the boat's own.
  const shapes = sameMeshes(checked, changed) ? around.shapes : placings;
  return { changed, within: { ...around, shapes } };
}

function sameMeshes(one: Editable, two: Editable): boolean {
  const others: readonly PlacedForm[] = two.forms ?? [two];
  return (one.forms ?? [one]).every(
    (form: PlacedForm, i) => form.mesh === others[i]?.mesh && form.grown === others[i]?.grown,
  );
}

/** Its form is a mesh, or one of its forms is: it takes long to be read again in another place. */
export const isMeshed = (entry: Editable): boolean =>
  (entry.forms ?? [entry]).some((form: PlacedForm) => form.mesh !== undefined);

const isTabulated = (entry: Editable): boolean =>
  (entry.forms ?? [entry]).some((form: PlacedForm) => form.sections !== undefined);

/** What the water is read from after its edits; the same after none. */
function waterWith({ water }: BoatSource, changes: Changes): BoatSource['water'] {
  let changed = water;
  for (const [{ target, value }, to] of changes) {
    if (target.on === 'water' && to !== value) changed = target.edit(changed ?? {}, to - value);
  }
  return changed;
}
