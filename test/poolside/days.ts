import { enter } from '../../client/poolside/dayLog.ts';
import { createPoolside } from '../../server/core/poolside/answer.ts';
import { emptyDay, type PoolCondition, type PoolDay, type PoolTime } from '../../server/core/poolside/day.ts';
import type { PoolField } from '../../server/core/poolside/fields.ts';

export const NOON: PoolTime = { date: '2026-05-02', time: '12:00' };

/** What is asked for of a boat on a day without readings. */
export const fieldsOf = (text: string): Readonly<Record<PoolCondition, readonly PoolField[]>> =>
  createPoolside(text, () => null)(emptyDay('')).view.fields;

/** A day on which fields were read as so much, with its sign. */
export const dayOf = (
  boat: string,
  condition: PoolCondition,
  read: readonly (readonly [field: PoolField, value: number])[],
): PoolDay =>
  read.reduce(
    (day, [{ key, station, unit, ways }, value]) =>
      enter(
        day,
        condition,
        { key, station, unit, size: Math.abs(value), way: ways ? (value < 0 ? -1 : 1) : null },
        NOON,
      ),
    emptyDay(boat),
  );
