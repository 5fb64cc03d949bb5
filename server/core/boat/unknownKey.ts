import type { KeyInfo } from '../../../schema/describe.ts';
import { asText, isList, isMap } from '../../../schema/fields.ts';
import type { Path } from '../../../schema/path.ts';
import { keyMeant } from '../../../schema/tradeWords.ts';
import { dimensionOf } from '../../../schema/units.ts';
import type { Finding, Mend } from '../findings/finding.ts';
import { quoteScalar } from '../text/reading/quoteScalar.ts';

/** Unknown keys of one map that are told: nobody reads more. */
export const mostUnknown = 100;

/** A key that is none of those that may stand in its map. */
export interface UnknownKey {
  readonly key: string;
  /** Of the map that it stands in. */
  readonly map: Path;
  /** The map as it was read. */
  readonly owner: unknown;
  /** "a part": for the message. */
  readonly where: string;
  readonly known: readonly KeyInfo[];
}

/** What is said of a key that nobody knows: what was meant by it, and how its figure is kept. */
export function unknownKey(unknown: UnknownKey): Finding {
  const { key, map, where, known } = unknown;
  const place = { on: 'key', path: [...map, key] } as const;
  const joined = withoutColon(unknown);
  const meant = joined ?? meantBy(unknown);
  const names = known.map(info => info.key).join(', ');
  const message =
    joined === null
      ? `There is no key “${key}” in ${where}. ${meant === null ? `Known here: ${names}.` : `Did you mean “${meant}”?`}`
      : `“${key}” has no colon. Write the key, a colon, a space and the value: “${joined}”.`;
  const change: readonly Mend[] =
    meant === null ? [] : [{ title: `Change to “${meant}”`, changes: [{ kind: 'replace', place, text: meant }] }];
  return {
    code: 'unknown-key',
    severity: 'error',
    about: 'file',
    message,
    place,
    mends: [...change, ...(joined === null ? keptOrTakenOut(unknown, change.length > 0) : [])],
  };
}

/** `trim 0.5°` between braces: a key and its value that YAML takes for one key; null for anything else. */
function withoutColon({ key, owner, known }: UnknownKey): string | null {
  const [, name, value] = /^(\S+)\s+(\S.*)$/.exec(key) ?? [];
  const isKnown = known.some(info => info.key === name);
  const isBare = isMap(owner) && (owner[key] ?? null) === null;
  return isKnown && isBare ? `${name}: ${value}` : null;
}

/** The key that is meant, as a name: for one that lacks because of this one. */
export const keyMeantBy = (unknown: UnknownKey): string | null =>
  withoutColon(unknown)?.split(':')[0] ?? meantBy(unknown);

/** The key, not yet in the map, that was meant: by the word, or else the one that is needed and takes such a figure. */
function meantBy({ key, owner, known }: UnknownKey): string | null {
  const value = isMap(owner) ? owner[key] : null;
  const free = known.filter(info => !isMap(owner) || !(info.key in owner)).filter(info => takes(info, value));
  const byWord = keyMeant(
    key,
    free.map(info => info.key),
  );
  if (byWord !== null) return byWord;
  const dimension = dimensionIn(value);
  const needed = free.filter(info => info.required && dimension !== null && dimensionIn(info.example) === dimension);
  return needed.length === 1 ? needed[0]!.key : null;
}

/** Whether a value of this make may stand at a key: two sizes, entries, a group of keys. */
function takes({ example, holds }: KeyInfo, value: unknown): boolean {
  if (value === null || value === undefined) return true;
  if (holds === 'map') return isMap(value);
  if (holds === 'list') return isList(value);
  if (isMap(value) || isList(value)) return true;
  return !/ x /.test(example ?? '') || /\d\s{0,3}\D{0,3}\s{0,3}(?:x|×|\*|by)\s{0,3}\d/i.test(asText(value));
}

/** What the unit of a written figure measures; null where there is none. */
function dimensionIn(value: unknown) {
  const unit = /\d\s*([^\s\d]+)$/.exec(asText(value))?.[1];
  return unit === undefined ? null : dimensionOf(unit);
}

function asNote(path: Path, said: string): Mend {
  const note = quoteScalar(said, true);
  return {
    title: `Keep it as a note: “note: ${note}”`,
    changes: [
      { kind: 'replace', place: { on: 'key', path }, text: 'note' },
      { kind: 'replace', place: { on: 'value', path }, text: note },
    ],
  };
}

/** A figure is kept as a note; nothing that holds one is taken out but as the last of several ways. */
function keptOrTakenOut({ key, map, owner, known }: UnknownKey, hasBetter: boolean): readonly Mend[] {
  const value = isMap(owner) ? owner[key] : null;
  const path = [...map, key];
  const hasNote = known.some(info => info.key === 'note') && isMap(owner) && !('note' in owner);
  const isPlain = !isMap(value) && !isList(value);
  const isKept = !hasBetter && hasNote && isPlain && value !== null && value !== undefined;
  const keep: readonly Mend[] = isKept ? [asNote(path, `${key} ${asText(value)}`.trim())] : [];
  // What is missing may be what stands there.
  if (known.some(info => info.required && !(isMap(owner) && info.key in owner))) return [];
  const holdsFigure = /\d/.test(`${key} ${JSON.stringify(value ?? '')}`);
  if (holdsFigure && !hasBetter && keep.length === 0) return [];
  return [...keep, { title: `Remove “${key}”`, changes: [{ kind: 'remove', path }] }];
}
