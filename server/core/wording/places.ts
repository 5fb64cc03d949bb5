import { type Counted, countedAt } from '../../../schema/places.ts';
import type { FileUnits } from '../../../schema/units.ts';
import { lengthText, tapeText } from './numbers.ts';

/** Places for people: stations and heights as the file counts them. In: m, boat axes. */

/** A station: "310 mm", whatever it counts from. */
export const stationText = (station: number, units: FileUnits): string =>
  lengthText(countedAt(station, 'station', units), units);

/** The same by the marks of the tape. */
export const stationTape = (station: number, units: FileUnits): string =>
  tapeText(countedAt(station, 'station', units), units);

/** A height: "42 mm", whatever it counts from. */
export const heightText = (height: number, units: FileUnits): string =>
  lengthText(countedAt(height, 'height', units), units);

/** A height by the marks of the tape with what it counts from: "31 mm above the baseline". */
export function heightFromWords(height: number, units: FileUnits): string {
  const counted = countedAt(height, 'height', units);
  const from = units.origin?.heights === 'waterline' ? 'the waterline' : 'the baseline';
  return `${tapeText(Math.abs(counted), units)} ${counted < 0 ? 'below' : 'above'} ${from}`;
}

/** A height in a word or two: "12 mm up", "42 mm below the waterline". */
export const heightUp = (height: number, units: FileUnits): string =>
  units.origin?.heights === 'waterline' ? heightFromWords(height, units) : `${lengthText(height, units)} up`;

/** Both ends of a stretch as the file counts them, m, the lesser first. */
export function endsCounted(
  [from, to]: readonly [number, number],
  counted: Counted,
  units: FileUnits,
): readonly [number, number] {
  const [a, b] = [countedAt(from, counted, units), countedAt(to, counted, units)];
  return [Math.min(a, b), Math.max(a, b)];
}

/** Which way stations count, to follow a figure: "aft of the bow tip". */
export function stationsCount({ origin }: FileUnits): string {
  const from = origin?.stations ?? 'bow';
  if (from === 'bow') return 'aft of the bow tip';
  return from === 'stern' ? 'forward of the stern' : from;
}

/** What stations count from, to follow a figure: "from the bow tip". */
export const fromStationZero = ({ origin }: FileUnits): string => {
  const from = origin?.stations ?? 'bow';
  if (from === 'bow') return 'from the bow tip';
  return from === 'stern' ? 'from the stern' : from;
};
