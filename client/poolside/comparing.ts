import { type AgainstFile, againstFile } from '../../server/core/poolside/byFile.ts';
import type { PoolCondition, PoolDay } from '../../server/core/poolside/day.ts';
import type { PoolField } from '../../server/core/poolside/fields.ts';
import type { PoolView } from '../../server/core/poolside/view.ts';
import { readingIn } from './dayLog.ts';

/** What is known of a day by now. */
export interface KnownOfDay {
  readonly day: PoolDay;
  readonly view: PoolView;
  /** The day that the view is of: the worker comes after the fingers. */
  readonly viewed: PoolDay;
}

/**
 * How far a reading is from the file: as the worker has told; of what was read since, by what the file foretells of it, which
 * the page has. Null while nothing can be told.
 */
export function comparedNow(
  { day, view, viewed }: KnownOfDay,
  condition: PoolCondition,
  field: PoolField,
): AgainstFile | null {
  const reading = readingIn(day, condition, field);
  if (!reading) return null;
  const before = readingIn(viewed, condition, field);
  const told = view.compared.find(
    one => one.condition === condition && one.key === field.key && isAt(one.station, field.at),
  );
  if (told && before && before.size === reading.size && before.way === reading.way) return told;
  // A boat that is not quite under lies otherwise than the one whose readings are foretold.
  const isProud = readingIn(day, condition, { key: 'proud', station: null }) !== null;
  return field.byFile && !isProud ? againstFile(reading, field.byFile, view.units) : null;
}

/** The same station, read back from its text. */
const isAt = (one: number | null, other: number | null): boolean =>
  one === other || (one !== null && other !== null && Math.abs(one - other) < 1e-6);
