import { onModel, withoutFullSize } from './fullSize.ts';
import { placedAt } from './places.ts';
import { exampleOf, type Wanted } from './quantityExamples.ts';
import { takeApart } from './quantityGrammar.ts';
import { faultOfUnits, giveMeaning, type Meant } from './quantityMeaning.ts';
import { senseOf } from './quantitySense.ts';
import { faultOfSize, type QuantityOptions } from './quantitySize.ts';
import { placeSlip, textOf } from './quantityText.ts';
import { faultOfWay } from './quantityWay.ts';
import { good, type Read } from './slip.ts';
import type { Dimension, FileUnits } from './units.ts';

export type { QuantityOptions } from './quantitySize.ts';
export type { Read } from './slip.ts';

/** One value in SI (temperature in °C, salinity in g/kg). */
export interface Quantity {
  readonly value: number;
  /** One standard uncertainty as written, SI; null when none is. */
  readonly sigma: number | null;
  /** The unit as the program writes it (the finest of `1 lb 3 oz`); null for a bare number. */
  readonly unit: string | null;
  /** The unit that a bare number was given by its size. */
  readonly guessed?: string;
}

/** Two ends, `from` less than `to`, SI. */
export interface Range {
  readonly from: number;
  readonly to: number;
  /** Of each end. */
  readonly sigma: number | null;
  readonly unit: string | null;
}

/** Two sizes in the order written, SI: breadth x depth, or first and last diameter. */
export interface Pair {
  readonly first: number;
  readonly second: number;
  /** Of each. */
  readonly sigma: number | null;
  readonly unit: string | null;
}

/** `240 g`, `5 1/4 in`, `1 lb 3 oz`, `2°`, `240 g ± 5 g`, or a bare number in the file's units. */
export function readQuantity(
  raw: unknown,
  dimension: Dimension,
  units: FileUnits,
  options: QuantityOptions = {},
): Read<Quantity> {
  const read = readWritten(raw, { way: 'one', dimension, units }, options);
  return read.ok ? good(quantityOf(placed(read.value, units, options))) : read;
}

/** `120 to 480 mm`. */
export function readRange(
  raw: unknown,
  dimension: Dimension,
  units: FileUnits,
  options: QuantityOptions = {},
): Read<Range> {
  const read = readWritten(raw, { way: 'range', dimension, units }, options);
  return read.ok ? good(rangeOf(placed(read.value, units, options))) : read;
}

/** One value or a range; `'from' in extent` tells which. */
export function readExtent(
  raw: unknown,
  dimension: Dimension,
  units: FileUnits,
  options: QuantityOptions = {},
): Read<Quantity | Range> {
  const read = readWritten(raw, { way: 'extent', dimension, units }, options);
  if (!read.ok) return read;
  const meant = placed(read.value, units, options);
  return good(meant.values.length === 1 ? quantityOf(meant) : rangeOf(meant));
}

/** Two sizes across, each more than zero: `40 x 12 mm`. */
export function readSection(raw: unknown, dimension: Dimension, units: FileUnits): Read<Pair> {
  const read = readWritten(raw, { way: 'section', dimension, units }, { positive: true });
  return read.ok ? good(pairOf(read.value)) : read;
}

/**
 * A diameter, or two in order that may fall: `90 to 40 mm`. A single one counts for both ends. One of two may be zero
 * (a point), not both.
 */
export function readTaper(raw: unknown, dimension: Dimension, units: FileUnits): Read<Pair> {
  const read = readWritten(raw, { way: 'taper', dimension, units }, { nonNegative: true });
  return read.ok ? good(pairOf(read.value)) : read;
}

/** In boat axes, the lesser first. */
function placed(meant: Meant, units: FileUnits, { counted }: QuantityOptions): Meant {
  if (!counted || !units.origin) return meant;
  return { ...meant, values: meant.values.map(value => placedAt(value, counted, units)).sort((a, b) => a - b) };
}

const quantityOf = ({ values, sigma, unit, guessed }: Meant): Quantity => ({
  value: values[0]!,
  sigma,
  unit,
  ...(guessed === null ? {} : { guessed }),
});

const rangeOf = ({ values, sigma, unit }: Meant): Range => ({ from: values[0]!, to: values[1]!, sigma, unit });

const pairOf = ({ values, sigma, unit }: Meant): Pair => ({
  first: values[0]!,
  second: values[1] ?? values[0]!,
  sigma,
  unit,
});

/** The whole way from a YAML value to SI numbers. */
function readWritten(raw: unknown, wanted: Wanted, options: QuantityOptions): Read<Meant> {
  const text = textOf(raw, wanted);
  return text.ok ? placeSlip(raw, text.value, readText(text.value, wanted, options)) : text;
}

function readText(whole: string, wanted: Wanted, options: QuantityOptions): Read<Meant> {
  const { text, isFullSize } = withoutFullSize(whole);
  const written = takeApart(text, {
    dimension: wanted.dimension,
    example: exampleOf(wanted),
    sense: options.counted ? senseOf(options.counted, wanted.units) : (options.sense ?? null),
  });
  if (!written.ok) return written;
  const fault = faultOfUnits(text, written.value, wanted) ?? faultOfWay(text, written.value, wanted);
  if (fault) return fault;
  const said = giveMeaning(text, written.value, wanted);
  const meant = said.ok && isFullSize ? onModel(said.value, whole, wanted) : said;
  if (!meant.ok) return meant;
  return faultOfSize({ text, written: written.value, meant: meant.value, wanted }, options) ?? meant;
}
