import * as z from 'zod';
import {
  type Quantity,
  type QuantityOptions,
  type Range,
  readExtent,
  readQuantity,
  readRange,
  readSection,
  readTaper,
} from './quantity.ts';
import { quoted } from './quoted.ts';
import type { Read, Slip } from './slip.ts';
import type { Dimension, FileUnits } from './units.ts';

// An entry is checked once and then remembered: code made for it would cost more than it saves, and some pages forbid it.
z.config({ jitless: true });

/** What the schema says about a key, for hovers, completion and the JSON Schema. */
export interface KeyHelp {
  /** One or two sentences in trade words. */
  readonly description: string;
  /** Values as they may stand in the file. */
  readonly examples?: readonly (string | number)[];
}

/** What a custom issue carries so that the boat room can point at characters and offer a mend. */
export interface IssueNote {
  /** A quantity's slip, with offsets inside the scalar. */
  readonly slip?: Slip;
  /** An issue found by a chosen alternative, as zod gave it. */
  readonly inner?: z.core.$ZodIssue;
}

const SCALAR = { type: ['string', 'number'] } as const;

/** A field read by a reader of its own; a missing value is told from a wrong one. `json`: what JSON Schema says of it. */
export function field<T>(read: (raw: unknown) => Read<T>, help: KeyHelp, json: object = SCALAR) {
  return z
    .unknown()
    .transform((raw, context): T => {
      const result = read(raw);
      if (result.ok) return result.value;
      const note: IssueNote = { slip: result.slip };
      context.addIssue({ code: 'custom', message: result.slip.message, params: { ...note } });
      return z.NEVER;
    })
    .meta({ ...json, ...copy(help) });
}

/** One quantity: `240 g ± 5 g`. */
export const quantity = (units: FileUnits, dimension: Dimension, help: KeyHelp, options?: QuantityOptions) =>
  field<Quantity>(raw => readQuantity(raw, dimension, units, options), help);

/** A range only: `120 to 480 mm`. */
export const range = (units: FileUnits, dimension: Dimension, help: KeyHelp, options?: QuantityOptions) =>
  field<Range>(raw => readRange(raw, dimension, units, options), help);

/** A place or the room between two places: `46 mm` or `3 to 9 mm`. */
export const extent = (units: FileUnits, help: KeyHelp, options?: QuantityOptions) =>
  field<Quantity | Range>(raw => readExtent(raw, 'length', units, options), help);

/** Two sizes: `40 x 12 mm`. */
export const section = (units: FileUnits, help: KeyHelp) => field(raw => readSection(raw, 'length', units), help);

/** A diameter, or two in order for a cone: `90 to 40 mm`. */
export const taper = (units: FileUnits, help: KeyHelp) => field(raw => readTaper(raw, 'length', units), help);

/** One of a few words. */
export function word<const W extends readonly [string, ...string[]]>(words: W, help: KeyHelp) {
  const quoted = words.map(w => `“${w}”`);
  const listed = `${words.length > 2 ? 'one of ' : ''}${quoted.slice(0, -1).join(', ')} or ${quoted.at(-1)}`;
  return z
    .enum(words, { error: issue => `Expected ${listed}, but this ${describeValue(issue.input)}.` })
    .meta(copy(help));
}

/** No name is longer, characters. */
export const LONGEST_NAME = 200;

/** Free text of so many characters at most; numbers are taken as text, so that a boat may be called 12. */
export const text = (help: KeyHelp, most = LONGEST_NAME) =>
  z
    .unknown()
    .transform((raw, context): string => {
      if (typeof raw === 'number' || typeof raw === 'boolean') return String(raw);
      const said = typeof raw === 'string' ? raw.trim() : '';
      if (said !== '' && said.length <= most) return said;
      const fault = said === '' ? describeValue(raw) : `has ${said.length} characters, and ${most} are room enough`;
      context.addIssue({ code: 'custom', message: `Expected a name or text, but this ${fault}.` });
      return z.NEVER;
    })
    .meta({ ...SCALAR, ...copy(help) });

/** However long: it is in no figure, and named nowhere. */
export const noteKey = () =>
  text({ description: 'A note to yourself; it changes no figure.' }, Number.POSITIVE_INFINITY);

export const flag = (help: KeyHelp) =>
  z.boolean({ error: issue => `Expected true or false, but this ${describeValue(issue.input)}.` }).meta(copy(help));

/** A count of things, 1 or more. */
export const wholeNumber = (help: KeyHelp) => {
  const error = (issue: { readonly input?: unknown }) =>
    `Expected a whole number such as ${help.examples?.[0] ?? 2}, but this ${describeValue(issue.input)}.`;
  return z.int({ error }).min(1, { error }).max(100, { error }).meta(copy(help));
};

/** One of several ways to write a thing, told apart by how it looks. The last alternative takes what is left. */
export interface Alternative<T> {
  readonly suits: (raw: unknown) => boolean;
  readonly schema: z.ZodType<T>;
}

/** A value that may be written in several ways; issues come from the way that it looks like, with their places. */
export function choose<T>(alternatives: readonly Alternative<T>[], help: KeyHelp) {
  return z
    .unknown()
    .transform((raw, context): T => {
      const picked = alternatives.find(a => a.suits(raw)) ?? alternatives.at(-1);
      const result = picked?.schema.safeParse(raw);
      if (result?.success) return result.data;
      for (const issue of result?.error.issues ?? []) {
        const note: IssueNote = { inner: issue };
        context.addIssue({ code: 'custom', path: [...issue.path], message: issue.message, params: { ...note } });
      }
      return z.NEVER;
    })
    .meta({ ...copy(help), alternatives: alternatives.map(a => a.schema) });
}

export const isMap = (raw: unknown): raw is Readonly<Record<string, unknown>> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw) && !(raw instanceof Date);

/** A single value as text; nothing for what is none. A group of keys may have one that is named as what JavaScript asks. */
export const asText = (raw: unknown): string =>
  typeof raw === 'string' || typeof raw === 'number' || typeof raw === 'boolean' ? String(raw) : '';

export const isList = (raw: unknown): raw is readonly unknown[] => Array.isArray(raw);

/** The most that a list may hold: more than any boat needs, and every keystroke takes as long as they are many. */
export const atMost = (count: number, what: string) =>
  [
    count,
    { error: `More than ${count} ${what} are more than any boat needs: leave out those that change nothing.` },
  ] as const;

/** A strict map whose own type error is said in plain words. */
export function map<S extends z.ZodRawShape>(shape: S, what: string) {
  return z.strictObject(shape, {
    error: issue =>
      issue.code === 'invalid_type' ? `Expected ${what}, but this ${describeValue(issue.input)}.` : undefined,
  });
}

/** What a value is, to finish the sentence "but this …". */
export function describeValue(raw: unknown): string {
  if (raw === null || raw === undefined) return 'is empty';
  if (isList(raw)) return 'is a list';
  if (isMap(raw)) return 'is a group of keys';
  return `says ${quoted(asText(raw))}`;
}

/** Examples travel as `shown`: the JSON Schema writer drops `examples` of values that a schema transforms. */
const copy = (help: KeyHelp): { description: string; shown?: (string | number)[] } =>
  help.examples ? { description: help.description, shown: [...help.examples] } : { description: help.description };
