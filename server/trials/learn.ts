import type { Trial } from '../boat/trial.ts';
import type { Doubts } from '../doubt/doubts.ts';
import { inputsOf } from '../doubt/inputs.ts';
import { inSteps } from '../steps.ts';
import { type Comparison, compareTrials } from './compare.ts';
import { dayOf, withoutDay } from './day.ts';
import { type Inclined, incline } from './inclining.ts';
import type { Lesson } from './lesson.ts';
import { type Estimate, estimateBoat } from './pool/estimate.ts';
import { figuresWithTrials } from './pool/figures.ts';
import { type LikeliestBoat, likeliestBoat } from './pool/likeliest.ts';
import { type Offer, offersOf } from './pool/offers.ts';
import { type Slip, slipsOf, type Told, toldOf } from './pool/told.ts';
import { untaught } from './pool/untaught.ts';
import { layTrial, shownBy } from './predict.ts';

/** What the pool tells of the boat. */
export interface Learned {
  /** Every trial against the file, in the order of the file. */
  readonly comparisons: readonly LearnedTrial[];
  /** Does a little of the work on what the trials say; true when all of it is known. */
  step(): boolean;
  /** The same so far; null while it is not all known, and where the trials say nothing. */
  soFar(): Verdict | null;
  /** What the trials say, the rest of the work done at once; null where they say nothing. */
  verdict(): Verdict | null;
}

/** What all trials say of the boat together. */
export interface Verdict {
  /** What may be wrong with the boat, the likeliest first. */
  readonly told: readonly Told[];
  readonly slips: readonly Slip[];
  /** Ways to write that into the file. */
  readonly offers: readonly Offer[];
  /** The boat by the likeliest of all. */
  readonly boat: LikeliestBoat;
  /** Every headline figure with the trials, over all that may be. */
  readonly doubts: Doubts;
}

export interface LearnedTrial extends Comparison {
  /** What an inclining trial comes to; null for others. */
  readonly inclined: Inclined | null;
}

/**
 * Compares every trial with the file, and estimates the boat by all of them: not while something is missing from the figures
 * (not `isWhole`), for then no trial can agree with them.
 */
export function learn(lesson: Lesson, isWhole: boolean): Learned {
  const comparisons = compareTrials(lesson).map(comparison => ({
    ...comparison,
    inclined: inclinedBy(comparison, lesson),
  }));
  let known: Verdict | null = null;
  const working = inSteps(function* () {
    if (!isWhole) return null;
    const before = beforeTeaching(lesson);
    const estimate = yield* estimateBoat(before);
    known = estimate && verdictOf(lesson, before, estimate);
    return known;
  });
  return { comparisons, step: working.step, soFar: () => known, verdict: working.all };
}

/** The boat before anything was learned, and the trials that it could have lain in; what is struck out teaches nothing. */
function beforeTeaching(lesson: Lesson): Lesson {
  const source = untaught(lesson.source);
  const inputs = source === lesson.source ? lesson.inputs : inputsOf(source, lesson.variations);
  const before: Lesson = { ...lesson, source, inputs };
  const trials = lesson.trials
    .map(trial => ({ ...trial, readings: trial.readings.filter(({ isSlip }) => !isSlip) }))
    .filter(trial => trial.readings.length > 0 && canShow(before, trial));
  return { ...before, trials };
}

function canShow({ source, inputs, shelf }: Lesson, trial: Trial): boolean {
  const { boat } = dayOf(source, inputs, trial).source;
  const lay = layTrial(boat, withoutDay(trial), shelf);
  return lay !== null && trial.readings.every(reading => shownBy(lay, reading, boat) !== null);
}

function verdictOf(lesson: Lesson, before: Lesson, estimate: Estimate): Verdict | null {
  const boat = likeliestBoat(before, estimate, lesson.source);
  if (!boat) return null;
  return {
    told: toldOf(estimate),
    slips: slipsOf(estimate),
    offers: offersOf({ source: lesson.source, untaught: before.source, trials: lesson.trials, estimate }),
    boat,
    doubts: figuresWithTrials(before, estimate, boat),
  };
}

function inclinedBy({ trial, lay, day }: Comparison, { source, shelf }: Lesson): Inclined | null {
  if (trial.condition !== 'inclining' || !lay) return null;
  const masses = day.inputs.filter(({ noun }) => noun === 'mass').map(({ sigma }) => sigma);
  return incline(source.boat, trial, shelf, Math.hypot(...masses));
}
