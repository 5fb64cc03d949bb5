import type { PartEntry } from '../../../../schema/hull.ts';
import type { Path } from '../../../../schema/path.ts';
import { freeName } from '../../boat/arrangement.ts';
import type { Part } from '../../boat/boat.ts';
import { readPart } from '../../boat/readPart.ts';
import type { BoatSource, Source } from '../../boat/source.ts';
import { plain } from '../../uncertainty/edits.ts';
import type { DayInput } from './day.ts';
import type { Supposed } from './foretold.ts';
import { type ExtraLoad, NO_LOAD } from './predict.ts';
import type { Explanation } from './weigh.ts';
import { FACTS, type Fact } from './weights.ts';

/** The boat as an explanation has it on the mean. */
export function supposedBy({ items, load, known }: Explanation, inputs: readonly DayInput[]): Supposed {
  const off = new Map(inputs.map(({ id }, k) => [id, known.x[k]!]));
  for (const [n, { shifts }] of items.entries()) {
    for (const { input, by } of shifts) {
      off.set(input.id, (off.get(input.id) ?? 0) + (known.w.mean[n]! * by) / input.sigma);
    }
  }
  const pushed = known.w.mean.slice(items.length);
  const at = (from: number): ExtraLoad => (load ? (pushed.slice(from, from + 4) as unknown as ExtraLoad) : NO_LOAD);
  return { off, loads: { afloat: at(0), under: at(4), ashore: at(8) } };
}

/** A weight's mass, volume and place, SI. */
export type Weight = Readonly<Record<Fact, number>>;

/** As little as keeps a weight that displaces nothing a thing with a form, m3. */
const NO_VOLUME = 1e-9;

/**
 * What the explanation's weight is most probably: one that displaces nothing lies where its mean moment puts it, for its
 * moment is what the readings tell. Null where the explanation has none, or none that is one thing.
 */
export function supposedWeight({ items, load, known, facts }: Explanation, density: number): Weight | null {
  if (!load || load.cause.kind === 'several') return null;
  const [mass = 0, x = 0, y = 0, z = 0] = known.w.mean.slice(items.length);
  if (load.cause.kind === 'unlisted' && load.cause.inside === null) {
    return Object.fromEntries(FACTS.map((fact, k) => [fact, facts.mean[k]!])) as Weight;
  }
  if (!(mass > 0)) return null;
  // Water held above the surface weighs nothing in water.
  const volume = load.cause.kind === 'held' ? mass / density : NO_VOLUME;
  return { mass, volume, station: x / mass, offset: y / mass, height: z / mass };
}

/** A weight that weighs less than this part of its mass in water has no place that its moment there tells. */
const LEAST_IN_WATER = 0.1;

/**
 * The same as it is felt: what lies in the water weighs there, and lies where, it does on the mean. The mean of a product is
 * not the product of means, and a touchy boat shows the difference.
 */
function asFelt(explanation: Explanation, density: number): Weight | null {
  const weight = supposedWeight(explanation, density);
  const { items, load, known } = explanation;
  if (!weight || load?.cause.kind !== 'unlisted' || load.cause.inside !== null) return weight;
  const [net = 0, x = 0, y = 0, z = 0] = known.w.mean.slice(items.length + 4, items.length + 8);
  if (Math.abs(net) < LEAST_IN_WATER * weight.mass || net >= weight.mass) return weight;
  const volume = (weight.mass - net) / density;
  return { mass: weight.mass, volume, station: x / net, offset: y / net, height: z / net };
}

/** What it is called when it is put into the file. */
const NAME = 'unlisted weight';

/** Where an entry stands that is only supposed. */
const NOWHERE = ['unlisted'];

/** The explanation's weight read as an entry of the file would be, at its path there if it has one; null for none. */
export function entryOf(
  explanation: Explanation,
  { boat, around }: BoatSource,
  path: Path | null,
): Source<PartEntry, Part> | null {
  const weight = asFelt(explanation, boat.water.density);
  if (!weight) return null;
  const { cause } = explanation.load!;
  const inside = cause.kind === 'unlisted' ? cause.inside : null;
  const checked: PartEntry = {
    name: freeName(NAME, [...boat.shells, ...boat.compartments, ...boat.tanks, ...boat.payload, ...boat.ashore]),
    mass: plain(weight.mass),
    ...(inside === null ? { volume: plain(weight.volume) } : { in: inside }),
    station: plain(weight.station),
    offset: plain(weight.offset),
    height: plain(weight.height),
  };
  const entry = readPart(checked, path ?? NOWHERE, around, []);
  // Nobody knows where to lay hands on it: it is not moved.
  return entry && { checked, entry: { ...entry, written: null } };
}
