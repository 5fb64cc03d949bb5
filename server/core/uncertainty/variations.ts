import type { Entry } from '../boat/boat.ts';
import type { BoatSource } from '../boat/source.ts';
import { boxRound } from '../geometry/cut/compound.ts';
import type { Form } from '../geometry/form/form.ts';
import { scale, subtract } from '../geometry/form/vector.ts';
import { keepLast } from '../geometry/shapes/once.ts';
import { createShapes, type Shapes } from '../geometry/shapes/shapes.ts';
import { finish, type Steps } from '../steps/steps.ts';
import type { Editable } from './edits.ts';
import { type Entries, type Exchange, exchange, heavier, type MassAndMoment, weightOf, wetSteps } from './exchange.ts';
import type { EntryAt, Input } from './input.ts';
import type { Lain } from './lain.ts';
import { bareRow, rowByBodies, wholeRow } from './pushRow.ts';
import { againSteps, isMeshed, READERS, type Rereading } from './withInputs.ts';

/** What becomes of one entry when an input is one uncertainty more and when it is one less. */
export interface Variation {
  /** It weighs, displaces or holds anything else then. */
  readonly isFelt: boolean;
  /** What it pushes then, as a row (`pushRow.ts`). */
  readonly row: Float64Array;
}

/** The same as bodies. */
export interface Varied {
  readonly more: Exchange;
  readonly less: Exchange;
}

/** Variations made before, by entry and input: they hang on nothing else. */
export interface VariationCache {
  readonly entries: WeakMap<Entry, Map<string, Variation>>;
  /** The same by the input itself, which stays as long as its entry does; of one that several entries share the last. */
  readonly byInput: WeakMap<Input, VariedEntry>;
  /** The bodies of those that a surface cuts, or that take long to be made. */
  readonly bodies: WeakMap<Variation, Varied>;
  readonly inputs: WeakMap<Entry, KeptInputs>;
  /** What inputs push that were listed together. */
  readonly rows: WeakMap<readonly Input[], ListedRows>;
  /** By what the rule was for. */
  readonly lain: Map<string, Lain>;
  /** Inputs that several entries share, as they were last. */
  readonly shared: Map<string, Input>;
  /** Meshes in the places that were tried. */
  readonly placings: Shapes;
}

interface VariedEntry {
  readonly key: string;
  readonly entry: Entry;
  readonly variation: Variation;
}

/** Inputs of an entry where it stood. */
export interface KeptInputs {
  readonly checked: Editable;
  readonly index: number;
  readonly own: readonly Input[];
  /** What they push, row by row. */
  readonly rows: Float64Array;
}

/** Rows of the inputs of a boat. */
interface ListedRows {
  readonly source: BoatSource;
  readonly rows: Float64Array;
}

/** Variations of one entry that are remembered: several times its inputs, for a density in common is typed elsewhere. */
const MOST_KEPT = 64;

/** Places of a mesh that are remembered: two for each of its inputs. */
const PLACINGS = 16;

export const emptyVariations = (): VariationCache => ({
  entries: new WeakMap(),
  byInput: new WeakMap(),
  bodies: new WeakMap(),
  inputs: new WeakMap(),
  rows: new WeakMap(),
  lain: new Map(),
  shared: new Map(),
  placings: createShapes(PLACINGS),
});

/** The entry varied by an input that touches it, made once. */
export const variationOf = (source: BoatSource, input: Input, at: EntryAt, cache: VariationCache): Variation =>
  knownVariation(source, input, at, cache) ?? finish(variationSteps(source, input, at, cache));

/** The same in steps: a mesh takes long. */
export function* variationSteps(
  source: BoatSource,
  input: Input,
  at: EntryAt,
  cache: VariationCache,
): Steps<Variation> {
  const known = knownVariation(source, input, at, cache);
  if (known) return known;
  const made = yield* varied(source, input, at, cache);
  keep(source, input, at, cache, made);
  return made;
}

/** The entry varied by an input, where that was tried before. */
export function knownVariation(source: BoatSource, input: Input, at: EntryAt, cache: VariationCache): Variation | null {
  const { entry } = source[at.list][at.index]!;
  const last = cache.byInput.get(input);
  if (last?.entry === entry) return last.variation;
  const known = cache.entries.get(entry)?.get(last?.key ?? keyOf(input)) ?? null;
  if (known && !last) keep(source, input, at, cache, known);
  return known;
}

function keep(source: BoatSource, input: Input, at: EntryAt, cache: VariationCache, variation: Variation): void {
  const { entry } = source[at.list][at.index]!;
  const key = cache.byInput.get(input)?.key ?? keyOf(input);
  const ofEntry = cache.entries.get(entry) ?? new Map<string, Variation>();
  keepLast(ofEntry, key, variation, MOST_KEPT);
  cache.entries.set(entry, ofEntry);
  cache.byInput.set(input, { key, entry, variation });
}

const keyOf = ({ id, value, sigma }: Input): string => `${id} ${value} ${sigma}`;

function* varied(source: BoatSource, input: Input, at: EntryAt, cache: VariationCache): Steps<Variation> {
  const { entry: was } = source[at.list][at.index]!;
  const takesLong = isDrawnFinely(was.form);
  const { more, less } = around(source, input, at, cache.placings);
  const moreOf = yield* more();
  if (takesLong) yield;
  const lessOf = yield* less();
  if (takesLong) yield;
  const isFelt = differs(was, moreOf[at.list][0]!);
  if ([moreOf, lessOf].every(entries => !displacesElse(was, entries[at.list][0]!)))
    return { isFelt, row: bareRow(halfDifference(weightOf(moreOf), weightOf(lessOf))) };
  const bodies = yield* exchanges(source, at, [moreOf, lessOf], cache.placings);
  const variation: Variation = { isFelt, row: rowOf(at, bodies) };
  if (takesLong) cache.bodies.set(variation, bodies);
  return variation;
}

