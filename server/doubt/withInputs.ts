import type { Boat, Entry } from '../boat/boat.ts';
import type { PlacedForm } from '../boat/placed.ts';
import { readCompartment, readShell, readTank } from '../boat/readHull.ts';
import { readPart } from '../boat/readPart.ts';
import { readWater } from '../boat/readWater.ts';
import type { Surroundings } from '../boat/setting.ts';
import type { BoatSource, Source } from '../boat/source.ts';
import { createShapes, type Shapes } from '../geometry/shapes.ts';
import type { Edit, Editable } from './edits.ts';
import type { Input, ListName } from './input.ts';

/** New values of inputs, SI. */
export type Changes = ReadonlyMap<Input, number>;

/**
 * The boat as it would be if those inputs had other values: their entries are read again, with all that follows in them
 * (volume from mass and density, centroid, sizes left out); every other entry is the same object as before. An entry that
 * cannot be with such a value (a length of nothing) stays as it was.
 */
export function withInputs(source: BoatSource, changes: Changes): Boat {
  const { boat } = source;
  const edits = editsOf(changes);
  const place: Rereading = { around: source.around, placings: createShapes() };
  return {
    ...boat,
    water: waterWith(source, changes),
    shells: source.shells.map((one, i) => again(one, edits.get(keyOf('shells', i)), place, readShell)),
    compartments: source.compartments.map((one, i) =>
      again(one, edits.get(keyOf('compartments', i)), place, readCompartment),
    ),
    tanks: source.tanks.map((one, i) => again(one, edits.get(keyOf('tanks', i)), place, readTank)),
    payload: source.payload.map((one, i) => again(one, edits.get(keyOf('payload', i)), place, readPart)),
  };
}

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
  readonly around: Surroundings;
  readonly placings: Shapes;
}

type Reader<T, E> = (entry: T, path: Entry['path'], around: Surroundings, findings: []) => E | null;

/** An entry read again after some edits; the same object after none. */
export function again<T extends Editable, E extends Entry>(
  { checked, entry }: Source<T, E>,
  steps: readonly Step[] | undefined,
  { around, placings }: Rereading,
  read: Reader<T, E>,
): E {
  if (!steps) return entry;
  const changed = steps.reduce((sum, { edit, by }) => edit(sum, by), checked);
  // Placings of a mesh are remembered few at a time: those that are only tried shall not push out the boat's own.
  const shapes = sameMeshes(checked, changed) ? around.shapes : placings;
  return read(changed, entry.path, { ...around, shapes }, []) ?? entry;
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

function waterWith({ boat, water }: BoatSource, changes: Changes): Boat['water'] {
  let changed = water ?? {};
  let isChanged = false;
  for (const [{ target, value }, to] of changes) {
    if (target.on !== 'water' || to === value) continue;
    changed = target.edit(changed, to - value);
    isChanged = true;
  }
  return isChanged ? readWater(changed, []) : boat.water;
}
