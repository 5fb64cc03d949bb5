import { toSi, unitNamed } from '../../../schema/units.ts';
import { plainNumber } from './inUnit.ts';

/** Inches as a rule has them, and pounds with ounces, as a kitchen scale has them. */

/** m. */
export const INCH = toSi(1, unitNamed('in', 'length')!);
/** kg. */
const OUNCE = toSi(1, unitNamed('oz', 'mass')!);

/** No rule has finer parts of an inch. */
const FINEST = 64;

/** Below this, in inches, one speaks of thousandths. */
const IN_THOUSANDTHS = 0.025;

/** Parts of an inch that a length is told in, by its size: the first row whose limit it is below. */
const PARTS: readonly (readonly [below: number, parts: number])[] = [
  [1 / 4, 64],
  [10, 32],
  [Infinity, 16],
];

/** A length in m: "3 11/16 in", "0.014 in"; each of `finer` halves the step, beyond a 64th it adds a digit. */
export function inchText(metres: number, finer: number): string {
  const inches = metres / INCH;
  const size = Math.abs(inches);
  const parts = PARTS.find(([below]) => size < below)![1] * 2 ** finer;
  const isOnMark = Math.abs(inches * FINEST - Math.round(inches * FINEST)) < 1e-4;
  if (isOnMark) return `${mixedInches(inches, FINEST)} in`;
  const isThin = size < IN_THOUSANDTHS;
  if (!isThin && parts <= FINEST) return `${mixedInches(inches, parts)} in`;
  return `${plainNumber(inches, 3 + (isThin ? finer : Math.log2(parts / FINEST) - 1))} in`;
}

/** A number of inches to the nearest of so many parts of one: "5 1/4", "-7/16", "0". */
export function mixedInches(inches: number, parts: number): string {
  const all = Math.round(Math.abs(inches) * parts);
  const [whole, rest] = [Math.floor(all / parts), all % parts];
  const said = [...(whole > 0 || rest === 0 ? [String(whole)] : []), ...(rest > 0 ? [fraction(rest, parts)] : [])];
  return `${inches < 0 && all > 0 ? '-' : ''}${said.join(' ')}`;
}

const fraction = (top: number, bottom: number): string =>
  top % 2 === 0 ? fraction(top / 2, bottom / 2) : `${top}/${bottom}`;

/** From this many pounds on ounces are whole. */
const HEAVY = 10;

/** A mass in kg: "3.4 oz", "1 lb 9.5 oz". */
export function poundText(kilograms: number, finer: number): string {
  const ounces = Math.abs(kilograms) / OUNCE;
  const sign = kilograms < 0 ? '-' : '';
  const decimals = (ounces < 1 ? 2 : ounces < HEAVY * 16 ? 1 : 0) + finer;
  const rounded = Number(ounces.toFixed(decimals));
  if (rounded < 16) return `${rounded === 0 ? '' : sign}${plainNumber(rounded, decimals)} oz`;
  const pounds = Math.floor(rounded / 16);
  const rest = plainNumber(rounded - 16 * pounds, decimals);
  return `${sign}${pounds} lb${rest === '0' ? '' : ` ${rest} oz`}`;
}
