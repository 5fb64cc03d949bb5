import type { Boat } from '../boat/boat.ts';
import { boatScale, READS, springBalance } from '../boat/readingUncertainties.ts';
import type { Measured, Reading, SupportReading, Trial, TrialCondition } from '../boat/trial.ts';
import type { Input } from '../uncertainty/input.ts';
import { tapeStep } from '../wording/numbers.ts';
import type { Readable } from './nextReading.ts';
import { dayOf, withoutDay } from './pool/day.ts';
import { floatTrial, shownBy } from './pool/predict.ts';
import { answersOf } from './pool/sensitivities.ts';
import type { TrialSet } from './pool/trialSet.ts';

/** What could be done next: something with the whole boat, or one figure of the file measured with care. */
export type NextStep =
  | { readonly kind: 'boat'; readonly way: ReadingWay; readonly stations: readonly [fore: number, aft: number] }
  | { readonly kind: 'figure'; readonly input: Input };

export type ReadingWay = 'scale' | 'two scales' | 'knife edge' | 'afloat' | 'hung' | 'submerged';

/** How long each takes, minutes (common practice, no source): the scale is at hand, the water is not. */
const TROUBLE: Readonly<Record<ReadingWay, number>> = {
  scale: 5,
  'two scales': 10,
  'knife edge': 10,
  afloat: 40,
  hung: 45,
  submerged: 60,
};
/** A part taken out, weighed or measured, and put back, minutes (common practice, no source). */
const FIGURE_TROUBLE = 10;

/** As well as a figure may be known with some care: a part of its uncertainty. */
const WITH_CARE = 1 / 4;

/** Part of the length from either end at which the boat is held, and at which the water is read (no source). */
const SUPPORTS = 0.2;
const MARKS = 0.08;

/** Everything that could be read, weighed or measured of a boat next, by its own model and what such readings are good for. */
export function readablesOf(trialSet: TrialSet): readonly Readable<NextStep>[] {
  const { boat } = trialSet.source;
  const whole = WAYS.flatMap(({ way, condition, inset, readings }): readonly Readable<NextStep>[] => {
    if (condition === 'submerged' && boat.tanks.length === 0) return [];
    const stations = stationsOf(boat, inset);
    const rows = rowsOf(trialSet, tried(condition, readings(stations)));
    return rows ? [{ what: { kind: 'boat', way, stations }, rows, trouble: TROUBLE[way] }] : [];
  });
  const figures = trialSet.inputs.map((input, k): Readable<NextStep> => {
    const row = trialSet.inputs.map((_, i) => (i === k ? 1 / WITH_CARE : 0));
    return { what: { kind: 'figure', input }, rows: [row], trouble: FIGURE_TROUBLE };
  });
  return [...whole, ...figures];
}

/** Rows of what was read already: what is struck out tells nothing. */
export function rowsRead({ inputs }: TrialSet, comparisons: readonly Read[]): readonly (readonly number[])[] {
  return comparisons.flatMap(({ day, answers, readings }) => {
    const places = new Map(day.inputs.map(({ id }, k) => [id, k]));
    return readings.flatMap(({ reading, sigma }, i) =>
      reading.isSlip || !answers
        ? []
        : [inputs.map(({ id }) => (answers.slopes[i]![places.get(id) ?? -1] ?? 0) / sigma)],
    );
  });
}

type Read = {
  readonly day: { readonly inputs: readonly { readonly id: string }[] };
  readonly answers: { readonly slopes: readonly (readonly number[])[] } | null;
  readonly readings: readonly { readonly reading: Reading; readonly sigma: number }[];
};

type Stations = readonly [fore: number, aft: number];

interface WayRead {
  readonly way: ReadingWay;
  readonly condition: TrialCondition;
  readonly inset: number;
  readonly readings: (stations: Stations) => readonly Reading[];
}

