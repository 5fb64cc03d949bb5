import { countedAt } from '../../../schema/places.ts';
import { readQuantity } from '../../../schema/quantity.ts';
import { type FileUnits, fromSi } from '../../../schema/units.ts';
import type { Analysis } from '../analysis/analysis.ts';
import { READS } from '../boat/readingUncertainties.ts';
import type { Reading, Trial } from '../boat/trial.ts';
import { markStations } from '../trials/markStations.ts';
import { type ComparedReading, compareTrial } from '../trials/pool/compare.ts';
import { readingText, sizeText } from '../trials/pool/readingWords.ts';
import { tried, unread } from '../trials/readables.ts';
import { inputsOf } from '../uncertainty/inputs.ts';
import { stationsCount, stationTape } from '../wording/places.ts';
import { plusMinus } from '../wording/withUncertainty.ts';
import { type ByFile, unitOfReading } from './byFile.ts';
import type { PoolCondition, PoolDay, ReadingKey } from './day.ts';

/** One thing to read at the pool, and what is expected of it. */
export interface PoolField {
  readonly key: ReadingKey;
  readonly station: string | null;
  /** The same with what it counts from; null where there is none. */
  readonly where: string | null;
  /** The same, m aft of the bow tip. */
  readonly at: number | null;
  readonly label: string;
  readonly how: string;
  readonly unit: string;
  /** What one tap of a stepper adds, in `unit`. */
  readonly step: number;
  readonly most: number | null;
  /** Words for the positive and the negative side; null where there is no side. */
  readonly ways: readonly [more: string, less: string] | null;
  readonly expected: Expected | null;
  /** What it should be by the file; null where the file does not foretell it. */
  readonly byFile: ByFile | null;
}

interface Expected {
  /** Without its sign, in the field's unit, on a step of it. */
  readonly size: number;
  readonly words: string;
}

interface Asked extends Omit<PoolField, 'expected' | 'byFile'> {
  /** What would be read; null where nothing is foretold. */
  readonly reading: Reading | null;
}

const TRIM = ['bow up', 'bow down'] as const;
const HEEL = ['to starboard', 'to port'] as const;
/** Steeper than this a boat is not in trim enough to be read, °; the reading of trials says so too. */
const MOST_TILT = 60;

/** What is asked for in a condition, what is expected by the boat as it is known: before trials with what is left open. */
export function fieldsIn(analysis: Analysis, condition: PoolCondition, day: PoolDay): readonly PoolField[] {
  const asked = condition === 'surfaced' ? askedAfloat(analysis, day) : askedUnder(analysis.boat.units);
  const trial = tried(
    condition,
    asked.flatMap(({ reading }) => reading ?? []),
  );
  const known = foretold(analysis, trial, analysis.source);
  const byFile = analysis.withTrials ? foretold(analysis, trial, analysis.filed.source) : known;
  return asked.map(({ reading, ...field }) => ({
    ...field,
    expected: expectedIn(known.get(reading), field, analysis),
    byFile: byFileOf(byFile.get(reading)),
  }));
}

function askedAfloat({ boat, trials, filed }: Analysis, { stations }: PoolDay): readonly Asked[] {
  const { units } = boat;
  const usual = markStations(boat, trials);
  const marks = (stations ?? usual?.map(station => stationTape(station, filed.boat.units)) ?? []).flatMap(
    (station, i): readonly Asked[] => {
      const read = readQuantity(station, 'length', units, { counted: 'station' });
      if (!read.ok) return [];
      return [
        {
          key: 'marks',
          station,
          where: `${station} ${stationsCount(units)}`,
          at: read.value.value,
          label: `Water ${i === 0 ? 'near the bow' : 'near the stern'}`,
          ...lengthSteps(units),
          ...waterHeight(units),
          reading: { ...unread(READS.mark), of: 'mark', station: read.value.value },
        },
      ];
    },
  );
  return [...marks, angle('heel', 'Heel', HEEL), angle('trim', 'Trim, where you have a level on board', TRIM)];
}

