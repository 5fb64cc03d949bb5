import type { ReadSoFar } from '../room/boatToTrim.ts';
import { chanceOfHarm } from './harm.ts';
import type { OpenLoads } from './open.ts';
import { chanceOfAll, type LimitKept } from './sureness.ts';
import { CHANCE_OF_UNWRITTEN } from './unwritten.ts';

/** What may come of a correction in the water, as well as the boat is known. */
export interface Prospect {
  /** Every limit with the correction made. */
  readonly kept: readonly LimitKept[];
  /** How likely all of them are kept, 0..1; null where nobody can tell, for the boat as it is has no such figure. */
  readonly chance: number | null;
  /** How likely the boat is further out than it is, 0..1. */
  readonly harm: number;
  /** Where the boat as a whole was read; until it was in the water it can tell more. */
  readonly readSoFar: ReadSoFar;
}

/** A boat's limits with so much left open of its balances. */
type Keeps = (open: OpenLoads) => readonly LimitKept[];

/** `before` and `after` the correction. `unwritten` is what is open where something is not written down. */
export function prospectOf(
  before: Keeps,
  after: Keeps,
  open: OpenLoads,
  unwritten: OpenLoads,
  readSoFar: ReadSoFar,
): Prospect {
  const kept = after(open);
  const asWritten = chanceOfHarm(before(open), kept);
  const otherwise = () => chanceOfHarm(before(unwritten), after(unwritten));
  const harm =
    readSoFar === 'nowhere' ? (1 - CHANCE_OF_UNWRITTEN) * asWritten + CHANCE_OF_UNWRITTEN * otherwise() : asWritten;
  return { kept, chance: knownChance(kept), harm, readSoFar };
}

/** How likely all limits are kept, 0..1; null where nothing is known of what is open of one of them. */
export const knownChance = (kept: readonly LimitKept[]): number | null =>
  kept.some(({ open, isLeast }) => open === null && !isLeast) ? null : chanceOfAll(kept);

/** A chance that is no use to anybody. */
export const CANNOT_TELL = 0.1;
/**
 * A chance to do harm that a builder would not take; and what he would, for what is this many times as likely to bring the boat
 * into trim (common practice, no source).
 */
const TOO_RISKY = 0.05;
const TOO_RISKY_FOR_ALL = 0.1;
const WORTH_IT = 5;

/** Nobody can tell whether it is then in trim. */
export const isOpen = ({ chance }: Prospect): boolean => chance !== null && chance < CANNOT_TELL;

/** It may do harm, and the boat as it is has more to tell than the file. */
export function isForTheWaterFirst({ readSoFar, chance, harm }: Prospect): boolean {
  if (readSoFar === 'in the water') return false;
  const isWorthIt = (chance ?? 0) > WORTH_IT * harm;
  return harm > (isWorthIt ? TOO_RISKY_FOR_ALL : TOO_RISKY);
}
