import type { Trial } from './trial.ts';

/** A point in the log of trials: from which of them on something is so. */
export interface Moment {
  /** The first trial of which it is so, by its place in the file. */
  readonly from: number;
  /** The day from which it is so where one was given, and whether that day itself still had it otherwise. */
  readonly day: { readonly date: string; readonly isAfter: boolean } | null;
}

/** A date as it sorts. */
const DATE = /^\d{4}-\d{2}-\d{2}$/;

/**
 * A moment as the file says it: `2026-05-10` and `trial 3` from then on, `after 2026-05-10` and `after trial 3` from the next
 * one on; `isAfter`: without the word too. Days are compared where a trial has a date too; one without comes
 * after those above it. What is no day and no trial is told in a sentence.
 */
export function momentOf(text: string, trials: readonly Trial[], isAfter: boolean): Moment | string {
  const [, after, name] = /^(after\s+)?(.*)$/is.exec(text.trim())!;
  const past = isAfter || after !== undefined;
  const number = /^trial\s+(\d+)$/i.exec(name!)?.[1];
  const called = trials.filter(trial => trial.name === name).map(indexOf);
  if (number !== undefined && called.length === 0) {
    const index = Number(number) - 1;
    const last = Math.max(-1, ...trials.map(indexOf));
    if (index >= 0 && index <= last) return { from: index + (past ? 1 : 0), day: null };
    return last < 0
      ? `There are no trials in the file, so there is no trial ${number}.`
      : `There is no trial ${number}: the file has ${last + 1}, counted from the top.`;
  }
  if (DATE.test(name!)) {
    const day = { date: name!, isAfter: past };
    const before = trials.filter(({ date }) => date !== null && DATE.test(date) && !isFrom(day, date)).map(indexOf);
    return { from: Math.max(-1, ...before) + 1, day };
  }
  if (called.length > 0) return { from: past ? Math.max(...called) + 1 : Math.min(...called), day: null };
  return `“${text}” is no day such as 2026-05-10, and no trial is called so. Give a date, or a trial by its place: “after trial 3”.`;
}

/** Whether it is so in a trial already. */
export function startsBy({ from, day }: Moment, trial: Trial): boolean {
  if (day && trial.date !== null && DATE.test(trial.date)) return isFrom(day, trial.date);
  return indexOf(trial) >= from;
}

const isFrom = ({ date, isAfter }: NonNullable<Moment['day']>, other: string): boolean =>
  isAfter ? other > date : other >= date;

/** Place of a trial in the file, from 0. */
const indexOf = ({ path }: Trial): number => Number(path.at(-1));