function askedUnder(units: FileUnits): readonly Asked[] {
  const isImperial = units.length === 'in' || units.length === 'ft';
  return [
    angle('trim', 'Trim', TRIM),
    angle('heel', 'Heel', HEEL),
    {
      ...{
        key: 'fill',
        station: null,
        where: null,
        at: null,
        label: 'Tank',
        unit: '%',
        step: 1,
        most: 100,
        ways: null,
      },
      how: 'How full the tanks are, all together, when it neither rises nor sinks.',
      reading: { ...unread(READS.fill), of: 'fill', tank: null },
    },
    {
      ...{ key: 'water', station: null, where: null, at: null, label: 'Tank', most: null, ways: null },
      ...(isImperial ? { unit: 'in3', step: 0.5 } : { unit: 'ml', step: 5 }),
      how: 'Water of all tanks, poured into a measuring jug afterwards.',
      reading: { ...unread(0), of: 'water', tank: null },
    },
    {
      ...{ key: 'proud', station: null, where: null, at: null, label: 'Not quite under?', most: null, ways: null },
      ...lengthSteps(units),
      how: 'How much of the fin or the periscope still stood out. Leave it blank when it was under.',
      reading: null,
    },
  ];
}

const angle = (key: 'heel' | 'trim', label: string, ways: PoolField['ways']): Asked => ({
  ...{ key, station: null, where: null, at: null, label, unit: '°', step: 0.5, most: MOST_TILT, ways },
  how: 'From level, once it lies at rest.',
  reading: { ...unread(READS.angle), of: key },
});

/** In the file's own unit where a tape has it: a sixteenth of an inch, a millimetre. */
function lengthSteps({ length }: FileUnits): Pick<PoolField, 'unit' | 'step' | 'most'> {
  if (length === 'in' || length === 'ft') return { unit: 'in', step: 1 / 16, most: null };
  return length === 'cm' ? { unit: 'cm', step: 0.1, most: null } : { unit: 'mm', step: 1, most: null };
}

/** How the height of the water is read: from the keel line, or where heights count from the waterline to either side of it. */
const waterHeight = ({ origin }: FileUnits): Pick<PoolField, 'how' | 'ways'> =>
  origin?.heights === 'waterline'
    ? {
        how: 'Height of the surface over the level of the painted waterline amidships, on the centreline.',
        ways: ['above the waterline', 'below the waterline'],
      }
    : { how: 'Height of the surface above the keel line, on the centreline.', ways: null };

type Foretold = ReadonlyMap<Reading | null, ComparedReading & { readonly predicted: number }>;

/** What the boat would show; nothing while parts of the file are missing, and where it could not lie so. */
function foretold(analysis: Analysis, trial: Trial, source: Analysis['source']): Foretold {
  const { kept, file, trials, filedUncertainties } = analysis;
  if (!file.isWhole) return new Map();
  const inputs = filedUncertainties?.inputs ?? inputsOf(source, kept.variations);
  const { readings } = compareTrial({ source, inputs, cache: kept.cache, variations: kept.variations, trials }, trial);
  return new Map(
    readings.flatMap(one => (one.predicted === null ? [] : [[one.reading, { ...one, predicted: one.predicted }]])),
  );
}

function expectedIn(
  found: (ComparedReading & { readonly predicted: number }) | undefined,
  { unit, step }: Pick<PoolField, 'unit' | 'step'>,
  { boat: { units }, withTrials }: Analysis,
): Expected | null {
  if (!found) return null;
  const { reading, predicted, uncertainty } = found;
  const value = readingText(reading, predicted, units);
  // What the trials leave open of a reading is not figured: the file's own uncertainty would be too wide.
  const words = withTrials ? value : plusMinus(value, sizeText(reading, uncertainty, units));
  const counted = reading.of === 'mark' ? countedAt(predicted, 'height', units) : predicted;
  return { size: onStep(inUnit(counted, unit), step), words };
}

const byFileOf = (found: (ComparedReading & { readonly predicted: number }) | undefined): ByFile | null =>
  found
    ? { of: found.reading.of, predicted: found.predicted, uncertainty: found.uncertainty, sigma: found.sigma }
    : null;

function inUnit(value: number, name: string): number {
  const unit = unitOfReading(name);
  return unit ? Math.abs(fromSi(value, unit)) : 0;
}

/** To the nearest step, without the dust of binary fractions. */
const onStep = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(4));
