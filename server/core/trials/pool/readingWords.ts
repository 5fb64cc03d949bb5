import type { FileUnits } from '../../../../schema/units.ts';
import type { Reading, Trial } from '../../boat/trial.ts';
import {
  angleText,
  heelWords,
  lengthText,
  massText,
  percentText,
  stationWords,
  trimWords,
  volumeText,
} from '../../wording/numbers.ts';
import { heightText } from '../../wording/places.ts';

/** What was read, to begin a sentence with: "the water at station 60 mm". */
export function readingName(reading: Reading, units: FileUnits): string {
  switch (reading.of) {
    case 'mark':
      return `the water ${stationWords(reading.station, units)}`;
    case 'freeboard':
      return `the freeboard ${stationWords(reading.station, units)}`;
    case 'trim':
      return 'the trim';
    case 'heel':
      return 'the heel';
    case 'tilt':
      return 'the heel that the weight made';
    case 'fill':
      return 'the fill of the tanks';
    case 'water':
      return 'the water in the tanks';
    case 'level':
      return 'the level in the tank';
    case 'scale':
      return reading.pair ? `the scale ${stationWords(reading.pair.station, units)}` : 'the mass on the scale';
    case 'hook':
      return reading.pair ? `the spring balance ${stationWords(reading.pair.station, units)}` : 'the weight in water';
    case 'balance':
      return 'the balance point';
  }
}

/** A value of a reading, with sign words. */
export function readingText({ of }: Pick<Reading, 'of'>, value: number, units: FileUnits): string {
  switch (of) {
    case 'trim':
      return trimWords(value);
    case 'heel':
    case 'tilt':
      return heelWords(value);
    case 'fill':
      return percentText(value);
    case 'water':
      return volumeText(value, units);
    case 'scale':
    case 'hook':
      return massText(value, units);
    case 'balance':
      return stationWords(value, units);
    case 'mark':
      return heightText(value, units);
    default:
      return lengthText(value, units);
  }
}

/** A size of a reading without its sign: an uncertainty, or a difference. */
export function sizeText({ of }: Pick<Reading, 'of'>, size: number, units: FileUnits): string {
  const value = Math.abs(size);
  if (of === 'trim' || of === 'heel' || of === 'tilt') return angleText(value);
  if (of === 'fill') return percentText(value);
  if (of === 'scale' || of === 'hook') return massText(value, units);
  return of === 'water' ? volumeText(value, units) : lengthText(value, units);
}

/** Which way what was read is off from what was expected. */
export function wayOff({ of }: Pick<Reading, 'of'>, difference: number): string {
  const isMore = difference > 0;
  if (of === 'trim') return isMore ? 'more bow up' : 'more bow down';
  if (of === 'heel' || of === 'tilt') return isMore ? 'more to starboard' : 'more to port';
  if (of === 'balance') return isMore ? 'further aft' : 'further forward';
  return isMore ? 'more' : 'less';
}

/** How a trial is called in a sentence. */
export const trialName = ({ date, path }: Trial): string =>
  date === null ? `trial ${Number(path.at(-1)) + 1}` : `the trial of ${date}`;

/** Past this a reading and the file do not agree: chance alone goes so far once in twenty. */
export const DIFFERS = 2;

/** A score in plain words (the two-sided odds of the normal distribution: 1 in 3, 1 in 20, 1 in 370). */
export function scoreWords(score: number): string {
  const size = Math.abs(score);
  if (size < 1) return 'they agree';
  if (size < DIFFERS) return 'they agree as well as can be expected';
  return size < 3
    ? 'they differ: chance goes so far once in twenty'
    : 'they do not agree: chance hardly ever goes so far';
}
