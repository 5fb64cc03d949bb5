import { chanceOfHarm } from './harm.ts';
import { chanceOfAll, type LimitKept } from './sureness.ts';

/** What may come of a correction in the water, as well as the boat is known. */
export interface Prospect {
  /** Every limit with the correction made. */
  readonly kept: readonly LimitKept[];
  /** How likely all of them are kept, 0..1; null where nobody can tell, for the boat as it is has no such figure. */
  readonly chance: number | null;
  /** How likely the boat is further out than it is, 0..1. */
  readonly harm: number;
  /** The boat as it is can tell more: it floats, by its file, and nobody has read how. */
  readonly canTell: boolean;
}

export const prospectOf = (before: readonly LimitKept[], kept: readonly LimitKept[], canTell: boolean): Prospect => ({
  kept,
  chance: knownChance(kept),
  harm: chanceOfHarm(before, kept),
  canTell,
});

/** How likely all limits are kept, 0..1; null where nothing is known of what is open of one of them. */
export const knownChance = (kept: readonly LimitKept[]): number | null =>
  kept.some(({ open, isLeast }) => open === null && !isLeast) ? null : chanceOfAll(kept);

/** A chance that is no use to anybody. */
export const CANNOT_TELL = 0.1;
/** A chance to do harm that a builder would not take (common practice, no source). */
const TOO_RISKY = 0.05;

/** Nobody can tell whether it is then in trim. */
export const isOpen = ({ chance }: Prospect): boolean => chance !== null && chance < CANNOT_TELL;

/** It may do harm, and the boat as it is has more to tell than the file. */
export const isForTheWaterFirst = ({ canTell, harm }: Prospect): boolean => canTell && harm > TOO_RISKY;
