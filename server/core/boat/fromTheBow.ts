import { countsForward } from '../../../schema/places.ts';
import type { FileUnits } from '../../../schema/units.ts';

/** Rows of a form, from bow to stern. */
export interface FromTheBow<T> {
  readonly rows: readonly T[];
  /** Where a row stands in the file. */
  readonly written: (row: number) => number;
  /** The file has them from stern to bow. */
  readonly isReversed: boolean;
}

/** Where stations count forward a plan may be read off from either end. */
export function fromTheBow<T>(rows: readonly T[], stationOf: (row: T) => number, units: FileUnits): FromTheBow<T> {
  const [first, last] = [rows[0], rows.at(-1)];
  const isReversed = countsForward(units) && stationOf(first!) > stationOf(last!);
  if (!isReversed) return { rows, written: row => row, isReversed };
  return { rows: rows.toReversed(), written: row => rows.length - 1 - row, isReversed };
}