const WAYS: readonly WayRead[] = [
  { way: 'scale', condition: 'bench', inset: SUPPORTS, readings: () => [{ ...unread(), of: 'scale', pair: null }] },
  { way: 'two scales', condition: 'bench', inset: SUPPORTS, readings: stations => pairOf('scale', stations) },
  {
    way: 'knife edge',
    condition: 'bench',
    inset: SUPPORTS,
    readings: () => [{ ...unread(READS.balance), of: 'balance' }],
  },
  { way: 'hung', condition: 'hung', inset: SUPPORTS, readings: stations => pairOf('hook', stations) },
  {
    way: 'afloat',
    condition: 'surfaced',
    inset: MARKS,
    readings: stations => [
      ...stations.map(station => ({ ...unread(READS.mark), of: 'mark', station }) as const),
      { ...unread(READS.angle), of: 'heel' },
    ],
  },
  {
    way: 'submerged',
    condition: 'submerged',
    inset: MARKS,
    readings: () => [
      { ...unread(READS.angle), of: 'trim' },
      { ...unread(READS.angle), of: 'heel' },
      { ...unread(READS.fill), of: 'fill', tank: null },
    ],
  },
];

/** A reading that is only thought of. */
export const unread = (sigma = 0): Measured & { readonly isSlip: boolean } => ({
  path: PLACE,
  value: 0,
  sigma,
  isSlip: false,
});

const pairOf = (of: SupportReading['of'], [fore, aft]: Stations): readonly Reading[] => [
  { ...unread(), of, pair: { station: fore, other: aft } },
  { ...unread(), of, pair: { station: aft, other: fore } },
];

/** Where a trial stands that is only thought of. */
const PLACE = ['trials', 'next'];

/** A trial that is only thought of, of the boat as it is now. Hung up its tanks are full: only then does every boat hang on its hooks. */
export const tried = (condition: TrialCondition, readings: readonly Reading[]): Trial => ({
  path: PLACE,
  name: 'next',
  condition,
  date: null,
  note: null,
  readings,
  left:
    condition === 'bench' || condition === 'hung'
      ? { ...unread(), of: 'fill', value: condition === 'hung' ? 1 : 0, tank: null }
      : null,
  proud: null,
  shifts: [],
  aboard: [],
  without: [],
  formerly: [],
  pool: null,
  water: null,
});

/** Rows of a trial's readings; null where the boat cannot lie so, or a hook would have to push. */
function rowsOf({ source, inputs, cache, variations }: TrialSet, trial: Trial): readonly (readonly number[])[] | null {
  const day = dayOf(source, inputs, trial);
  const floatedTrial = floatTrial(day.source.boat, withoutDay(trial), cache);
  if (!floatedTrial) return null;
  const shown = trial.readings.map(reading => shownBy(floatedTrial, reading, day.source.boat));
  if (shown.some((value, i) => value === null || (trial.readings[i]!.of === 'hook' && value < 0))) return null;
  const { slopes } = answersOf(day, floatedTrial, { cache, variations });
  const places = new Map(day.inputs.map(({ id }, k) => [id, k]));
  return trial.readings.map((reading, i) => {
    const sigma = sigmaOf(reading, shown as readonly number[], i);
    return inputs.map(({ id }) => (slopes[i]![places.get(id) ?? -1] ?? 0) / sigma);
  });
}

/** What the reading is good for; of two supports with what their stations leave open, as for those that were read. */
function sigmaOf(reading: Reading, shown: readonly number[], i: number): number {
  if (reading.of !== 'scale' && reading.of !== 'hook') return reading.sigma;
  const usual = (reading.of === 'scale' ? boatScale : springBalance)(shown[i]!);
  if (!reading.pair) return usual;
  const { station, other } = reading.pair;
  return Math.hypot(usual, (Math.SQRT2 * READS.support * Math.hypot(...shown)) / Math.abs(station - other));
}

/** So far from either end of the boat, on a round mark of the tape. */
function stationsOf({ length, units }: Boat, inset: number): Stations {
  const isImperial = units.length === 'in' || units.length === 'ft';
  const step = (isImperial ? 8 : 10) * tapeStep(units);
  const fore = Math.max(1, Math.round((inset * length) / step)) * step;
  return [fore, length - fore];
}
