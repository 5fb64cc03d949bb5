import type { Dimension, FileUnits } from './units.ts';

/** Ways to write a value: one, two ends, one or two ends, two sizes across, one or two diameters in order. */
export type Way = 'one' | 'range' | 'extent' | 'section' | 'taper';

/** What a field of the boat file wants. */
export interface Wanted {
  readonly way: Way;
  readonly dimension: Dimension;
  readonly units: FileUnits;
}

/** A dimension in a sentence: "Expected a length …", "a unit of length". */
export const nounOf: Readonly<Record<Dimension, { readonly one: string; readonly bare: string }>> = {
  length: { one: 'a length', bare: 'length' },
  mass: { one: 'a mass', bare: 'mass' },
  volume: { one: 'a volume', bare: 'volume' },
  density: { one: 'a density', bare: 'density' },
  temperature: { one: 'a temperature', bare: 'temperature' },
  angle: { one: 'an angle', bare: 'angle' },
  fraction: { one: 'a fraction', bare: 'fraction' },
  salinity: { one: 'a salinity', bare: 'salinity' },
  pressure: { one: 'a pressure', bare: 'pressure' },
};

/** The unit in which a bare number is read; null where it has none (a fraction) or must be said (a pressure). */
export function bareUnitName(dimension: Dimension, units: FileUnits): string | null {
  if (dimension === 'length' || dimension === 'mass') return units[dimension];
  return bareUnits[dimension];
}

const bareUnits: Readonly<Record<Exclude<Dimension, 'length' | 'mass'>, string | null>> = {
  volume: 'ml',
  density: 'kg/m3',
  temperature: '°C',
  angle: '°',
  fraction: null,
  salinity: 'g/kg',
  pressure: null,
};

/** Two likely numbers, the smaller first, for each unit that an example may need. */
const likely: Readonly<Record<string, readonly [less: string, more: string]>> = {
  mm: ['12', '40'],
  cm: ['1.2', '4'],
  m: ['0.012', '0.04'],
  in: ['1/2', '1 5/8'],
  ft: ['1/2', '2'],
  g: ['60', '310'],
  kg: ['0.06', '0.31'],
  oz: ['2', '10 1/2'],
  lb: ['1/4', '1 1/2'],
  ml: ['20', '32'],
  'kg/m3': ['30', '32'],
  '°C': ['4', '18'],
  '°': ['0.5', '2'],
  '%': ['40', '63'],
  'g/kg': ['5', '12'],
  bar: ['0.5', '1.5'],
};

/** How a value is written right in this file, e.g. `40 x 12 mm`. */
export function exampleOf(wanted: Wanted): string {
  const [less, more] = likely[exampleUnit(wanted)]!;
  const written: Readonly<Record<Way, string>> = {
    one: withUnit(more, wanted),
    range: withUnit(`${less} to ${more}`, wanted),
    extent: `${withUnit(more, wanted)} or ${withUnit(`${less} to ${more}`, wanted)}`,
    section: withUnit(`${more} x ${less}`, wanted),
    taper: withUnit(`${more} to ${less}`, wanted),
  };
  return written[wanted.way];
}

const exampleUnit = ({ dimension, units }: Wanted): string =>
  bareUnitName(dimension, units) ?? (dimension === 'fraction' ? '%' : 'bar');

/** Numbers with the unit that a builder would write here. */
export function withUnit(numbers: string, wanted: Wanted): string {
  const unit = exampleUnit(wanted);
  return unit === '°' ? numbers + unit : `${numbers} ${unit}`;
}

/** The start of a message: "Expected two sizes, e.g. 40 x 12 mm". */
export function expectation(wanted: Wanted): string {
  const names: Readonly<Record<Way, string>> = {
    one: `one ${nounOf[wanted.dimension].bare}`,
    range: 'a range',
    extent: `one ${nounOf[wanted.dimension].bare} or a range`,
    section: 'two sizes',
    taper: 'one diameter, or the first and last',
  };
  return `Expected ${names[wanted.way]}, e.g. ${exampleOf(wanted)}`;
}
