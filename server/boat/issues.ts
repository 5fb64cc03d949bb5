import type * as z from 'zod';
import { closest } from '../../schema/closest.ts';
import { type IssueNote, isList, isMap } from '../../schema/fields.ts';
import type { Path } from '../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';

/** What was checked, to speak of it: "a part", and the keys that it may have. */
export interface Checked {
  readonly what: string;
  readonly value: unknown;
  readonly path: Path;
  /** Keys that may stand in the map, for "did you mean"; by path inside the value. */
  readonly keysAt: (path: Path) => readonly string[];
}

/** The schema's issues as findings, on their exact places, with the mends that can be told. */
export function issueFindings(issues: readonly z.core.$ZodIssue[], checked: Checked): readonly Finding[] {
  return issues.flatMap(issue => issueFinding(issue, checked));
}

function issueFinding(issue: z.core.$ZodIssue, checked: Checked): readonly Finding[] {
  const path: Path = [...checked.path, ...(issue.path as (string | number)[])];
  if (issue.code === 'unrecognized_keys') return issue.keys.map(key => unknownKey(key, path, issue, checked));
  const note = issue.code === 'custom' ? (issue.params as IssueNote | undefined) : undefined;
  if (note?.inner) {
    const from = issue.path.slice(0, issue.path.length - note.inner.path.length) as (string | number)[];
    const inner: Checked = { ...checked, path: [...checked.path, ...from], value: valueAt(checked.value, from) };
    const keysAt = (at: Path) => checked.keysAt([...from, ...at]);
    return issueFinding(note.inner, { ...inner, keysAt });
  }
  const owner = valueAt(checked.value, issue.path.slice(0, -1) as Path);
  const key = issue.path.at(-1);
  if (typeof key === 'string' && isMap(owner) && !(key in owner)) return [missingKey(key, path, checked)];
  if (!note?.slip)
    return [{ code: 'wrong-value', severity: 'error', message: issue.message, place: { on: 'value', path } }];
  const { message, start, end, replacement } = note.slip;
  const place = { on: 'value', path, ...(end > start ? { within: [start, end] as const } : {}) } as const;
  const mends =
    replacement === undefined
      ? []
      : [{ title: `Change to “${replacement}”`, changes: [{ kind: 'replace', place, text: replacement } as const] }];
  return [{ code: 'wrong-quantity', severity: 'error', message, place, mends }];
}

function missingKey(key: string, path: Path, checked: Checked): Finding {
  return {
    code: 'missing-key',
    severity: 'error',
    message: `${capital(checked.what)} needs “${key}”: add a line “${key}: …”.`,
    place: { on: 'entry', path: path.slice(0, -1) },
  };
}

function unknownKey(key: string, path: Path, issue: z.core.$ZodIssue, checked: Checked): Finding {
  const known = checked.keysAt(issue.path as Path);
  const owner = valueAt(checked.value, issue.path as Path);
  const free = known.filter(candidate => !isMap(owner) || !(candidate in owner));
  const near = closest(key, free);
  const place = { on: 'key', path: [...path, key] } as const;
  const expected = near ? `Did you mean “${near}”?` : `Known here: ${known.join(', ')}.`;
  const where = issue.path.length > 0 ? `“${String(issue.path.at(-1))}” of ${checked.what}` : checked.what;
  return {
    code: 'unknown-key',
    severity: 'error',
    message: `There is no key “${key}” in ${where}. ${expected}`,
    place,
    mends: [
      ...(near ? [{ title: `Change to “${near}”`, changes: [{ kind: 'replace', place, text: near } as const] }] : []),
      { title: `Take out “${key}”`, changes: [{ kind: 'remove', path: [...path, key] }] },
    ],
  };
}

function valueAt(value: unknown, path: Path): unknown {
  let at: unknown = value;
  for (const step of path) {
    if (typeof step === 'string' && isMap(at)) at = at[step];
    else if (typeof step === 'number' && isList(at)) at = at[step];
    else return undefined;
  }
  return at;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
