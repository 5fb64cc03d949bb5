import { isMap } from '../../../schema/fields.ts';
import type { Path } from '../../../schema/path.ts';
import { momentOf, startsBy } from '../boat/moment.ts';
import type { Trial } from '../boat/trial.ts';
import type { Change } from '../findings/finding.ts';
import { writtenValue } from '../text/editing/writtenEntry.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { entriesOf, valueAt } from '../text/reading/values.ts';

/** Figures of an entry that `was` can say of an earlier day. */
const KEPT = ['mass', 'density', 'in', 'station', 'offset', 'height', 'round', 'box', 'ball', 'volume', 'balance'];

/** An offset that was taken for granted, with its usual uncertainty. */
const ON_CENTRELINE = '0 mm ± 1 mm';

/**
 * Changes to the payload that leave every trial so far the boat of its day: what is put in says since when it is aboard,
 * what is taken out stays as taken out, what is moved or recut keeps what it was. There is no clock here, so the last trial
 * with readings is the day before. Without trials, and of a piece that no trial had aboard, the changes stay as they are.
 */
export function keepHistory(changes: readonly Change[], syntax: Syntax, trials: readonly Trial[]): readonly Change[] {
  const last = trials.findLast(({ readings }) => readings.length > 0);
  if (!last) return changes;
  const log: Log = { syntax, trials, last, number: Number(last.path.at(-1)) + 1 };
  const kept = changes.map((change): Change => {
    if (change.kind === 'append' && change.path.length === 1 && change.path[0] === 'payload')
      return { ...change, entry: { ...change.entry, fields: [...change.entry.fields, ['fitted', after(log)]] } };
    if (change.kind === 'remove' && isEntry(change.path) && wasAboard(change.path, log))
      return { kind: 'add-key', path: change.path, key: 'removed', text: after(log) };
    return change;
  });
  const touched = new Map<number, Map<string, string>>();
  for (const change of changes) {
    const figure = figureOf(change);
    if (!figure || !wasAboard(['payload', figure.index], log)) continue;
    const figures = touched.get(figure.index) ?? new Map<string, string>();
    const old = writtenValue(syntax, ['payload', figure.index, figure.key]);
    if (old !== null || figure.key === 'offset') figures.set(figure.key, old ?? ON_CENTRELINE);
    touched.set(figure.index, figures);
  }
  const all = [...kept, ...[...touched].flatMap(([index, figures]) => written(['payload', index], figures, log))];
  // A key of the last entry ends where an entry after it begins: it has to be written first.
  return [...all.filter(({ kind }) => kind !== 'append'), ...all.filter(({ kind }) => kind === 'append')];
}

interface Log {
  readonly syntax: Syntax;
  readonly trials: readonly Trial[];
  readonly last: Trial;
  /** Its place in the list, from 1. */
  readonly number: number;
}

const after = ({ number }: Log): string => `after trial ${number}`;

const isEntry = (path: Path): boolean => path.length === 2 && path[0] === 'payload';

/** The figure of a payload entry that a change gives another value. */
function figureOf(change: Change): { readonly index: number; readonly key: string } | null {
  const path =
    change.kind === 'add-key'
      ? [...change.path, change.key]
      : change.kind === 'replace' && change.place.on === 'value'
        ? change.place.path
        : [];
  const [section, index, key] = path;
  return section === 'payload' && typeof index === 'number' && KEPT.includes(String(key))
    ? { index, key: String(key) }
    : null;
}

/** Some trial so far may have had it aboard. */
function wasAboard(path: Path, { syntax, trials, last }: Log): boolean {
  const fitted = valueAt(syntax, [...path, 'fitted']);
  const moment =
    typeof fitted === 'string' || typeof fitted === 'number' ? momentOf(String(fitted), trials, false) : '';
  return typeof moment === 'string' || startsBy(moment, last);
}

/** What the entry was until the last trial: beside what it says of that already. */
function written(path: Path, figures: ReadonlyMap<string, string>, log: Log): readonly Change[] {
  const { syntax, trials, number } = log;
  const list: Path = [...path, 'was'];
  const states = entriesOf(syntax, list);
  const index = states.length - 1;
  const state = states.at(-1)?.value;
  const until = isMap(state) && typeof state.until === 'string' ? momentOf(state.until, trials, true) : null;
  const fields = [...figures];
  if (fields.length === 0) return [];
  if (isMap(state) && until !== null && typeof until !== 'string' && !startsBy(until, log.last))
    return fields.flatMap(([key, text]) =>
      key in state ? [] : [{ kind: 'add-key', path: [...list, index], key, text } as const],
    );
  const all: readonly (readonly [string, string])[] = [['until', `trial ${number}`], ...fields];
  if (states.length > 0) return [{ kind: 'append', path: list, entry: { fields: all } }];
  const text = `[{ ${all.map(([key, value]) => `${key}: ${value}`).join(', ')} }]`;
  return [{ kind: 'add-key', path, key: 'was', text }];
}
