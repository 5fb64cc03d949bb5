import { chanceOfHarm } from '../balance/harm.ts';
import type { Scope } from '../balance/row.ts';
import { chanceOfAll, type Floating, type LimitKept, limitsKept } from '../balance/sureness.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { openIn } from './balances.ts';

/** What may come of a correction in the water, as well as the boat is known. */
export interface Prospect {
  /** Every limit with the correction made. */
  readonly limits: readonly LimitKept[];
  /** How likely all of them are kept, 0..1. */
  readonly chance: number;
  /** How likely the boat is further out than it is, 0..1. */
  readonly harm: number;
  /** The boat as it is can tell more: it floats, by its file, and nobody has read how. */
  readonly canTell: boolean;
}

export function prospectOf(corrected: Floating, scope: Scope, boatToTrim: BoatToTrim): Prospect {
  const { surfaced, uncertainties, wasTried } = boatToTrim;
  const open = openIn(boatToTrim);
  const limits = limitsKept(corrected, scope, open);
  return {
    limits,
    chance: chanceOfAll(limits),
    harm: chanceOfHarm(limitsKept(boatToTrim, scope, open), limits),
    canTell: !wasTried && uncertainties !== null && surfaced.status === 'afloat',
  };
}

/** A chance that is no use to anybody. */
const CANNOT_TELL = 0.1;
/** A chance to do harm that a builder would not take (common practice, no source). */
const TOO_RISKY = 0.05;

/** Nobody can tell whether it is then in trim. */
export const isOpen = ({ chance }: Prospect): boolean => chance < CANNOT_TELL;

/** It may do harm, and the boat as it is has more to tell than the file. */
export const isForTheWaterFirst = ({ canTell, harm }: Prospect): boolean => canTell && harm > TOO_RISKY;
