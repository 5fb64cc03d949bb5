import { bareUnitName } from '../../../schema/quantityExamples.ts';
import { type Dimension, type FileUnits, fromSi, unitNamed } from '../../../schema/units.ts';

/** A unit as the file writes it; null for a bare number in the file's own. */
export type WrittenUnit = string | null;

/**
 * Values with their standard uncertainty as they stand in the file: "41 g ± 4.2 g", "262 to 342 mm ± 3.1 mm", without a
 * unit where the file gives none. The uncertainty has two digits at least, the values as many decimals.
 */
export function toleranced(
  values: readonly number[],
  sigma: number,
  dimension: Dimension,
  unit: WrittenUnit,
  units: FileUnits,
): string {
  const bare = bareUnitName(dimension, units);
  const known = unitNamed(unit ?? bare ?? '%', dimension);
  if (!known) return '';
  const zero = fromSi(0, known);
  const spread = Math.abs(fromSi(sigma, known) - zero);
  // A value that is small beside its uncertainty must not read as nothing.
  const least = Math.min(spread, ...values.map(value => Math.abs(fromSi(value, known))).filter(size => size > 0));
  const decimalsFor = (size: number) => Math.min(Math.max(-Math.floor(Math.log10(size)), 0), MOST_DECIMALS);
  const decimals = Math.max(decimalsFor(spread / 10), least < spread ? decimalsFor(least) : 0);
  const plain = (reading: number) => String(Number(reading.toFixed(decimals)));
  const mark = unit === null && bare !== null ? '' : known.name === '°' ? known.name : ` ${known.name}`;
  return `${values.map(value => plain(fromSi(value, known))).join(' to ')}${mark} ± ${plain(spread)}${mark}`;
}

const MOST_DECIMALS = 6;
