import type { Boat, Compartment, Entry, Part, Shell, Tank } from '../boat/boat.ts';
import { readCompartment, readShell, readTank } from '../boat/readHull.ts';
import { readPart } from '../boat/readPart.ts';
import type { BoatSource } from '../boat/source.ts';
import { type BodyCache, emptyCache, type Pieces, piecesOf } from '../bodies/assemble.ts';
import type { Form } from '../geometry/form/form.ts';
import { addScaled, scale, subtract, type Vec3 } from '../geometry/form/vector.ts';
import { createShapes, type Shapes } from '../geometry/shapes/shapes.ts';
import type { Editable } from './edits.ts';
import type { EntryAt, Input, ListName } from './input.ts';
import { again, type Rereading } from './withInputs.ts';

/** One entry as it would be with an input one uncertainty more and one less. */
export interface Variation {
  readonly more: Pieces;
  readonly less: Pieces;
  /** It weighs, displaces or holds anything else then. */
  readonly isFelt: boolean;
  /** Half the difference between the two, where they differ in weight and in nothing else. */
  readonly bareWeight: MassAndMoment | null;
}

/** Variations made before, by entry and input: they hang on nothing else. */
export interface VariationCache {
  readonly entries: WeakMap<Entry, Map<string, Variation>>;
  /** The same by the input itself, which stays as long as its entry does; of one that several entries share the last. */
  readonly byInput: WeakMap<Input, VariedEntry>;
  readonly inputs: WeakMap<Entry, KeptInputs>;
  /** Meshes in the places that were tried. */
  readonly placings: Shapes;
}

interface VariedEntry {
  readonly key: string;
  readonly entry: Entry;
  readonly variation: Variation;
}

/** Inputs of an entry where it stood. */
interface KeptInputs {
  readonly checked: Editable;
  readonly index: number;
  readonly own: readonly Input[];
}

/** Places of a mesh that are remembered: two for each of its inputs. */
const PLACINGS = 16;

export const emptyVariations = (): VariationCache => ({
  entries: new WeakMap(),
  byInput: new WeakMap(),
  inputs: new WeakMap(),
  placings: createShapes(PLACINGS),
});

/** The entry varied by an input that touches it, made once. */
export function variationOf(source: BoatSource, input: Input, at: EntryAt, cache: VariationCache): Variation {
  const { entry } = source[at.list][at.index]!;
  const last = cache.byInput.get(input);
  if (last?.entry === entry) return last.variation;
  const known = cache.entries.get(entry) ?? new Map<string, Variation>();
  const key = last?.key ?? `${input.id} ${input.value} ${input.sigma}`;
  const variation = known.get(key) ?? varied(source, input, at, cache.placings);
  known.set(key, variation);
  cache.entries.set(entry, known);
  cache.byInput.set(input, { key, entry, variation });
  return variation;
}

function varied(source: BoatSource, input: Input, at: EntryAt, placings: Shapes): Variation {
  const { around } = source;
  const tried: BodyCache = { ...emptyCache(), shapes: around.shapes };
  const piece = (by: number) => {
    const entries = changed(source, input, at, { around, placings }, by);
    return { entries, pieces: piecesOf(entries, tried) };
  };
  const more = piece(input.sigma);
  const less = piece(-input.sigma);
  const was = source[at.list][at.index]!.entry;
  const isWeightOnly = [more, less].every(({ entries }) => !displacesElse(was, entries[at.list][0]!));
  return {
    more: more.pieces,
    less: less.pieces,
    isFelt: differs(was, more.entries[at.list][0]!),
    bareWeight: isWeightOnly ? halfDifference(weightOf(more.pieces), weightOf(less.pieces)) : null,
  };
}

export interface MassAndMoment {
  /** kg. */
  readonly mass: number;
  /** About the origin, kg·m. */
  readonly moment: Vec3;
}

export const weightOf = ({ weights }: Pieces): MassAndMoment => ({
  mass: weights.reduce((sum, weight) => sum + weight.mass, 0),
  moment: weights.reduce<Vec3>((sum, weight) => addScaled(sum, weight.centroid, weight.mass), [0, 0, 0]),
});

const halfDifference = (a: MassAndMoment, b: MassAndMoment): MassAndMoment => ({
  mass: (a.mass - b.mass) / 2,
  moment: scale(subtract(a.moment, b.moment), 1 / 2),
});

/** The entries that an input touches as they are. */
export function touched(source: BoatSource, at: readonly EntryAt[], cache: BodyCache): Pieces {
  const of = <L extends ListName>(list: L) =>
    at.flatMap(place => (place.list === list ? [source[list][place.index]!.entry] : []));
  return piecesOf(
    {
      shells: of('shells') as Shell[],
      compartments: of('compartments') as Compartment[],
      tanks: of('tanks') as Tank[],
      payload: of('payload') as Part[],
    },
    cache,
  );
}

const NOTHING: Pick<Boat, ListName> = { shells: [], compartments: [], tanks: [], payload: [] };

function changed(
  source: BoatSource,
  { target }: Input,
  { list, index }: EntryAt,
  place: Rereading,
  by: number,
): Pick<Boat, ListName> {
  if (target.on !== 'entries') return NOTHING;
  const steps = [{ edit: target.edit, by }];
  switch (list) {
    case 'shells':
      return { ...NOTHING, shells: [again(source.shells[index]!, steps, place, readShell).entry] };
    case 'compartments':
      return { ...NOTHING, compartments: [again(source.compartments[index]!, steps, place, readCompartment).entry] };
    case 'tanks':
      return { ...NOTHING, tanks: [again(source.tanks[index]!, steps, place, readTank).entry] };
    case 'payload':
      return { ...NOTHING, payload: [again(source.payload[index]!, steps, place, readPart).entry] };
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
