import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Occupant } from './occupant.ts';

/** A thing that is where it cannot be, with what is in the way. */
export interface Conflict {
  readonly code: FindingCode;
  /** What is most likely wrong, if this is all that is wrong. */
  readonly of: Occupant;
  /** What it is held against; null for the hull’s length and the baseline. */
  readonly with: Occupant | null;
  /** By how much, m. */
  readonly by: number;
  /** How sure: `by` over its uncertainty. */
  readonly ratio: number;
  /** Axis of the figure to be looked at. */
  readonly axis: 0 | 1 | 2;
  /** Where it goes there: "aft", "below"; empty for what overlaps. */
  readonly where: string;
  /** Station of the place that is furthest off, m. */
  readonly station: number;
}

/** Beyond so many standard uncertainties it is surely wrong; it may be from one on (GUM: 95 % and 68 % of what is right). */
export const SURE = 2;
export const PERHAPS = 1;

export const isSure = ({ ratio }: Conflict): boolean => ratio > SURE;

/** Ways along each axis, towards less and towards more. */
export const TOWARDS = [
  ['forward', 'aft'],
  ['to port', 'to starboard'],
  ['below', 'above'],
] as const;
