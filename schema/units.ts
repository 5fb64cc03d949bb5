import { closest } from './closest.ts';
import type { FileOrigin } from './places.ts';

/**
 * The one table of units. Everything inside is SI: m, kg, m3, kg/m3, rad, Pa, fractions 0..1; two exceptions keep the
 * numbers of the trade: temperature is in degrees Celsius and salinity in grams per kilogram.
 */
export type Dimension =
  | 'length'
  | 'mass'
  | 'volume'
  | 'density'
  | 'temperature'
  | 'angle'
  | 'fraction'
  | 'salinity'
  | 'pressure';

/** The units in which a bare number is read and in which figures are shown. */
export interface FileUnits {
  readonly length: 'mm' | 'cm' | 'm' | 'in' | 'ft';
  readonly mass: 'g' | 'kg' | 'oz' | 'lb';
  /** As the file gives what its tanks hold; left out where it gives no such figure. */
  readonly volume?: 'ml' | 'l' | 'in3' | 'fl oz';
  /** Model over full size, for lengths that are given in full size; null or left out where the file has no scale. */
  readonly scale?: number | null;
  /** Where stations and heights count from; null or left out: from the bow tip and the baseline. */
  readonly origin?: FileOrigin | null;
}

export interface Unit {
  /** As the program writes it. */
  readonly name: string;
  readonly dimension: Dimension;
  /** SI per unit as numerator and denominator, so that 240 mm is 240/1000 and not 240 times a rounded 0.001. */
  readonly ratio: readonly [numerator: number, denominator: number];
  /** Reading of this unit at SI zero: 32 for °F, else 0. */
  readonly zero: number;
  /** Other ways in which people write it; case, spaces and the three ways of writing a cube do not count. */
  readonly spellings: readonly string[];
}

type Row = readonly [name: string, numerator: number, denominator: number, spellings?: string, zero?: number];

// Exact by definition: 1 in = 0.0254 m, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s2, US gallon 231 in3,
// imperial gallon 4.54609 l (NIST SP 811, Appendix B.8). Spellings are split at the bar.
const table: Readonly<Record<Dimension, readonly Row[]>> = {
  length: [
    ['mm', 1, 1000, 'millimetre|millimetres|millimeter|millimeters'],
    ['cm', 1, 100, 'centimetre|centimetres|centimeter|centimeters'],
    ['m', 1, 1, 'metre|metres|meter|meters'],
    ['in', 254, 10_000, "inch|inches|\"|″|”|''"],
    ['ft', 3048, 10_000, "foot|feet|'|′|’"],
    ['thou', 254, 10_000_000],
  ],
  mass: [
    ['g', 1, 1000, 'gram|grams|gramme|grammes'],
    ['kg', 1, 1, 'kilo|kilos|kilogram|kilograms'],
    ['oz', 28_349_523_125, 1e12, 'ounce|ounces'],
    ['lb', 45_359_237, 1e8, 'lbs|pound|pounds'],
    ['mg', 1, 1e6, 'milligram|milligrams'],
  ],
  volume: [
    ['ml', 1, 1e6, 'millilitre|millilitres|milliliter|milliliters'],
    ['l', 1, 1000, 'litre|litres|liter|liters'],
    ['cm3', 1, 1e6, 'cc|ccm'],
    ['dl', 1, 10_000],
    ['mm3', 1, 1e9],
    ['m3', 1, 1],
    ['in3', 16_387_064, 1e12, 'cu in'],
    ['ft3', 28_316_846_592, 1e12, 'cu ft'],
    ['fl oz', 295_735_295_625, 1e16, 'US fl oz'],
    ['imp fl oz', 284_130_625, 1e13],
    ['US gal', 3_785_411_784, 1e12],
    ['imp gal', 454_609, 1e8],
  ],
  density: [
    ['kg/m3', 1, 1, 'g/l'],
    ['g/cm3', 1000, 1, 'g/cc'],
    ['g/ml', 1000, 1],
    ['kg/l', 1000, 1],
    ['lb/ft3', 453_592_370_000, 28_316_846_592, 'pcf'],
    ['lb/in3', 453_592_370_000, 16_387_064],
    ['oz/in3', 28_349_523_125, 16_387_064],
  ],
  temperature: [
    ['°C', 1, 1, 'C|ºC|˚C|℃|deg C|celsius'],
    ['°F', 5, 9, 'F|ºF|˚F|℉|deg F|fahrenheit', 32],
    ['K', 1, 1, 'kelvin', 273.15],
  ],
  angle: [
    ['°', Math.PI, 180, 'º|˚|deg|degs|degree|degrees'],
    ['rad', 1, 1, 'radian|radians'],
  ],
  fraction: [['%', 1, 100, 'per cent']],
  salinity: [
    ['g/kg', 1, 1],
    ['‰', 1, 1, 'ppt'],
    ['psu', 1, 1],
    ['%', 10, 1, 'per cent'],
  ],
  pressure: [
    ['bar', 1e5, 1, 'bars'],
    ['mbar', 100, 1],
    ['Pa', 1, 1],
    ['kPa', 1000, 1],
    ['psi', 44_482_216_152_605, 6_451_600_000],
    ['atm', 101_325, 1],
  ],
};

