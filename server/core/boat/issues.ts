import type * as z from 'zod';
import type { KeyInfo } from '../../../schema/describe.ts';
import { asText, type IssueNote, isList, isMap } from '../../../schema/fields.ts';
import { type Path, pathKey } from '../../../schema/path.ts';
import { wordMeant } from '../../../schema/tradeWords.ts';
import type { Finding, Mend } from '../findings/finding.ts';
import { capital } from '../wording/capital.ts';
import { changeTo } from './fault.ts';
import { keyMeantBy, mostUnknown, type UnknownKey, unknownKey } from './unknownKey.ts';
import { waterMeant } from './waterMeant.ts';

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
  // What an unknown key stands for nobody can tell: it may be any that is missing.
  const unclear = new Set(all.flatMap(({ issue, inside }) => unclearMap(issue, inside, checked)));
  return all.flatMap(({ issue, inside }) => {
    if (issue.code === 'unrecognized_keys')
      return toldKeys(issue).map(key => unknownKey(unknownIn(key, inside, checked)));
    const key = inside.at(-1);
    const owner = valueAt(checked.value, inside.slice(0, -1));
    // Its keys may be those that stand elsewhere.
    if (unclear.size > 0 && valueAt(checked.value, inside) === null) return [];
    if (typeof key !== 'string' || !isMap(owner) || key in owner) return [wrongValue(issue, inside, checked)];
    const isElsewhere = meant.has(pathKey(inside)) || unclear.has(pathKey(inside.slice(0, -1)));
    return isElsewhere ? [] : [missingKey(key, inside, checked)];
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

/** A value that is none of those that belong here; the nearest of a few words is offered. */
function wrongWord(issue: z.core.$ZodIssue, inside: Path, checked: Checked): Finding {
  const path = [...checked.path, ...inside];
  const said = asText(valueAt(checked.value, inside));
  if (isWater(issue, path)) {
    const { text, hint } = waterMeant(said);
    const place = { on: 'value', path } as const;
    const mends: readonly Mend[] =
      text === null ? [] : [{ title: `Change to “${text}”`, changes: [{ kind: 'replace', place, text }] }];
    return {
      code: 'wrong-value',
      severity: 'error',
      about: 'file',
      message: `${issue.message} ${hint}`.trim(),
      place,
      mends,
    };
  }
  const near =
    issue.code === 'invalid_value'
      ? wordMeant(said, issue.values.map(String))
      : issue.code === 'invalid_type' && issue.expected === 'boolean'
        ? wordMeant(said, ['true', 'false'])
        : isNumber(issue) && typeof valueAt(checked.value, inside) === 'string'
          ? (/^\D*?(\d+(?:\.\d+)?)[^\d.]*$/.exec(said)?.[1] ?? null)
          : null;
  const isKindOfWater = path.at(-1) === 'kind' && path.at(-2) === 'water';
  const other = isKindOfWater ? ` ${waterMeant(said).hint}`.trimEnd() : '';
  const hint = near === null ? other : ` Did you mean “${near}”?`;
  return {
    code: 'wrong-value',
    severity: 'error',
    about: 'file',
    message: issue.message + hint,
    place: { on: 'value', path },
    mends: changeTo(path, near),
  };
}

/** The water, or that of a trial, as a word. */
const isWater = (issue: z.core.$ZodIssue, path: Path): boolean =>
  issue.code === 'invalid_value' && (path.at(-1) === 'pool' || (path.length === 1 && path[0] === 'water'));

const isNumber = (issue: z.core.$ZodIssue): boolean =>
  issue.code === 'invalid_type' && (issue.expected === 'number' || issue.expected === 'int');

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

/** Places of the keys that unknown ones were meant to be. */
const meantKeys = (issue: z.core.$ZodIssue, map: Path, checked: Checked): readonly string[] =>
  issue.code !== 'unrecognized_keys'
    ? []
    : toldKeys(issue).flatMap(key => {
        const near = keyMeantBy(unknownIn(key, map, checked));
        return near === null ? [] : [pathKey([...map, near])];
      });

const unclearMap = (issue: z.core.$ZodIssue, map: Path, checked: Checked): readonly string[] =>
  issue.code === 'unrecognized_keys' &&
  (issue.keys.length > mostUnknown || issue.keys.some(key => keyMeantBy(unknownIn(key, map, checked)) === null))
    ? [pathKey(map)]
    : [];

const toldKeys = ({ keys }: { readonly keys: readonly string[] }): readonly string[] => keys.slice(0, mostUnknown);

const unknownIn = (key: string, map: Path, checked: Checked): UnknownKey => ({
  key,
  map: [...checked.path, ...map],
  owner: valueAt(checked.value, map),
  where: ownerWords(map, checked),
  known: checked.keysAt(map),
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
