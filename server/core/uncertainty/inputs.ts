import { findMaterial } from '../../../schema/materials.ts';
import { type Path, pathKey, samePath } from '../../../schema/path.ts';
import { uncertaintyOfRange, usualUncertainties } from '../../../schema/usualUncertainties.ts';
import type { BoatSource } from '../boat/source.ts';
import { keepLast } from '../geometry/shapes/once.ts';
import { finish, pacer, type Steps } from '../steps/steps.ts';
import { densityEdit, type Editable } from './edits.ts';
import { entryInputs } from './entryInputs.ts';
import { type EntryAt, type Input, LISTS, type ListName, type Origin } from './input.ts';
import { endToEnd, madeSteps } from './rows.ts';
import type { Draft } from './sizeInputs.ts';
import { emptyVariations, type KeptInputs, knownVariation, type VariationCache, variationSteps } from './variations.ts';
import { waterInputs } from './waterInputs.ts';

/**
 * Every uncertain number that the boat is figured from, in the order of the file. A figure without a tolerance has the
 * uncertainty that is usual for how it came about (`schema/usualUncertainties.ts`). What changes nothing is left out: the breadth of a
 * battery in its compartment, the density of brass that was weighed and measured.
 *
 * What was tried to find that out is kept on the `cache` for the next time. Exact are the hull's length, the painted waterline, limits, bays and counts: they say what is wanted, not what is.
 */
export function* inputSteps(source: BoatSource, cache: VariationCache): Steps<readonly Input[]> {
  const common = yield* densitiesInCommon(source, cache);
  const inputs = [...waterInputs(source), ...common].filter(({ sigma }) => sigma > 0);
  const blocks = [yield* madeSteps(source, inputs, cache)];
  for (const list of LISTS) {
    for (let index = 0; index < source[list].length; index++) {
      const known = keptInputs(source, list, index, cache) ?? (yield* inputsOfEntry(source, { list, index }, cache));
      for (const input of known.own) inputs.push(input);
      blocks.push(known.rows);
    }
  }
  cache.rows.set(inputs, { source, rows: endToEnd(blocks) });
  return inputs;
}

/** The same at once. */
export const inputsOf = (source: BoatSource, cache: VariationCache = emptyVariations()): readonly Input[] =>
  finish(inputSteps(source, cache));

function keptInputs(source: BoatSource, list: ListName, index: number, cache: VariationCache): KeptInputs | null {
  const { checked, entry } = source[list][index]!;
  const kept = cache.inputs.get(entry);
  return kept?.checked === checked && kept.index === index ? kept : null;
}

/** A thing of many forms has many: so many of them are tried in one step, of a row fewer by its number. */
const INPUTS_A_STEP = 8;
const MANY = 20;

/** Uncertain numbers that stand in one entry. */
function* inputsOfEntry(source: BoatSource, at: EntryAt, cache: VariationCache): Steps<KeptInputs> {
  const { checked, entry } = source[at.list][at.index]!;
  const { path, name } = entry;
  const lying = { bounds: boundsOf(source, at), isHull: at.list === 'shells' || at.list === 'compartments' };
  const own: Input[] = [];
  const isDue = pacer(INPUTS_A_STEP);
  const effort = Math.max(1, entry.copies / MANY);
  for (const [i, draft] of entryInputs(checked, path, lying).entries()) {
    if (i > 0 && isDue(effort)) yield;
    const input = named(draft, path, name, at);
    if (input.sigma > 0 && (yield* variationSteps(source, input, at, cache)).isFelt) own.push(input);
  }
  const kept: KeptInputs = { checked, index: at.index, own, rows: yield* madeSteps(source, own, cache) };
  cache.inputs.set(entry, kept);
  yield;
  return kept;
}

function boundsOf(source: BoatSource, { list, index }: EntryAt) {
  if (list === 'payload') return source.payload[index]!.entry;
  return source.around.shapes.boundsOf(source[list][index]!.entry.form);
}

function named({ word, edit, ...draft }: Draft, entry: Path, entryName: string, at: EntryAt): Input {
  return {
    ...draft,
    id: word === undefined ? pathKey(draft.path) : `${pathKey(draft.path)} ${word}`,
    places: [draft.path],
    entry,
    entryName,
    words: `${draft.noun} of “${entryName}”`,
    target: { on: 'entries', at: [at], edit },
  };
}

/** A density that entries take from the stock or the handbook. */
interface Common {
  readonly id: string;
  /** Where the stock gives it; null for the handbook. */
  readonly path: Path | null;
  readonly name: string;
  readonly value: number;
  readonly sigma: number;
  readonly origin: Origin;
}

