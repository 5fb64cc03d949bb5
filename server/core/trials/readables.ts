import type { Boat } from '../boat/boat.ts';
import { boatScale, READS, springBalance } from '../boat/readingUncertainties.ts';
import type { Measured, Reading, SupportReading, Trial, TrialCondition } from '../boat/trial.ts';
import type { Steps } from '../steps/steps.ts';
import type { Input } from '../uncertainty/input.ts';
import { tapeStep } from '../wording/numbers.ts';
import type { Readable, Readables, ReadingRow } from './nextReading.ts';
import { dayOf, withoutDay } from './pool/day.ts';
import { loadsIn, placeOf } from './pool/foretold.ts';
import { floatTrial, shownBy } from './pool/predict.ts';
import { answerSteps } from './pool/sensitivities.ts';
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
/** What a reading besides what is known weighs that leaves so much, in that. */
const MORE_CARE = Math.sqrt(WITH_CARE ** -2 - 1);

/** Part of the length from either end at which the boat is held, and at which the water is read (no source). */
const SUPPORTS = 0.2;
const MARKS = 0.08;

/** Everything that could be read, weighed or measured of a boat next, by its own model and what such readings are good for. */
export function readablesOf(trialSet: TrialSet): readonly Readables<NextStep>[] {
  const figures = function* (): Steps<readonly Readable<NextStep>[]> {
    return trialSet.inputs.map(
      (input, at): Readable<NextStep> => ({
        what: { kind: 'figure', input },
        tells: { of: 'input', at, weight: MORE_CARE },
        trouble: FIGURE_TROUBLE,
      }),
    );
  };
  const whole = CONDITIONS.map((condition): Readables<NextStep> => {
    const ways = WAYS.filter(each => each.condition === condition);
    const trouble = Math.min(...ways.map(({ way }) => TROUBLE[way]));
    return { trouble, find: () => readablesIn(trialSet, condition, ways) };
  });
  return [{ trouble: FIGURE_TROUBLE, find: figures }, ...whole];
}

/** All that can be read of a boat in one place. */
function* readablesIn(
  trialSet: TrialSet,
  condition: TrialCondition,
  ways: readonly WayRead[],
): Steps<readonly Readable<NextStep>[]> {
  const { boat } = trialSet.source;
  if (condition === 'submerged' && boat.tanks.length === 0) return [];
  const asked = ways.map(({ way, inset, readings }) => {
    const stations = stationsOf(boat, inset);
    return { way, stations, readings: readings(stations) };
  });
  const known = yield* rowsOf(
    trialSet,
    condition,
    asked.map(({ readings }) => readings),
  );
  return asked.flatMap(({ way, stations }, i): readonly Readable<NextStep>[] => {
    const rows = known[i];
    return rows ? [{ what: { kind: 'boat', way, stations }, tells: { of: 'boat', rows }, trouble: TROUBLE[way] }] : [];
  });
}

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

/** Where a boat can be read next, what is the least trouble first. */
const CONDITIONS = ['bench', 'surfaced', 'hung', 'submerged'] as const;

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

type Rows = readonly ReadingRow[];

/** Rows of some readings at a time; null for those where the boat cannot lie so, or a hook would have to push. */
function* rowsOf(
  { source, inputs, cache, variations }: TrialSet,
  condition: TrialCondition,
  sets: readonly (readonly Reading[])[],
): Steps<readonly (Rows | null)[]> {
  const trial = tried(condition, sets.flat());
  const day = dayOf(source, inputs, trial);
  const floatedTrial = floatTrial(day.source.boat, withoutDay(trial), cache);
  if (!floatedTrial) return sets.map(() => null);
  const shown = sets.map(set => set.map(reading => shownBy(floatedTrial, reading, day.source.boat)));
  const canBe = sets.map((set, s) =>
    set.every((reading, i) => shown[s]![i] !== null && (reading.of !== 'hook' || shown[s]![i]! >= 0)),
  );
  if (!canBe.includes(true)) return sets.map(() => null);
  const { slopes, loads } = yield* answerSteps(day, floatedTrial, { cache, variations });
  const places = day.inputs === inputs ? null : placesIn(day.inputs, inputs);
  return sets.map((set, s) => {
    if (!canBe[s]) return null;
    const first = sets.slice(0, s).flat().length;
    return set.map((reading, i) => {
      const sigma = sigmaOf(reading, shown[s] as readonly number[], i);
      const slope = slopes[first + i]!;
      return {
        inputs: places ? places.map(k => (slope[k] ?? 0) / sigma) : slope.map(change => change / sigma),
        loads: loadsIn(
          placeOf(trial),
          loads[first + i]!.map(change => change / sigma),
        ),
      };
    });
  });
}

/** Where each of some inputs stands among others; -1 for nowhere. */
function placesIn(all: TrialSet['inputs'], inputs: TrialSet['inputs']): readonly number[] {
  const places = new Map(all.map(({ id }, k) => [id, k]));
  return inputs.map(({ id }) => places.get(id) ?? -1);
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
