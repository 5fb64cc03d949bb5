import type { Reading } from '../boat/trial.ts';
import { inSteps } from '../steps.ts';
import { type Comparison, compareTrials } from './compare.ts';
import { type Inclined, incline } from './inclining.ts';
import type { Lesson } from './lesson.ts';
import { type Offer, offersOf } from './offers.ts';
import { findSlips, type Sifted, type Slip } from './reconcile.ts';
import { SLIP_SCORE } from './slips.ts';
import { suspectsOf } from './suspect.ts';

/** What the pool tells of the file. */
export interface Learned {
  /** Every trial, in the order of the file. */
  readonly comparisons: readonly LearnedTrial[];
  /** Readings that fit nothing, in trials that can still teach. */
  readonly slips: readonly Slip[];
  /** Ways to make the file agree with the trials, the better explanation first; computed once, at the first call. */
  offers(): readonly Offer[];
  /** Does a little of the work on the offers; true when they are there. */
  stepToOffers(): boolean;
}

/** So many times what makes a slip is plain to see. */
const PLAIN = 2;

export interface LearnedTrial extends Comparison {
  /** What an inclining trial comes to; null for others. */
  readonly inclined: Inclined | null;
}

/**
 * Compares every trial with the file, and finds what the readings of those not yet accounted for tell: nothing while
 * something is missing from the figures (not `isWhole`), for then no trial can agree with them.
 */
export function learn(lesson: Lesson, isWhole: boolean): Learned {
  const comparisons = compareTrials(lesson).map(comparison => ({
    ...comparison,
    inclined: inclinedBy(comparison, lesson),
  }));
  const teaching = comparisons.flatMap(({ trial, lay, readings }) =>
    isWhole && lay && trial.explained === null && readings.every(({ predicted }) => predicted !== null) ? [trial] : [],
  );
  const school: Lesson = { ...lesson, trials: teaching };
  const suspects = isWhole ? suspectsOf(comparisons, lesson.inputs) : [];
  // Straight lines are enough for a slip that is plain to see; the whole model is asked where they are not.
  const isPlain = suspects.every(({ score }) => Math.abs(score) > PLAIN * SLIP_SCORE);
  const sifted: Sifted = isPlain
    ? { slips: suspects, rest: null }
    : findSlips(
        school,
        suspects.map(({ reading }) => reading),
      );
  const slips = [...sifted.slips, ...(isWhole ? comparisons.flatMap(slipsAfterwards) : [])];
  const leftOut: ReadonlySet<Reading> = new Set(slips.map(({ reading }) => reading));
  const offers = inSteps(function* () {
    return teaching.length > 0 ? yield* offersOf(school, leftOut, sifted.rest) : [];
  });
  return {
    comparisons,
    slips,
    offers: offers.all,
    stepToOffers: offers.step,
  };
}

/** In a trial that the file accounts for, a reading that is still far off fits nothing either. */
const slipsAfterwards = ({ trial, readings }: Comparison): readonly Slip[] =>
  trial.explained === null
    ? []
    : readings.flatMap(({ reading, predicted, doubt, score }) =>
        predicted !== null && Math.abs(score) > SLIP_SCORE
          ? [{ reading, expected: predicted, sigma: doubt, score }]
          : [],
      );

function inclinedBy({ trial, lay, day }: Comparison, { source, shelf }: Lesson): Inclined | null {
  if (trial.condition !== 'inclining' || !lay) return null;
  const masses = day.inputs.filter(({ noun }) => noun === 'mass').map(({ sigma }) => sigma);
  return incline(source.boat, trial, shelf, Math.hypot(...masses));
}
