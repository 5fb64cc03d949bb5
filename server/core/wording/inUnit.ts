import { type Dimension, fromSi, unitNamed } from '../../../schema/units.ts';

/** How many decimals a figure in a unit gets, by its size: the first row whose limit it is below. */
type Digits = readonly (readonly [below: number, decimals: number])[];

const digitsOf: Readonly<Record<string, Digits>> = {
  mm: [
    [1, 2],
    [100, 1],
    [Infinity, 0],
  ],
  cm: [
    [1, 3],
    [10, 2],
    [Infinity, 1],
  ],
  m: [
    [10, 3],
    [100, 2],
    [Infinity, 0],
  ],
  ft: [[Infinity, 2]],
  g: [
    [1, 2],
    [10, 1],
    [Infinity, 0],
  ],
  kg: [
    [10, 3],
    [100, 2],
    [1000, 1],
    [Infinity, 0],
  ],
  ml: [
    [10, 1],
    [Infinity, 0],
  ],
  l: [[Infinity, 2]],
  'fl oz': [
    [10, 2],
    [100, 1],
    [Infinity, 0],
  ],
  in3: [
    [10, 2],
    [100, 1],
    [Infinity, 0],
  ],
  'kg/m3': [
    [1000, 1],
    [Infinity, 0],
  ],
  '°': [
    [1, 2],
    [Infinity, 1],
  ],
  '%': [
    [10, 1],
    [Infinity, 0],
  ],
  bar: [[Infinity, 2]],
  psi: [[Infinity, 1]],
};

/** How exact a figure is: by its size and `finer` digits more, or with `decimals` whatever its size. */
export interface Exactness {
  readonly finer?: number;
  readonly decimals?: number;
}

/** An SI value as a figure in a unit that is known to exist. */
export function inUnit(
  si: number,
  dimension: Dimension,
  name: string,
  { finer = 0, decimals }: Exactness = {},
): string {
  const reading = fromSi(si, unitNamed(name, dimension)!);
  const figure = plainNumber(reading, decimals ?? decimalsFor(reading, digitsOf[name]!) + finer);
  return name === '°' ? figure + name : `${figure} ${name.replace(/3$/, '³')}`;
}

const decimalsFor = (reading: number, digits: Digits): number =>
  digits.find(([below]) => Math.abs(reading) < below)?.[1] ?? 0;

/** Rounded, without trailing zeros or a negative nought. */
export function plainNumber(value: number, decimals: number): string {
  const written = value.toFixed(decimals);
  const trimmed = written.includes('.') ? written.replace(/(?<!0)0+$/, '').replace(/\.$/, '') : written;
  return trimmed === '-0' ? '0' : trimmed;
}
