import type { Boat, Entry } from '../boat/boat.ts';
import { readCompartment, readShell, readTank } from '../boat/readHull.ts';
import { readPart } from '../boat/readPart.ts';
import type { BoatSource } from '../boat/source.ts';
import { type BodyCache, emptyCache, type Pieces, piecesOf } from '../bodies/assemble.ts';
import type { Cuttable } from '../geometry/cut/immersion.ts';
import type { Form } from '../geometry/form/form.ts';
import { add, addScaled, scale, subtract, type Vec3 } from '../geometry/form/vector.ts';
import { createShapes, type Shapes } from '../geometry/shapes/shapes.ts';
import type { Editable } from './edits.ts';
import type { EntryAt, Input, ListName } from './input.ts';
import { again, type Rereading } from './withInputs.ts';

/** One entry as it would be with an input one uncertainty more and one less. */
export interface Variation {
  readonly more: Exchange;
  readonly less: Exchange;
  /** It weighs, displaces or holds anything else then. */
  readonly isFelt: boolean;
  /** Half the difference between the two, where they differ in weight and in nothing else. */
  readonly bareWeight: MassAndMoment | null;
}

/** Some bodies in the place of others, and what is more of them however the boat lies. */
export interface Exchange {
  readonly was: Wet;
  readonly is: Wet;
  readonly weight: MassAndMoment;
  /** m3, m4. */
  readonly displaced: Whole;
}

/** What displaces, and what holds water. */
export type Wet = Pick<Pieces, 'displacers' | 'tanks'>;

type Whole = Pick<Cuttable, 'volume' | 'moment'>;

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
  const key = last?.key ?? keyOf(input);
  const variation = known.get(key) ?? varied(source, input, at, cache.placings);
  known.set(key, variation);
  cache.entries.set(entry, known);
  cache.byInput.set(input, { key, entry, variation });
  return variation;
}

const keyOf = ({ id, value, sigma }: Input): string => `${id} ${value} ${sigma}`;

/** It was made before: asking for it takes no time. */
export const isVaried = (source: BoatSource, input: Input, at: EntryAt, { entries }: VariationCache): boolean =>
  entries.get(source[at.list][at.index]!.entry)?.has(keyOf(input)) === true;

function varied(source: BoatSource, input: Input, at: EntryAt, placings: Shapes): Variation {
  const { around } = source;
  const tried: BodyCache = { ...emptyCache(), shapes: around.shapes };
  const before = piecesOf(changed(source, input, at, { around, placings }, 0), tried);
  const piece = (by: number) => {
    const entries = changed(source, input, at, { around, placings }, by);
    return { entries, pieces: piecesOf(entries, tried) };
  };
  const more = piece(input.sigma);
  const less = piece(-input.sigma);
  const was = source[at.list][at.index]!.entry;
  const isWeightOnly = [more, less].every(({ entries }) => !displacesElse(was, entries[at.list][0]!));
  const exchanged = isWeightOnly ? weightOnly : exchange;
  return {
    more: exchanged(before, more.pieces),
    less: exchanged(before, less.pieces),
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

function exchange(before: Pieces, after: Pieces): Exchange {
  const [one, other] = [wholeOf(before), wholeOf(after)];
  return {
    was: wetOf(before),
    is: wetOf(after),
    weight: heavier(before, after),
    displaced: { volume: other.volume - one.volume, moment: subtract(other.moment, one.moment) },
  };
}

/** Where the bodies are as before they need not be kept. */
const weightOnly = (before: Pieces, after: Pieces): Exchange => ({ ...NO_EXCHANGE, weight: heavier(before, after) });

const NOTHING_WET: Wet = { displacers: [], tanks: [] };

export const NO_EXCHANGE: Exchange = {
  was: NOTHING_WET,
  is: NOTHING_WET,
  weight: { mass: 0, moment: [0, 0, 0] },
  displaced: { volume: 0, moment: [0, 0, 0] },
};

/** All of them at once. */
export function joined(exchanges: readonly Exchange[]): Exchange {
  if (exchanges.length === 1) return exchanges[0]!;
  const all = (side: 'was' | 'is'): Wet => ({
    displacers: exchanges.flatMap(each => each[side].displacers),
    tanks: exchanges.flatMap(each => each[side].tanks),
  });
  const sum = (of: (each: Exchange) => Vec3) =>
    exchanges.reduce<Vec3>((total, each) => add(total, of(each)), [0, 0, 0]);
  return {
    was: all('was'),
    is: all('is'),
    weight: {
      mass: exchanges.reduce((total, { weight }) => total + weight.mass, 0),
      moment: sum(({ weight }) => weight.moment),
    },
    displaced: {
      volume: exchanges.reduce((total, { displaced }) => total + displaced.volume, 0),
      moment: sum(({ displaced }) => displaced.moment),
    },
  };
}

const wetOf = ({ displacers, tanks }: Pieces): Wet => ({ displacers, tanks });

const heavier = (before: Pieces, after: Pieces): MassAndMoment => {
  const [one, other] = [weightOf(before), weightOf(after)];
  return { mass: other.mass - one.mass, moment: subtract(other.moment, one.moment) };
};

const wholeOf = ({ displacers }: Pieces): Whole => ({
  volume: displacers.reduce((sum, { body }) => sum + body.volume, 0),
  moment: displacers.reduce<Vec3>((sum, { body }) => add(sum, body.moment), [0, 0, 0]),
});

const weightOf = ({ weights }: Pieces): MassAndMoment => ({
  mass: weights.reduce((sum, weight) => sum + weight.mass, 0),
  moment: weights.reduce<Vec3>((sum, weight) => addScaled(sum, weight.centroid, weight.mass), [0, 0, 0]),
});

const halfDifference = (a: MassAndMoment, b: MassAndMoment): MassAndMoment => ({
  mass: (a.mass - b.mass) / 2,
  moment: scale(subtract(a.moment, b.moment), 1 / 2),
});

const NOTHING: Pick<Boat, ListName> = { shells: [], compartments: [], tanks: [], payload: [] };

function changed(
  source: BoatSource,
  { target }: Input,
  { list, index }: EntryAt,
  place: Rereading,
  by: number,
): Pick<Boat, ListName> {
  if (target.on !== 'entries') return NOTHING;
  // Of nothing changed the entry itself.
  const steps = by === 0 ? undefined : [{ edit: target.edit, by }];
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
