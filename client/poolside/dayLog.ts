/** What hands do to the day: pure functions. Whatever changes the boat, or takes its trials away, first closes what was read. */
import {
  type LoosePiece,
  openTrials,
  type PoolCondition,
  type PoolDay,
  type PoolReading,
  type PoolTime,
  type ReadingKey,
} from '../../server/core/poolside/day.ts';

/** Which reading: a mark has a station besides. */
export type ReadingId = Pick<PoolReading, 'key' | 'station'>;

const isOf = (reading: ReadingId, id: ReadingId): boolean => reading.key === id.key && reading.station === id.station;

export const readingIn = (day: PoolDay, condition: PoolCondition, id: ReadingId): PoolReading | null =>
  day.open[condition].readings.find(reading => isOf(reading, id)) ?? null;

/** The water in the tanks is read in one way: the other one is given up. */
const INSTEAD: Partial<Record<ReadingKey, ReadingKey>> = { fill: 'water', water: 'fill' };

/** A reading entered, or entered anew; nothing of it left, it is taken out. */
export function enter(day: PoolDay, condition: PoolCondition, reading: PoolReading, now: PoolTime): PoolDay {
  const { readings, when } = day.open[condition];
  const at = readings.findIndex(other => isOf(other, reading));
  const isEmpty = reading.size === null && reading.way === null;
  const others = readings.filter(other => !isOf(other, reading) && other.key !== INSTEAD[reading.key]);
  const next = isEmpty
    ? others
    : at >= 0
      ? readings.map((other, i) => (i === at ? reading : other))
      : [...others, reading];
  return {
    ...day,
    open: { ...day.open, [condition]: { readings: next, when: next.length > 0 ? (when ?? now) : null } },
  };
}

/** What is being read is read: the next reading begins another trial. */
export function closeTrials(day: PoolDay): PoolDay {
  const unread = { readings: [], when: null };
  const closed = [...day.closed, ...openTrials(day)];
  return { ...day, closed, open: { surfaced: unread, submerged: unread } };
}

export function putAboard(day: PoolDay, piece: LoosePiece): PoolDay {
  const finished = closeTrials(day);
  const others = finished.aboard.filter(({ name }) => name !== piece.name);
  return { ...finished, aboard: [...others, piece] };
}

export function takeAshore(day: PoolDay, name: string): PoolDay {
  const finished = closeTrials(day);
  return { ...finished, aboard: finished.aboard.filter(piece => piece.name !== name) };
}

/** A trial that is read is taken out of the day. */
export const dropTrial = (day: PoolDay, index: number): PoolDay => ({
  ...day,
  closed: day.closed.filter((_, i) => i !== index),
});

/** The water is read at another station: what was read at the one before goes with it. */
export function moveMark(day: PoolDay, from: readonly string[], which: number, to: string): PoolDay {
  const [fore, aft] = from.map((station, i) => (i === which ? to : station));
  if (fore === undefined || aft === undefined) return day;
  const { surfaced } = day.open;
  const readings = surfaced.readings.filter(({ key, station }) => key !== 'marks' || station !== from[which]);
  const when = readings.length > 0 ? surfaced.when : null;
  return { ...day, stations: [fore, aft], open: { ...day.open, surfaced: { readings, when } } };
}
