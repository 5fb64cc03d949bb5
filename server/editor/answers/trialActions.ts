import { isInside, type Path } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import type { Part } from '../../core/boat/boat.ts';
import type { Change, Finding } from '../../core/findings/finding.ts';
import { listText, writtenEntry } from '../../core/text/editing/writtenEntry.ts';
import type { Span } from '../../core/text/reading/lines.ts';
import { pathAt } from '../../core/text/reading/pathAt.ts';
import type { LearnedTrial } from '../../core/trials/learn.ts';
import { isOnBoard } from '../../core/trials/pool/dayBoat.ts';
import { DIFFERS, trialName } from '../../core/trials/pool/readingWords.ts';

/** Something that can be done with the trials. */
interface TrialAction {
  readonly title: string;
  readonly changes: readonly Change[];
  /** What the trials have found that is cleared by it; null where it mends nothing. */
  readonly clears: readonly Finding[] | null;
}

/** What can be done where a selection is in the trials, or on what they say of the file. */
export function trialActionsAt(analysis: Analysis, span: Span, isOnFinding: boolean): readonly TrialAction[] {
  if (!asksForTrials(analysis, span, isOnFinding)) return [];
  const { path } = pathAt(analysis.syntax, span[0]);
  const isInTrials = path[0] === 'trials';
  const comparisons = analysis.learned?.comparisons ?? [];
  const here = comparisons.filter(({ trial }) => isInside(path, trial.path));
  const kept = here.length > 0 ? here : lastGood(comparisons);
  return [
    ...analysis.offers.all(),
    ...kept.flatMap(comparison => keepAboard(analysis, comparison) ?? []),
    ...(isInTrials ? [newTrial(analysis)] : []),
  ];
}

/** Whether a selection lies in the trials, or on what they say of the file. */
export const asksForTrials = (analysis: Analysis, [start]: Span, isOnFinding: boolean): boolean =>
  analysis.trials.length > 0 && (isOnFinding || pathAt(analysis.syntax, start).path[0] === 'trials');

/** The last trial in which all was as the file has it. */
const lastGood = (comparisons: readonly LearnedTrial[]): readonly LearnedTrial[] =>
  comparisons
    .filter(({ floatedTrial, readings }) => floatedTrial && readings.every(({ score }) => Math.abs(score) <= DIFFERS))
    .slice(-1);

/**
 * The temporary pieces of a trial as payload entries; in the other trials, which had them not, it is said that they were not
 * on board. Null where there are none, or not all can be written so.
 */
function keepAboard({ syntax, trials, boat }: Analysis, { trial }: LearnedTrial): TrialAction | null {
  const pieces = trial.aboard.map(({ entry }) => entry);
  const entries = pieces.map(({ path }) => writtenEntry(syntax, path));
  const isTaken = pieces.some(({ name }) => boat.payload.some(part => part.name === name));
  if (pieces.length === 0 || isTaken || entries.some(entry => entry === null)) return null;
  const others = trials.filter(other => other !== trial).flatMap(other => leftAshore(other, pieces));
  const changes: readonly Change[] = [
    ...entries.flatMap(entry => (entry ? [{ kind: 'append', path: ['payload'], entry } as const] : [])),
    { kind: 'remove', path: [...trial.path, 'aboard'] },
    ...others,
  ];
  const what = pieces.length === 1 ? `“${pieces[0]!.name}”` : `${pieces.length} pieces`;
  return { title: `Keep what was on board in ${trialName(trial)}: ${what} as payload`, changes, clears: null };
}

/** A trial that had a piece of that name on board has it no longer for itself; one that had it not says so. */
function leftAshore(
  trial: Analysis['trials'][number],
  pieces: readonly Pick<Part, 'name' | 'path'>[],
): readonly Change[] {
  const own = trial.aboard.filter(({ entry }) => pieces.some(({ name }) => name === entry.name));
  const missing = pieces.filter(
    piece => isOnBoard(piece, trial) && !own.some(({ entry }) => entry.name === piece.name),
  );
  const key: Path = [...trial.path, 'without'];
  const names = [...trial.without, ...missing.map(({ name }) => name)];
  const ashore: readonly Change[] =
    missing.length === 0
      ? []
      : trial.without.length === 0
        ? [{ kind: 'add-key', path: trial.path, key: 'without', text: listText(names) }]
        : [{ kind: 'replace', place: { on: 'value', path: key }, text: listText(names) }];
  const isAllOwn = own.length > 0 && own.length === trial.aboard.length;
  const gone: readonly Change[] = isAllOwn
    ? [{ kind: 'remove', path: [...trial.path, 'aboard'] }]
    : own.map(({ entry }) => ({ kind: 'remove', path: entry.path }));
  return [...ashore, ...gone];
}

/** A trial of the same condition with the same marks, its readings still to be overwritten by what is read. */
function newTrial({ syntax, trials }: Analysis): TrialAction {
  const last = trials.at(-1)!;
  const fields = repeatedFields(syntax, last.path).map(
    ([key, text]) => [key, key === 'date' ? 'today' : text] as const,
  );
  return {
    title: `Add a trial with the readings of ${trialName(last)}, to be overwritten`,
    changes: [{ kind: 'append', path: ['trials'], entry: { fields, comment: 'overwrite what you read' } }],
    clears: null,
  };
}

/** Keys that the next trial has again: its date anew, where and what was read, and how the boat was that day. */
const REPEATED = [
  ...['date', 'condition', 'marks', 'freeboard', 'heel', 'trim', 'fill', 'water', 'level', 'tank', 'shifts'],
  ...['scales', 'balance', 'hooks', 'mass', 'moved', 'aboard', 'without', 'pool'],
];

/** What of a trial stands in the next one too: where it was read, and what was on board. */
const repeatedFields = (syntax: Analysis['syntax'], path: Path) =>
  (writtenEntry(syntax, path)?.fields ?? []).filter(([key]) => REPEATED.includes(key));
