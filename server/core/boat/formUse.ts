import type { CompartmentEntry, PartEntry, ShellEntry, TankEntry } from '../../../schema/hull.ts';
import type { Setting } from './readingContext.ts';

/** What the forms of an entry are for. */
export type Use = Pick<Setting, 'use' | 'endsClosed'>;

/** By the list that the entry stands in. */
export const USES = {
  shells: ({ ends }: ShellEntry): Use => ({ use: 'wall', endsClosed: ends !== 'open' }),
  compartments: (_: CompartmentEntry): Use => ({ use: 'displaces', endsClosed: true }),
  tanks: (_: TankEntry): Use => ({ use: 'holds', endsClosed: true }),
  payload: ({ in: inside }: PartEntry): Use => ({ use: inside === undefined ? 'displaces' : 'dry', endsClosed: true }),
} as const;
