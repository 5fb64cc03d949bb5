import type { FileUnits } from '../../../schema/units.ts';
import { tapeStep, tapeText } from './numbers.ts';

/**
 * Sizes as exact as the stock's, which need not lie on the tape's marks: to a tenth of a millimetre or a 64th of an inch,
 * with `finer` digits more for a figure that was the builder's own.
 */
export function exactText(metres: number, units: FileUnits, finer = 0): string {
  const onTape = tapeText(metres, units);
  const step = tapeStep(units);
  if (Math.abs(metres / step - Math.round(metres / step)) < 1e-6) return onTape;
  if (units.length === 'in' || units.length === 'ft') return `${Number((metres / 0.0254).toFixed(3 + finer))} in`;
  const perUnit = { mm: 1e3, cm: 1e2, m: 1 }[units.length];
  const decimals = units.length === 'mm' ? 1 : units.length === 'cm' ? 2 : 4;
  return `${Number((metres * perUnit).toFixed(decimals + finer))} ${units.length}`;
}

/** A figure without its unit, for the first of two: "12" of "12 mm". */
export const bare = (text: string): string => text.replace(/\s*[a-z]+$/, '');