function rowOf({ list }: EntryAt, { more, less }: Varied): Float64Array {
  const bodies = [more.was, more.is, less.is].flatMap(({ displacers }) => displacers.map(({ body }) => body));
  // How much lies in another tank hangs on how the boat lies.
  if (list === 'tanks' || bodies.length === 0) return rowByBodies();
  const displaced = halfDifference(massOf(more.displaced), massOf(less.displaced));
  return wholeRow(halfDifference(more.weight, less.weight), displaced, boxRound(bodies));
}

const massOf = ({ volume, moment }: Exchange['displaced']): MassAndMoment => ({ mass: volume, moment });

/** The bodies of a variation of an entry. */
export function variedBodies(
  variation: Variation,
  source: BoatSource,
  input: Input,
  at: EntryAt,
  cache: VariationCache,
): Varied {
  const known = cache.bodies.get(variation);
  if (known) return known;
  const { more, less } = around(source, input, at, cache.placings);
  const made = finish(exchanges(source, at, [finish(more()), finish(less())], cache.placings));
  cache.bodies.set(variation, made);
  return made;
}

/** The entry at one uncertainty more and one less, read when asked for: a mesh takes long. */
const around = (source: BoatSource, input: Input, at: EntryAt, placings: Shapes) => {
  const entriesWith = (by: number) => (): Steps<Entries> =>
    changed(source, input, at, { around: source.around, placings }, by);
  return { more: entriesWith(input.sigma), less: entriesWith(-input.sigma) };
};

function* exchanges(
  source: BoatSource,
  { list, index }: EntryAt,
  [more, less]: readonly [Entries, Entries],
  placings: Shapes,
): Steps<Varied> {
  const { entry, checked } = source[list][index]!;
  const { shapes } = source.around;
  const before: Entries = { ...NOTHING, [list]: [entry] };
  const was = yield* wetSteps(before, shapes);
  function* exchanged(after: Entries): Steps<Exchange> {
    // What was made of a mesh in a place where it is only tried stands with its placing.
    const made = isMeshed(checked) && after[list][0]!.form !== entry.form ? placings : shapes;
    return { ...exchange(was, yield* wetSteps(after, made)), weight: heavier(before, after) };
  }
  return { more: yield* exchanged(more), less: yield* exchanged(less) };
}

/** Corners of triangles from which a form is long work to make anew. */
const FINE = 3000;
const isDrawnFinely = (form: Form | null): boolean =>
  form?.shape === 'compound'
    ? form.parts.some(isDrawnFinely)
    : form?.shape === 'polyhedron' && form.faces.length > FINE;

const halfDifference = (a: MassAndMoment, b: MassAndMoment): MassAndMoment => ({
  mass: (a.mass - b.mass) / 2,
  moment: scale(subtract(a.moment, b.moment), 1 / 2),
});

const NOTHING: Entries = { shells: [], compartments: [], tanks: [], payload: [] };

function* changed(
  source: BoatSource,
  { target }: Input,
  { list, index }: EntryAt,
  place: Rereading,
  by: number,
): Steps<Entries> {
  if (target.on !== 'entries') return NOTHING;
  const steps = [{ edit: target.edit, by }];
  switch (list) {
    case 'shells':
      return { ...NOTHING, shells: [(yield* againSteps(source.shells[index]!, steps, place, READERS.shells)).entry] };
    case 'compartments':
      return {
        ...NOTHING,
        compartments: [(yield* againSteps(source.compartments[index]!, steps, place, READERS.compartments)).entry],
      };
    case 'tanks':
      return { ...NOTHING, tanks: [(yield* againSteps(source.tanks[index]!, steps, place, READERS.tanks)).entry] };
    case 'payload':
      return {
        ...NOTHING,
        payload: [(yield* againSteps(source.payload[index]!, steps, place, READERS.payload)).entry],
      };
  }
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
  return (
    isFar(one.mass, two.mass) ||
    one.centroid?.some((c, i) => Math.abs(c - two.centroid![i]!) > ROUNDING) === true ||
    displacesElse(one, two)
  );
}

/** It displaces or holds anything else. */
function displacesElse(one: Figures, two: Figures): boolean {
  const isDry = one.mass !== undefined && typeof one.inside === 'string';
  return (
    isFar(one.volume, two.volume) || one.fill !== two.fill || (!isDry && !sameForm(one.form ?? null, two.form ?? null))
  );
}

function sameForm(one: Form | null, two: Form | null): boolean {
  if (one === two) return true;
  if (!one || !two || one.shape !== two.shape) return false;
  const [ofOne, ofTwo] = [numbersOf(one), numbersOf(two)];
  return ofOne.length === ofTwo.length && ofOne.every((some, i) => sameNumbers(some, ofTwo[i]!));
}

type Numbers = readonly number[] | Float64Array;

function sameNumbers(one: Numbers, two: Numbers): boolean {
  if (one.length !== two.length) return false;
  for (let i = 0; i < one.length; i++) if (one[i] !== two[i]) return false;
  return true;
}

/** All numbers of a form, as they lie: a mesh has too many to be copied. */
function numbersOf(form: Form): readonly Numbers[] {
  switch (form.shape) {
    case 'ball':
      return [form.centre, [form.radius]];
    case 'revolved':
      return [form.origin, form.axis, ...form.profile];
    case 'polyhedron':
      return [form.vertices];
    case 'compound':
      return form.parts.flatMap(numbersOf);
  }
}