export const dimensions = Object.keys(table) as readonly Dimension[];

/** One value for each dimension. */
const forEach = <T>(make: (dimension: Dimension) => T): Readonly<Record<Dimension, T>> =>
  Object.fromEntries(dimensions.map(dimension => [dimension, make(dimension)])) as Record<Dimension, T>;

const unitsOf = forEach(dimension =>
  table[dimension].map(
    ([name, numerator, denominator, spellings = '', zero = 0]): Unit => ({
      name,
      dimension,
      ratio: [numerator, denominator],
      zero,
      spellings: spellings === '' ? [] : spellings.split('|'),
    }),
  ),
);

const spellingsOf = (unit: Unit): readonly string[] => [unit.name, ...unit.spellings];

/** Every unit of a dimension by each of its folded spellings. */
const byWord = forEach(
  dimension => new Map(unitsOf[dimension].flatMap(unit => spellingsOf(unit).map(word => [fold(word), unit] as const))),
);

function fold(word: string): string {
  return word
    .replace(/[\s.]+/g, '')
    .replace(/³|\^3/g, '3')
    .toLowerCase();
}

/** Matches the longest spelling of a unit of a dimension at the start of a text. */
const patterns = forEach(dimension => {
  const longestFirst = unitsOf[dimension].flatMap(spellingsOf).sort((a, b) => b.length - a.length);
  return new RegExp(`^(?:${longestFirst.map(wordPattern).join('|')})(?:\\.(?![.\\d]))?`, 'i');
});

function wordPattern(word: string): string {
  return word
    .replace(/ /g, '\\.?\\s*')
    .replace(/(?<=[°º˚])(?=[CF])/g, '\\s*')
    .replace(/\//g, '\\s*/\\s*')
    .replace(/3$/, '(?:3|³|\\^3)');
}

/** A letter or sign here goes on with the word, unless it is the joint of a range or section: `40mmx12mm`. */
const goesOn = /^(?!(?:x|to|by)\s*[-−+.\d½¼¾⅛⅜⅝⅞])[\p{L}°º˚%‰/^²³]/iu;

/** The unit of this dimension that `text` has at `at`, and where it ends; null when there is none. */
export function unitAt(text: string, at: number, dimension: Dimension): { unit: Unit; end: number } | null {
  const rest = text.slice(at);
  const word = patterns[dimension].exec(rest)?.[0];
  if (word === undefined || goesOn.test(rest.slice(word.length))) return null;
  const unit = byWord[dimension].get(fold(word));
  return unit === undefined ? null : { unit, end: at + word.length };
}

/** The unit of this dimension that is written `word`, or null. */
export const unitNamed = (word: string, dimension: Dimension): Unit | null => byWord[dimension].get(fold(word)) ?? null;

/** The dimension of which `word` is a unit, or null. `%` is taken as a fraction. */
export const dimensionOf = (word: string): Dimension | null =>
  dimensions.find(dimension => unitNamed(word, dimension) !== null) ?? null;

/** Units of a dimension as the program writes them, the usual ones first. */
export const knownUnits = (dimension: Dimension): readonly string[] => unitsOf[dimension].map(unit => unit.name);

/** The unit most likely meant by a word that is none of this dimension: `mmm` -> `mm`; null where it has other sense. */
export function nearestUnit(word: string, dimension: Dimension): string | null {
  const confused = new Map(Object.entries(confusions[dimension] ?? {})).get(fold(word));
  if (confused !== undefined) return confused;
  if (dimensionOf(word) !== null) return null;
  const spelling = closest(fold(word), [...byWord[dimension].keys()]);
  return spelling === null ? null : (byWord[dimension].get(spelling)?.name ?? null);
}

const confusions: Readonly<Partial<Record<Dimension, Readonly<Record<string, string>>>>> = {
  volume: { oz: 'fl oz', gal: 'US gal', gallon: 'US gal', gallons: 'US gal' },
  temperature: { '°': '°C', deg: '°C', degrees: '°C' },
  salinity: { 'g/l': 'g/kg' },
  angle: { grad: '°', grade: '°' },
};

/** A reading in `unit` to SI. */
export const toSi = (reading: number, unit: Unit): number => spanToSi(reading - unit.zero, unit);

/** A difference of readings in `unit`, e.g. a tolerance, to SI. */
export const spanToSi = (span: number, unit: Unit): number => (span * unit.ratio[0]) / unit.ratio[1];

/** An SI value as a reading in `unit`. */
export const fromSi = (si: number, unit: Unit): number => (si * unit.ratio[1]) / unit.ratio[0] + unit.zero;
