import type * as z from 'zod';
import { closest } from '../../../schema/closest.ts';
import type { KeyInfo } from '../../../schema/describe.ts';
import { type IssueNote, isList, isMap } from '../../../schema/fields.ts';
import { type Path, pathKey } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import { capital } from '../wording/capital.ts';
import { changeTo } from './fault.ts';

/** What was checked, to speak of it: "a part", and the keys that it may have. */
export interface Checked {
  readonly what: string;
  readonly value: unknown;
  readonly path: Path;
  /** Keys that may stand in the map, by path inside the value: for "did you mean" and for examples. */
  readonly keysAt: (path: Path) => readonly KeyInfo[];
}

/** One issue with its path inside the value that was checked. */
interface Issue {
  readonly issue: z.core.$ZodIssue;
  readonly inside: Path;
}

/** The schema's issues as findings, on their exact places, with the mends that can be told. */
export function issueFindings(issues: readonly z.core.$ZodIssue[], checked: Checked): readonly Finding[] {
  const all = issues.map(issue => unwrapped({ issue, inside: issue.path as Path }));
  // A key that is missing because it is misspelt is one slip, told where it stands.
  const meant = new Set(all.flatMap(({ issue, inside }) => meantKeys(issue, inside, checked)));
  return all.flatMap(({ issue, inside }) => {
    if (issue.code === 'unrecognized_keys') return issue.keys.map(key => unknownKey(key, inside, checked));
    const key = inside.at(-1);
    const owner = valueAt(checked.value, inside.slice(0, -1));
    if (typeof key !== 'string' || !isMap(owner) || key in owner) return [wrongValue(issue, inside, checked)];
    return meant.has(pathKey(inside)) ? [] : [missingKey(key, inside, checked)];
  });
}

/** The issue that the way of writing found which was chosen for a value, as `choose` passes it on. */
function unwrapped({ issue, inside }: Issue): Issue {
  const inner = noteOf(issue)?.inner;
  if (!inner) return { issue, inside };
  const from = inside.slice(0, inside.length - inner.path.length);
  return unwrapped({ issue: inner, inside: [...from, ...(inner.path as Path)] });
}

const noteOf = (issue: z.core.$ZodIssue): IssueNote | undefined =>
  issue.code === 'custom' ? (issue.params as IssueNote | undefined) : undefined;

function wrongValue(issue: z.core.$ZodIssue, inside: Path, checked: Checked): Finding {
  const path = [...checked.path, ...inside];
  const slip = noteOf(issue)?.slip;
  if (!slip) return wrongWord(issue, inside, checked);
  const { message, start, end, replacement } = slip;
  if (slip.lacks === 'scale')
    return {
      code: 'scale-missing',
      severity: 'error',
      about: 'file',
      message,
      place: { on: 'value', path },
      mends: SCALES,
    };
  const place = { on: 'value', path, ...(end > start ? { within: [start, end] as const } : {}) } as const;
  const mends =
    replacement === undefined
      ? []
      : [{ title: `Change to “${replacement}”`, changes: [{ kind: 'replace', place, text: replacement } as const] }];
  return { code: 'wrong-quantity', severity: 'error', about: 'file', message, place, mends };
}

/** Scales that kits and plans of submarines are drawn to (common practice, no source): one of them is the model's, most likely. */
const SCALES = ['1:72', '1:48', '1:96', '1:144'].map(scale => ({
  title: `Add “scale: ${scale}”`,
  changes: [{ kind: 'add-key', path: [], key: 'scale', text: scale } as const],
}));

const YES_AND_NO: Readonly<Record<string, string>> = { yes: 'true', on: 'true', no: 'false', off: 'false' };

/** A value that is none of those that belong here; the nearest of a few words is offered. */
function wrongWord(issue: z.core.$ZodIssue, inside: Path, checked: Checked): Finding {
  const path = [...checked.path, ...inside];
  const said = String(valueAt(checked.value, inside));
  const near =
    issue.code === 'invalid_value'
      ? closest(said, issue.values.map(String))
      : issue.code === 'invalid_type' && issue.expected === 'boolean'
        ? (YES_AND_NO[said.toLowerCase()] ?? null)
        : null;
  const hint = near === null ? '' : ` Did you mean “${near}”?`;
  return {
    code: 'wrong-value',
    severity: 'error',
    about: 'file',
    message: issue.message + hint,
    place: { on: 'value', path },
    mends: changeTo(path, near),
  };
}

