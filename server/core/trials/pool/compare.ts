import type { Reading, Trial } from '../../boat/trial.ts';
import { finish, type Steps } from '../../steps/steps.ts';
import { type Day, dayOf, withoutDay } from './day.ts';
import { type FloatedTrial, floatTrial, shownBy } from './predict.ts';
import { type Answers, answerSteps } from './sensitivities.ts';
import { sigmaOf } from './straight.ts';
import type { TrialSet } from './trialSet.ts';

/** A trial beside what the file says of it. */
export interface Comparison {
  readonly trial: Trial;
  readonly day: Day;
  /** How the boat would have lain; null where by the file it could not have been so at all. */
  readonly floatedTrial: FloatedTrial | null;
  /** How its readings answer to every uncertain number; null with `lay`. */
  readonly answers: Answers | null;
  /** One for each reading. */
  readonly readings: readonly ComparedReading[];
}

export interface ComparedReading {
  readonly reading: Reading;
  /** What the full model says that it should have been, SI; null where it cannot. */
  readonly predicted: number | null;
  /** One standard uncertainty of that, by the uncertainties of all figures in the file. */
  readonly uncertainty: number;
  /** One standard uncertainty of the reading itself. */
  readonly sigma: number;
  /** How far what was read is from what was predicted, in standard uncertainties of both together. */
  readonly score: number;
}

/** A trial against what the boat as filed would have shown. */
export const compareTrial = (...asked: Parameters<typeof compareSteps>): Comparison => finish(compareSteps(...asked));

/** The same in steps. */
export function* compareSteps({ source, inputs, cache, variations }: TrialSet, trial: Trial): Steps<Comparison> {
  const day = dayOf(source, inputs, trial);
  yield;
  const floatedTrial = floatTrial(day.source.boat, withoutDay(trial), cache);
  yield;
  const answers = floatedTrial && (yield* answerSteps(day, floatedTrial, { cache, variations }));
  const readings = trial.readings.map((reading, i): ComparedReading => {
    const predicted = floatedTrial && shownBy(floatedTrial, reading, source.boat);
    const uncertainty = answers ? Math.hypot(...answers.slopes[i]!) : 0;
    const sigma = sigmaOf(reading, trial);
    const score = predicted === null ? 0 : (reading.value - predicted) / Math.hypot(sigma, uncertainty);
    return { reading, predicted, uncertainty, sigma, score };
  });
  return { trial, day, floatedTrial, answers, readings };
}
