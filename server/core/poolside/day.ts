/**
 * A day at the pool as it was entered, in the units that things were read in: plain data that is kept as JSON, and its text
 * as the boat file has it. It imports nothing: page and worker share it.
 */
export interface PoolDay {
  /** What the boat file says, to know whose day it is: `boat:`. */
  readonly boat: string;
  /** Stations of the two water marks as a boat file has them: "60 mm"; null: where they usually are. */
  readonly stations: readonly [fore: string, aft: string] | null;
  /** On board now, for the day only. */
  readonly aboard: readonly LoosePiece[];
  /** Being read: one of each condition. */
  readonly open: Readonly<Record<PoolCondition, OpenTrial>>;
  /** Read, in the order of the day. */
  readonly closed: readonly PoolTrial[];
}

export type PoolCondition = 'surfaced' | 'submerged';

/** Temporary lead or foam as it stands in `aboard:` of a trial: its keys with their texts. */
export interface LoosePiece {
  readonly name: string;
  readonly fields: readonly (readonly [key: string, text: string])[];
}

interface OpenTrial {
  readonly readings: readonly PoolReading[];
  /** When its first reading was entered; null before. */
  readonly when: PoolTime | null;
}

/** A date such as 2026-05-02 and a time such as 14:05, of whoever reads. */
export interface PoolTime {
  readonly date: string;
  readonly time: string;
}

export interface PoolTrial extends PoolTime {
  readonly condition: PoolCondition;
  readonly readings: readonly PoolReading[];
  readonly aboard: readonly LoosePiece[];
}

export type ReadingKey = 'marks' | 'heel' | 'trim' | 'fill' | 'water' | 'proud';

/** One reading, or what is known of it so far. */
export interface PoolReading {
  readonly key: ReadingKey;
  /** Of a mark, as a boat file has it: "60 mm". */
  readonly station: string | null;
  /** Without its sign, in `unit`; null while it is not read. */
  readonly size: number | null;
  readonly unit: string;
  /** Of an angle: 1 bow up and to starboard, -1 bow down and to port; null while nobody said which, and of other readings. */
  readonly way: 1 | -1 | null;
}

const UNREAD: OpenTrial = { readings: [], when: null };

/** A day on which nothing was read yet. */
export const emptyDay = (boat: string): PoolDay => ({
  boat,
  stations: null,
  aboard: [],
  open: { surfaced: UNREAD, submerged: UNREAD },
  closed: [],
});

/** It says something: an angle has a side, unless it is none. */
const isRead = ({ size, unit, way }: PoolReading): boolean =>
  size !== null && (unit !== '°' || way !== null || size === 0);

/** All trials of the day that say something, those being read last. */
export const trialsOf = (day: PoolDay): readonly PoolTrial[] => [...day.closed, ...openTrials(day)];

const CONDITIONS: readonly PoolCondition[] = ['surfaced', 'submerged'];

/** Those being read that say something already. */
export const openTrials = ({ open, aboard }: PoolDay): readonly PoolTrial[] =>
  CONDITIONS.flatMap(condition => {
    const { when, readings: all } = open[condition];
    const readings = all.filter(isRead);
    // What stood out alone says nothing yet.
    return when && readings.some(({ key }) => key !== 'proud') ? [{ ...when, condition, readings, aboard }] : [];
  });

/** What was on board when it was read last: what is put aboard since is in no trial yet. */
export const aboardWhenRead = (day: PoolDay): readonly LoosePiece[] => trialsOf(day).at(-1)?.aboard ?? [];

/** The day's trials as a boat file has them, with the boat's name over them; empty of a day without. */
export function dayText(day: PoolDay): string {
  const trials = trialsOf(day);
  if (trials.length === 0) return '';
  const head = day.boat === '' ? [] : [`boat: ${quoted(day.boat)}`];
  return [...head, 'trials:', ...trials.flatMap(trialLines), ''].join('\n');
}

function trialLines({ date, time, condition, readings, aboard }: PoolTrial): readonly string[] {
  const marks = readings.filter(({ key }) => key === 'marks');
  const others = readings.filter(({ key }) => key !== 'marks');
  return [
    `  - date: ${date}`,
    `    condition: ${condition}`,
    ...(aboard.length > 0 ? ['    aboard:', ...aboard.map(piece => `      - ${pieceText(piece)}`)] : []),
    ...(marks.length > 0 ? [`    marks: [${marks.map(markText).join(', ')}]`] : []),
    ...others.map(reading => `    ${reading.key}: ${readingText(reading)}`),
    `    note: read at ${time}`,
  ];
}

const markText = (reading: PoolReading): string => `{ station: ${reading.station}, height: ${readingText(reading)} }`;

/** "-2°": to port and bow down are negative in the file. */
function readingText({ size, unit, way }: PoolReading): string {
  const figure = `${way === -1 && size !== 0 ? '-' : ''}${size}`;
  return unit === '°' ? `${figure}°` : `${figure} ${unit}`;
}

const pieceText = ({ name, fields }: LoosePiece): string =>
  `{ ${[['name', name], ...fields].map(([key, text]) => `${key}: ${scalar(text!)}`).join(', ')} }`;

/** Figures with their units, and words in small letters, need no quotes in YAML. */
const PLAIN = /^(?:-?\d[\w ./°%±³-]*|lead|foam)$/;

const scalar = (text: string): string => (PLAIN.test(text) ? text : quoted(text));

/** A JSON string is one of YAML in double quotes (YAML 1.2.2, 1.2: JSON is a subset; seen). */
const quoted = (text: string): string => JSON.stringify(text);
