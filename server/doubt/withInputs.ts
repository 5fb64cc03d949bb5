import type { Boat, Entry } from '../boat/boat.ts';
import { readCompartment, readShell, readTank } from '../boat/readHull.ts';
import { readPart } from '../boat/readPart.ts';
import { readWater } from '../boat/readWater.ts';
import type { Surroundings } from '../boat/setting.ts';
import type { BoatSource, Source } from '../boat/source.ts';
import type { Form } from '../geometry/form.ts';
import { createShapes } from '../geometry/shapes.ts';
import type { Editable } from './edits.ts';
import type { EntryAt, Input, ListName } from './input.ts';

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
  const around = ownShapes(source);
  return {
    ...boat,
    water: waterWith(source, changes),
    shells: source.shells.map((one, i) => again(one, edits.get(keyOf('shells', i)), around, readShell)),
    compartments: source.compartments.map((one, i) =>
      again(one, edits.get(keyOf('compartments', i)), around, readCompartment),
    ),
    tanks: source.tanks.map((one, i) => again(one, edits.get(keyOf('tanks', i)), around, readTank)),
    payload: source.payload.map((one, i) => again(one, edits.get(keyOf('payload', i)), around, readPart)),
  };
}

/** The entries that changes touch, as a boat of nothing else: before and after. What does not differ cancels out. */
export interface Touched {
  readonly before: Boat;
  readonly after: Boat;
}

/** As `withInputs`, but only what is touched: to tell cheaply what a change does. */
export function touchedBy(source: BoatSource, changes: Changes): Touched {
  const { boat } = source;
  const edits = editsOf(changes);
  const around = ownShapes(source);
  const pick = <T>(sources: readonly T[], list: ListName): readonly (readonly [T, readonly Step[]])[] =>
    sources.flatMap((one, i) => {
      const steps = edits.get(keyOf(list, i));
      return steps ? [[one, steps] as const] : [];
    });
  const shells = pick(source.shells, 'shells');
  const compartments = pick(source.compartments, 'compartments');
  const tanks = pick(source.tanks, 'tanks');
  const payload = pick(source.payload, 'payload');
  return {
    before: {
      ...boat,
      shells: shells.map(([{ entry }]) => entry),
      compartments: compartments.map(([{ entry }]) => entry),
      tanks: tanks.map(([{ entry }]) => entry),
      payload: payload.map(([{ entry }]) => entry),
    },
    after: {
      ...boat,
      water: waterWith(source, changes),
      shells: shells.map(([one, steps]) => again(one, steps, around, readShell)),
      compartments: compartments.map(([one, steps]) => again(one, steps, around, readCompartment)),
      tanks: tanks.map(([one, steps]) => again(one, steps, around, readTank)),
      payload: payload.map(([one, steps]) => again(one, steps, around, readPart)),
    },
  };
}

/** Whether an entry weighs, displaces or holds anything else when an input is off by its doubt. */
export function feels(source: BoatSource, input: Input, at: EntryAt): boolean {
  const { target, value, sigma } = input;
  if (target.on !== 'entries') return false;
  const changed = touchedBy(source, new Map([[{ ...input, target: { ...target, at: [at] } }, value + sigma]]));
  return differs(changed.before[at.list][0]!, changed.after[at.list][0]!);
}

/** One edit to an entry, and by how much. */
interface Step {
  readonly apply: <T extends Editable>(entry: T) => T;
}

const keyOf = (list: ListName, index: number): string => `${list} ${index}`;

function editsOf(changes: Changes): ReadonlyMap<string, readonly Step[]> {
  const edits = new Map<string, Step[]>();
  for (const [{ target, value }, to] of changes) {
    if (target.on !== 'entries' || to === value) continue;
    for (const { list, index } of target.at) {
      const key = keyOf(list, index);
      const steps = edits.get(key) ?? [];
      steps.push({ apply: entry => target.edit(entry, to - value) });
      edits.set(key, steps);
    }
  }
  return edits;
}

/** What is made of forms that are only tried is not kept with the boat's own. */
const ownShapes = ({ around }: BoatSource): Surroundings => ({ ...around, shapes: createShapes() });

type Reader<T, E> = (entry: T, path: Entry['path'], around: Surroundings, findings: []) => E | null;

function again<T extends Editable, E extends Entry>(
  { checked, entry }: Source<T, E>,
  steps: readonly Step[] | undefined,
  around: Surroundings,
  read: Reader<T, E>,
): E {
  if (!steps) return entry;
  const changed = steps.reduce((sum, { apply }) => apply(sum), checked);
  return read(changed, entry.path, around, []) ?? entry;
}

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

interface Figures {
  readonly mass?: number;
  readonly volume?: number;
  readonly fill?: number;
  readonly inside?: string | null;
  readonly centroid?: readonly number[];
  readonly form?: Form | null;
}

/** Closer than this (relative; of places, m) is rounding. */
const ROUNDING = 1e-9;
const isFar = (one = 0, two = 0): boolean => Math.abs(one - two) > ROUNDING * Math.abs(one);

function differs(one: Figures, two: Figures): boolean {
  const isDry = one.mass !== undefined && typeof one.inside === 'string';
  return (
    isFar(one.mass, two.mass) ||
    isFar(one.volume, two.volume) ||
    one.fill !== two.fill ||
    one.centroid?.some((c, i) => Math.abs(c - two.centroid![i]!) > ROUNDING) === true ||
    (!isDry && !sameForm(one.form ?? null, two.form ?? null))
  );
}

function sameForm(one: Form | null, two: Form | null): boolean {
  if (one === two) return true;
  if (!one || !two || one.shape !== two.shape) return false;
  const numbers = [one, two].map(flat);
  return numbers[0]!.length === numbers[1]!.length && numbers[0]!.every((value, i) => value === numbers[1]![i]);
}

/** All numbers of a form. */
function flat(form: Form): readonly number[] {
  switch (form.shape) {
    case 'ball':
      return [...form.centre, form.radius];
    case 'revolved':
      return [...form.origin, ...form.axis, ...form.profile.flat()];
    case 'polyhedron':
      return [...form.vertices];
    case 'compound':
      return form.parts.flatMap(flat);
  }
}
