import type { Reading, Trial } from '../../boat/trial.ts';
import { waterAt } from '../../conditions/readings.ts';
import type { Steps } from '../../steps/steps.ts';
import { sourceWith, sourceWithSteps } from '../../uncertainty/withInputs.ts';
import { type Day, type DayInput, dayOf, withoutDay } from './day.ts';
import { type ExtraLoad, floatTrial, NO_LOAD, shownBy } from './predict.ts';
import { answerSteps } from './sensitivities.ts';
import type { TrialSet } from './trialSet.ts';

/** Where a weight can be felt differently: what lies above the water displaces nothing, and nothing does on the bench. */
export const PLACES = ['afloat', 'under', 'ashore'] as const;
export type WaterPlace = (typeof PLACES)[number];

/** Where a weight is felt in a trial. */
export function placeOf({ condition }: Pick<Trial, 'condition'>): WaterPlace {
  if (condition === 'bench') return 'ashore';
  return condition === 'submerged' || condition === 'hung' ? 'under' : 'afloat';
}

/** What loads in one place do, as a part of what they do in each place in turn. */
export const loadsIn = (where: WaterPlace, byLoad: readonly number[]): readonly number[] =>
  PLACES.flatMap(place => (place === where ? byLoad : byLoad.map(() => 0)));

/** A boat as it may be: its inputs elsewhere than in the file, and a weight that is not written down. */
export interface Supposed {
  /** How far each input is from the file, in its own standard uncertainties, by id; none: as filed. */
  readonly off: ReadonlyMap<string, number>;
  /** What the weight pushes in each place. */
  readonly loads: Readonly<Record<WaterPlace, ExtraLoad>>;
}

export const AS_FILED: Supposed = { off: new Map(), loads: { afloat: NO_LOAD, under: NO_LOAD, ashore: NO_LOAD } };

/** What a supposed boat says of the readings, by the full model, and straight lines about it. */
export interface Foretold {
  readonly readings: readonly ReadingOf[];
  /** Every uncertain number of any day, each once. */
  readonly inputs: readonly DayInput[];
  readonly values: readonly number[];
  /** For each reading its change with each input, per standard uncertainty of it. */
  readonly slopes: readonly (readonly number[])[];
  /** For each reading its change with a kilogram at the origin and with a kilogram-metre along each axis. */
  readonly loads: readonly ExtraLoad[];
  /** Height of the water amidships in the first trial afloat, m; null where there is none. */
  readonly waterline: number | null;
}

export interface ReadingOf {
  readonly reading: Reading;
  readonly trial: Trial;
  readonly place: WaterPlace;
}

/** Null where the boat could not have lain so in one of the trials, or not shown one of the readings. */
export function* foretell(trialSet: TrialSet, supposed: Supposed): Steps<Foretold | null> {
  const { trials, cache, variations } = trialSet;
  const source = yield* sourceWithSteps(trialSet.source, changesOf(trialSet.inputs, supposed));
  yield;
  const days: Day[] = [];
  const byId = new Map<string, DayInput>();
  for (const trial of trials) {
    const day = dayOf(source, trialSet.inputs, trial);
    days.push(day);
    for (const input of day.inputs) byId.set(input.id, input);
    yield;
  }
  const inputs = [...byId.values()];
  const places = new Map(inputs.map(({ id }, k) => [id, k]));
  const filed = new Set(trialSet.inputs.map(({ id }) => id));
  const parts: Omit<Foretold, 'inputs' | 'waterline'>[] = [];
  let waterline: number | null = null;
  for (const day of days) {
    const { trial } = day;
    const place = placeOf(trial);
    const now = onTheDay(day, filed, supposed);
    yield;
    const { boat } = now.source;
    const floatedTrial = floatTrial(boat, withoutDay(trial), cache, supposed.loads[place]);
    if (!floatedTrial) return null;
    const values = trial.readings.map(reading => shownBy(floatedTrial, reading, boat));
    if (values.some(value => value === null)) return null;
    yield;
    const answers = yield* answerSteps(now, floatedTrial, { cache, variations });
    const at = day.inputs.map(({ id }) => places.get(id)!);
    if (place === 'afloat') waterline ??= waterAt(boat.length / 2)(floatedTrial.rest.floating);
    parts.push({
      readings: trial.readings.map(reading => ({ reading, trial, place })),
      values: values.map(value => value!),
      slopes: answers.slopes.map(row => wholeRow(row, at, inputs.length)),
      loads: answers.loads.map(row => row as unknown as ExtraLoad),
    });
    yield;
  }
  return {
    inputs,
    waterline,
    readings: parts.flatMap(part => part.readings),
    values: parts.flatMap(part => part.values),
    slopes: parts.flatMap(part => part.slopes),
    loads: parts.flatMap(part => part.loads),
  };
}

/** The new values of inputs. */
export const changesOf = (inputs: readonly DayInput[], { off }: Supposed): ReadonlyMap<DayInput, number> =>
  new Map(
    inputs.flatMap(input => {
      const by = off.get(input.id) ?? 0;
      return by === 0 ? [] : [[input, input.value + by * input.sigma] as const];
    }),
  );

/** A day of the supposed boat: what only that day has (its water, temporary pieces, places since left) is as supposed too. */
function onTheDay(day: Day, filed: ReadonlySet<string>, supposed: Supposed): Day {
  const own = day.inputs.filter(({ id, isSlid }) => isSlid || !filed.has(id));
  return own.length === 0 ? day : { ...day, source: sourceWith(day.source, changesOf(own, supposed)) };
}

/** The row of a day over the inputs of all days; `at` are the places of its own among them. */
function wholeRow(row: readonly number[], at: readonly number[], count: number): readonly number[] {
  const whole = new Array<number>(count).fill(0);
  for (const [k, place] of at.entries()) whole[place] = row[k]!;
  return whole;
}
