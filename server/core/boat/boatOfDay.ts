import type { PartEntry } from '../../../schema/hull.ts';
import type { Path } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import type { Part } from './boat.ts';
import { valueFault } from './fault.ts';
import { type Moment, momentOf, startsBy } from './moment.ts';
import type { ReadingContext } from './readingContext.ts';
import { readPart } from './readPart.ts';
import type { BoatSource, Source } from './source.ts';
import type { Former, Trial } from './trial.ts';

type Sources = readonly Source<PartEntry, Part>[];

export interface OfDay {
  readonly trials: readonly Trial[];
  readonly findings: readonly Finding[];
}

/** What is carried now, and what was taken out. */
export const aboardAndAshore = (carried: Sources): Pick<BoatSource, 'payload' | 'ashore'> => ({
  payload: carried.filter(({ checked }) => checked.removed === undefined),
  ashore: carried.filter(({ checked }) => checked.removed !== undefined),
});

/** Says in each trial which payload entries were otherwise on its day: not on board, or not yet moved or recut. */
export function withBoatOfDay(
  { payload, ashore, around }: Pick<BoatSource, 'payload' | 'ashore' | 'around'>,
  trials: readonly Trial[],
): OfDay {
  const findings: Finding[] = [];
  const lives = [...payload, ...ashore].flatMap(source => lifeOf(source, trials, around, findings) ?? []);
  if (lives.length === 0) return { trials, findings };
  return {
    findings,
    trials: trials.map(trial => ({ ...trial, formerly: lives.flatMap(life => formerIn(life, trial) ?? []) })),
  };
}

/** An entry as it was one after the other, the oldest first; the last one is that of the file. */
interface Life {
  readonly source: Source<PartEntry, Part>;
  readonly fitted: Moment | null;
  readonly removed: Moment | null;
  readonly isAshore: boolean;
  readonly states: readonly (Former & { readonly until: Moment })[];
}

/** Null for an entry that always was as it is. */
function lifeOf(
  source: Source<PartEntry, Part>,
  trials: readonly Trial[],
  around: ReadingContext,
  findings: Finding[],
): Life | null {
  const { checked, entry } = source;
  const { fitted, removed, was = [] } = checked;
  if (fitted === undefined && removed === undefined && was.length === 0) return null;
  const at = (text: string | undefined, keys: Path, isAfter = false): Moment | null => {
    const path = [...entry.path, ...keys];
    const found = text === undefined ? null : momentOf(text, trials, isAfter);
    if (typeof found !== 'string') return found;
    findings.push(valueFault('unknown-day', path, found, { severity: 'warning' }));
    return null;
  };
  const states: (Former & { readonly until: Moment })[] = [];
  let next: Former = { path: entry.path, part: source, changed: {} };
  for (const [i, { until, ...figures }] of [...was.entries()].reverse()) {
    next = earlier(next, figures, i, around, findings);
    const moment = at(until, ['was', i, 'until'], true);
    if (moment) states.unshift({ ...next, until: moment });
  }
  return {
    source,
    fitted: at(fitted, ['fitted']),
    removed: at(removed, ['removed']),
    isAshore: removed !== undefined,
    states,
  };
}

type Figures = Omit<NonNullable<PartEntry['was']>[number], 'until'>;

/** Only one of these stands in an entry. */
const FORMS = ['round', 'box', 'ball', 'profile', 'sections', 'mesh', 'volume', 'forms'] as const;

/** The entry before a change: what it says of itself, but for the figures that were others. */
function earlier(later: Former, figures: Figures, index: number, around: ReadingContext, findings: Finding[]): Former {
  const { path, part, changed } = later;
  if (!part) return later;
  const { was, fitted, removed, ...rest } = part.checked;
  const base: PartEntry = { ...rest };
  if (FORMS.some(key => key in figures)) for (const key of FORMS) delete base[key];
  // Its weight in water was that of what it weighed then.
  if ('mass' in figures || FORMS.some(key => key in figures)) delete base.inWater;
  const checked: PartEntry = { ...base, ...figures };
  const told: Finding[] = [];
  const entry = readPart(checked, path, around, told);
  if (!entry) {
    const [problem] = told;
    if (problem) findings.push({ ...problem, place: { on: 'value', path: [...path, 'was', index] } });
    return later;
  }
  const keys = Object.fromEntries(Object.keys(figures).map(key => [key, index]));
  return { path, part: { checked, entry }, changed: { ...changed, ...keys } };
}

/** How it was in a trial; null where it was as the file has it now. */
function formerIn({ source, fitted, removed, isAshore, states }: Life, trial: Trial): Former | null {
  const { path } = source.entry;
  const isOut = (fitted && !startsBy(fitted, trial)) || (removed && startsBy(removed, trial));
  if (isOut) return isAshore ? null : { path, part: null, changed: {} };
  const state = states.find(({ until }) => !startsBy(until, trial));
  if (state) return { path, part: state.part, changed: state.changed };
  return isAshore ? { path, part: source, changed: {} } : null;
}
