import { chanceOfHarm } from './harm.ts';
import { chanceOfAll, type LimitKept } from './sureness.ts';

/** What may come of a correction in the water, as well as the boat is known. */
export interface Prospect {
  /** Every limit with the correction made. */
  readonly kept: readonly LimitKept[];
  /** How likely all of them are kept, 0..1. */
  readonly chance: number;
  /** How likely the boat is further out than it is, 0..1. */
  readonly harm: number;
  /** The boat as it is can tell more: it floats, by its file, and nobody has read how. */
  readonly canTell: boolean;
}

export const prospectOf = (before: readonly LimitKept[], kept: readonly LimitKept[], canTell: boolean): Prospect => ({
  kept,
  chance: chanceOfAll(kept),
  harm: chanceOfHarm(before, kept),
  canTell,
});

/** A chance that is no use to anybody. */
export const CANNOT_TELL = 0.1;
/** A chance to do harm that a builder would not take (common practice, no source). */
const TOO_RISKY = 0.05;

/** Nobody can tell whether it is then in trim. */
export const isOpen = ({ chance }: Prospect): boolean => chance < CANNOT_TELL;

/** It may do harm, and the boat as it is has more to tell than the file. */
export const isForTheWaterFirst = ({ canTell, harm }: Prospect): boolean => canTell && harm > TOO_RISKY;
