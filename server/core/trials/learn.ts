import type { BoatSource } from '../boat/source.ts';
import type { Trial } from '../boat/trial.ts';
import type { Steps } from '../steps/steps.ts';
import { inputsOf } from '../uncertainty/inputs.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import type { Uncertainties } from '../uncertainty/uncertainties.ts';
import { waterInputs } from '../uncertainty/waterInputs.ts';
import { openWithTrials } from './openness.ts';
import { type Comparison, compareSteps } from './pool/compare.ts';
import { type DayInput, dayOf, withoutDay } from './pool/day.ts';
import { type Estimate, estimateBoat } from './pool/estimate.ts';
import { type FiguresAsked, figuresWithTrials } from './pool/figures.ts';
import { type Inclined, incline } from './pool/inclining.ts';
import { likeliestBoat } from './pool/likeliest.ts';
import { type Offer, offersOf } from './pool/offers.ts';
import { floatTrial, shownBy } from './pool/predict.ts';
import { type ReadingSlip, slipsOf, type Told, toldOf } from './pool/told.ts';
import type { TrialSet } from './pool/trialSet.ts';
import { untaught } from './pool/untaught.ts';

/** What the pool tells of the boat. */
export interface Learned {
  /** Every trial against the file, in the order of the file. */
  readonly comparisons: readonly LearnedTrial[];
  /** What the trials say together; null where they say nothing. */
  readonly verdict: Verdict | null;
}

/** What all trials say of the boat together. */
interface Verdict {
  /** What may be wrong with the boat, the likeliest first. */
  readonly told: readonly Told[];
  readonly slips: readonly ReadingSlip[];
  /** Ways to write that into the file, not tried yet. */
  readonly offers: readonly Offer[];
  /** The boat by the likeliest of all. */
  readonly source: BoatSource;
  /** Every figure with the trials, over all that may be; of the boat in other water, where that is given. */
  uncertainties(asked: FiguresAsked, other?: WaterOf): Steps<Uncertainties>;
  /** What is left open about one of those figures, to ask what more would tell of it; `inputs` of the boat as filed. */
  openAbout(figure: Uncertainty, inputs: readonly DayInput[]): ReturnType<typeof openWithTrials>;
}

export interface LearnedTrial extends Comparison {
  /** It teaches something of the boat: by the file the boat can lie so, and show each of the readings. */
  readonly isHeard: boolean;
  /** What an inclining trial comes to; null for others. */
  readonly inclined: Inclined | null;
}

/** Compares every trial with the file, and estimates the boat by all of them. */
export function* learn(trialSet: TrialSet): Steps<Learned> {
  const comparisons: LearnedTrial[] = [];
  const before = yield* beforeTeaching(trialSet);
  for (const trial of trialSet.trials) {
    const comparison = yield* compareSteps(trialSet, trial);
    comparisons.push({ ...comparison, inclined: inclinedBy(comparison, trialSet), isHeard: isAmong(trial, before) });
    yield;
  }
  const estimate = yield* estimateBoat(before);
  return { comparisons, verdict: estimate && verdictOf(trialSet, before, estimate) };
}

/** The boat before anything was learned, and the trials that it could have lain in; what is struck out teaches nothing. */
function* beforeTeaching(trialSet: TrialSet): Steps<TrialSet> {
  const source = untaught(trialSet.source);
  const inputs = source === trialSet.source ? trialSet.inputs : inputsOf(source, trialSet.variations);
  const before: TrialSet = { ...trialSet, source, inputs };
  const trials: Trial[] = [];
  for (const trial of trialSet.trials) {
    yield;
    const taught = { ...trial, readings: trial.readings.filter(({ isSlip }) => !isSlip) };
    if (taught.readings.length > 0 && (yield* canShow(before, taught))) trials.push(taught);
  }
  return { ...before, trials };
}

/** Trials know their places in the file. */
const isAmong = ({ path }: Trial, { trials }: TrialSet): boolean => trials.some(trial => trial.path === path);

function* canShow({ source, inputs, cache }: TrialSet, trial: Trial): Steps<boolean> {
  const { boat } = dayOf(source, inputs, trial).source;
  yield;
  const floatedTrial = floatTrial(boat, withoutDay(trial), cache);
  return floatedTrial !== null && trial.readings.every(reading => shownBy(floatedTrial, reading, boat) !== null);
}

function verdictOf(trialSet: TrialSet, before: TrialSet, estimate: Estimate): Verdict | null {
  const source = likeliestBoat(before, estimate, trialSet.source);
  if (!source) return null;
  return {
    told: toldOf(estimate),
    slips: slipsOf(estimate),
    offers: offersOf({ source: trialSet.source, untaught: before.source, trials: trialSet.trials, estimate }),
    source,
    uncertainties: (asked, other) => figuresWithTrials(other ? inWater(before, other) : before, estimate, asked),
    openAbout: (figure, inputs) => openWithTrials(estimate, figure, inputs),
  };
}

/** The water that a boat lies in. */
type WaterOf = Pick<BoatSource, 'water' | 'waterAt'> & { readonly boat: Pick<BoatSource['boat'], 'water'> };

/** The boat before the trials in water of which they tell nothing. */
function inWater(before: TrialSet, { boat: { water }, ...other }: WaterOf): TrialSet {
  const source: BoatSource = {
    ...before.source,
    water: other.water,
    ...(other.waterAt && { waterAt: other.waterAt }),
    boat: { ...before.source.boat, water },
  };
  const others = before.inputs.filter(({ target }) => target.on !== 'water');
  return { ...before, source, inputs: [...waterInputs(source), ...others] };
}

function inclinedBy({ trial, floatedTrial, day }: Comparison, { source, cache }: TrialSet): Inclined | null {
  if (trial.condition !== 'inclining' || !floatedTrial) return null;
  const masses = day.inputs.filter(({ noun }) => noun === 'mass').map(({ sigma }) => sigma);
  return incline(source.boat, trial, cache, Math.hypot(...masses));
}
