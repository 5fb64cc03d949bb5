import type { BoatSource } from '../../boat/source.ts';
import type { Trial } from '../../boat/trial.ts';
import type { BodyCache } from '../../bodies/assemble.ts';
import type { VariationCache } from '../../uncertainty/variations.ts';
import type { DayInput } from './day.ts';

/** A boat and the trials that it learns from. */
export interface TrialSet {
  readonly source: BoatSource;
  /** Every uncertain number of the boat as filed. */
  readonly inputs: readonly DayInput[];
  readonly trials: readonly Trial[];
  /** What was made of entries before. */
  readonly cache: BodyCache;
  readonly variations: VariationCache;
}