/** Entries with a density in common that are tried in one step. */
const ENTRIES_A_STEP = 8;

/**
 * Densities that several entries share, one input for each: entries of one material are cut from the same sheet or cast
 * from the same pot more often than not, and if the handbook's figure is off for one it is off for all. Taken as
 * independent their uncertainties would average out, which they do not: this is the careful side.
 */
function* densitiesInCommon(source: BoatSource, cache: VariationCache): Steps<readonly Input[]> {
  const users = new Map<string, { readonly common: Common; readonly at: EntryAt[] }>();
  for (const list of LISTS) {
    for (const [index, { checked }] of source[list].entries()) {
      const common = commonDensity(source, checked);
      if (!common) continue;
      const known = users.get(common.id) ?? { common, at: [] };
      known.at.push({ list, index });
      users.set(common.id, known);
    }
  }
  const inputs: Input[] = [];
  for (const { common, at } of users.values()) {
    const input = sharedInput(source, common, at, cache, 'tried');
    const felt: EntryAt[] = [];
    for (const [i, place] of at.entries()) {
      const known = knownVariation(source, input, place, cache);
      if (!known && i % ENTRIES_A_STEP === 0) yield;
      if ((known ?? (yield* variationSteps(source, input, place, cache))).isFelt) felt.push(place);
    }
    if (felt.length === at.length) inputs.push(input);
    else if (felt.length > 0) inputs.push(sharedInput(source, common, felt, cache, 'felt'));
  }
  return inputs;
}

function commonDensity(
  { stock, around }: BoatSource,
  { density: own, material: named }: Editable & { readonly material?: string | undefined },
): Common | null {
  const material = own || named === undefined ? null : findMaterial(named);
  if (!material) return null;
  const { key } = material;
  const ofStock = key === 'lead' || key === 'foam' ? stock?.[key]?.density : undefined;
  if (ofStock && (key === 'lead' || key === 'foam') && around.stock[key] !== null) {
    const path = ['stock', key, 'density'];
    const sigma = ofStock.sigma ?? usualUncertainties.density.of(ofStock.value);
    const origin = ofStock.sigma === null ? 'given' : 'written';
    return { id: pathKey(path), path, name: `the ${key} in stock`, value: ofStock.value, sigma, origin };
  }
  // Of loose shot the room it takes up is what is uncertain: its metal is known far better.
  const { density, range } = material.poured ?? material;
  const value = (material.poured && around.stock.shot) || density;
  return {
    id: `handbook ${key}`,
    path: null,
    name: named ?? key,
    value,
    sigma: uncertaintyOfRange(range),
    origin: 'handbook',
  };
}

/** Inputs in common that are remembered, with what was made of the entries that have them: more than a boat has. */
const MOST_SHARED = 64;

/** The same object as before while nothing in it has changed, so that what was made for it is found by it. */
function sharedInput(
  source: BoatSource,
  { id, path, name, ...figure }: Common,
  at: readonly EntryAt[],
  { shared }: VariationCache,
  use: 'tried' | 'felt',
): Input {
  const entries = at.map(({ list, index }) => source[list][index]!.entry.path);
  const materials = entries.map(entry => [...entry, 'material']);
  const key = `${id} ${use}`;
  const last = shared.get(key);
  if (last && isStill(last, { figure, name, at, materials })) return last;
  const input: Input = {
    ...figure,
    id,
    path: path ?? materials[0]!,
    places: path ? [path, ...materials] : materials,
    entry: path ? path.slice(0, -1) : entries[0]!,
    entryName: name,
    noun: 'density',
    words: `density of ${name}`,
    dimension: 'density',
    target: { on: 'entries', at, edit: densityEdit(figure.value) },
  };
  keepLast(shared, key, input, MOST_SHARED);
  return input;
}

interface Shared {
  readonly figure: Pick<Input, 'value' | 'sigma' | 'origin'>;
  readonly name: string;
  readonly at: readonly EntryAt[];
  readonly materials: readonly Path[];
}

function isStill(last: Input, { figure, name, at, materials }: Shared): boolean {
  const { value, sigma, origin, entryName, target, places } = last;
  if (value !== figure.value || sigma !== figure.sigma || origin !== figure.origin || entryName !== name) return false;
  // Where the stock gives it, that place comes first.
  const first = places.length - materials.length;
  return (
    target.on === 'entries' &&
    target.at.length === at.length &&
    at.every(({ list, index }, i) => target.at[i]!.list === list && target.at[i]!.index === index) &&
    materials.every((place, i) => samePath(place, places[first + i]!))
  );
}