function missingKey(key: string, inside: Path, checked: Checked): Finding {
  const map = [...checked.path, ...inside.slice(0, -1)];
  const info = checked.keysAt(inside.slice(0, -1)).find(each => each.key === key);
  const words = info?.words ?? [];
  const example = info?.example ?? words[0];
  const such = example === undefined ? '' : `, such as “${key}: ${example}”`;
  const oneOf = words.length > 1 ? ` It is one of ${words.map(word => `“${word}”`).join(', ')}.` : '';
  return {
    code: 'missing-key',
    severity: 'error',
    about: 'file',
    message: `${capital(ownerWords(inside.slice(0, -1), checked))} needs “${key}”${such}.${oneOf}`,
    place: { on: 'entry', path: map },
    mends: words.map(word => ({
      title: `Add “${key}: ${word}”`,
      changes: [{ kind: 'add-key', path: map, key, text: word }],
    })),
  };
}

function unknownKey(key: string, map: Path, checked: Checked): Finding {
  const path = [...checked.path, ...map, key];
  const place = { on: 'key', path } as const;
  const joined = withoutColon(key, map, checked);
  const near = joined ?? nearestKey(key, map, checked);
  const known = checked.keysAt(map).map(info => info.key);
  const expected = near === null ? `Known here: ${known.join(', ')}.` : `Did you mean “${near}”?`;
  const message =
    joined === null
      ? `There is no key “${key}” in ${ownerWords(map, checked)}. ${expected}`
      : `“${key}” has no colon. Write the key, a colon, a space and the value: “${joined}”.`;
  return {
    code: 'unknown-key',
    severity: 'error',
    about: 'file',
    message,
    place,
    mends: [
      ...(near === null
        ? []
        : [{ title: `Change to “${near}”`, changes: [{ kind: 'replace', place, text: near } as const] }]),
      { title: `Take out “${key}”`, changes: [{ kind: 'remove', path }] },
    ],
  };
}

/** `trim 0.5°` between braces: a key and its value that YAML takes for one key; null for anything else. */
function withoutColon(key: string, map: Path, checked: Checked): string | null {
  const [, name, value] = /^(\S+)\s+(\S.*)$/.exec(key) ?? [];
  const isKnown = checked.keysAt(map).some(info => info.key === name);
  const owner = valueAt(checked.value, map);
  const isBare = isMap(owner) && (owner[key] ?? null) === null;
  return isKnown && isBare ? `${name}: ${value}` : null;
}

/** The known key, not yet in the map, that a misspelt one was most likely meant to be. */
function nearestKey(key: string, map: Path, checked: Checked): string | null {
  const owner = valueAt(checked.value, map);
  const free = checked.keysAt(map).filter(info => !isMap(owner) || !(info.key in owner));
  return closest(
    key,
    free.map(info => info.key),
  );
}

/** Places of the keys that unknown ones were meant to be. */
const meantKeys = (issue: z.core.$ZodIssue, map: Path, checked: Checked): readonly string[] =>
  issue.code !== 'unrecognized_keys'
    ? []
    : issue.keys.flatMap(key => {
        const near = withoutColon(key, map, checked)?.split(':')[0] ?? nearestKey(key, map, checked);
        return near === null ? [] : [pathKey([...map, near])];
      });

const ownerWords = (map: Path, { what }: Checked): string => {
  const name = map.findLast(step => typeof step === 'string');
  return name === undefined ? what : `“${name}” of ${what}`;
};

function valueAt(value: unknown, path: Path): unknown {
  let at: unknown = value;
  for (const step of path) {
    if (typeof step === 'string' && isMap(at)) at = at[step];
    else if (typeof step === 'number' && isList(at)) at = at[step];
    else return undefined;
  }
  return at;
}
