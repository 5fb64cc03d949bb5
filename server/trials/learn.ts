import type { Reading, Trial } from '../boat/trial.ts';
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
  /** Readings that fit nothing, the rest of the work done at once; and those that are known without it. */
  slips(): readonly Slip[];
  slipsSoFar(): readonly Slip[];
  /** Does a little of the work on slips; true when they are there. */
  stepToSlips(): boolean;
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
    isWhole && lay && trial.explained === null && readings.every(({ predicted }) => predicted !== null)
      ? [withoutStruck(trial)]
      : [],
  );
  const school: Lesson = { ...lesson, trials: teaching };
  const suspects = isWhole ? suspectsOf(comparisons, lesson.inputs) : [];
  // Straight lines are enough for a slip that is plain to see; the whole model is asked where they are not.
  const isPlain = suspects.every(({ score }) => Math.abs(score) > PLAIN * SLIP_SCORE);
  let sifted: Sifted | null = isPlain ? { slips: suspects, rest: null } : null;
  const sifting = inSteps(function* () {
    const readings = suspects.map(({ reading }) => reading);
    sifted ??= yield* findSlips(school, readings);
    return sifted;
  });
  const afterwards = isWhole ? comparisons.flatMap(slipsAfterwards) : [];
  const offers = inSteps(function* () {
    if (teaching.length === 0) return [];
    while (!sifting.step()) yield;
    const { slips, rest } = sifting.all();
    const leftOut: ReadonlySet<Reading> = new Set([...slips, ...afterwards].map(({ reading }) => reading));
    return yield* offersOf(school, leftOut, rest);
  });
  return {
    comparisons,
    slips: () => [...sifting.all().slips, ...afterwards],
    slipsSoFar: () => [...(sifted?.slips ?? []), ...afterwards],
    stepToSlips: sifting.step,
    offers: offers.all,
    stepToOffers: offers.step,
  };
}

/** What is struck out teaches nothing. */
const withoutStruck = (trial: Trial): Trial => ({ ...trial, readings: trial.readings.filter(({ isSlip }) => !isSlip) });

/** In a trial that the file accounts for, a reading that is still far off fits nothing either. */
const slipsAfterwards = ({ trial, readings }: Comparison): readonly Slip[] =>
  trial.explained === null
    ? []
    : readings.flatMap(({ reading, predicted, doubt, score }) =>
        !reading.isSlip && predicted !== null && Math.abs(score) > SLIP_SCORE
          ? [{ reading, expected: predicted, sigma: doubt, score }]
          : [],
      );

function inclinedBy({ trial, lay, day }: Comparison, { source, shelf }: Lesson): Inclined | null {
  if (trial.condition !== 'inclining' || !lay) return null;
  const masses = day.inputs.filter(({ noun }) => noun === 'mass').map(({ sigma }) => sigma);
  return incline(source.boat, trial, shelf, Math.hypot(...masses));
}
