import type { Reading, Trial } from '../boat/trial.ts';
import { sourceWith } from '../doubt/withInputs.ts';
import { type Answers, answersOf, type Shelves } from './answers.ts';
import { type Day, type DayInput, dayOf, withoutDay } from './day.ts';
import type { Model, Modelled, Observed } from './gaussNewton.ts';
import type { Lesson } from './lesson.ts';
import { layTrial, shownBy, type TrialLay } from './predict.ts';

/** All that was read in the trials that can still teach, and all that it can teach about. */
export interface Pool {
  readonly days: readonly Day[];
  /** Every uncertain number of any day, each once. */
  readonly inputs: readonly DayInput[];
  readonly observations: readonly Observation[];
  readonly model: Model;
}

export interface Observation extends Observed {
  readonly trial: Trial;
  readonly reading: Reading;
}

/** Gathers the trials of a boat; readings that are left out (slips) are not gathered. */
export function gather(lesson: Lesson, leftOut: ReadonlySet<Reading>): Pool {
  const { source, trials, shelf, variations } = lesson;
  const days = trials.map(trial =>
    dayOf(source, lesson.inputs, { ...trial, readings: trial.readings.filter(reading => !leftOut.has(reading)) }),
  );
  const inputs = [...new Map(days.flatMap(day => day.inputs.map(input => [input.id, input] as const))).values()];
  const places = new Map(inputs.map(({ id }, i) => [id, i]));
  const observations = days.flatMap(({ trial }) =>
    trial.readings.map(reading => ({ trial, reading, value: reading.value, sigma: sigmaOf(reading, trial) })),
  );
  const kept = new Map<Day, Answers>();
  const model: Model = (unknowns, afresh) => {
    const parts = days.map(day => {
      const known = { places, shelves: { shelf, variations }, near: afresh ? null : (kept.get(day) ?? null) };
      const part = modelOf(day, unknowns, known);
      if (part) kept.set(day, part.answers);
      return part;
    });
    if (parts.some(part => part === null)) return null;
    return {
      values: parts.flatMap(part => part!.values),
      slopes: parts.flatMap(part => part!.slopes),
    };
  };
  return { days, inputs, observations, model };
}

/** A tilt is as sure as its angle, the weight and the way that it was moved. */
export function sigmaOf(reading: Reading, { shifts }: Trial): number {
  const shift = reading.of === 'tilt' ? shifts[reading.shift] : undefined;
  if (!shift) return reading.sigma;
  const { mass, moved } = shift;
  return Math.hypot(
    reading.sigma,
    reading.value * (mass.sigma / mass.value),
    reading.value * (moved.sigma / moved.value),
  );
}

interface Known {
  /** Where each input stands among the unknowns. */
  readonly places: ReadonlyMap<string, number>;
  readonly shelves: Shelves;
  /** From an earlier round; null: take all anew. */
  readonly near: Answers | null;
}

interface ModelledDay extends Modelled {
  /** To the day's own inputs. */
  readonly answers: Answers;
}

function modelOf(day: Day, unknowns: readonly number[], known: Known): ModelledDay | null {
  const { places, shelves } = known;
  const at = day.inputs.map(({ id }) => places.get(id)!);
  const changes = new Map(day.inputs.map((input, i) => [input, input.value + unknowns[at[i]!]! * input.sigma]));
  const source = sourceWith(day.source, changes);
  const lay = layTrial(source.boat, withoutDay(day.trial), shelves.shelf);
  if (!lay) return null;
  const values = day.trial.readings.map(reading => shownBy(lay, reading, source.boat));
  if (values.some(value => value === null)) return null;
  const answers = answersNow({ ...day, source }, lay, known);
  const slopes = answers.slopes.map(row => {
    const whole = unknowns.map(() => 0);
    for (const [i, slope] of row.entries()) whole[at[i]!]! += slope;
    return whole;
  });
  return { values: values.map(value => value!), slopes, answers };
}

/** The slopes of an earlier round, but for those of broad inputs, which change a good deal on the way. */
function answersNow(day: Day, lay: TrialLay, { near, shelves }: Known): Answers {
  if (!near) return answersOf(day, lay, shelves);
  const bent = day.inputs.filter(({ isBroad }) => isBroad);
  if (bent.length === 0) return near;
  const fresh = answersOf({ ...day, inputs: bent }, lay, shelves, near);
  const slopes = near.slopes.map((row, i) =>
    row.map((slope, k) => {
      const at = bent.indexOf(day.inputs[k]!);
      return at < 0 ? slope : fresh.slopes[i]![at]!;
    }),
  );
  return { ...near, slopes };
}
