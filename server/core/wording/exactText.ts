import type { Counted } from '../../../schema/places.ts';
import type { FileUnits } from '../../../schema/units.ts';
import { INCH, mixedInches } from './imperial.ts';
import { tapeStep, tapeText } from './numbers.ts';
import { endsCounted } from './places.ts';

/**
 * Sizes as exact as the stock's, which need not lie on the tape's marks: to a tenth of a millimetre or a 64th of an inch,
 * with `finer` digits more for a figure that was the builder's own.
 */
export function exactText(metres: number, units: FileUnits, finer = 0): string {
  const onTape = tapeText(metres, units);
  const step = tapeStep(units);
  if (Math.abs(metres / step - Math.round(metres / step)) < 1e-6) return onTape;
  if (units.length === 'in' || units.length === 'ft') {
    const sixtyFourths = (metres / INCH) * 64;
    if (Math.abs(sixtyFourths - Math.round(sixtyFourths)) < 1e-4) return `${mixedInches(metres / INCH, 64)} in`;
    return `${Number((metres / INCH).toFixed(3 + finer))} in`;
  }
  const perUnit = { mm: 1e3, cm: 1e2, m: 1 }[units.length];
  const decimals = units.length === 'mm' ? 1 : units.length === 'cm' ? 2 : 4;
  return `${Number((metres * perUnit).toFixed(decimals + finer))} ${units.length}`;
}

/** A figure without its unit, for the first of two: "12" of "12 mm". */
export const bare = (text: string): string => text.replace(/(?<![a-z])[a-z]+$/, '').trimEnd();

/** How a place is written: its unit (null for a bare number) and its tolerance, m. */
interface WrittenLength {
  readonly isRange: boolean;
  readonly unit: string | null;
  readonly sigma: number | null;
}

/** A place, m in boat axes, as it was written: moved by marks of the tape it keeps the digits that it had. */
export function extentText(
  extent: WrittenLength,
  ends: readonly [number, number],
  units: FileUnits,
  counted: Counted | null,
): string {
  const [from, to] = counted ? endsCounted(ends, counted, units) : ends;
  const own = unitsOf(extent, units);
  const at = (metres: number): string => exactText(metres, own, 2);
  // A bare number of feet would be written in inches: it gets its unit.
  const isBare = extent.unit === null && units.length !== 'ft';
  const last = (metres: number): string => (isBare ? bare(at(metres)) : at(metres));
  const uncertainty = extent.sigma === null ? '' : ` ± ${last(extent.sigma)}`;
  return extent.isRange ? `${bare(at(from))} to ${last(to)}${uncertainty}` : `${last((from + to) / 2)}${uncertainty}`;
}

const LENGTHS: readonly FileUnits['length'][] = ['mm', 'cm', 'm', 'in', 'ft'];

/** The file’s units, with a length in the unit that it is written in. */
export function unitsOf({ unit }: Pick<WrittenLength, 'unit'>, units: FileUnits): FileUnits {
  const length = LENGTHS.find(name => name === unit);
  return length ? { ...units, length } : units;
}
