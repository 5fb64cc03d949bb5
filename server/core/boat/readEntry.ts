import type * as z from 'zod';
import type { KeyInfo } from '../../../schema/describe.ts';
import { isMap } from '../../../schema/fields.ts';
import type { Path } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
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

function faultyKeys(issue: z.core.$ZodIssue): readonly string[] {
  if (issue.path.length > 0) return [String(issue.path[0])];
  return issue.code === 'unrecognized_keys' ? issue.keys : [];
}

const unknownKeys = (issues: readonly z.core.$ZodIssue[]): ReadonlySet<string> =>
  new Set(issues.flatMap(issue => (issue.code === 'unrecognized_keys' && issue.path.length === 0 ? issue.keys : [])));
