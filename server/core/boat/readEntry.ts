import type * as z from 'zod';
import type { KeyInfo } from '../../../schema/describe.ts';
import { MOST_SECTIONS } from '../../../schema/drawnForms.ts';
import { isList, isMap } from '../../../schema/fields.ts';
import type { Path } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import type { Steps } from '../steps/steps.ts';
import { issueFindings } from './issues.ts';

/** Faults in these keys are told, but leave every figure of the entry as it is. */
const HARMLESS = new Set(['note', 'fixed', 'outside']);

export interface CheckedValue<T> {
  /** Null when the schema could not read it. */
  readonly value: T | null;
  readonly findings: readonly Finding[];
}

export interface CheckOptions {
  readonly path: Path;
  /** "a part": for messages. */
  readonly what: string;
  readonly keysAt: (path: Path) => readonly KeyInfo[];
  /** Leave out every key with a fault, not only the harmless: for sections whose keys stand alone. */
  readonly keyByKey?: boolean;
}

/**
 * Checks one value of the file by its schema. A fault in one key must not cost the others: unknown and harmless keys are
 * left out and the rest is read again.
 */
export function checkValue<T>(schema: z.ZodType<T>, raw: unknown, options: CheckOptions): CheckedValue<T> {
  const first = schema.safeParse(raw);
  if (first.success) return { value: first.data, findings: [] };
  const { path, what, keysAt } = options;
  const findings = issueFindings(first.error.issues, { value: raw, path, what, keysAt });
  if (!isMap(raw)) return { value: null, findings };
  const faulty = new Set(first.error.issues.flatMap(issue => faultyKeys(issue)));
  const kept = Object.entries(raw).filter(([key]) => !faulty.has(key));
  const unknown = unknownKeys(first.error.issues);
  const dispensable = [...faulty].every(key => options.keyByKey || HARMLESS.has(key) || unknown.has(key));
  if (!dispensable || kept.length === Object.keys(raw).length) return { value: null, findings };
  const second = schema.safeParse(Object.fromEntries(kept));
  return { value: second.success ? second.data : null, findings };
}

/** Sections of a table of offsets that are checked in one step. */
const SECTIONS_A_STEP = 8;

/**
 * The same in steps where a long table of offsets stands in the entry: stretches of it, each with all else of the entry. With a
 * fault in it the whole is looked at once more, for that tells the places.
 */
export function* checkSteps<T>(schema: z.ZodType<T>, raw: unknown, options: CheckOptions): Steps<CheckedValue<T>> {
  const rows = isMap(raw) ? raw.sections : null;
  const isLong = isList(rows) && rows.length > SECTIONS_A_STEP && rows.length <= MOST_SECTIONS;
  if (!isMap(raw) || !isLong) return checkValue(schema, raw, options);
  const read: unknown[] = [];
  let entry: object | null = null;
  // The last takes what is left over: one section alone is no table.
  const stretches = Math.floor(rows.length / SECTIONS_A_STEP);
  for (let i = 0; i < stretches; i++) {
    const from = i * SECTIONS_A_STEP;
    const end = i === stretches - 1 ? rows.length : from + SECTIONS_A_STEP;
    const some = schema.safeParse({ ...raw, sections: rows.slice(from, end) });
    const sections = some.success && isMap(some.data) ? some.data.sections : null;
    if (!some.success || !isList(sections)) return checkValue(schema, raw, options);
    read.push(...sections);
    entry = some.data as object;
    yield;
  }
  return { value: { ...entry, sections: read } as T, findings: [] };
}

function faultyKeys(issue: z.core.$ZodIssue): readonly string[] {
  if (issue.path.length > 0) return [String(issue.path[0])];
  return issue.code === 'unrecognized_keys' ? issue.keys : [];
}

const unknownKeys = (issues: readonly z.core.$ZodIssue[]): ReadonlySet<string> =>
  new Set(issues.flatMap(issue => (issue.code === 'unrecognized_keys' && issue.path.length === 0 ? issue.keys : [])));
