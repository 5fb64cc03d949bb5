import type { Path } from '../../../schema/path.ts';
import type { FindingCode } from './catalogue/catalogue.ts';

/**
 * What the tool has to say about one place in the file. Findings are values: no stage of the analysis throws on bad
 * input, it returns what could be had and findings for what could not.
 */
export interface Finding {
  /** Stable plain code, kebab-case, from the catalogue. */
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly about: Subject;
  /** Whole sentences for a modeller: what is wrong, what was expected, how to mend it. */
  readonly message: string;
  readonly place: Place;
  /** Edits that mend it, the best first; each leaves every other character of the file alone. */
  readonly mends?: readonly Mend[];
}

/** What a finding is about. */
export type Subject =
  /** How the file is written, or what it says of the boat. */
  | 'file'
  /** What the file says was read in trials, or how that agrees with the boat. */
  | 'trials'
  /** How well the figures are known. */
  | 'uncertainty'
  /** What a boat that is not all entered yet still lacks. */
  | 'wanted'
  /** What the boat does in a loading condition, by its id. */
  | { readonly condition: string }
  /** What it does between or beside the conditions: on the way down, knocked over, in its tanks. */
  | 'transit'
  | 'stability'
  | 'tanks';

/** The loading condition that a finding is about; null for another subject. */
export const conditionOf = ({ about }: Pick<Finding, 'about'>): string | null =>
  typeof about === 'string' ? null : about.condition;

export type Severity = 'error' | 'warning' | 'information' | 'hint';

/** Where a finding points. Only the text room turns it into offsets. */
export type Place =
  /** The value at a path; `within` narrows it to some characters of that scalar as the schema saw it. */
  | { readonly on: 'value'; readonly path: Path; readonly within?: readonly [start: number, end: number] }
  /** The key at a path, e.g. an unknown one. */
  | { readonly on: 'key'; readonly path: Path }
  /** Something missing from the map or list at a path: its key, or the first line of the entry, is marked. */
  | { readonly on: 'entry'; readonly path: Path }
  /** UTF-16 offsets in the text, for what the syntax tree has no path for. */
  | { readonly on: 'text'; readonly start: number; readonly end: number };

/** One way to mend a finding, offered as an editor's code action. */
export interface Mend {
  /** What applying it does, in the imperative: "Change to “fibreglass”". */
  readonly title: string;
  readonly changes: readonly Change[];
}

/** A change to the file, said without offsets. */
export type Change =
  /** Replace the characters of a place by this text. */
  | { readonly kind: 'replace'; readonly place: Place; readonly text: string }
  /** Add `key: text` to the map at a path, after its last key. */
  | { readonly kind: 'add-key'; readonly path: Path; readonly key: string; readonly text: string }
  /** Take out the key or list entry at a path, with its line. */
  | { readonly kind: 'remove'; readonly path: Path }
  /** Append an entry to the list at a path, in the style of the entries already there; the list is made if missing. */
  | { readonly kind: 'append'; readonly path: Path; readonly entry: EntryText };

/** An entry to write: keys in order, each with its scalar (or flow collection) as it shall stand in the file. */
export interface EntryText {
  readonly fields: readonly (readonly [key: string, text: string])[];
  /** One-line comment written after the first field, without the `#`. */
  readonly comment?: string;
}
