import type * as z from 'zod';
import type { BoatSchemas } from '../../../schema/boatFile.ts';
import type { Describer } from '../../../schema/describe.ts';
import { isMap } from '../../../schema/fields.ts';
import { type Path, pathKey } from '../../../schema/path.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { Finding } from '../findings/finding.ts';
import { pacer, type Steps } from '../steps/steps.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { entriesOf, kindAt, valueAt } from '../text/reading/values.ts';
import type { Entry } from './boat.ts';
import { entriesRead } from './mostEntries.ts';
import { notAList } from './notAList.ts';
import { type CheckedValue, checkValue } from './readEntry.ts';
import type { ReadingContext } from './readingContext.ts';
import { type ReadEntry, readOne } from './readOne.ts';
import { sameData } from './sameData.ts';
import type { Source } from './source.ts';

/** What was read before, so that a keystroke reads only what it changed. */
export interface KeptEntries {
  /** Entries in their order, by the place of their list. */
  readonly lists: ReadonlyMap<string, readonly KeptEntry[]>;
  /** Sections, by their place. */
  readonly sections: ReadonlyMap<string, KeptSection>;
  readonly schemas: {
    /** By which the entries were read. */
    readonly inUse: KeptSchemas;
    /** The same without an origin: by which length and waterline were read. */
    readonly plain: KeptSchemas;
  };
}

export interface KeptSchemas {
  readonly units: FileUnits;
  readonly made: BoatSchemas;
}

interface KeptEntry extends ReadEntry {
  /** Null where it could not be read. */
  readonly source: Source<unknown, Entry> | null;
  /** What stands in the file, whatever stands around it, and what is to be known to read it. */
  readonly raw: unknown;
  readonly context: string;
}

interface KeptSection {
  readonly schema: unknown;
  readonly raw: unknown;
  readonly checked: CheckedValue<unknown>;
}

/** How the entries of a list are read: what one is called, what it must look like, what it comes to. */
interface ListKind<T, E extends Entry> {
  readonly what: string;
  /** Made when there is something to check. */
  readonly schema: () => z.ZodType<T>;
  readonly read: (entry: T, path: Path, around: ReadingContext, findings: Finding[]) => E | null;
  /** Makes in steps what reading it asks for and takes long; left out where nothing does. */
  readonly ready?: (entry: T, around: ReadingContext) => Steps<void>;
}

/** Reads sections and lists of a file one by one, and keeps a log of what came up. */
export interface SectionReader {
  /** The checked value of a section; null where it is missing or cannot be read. */
  section<T>(schema: () => z.ZodType<T>, path: Path, what: string, keyByKey?: boolean): T | null;
  /** The entries of a list that can be read, some of them in each step. */
  list<T, E extends Entry>(path: Path, kind: ListKind<T, E>, around: ReadingContext): Steps<readonly Source<T, E>[]>;
  readonly log: Log;
}

interface Log {
  readonly findings: Finding[];
  /** What is in no figure because it could not be read, by name. */
  readonly leftOut: string[];
  /** Mesh files by name. */
  readonly meshNames: Set<string>;
  readonly lists: Map<string, readonly KeptEntry[]>;
  readonly sections: Map<string, KeptSection>;
}

export function sectionReader(syntax: Syntax, describer: Describer, kept?: KeptEntries): SectionReader {
  const log: Log = {
    findings: [],
    leftOut: [],
    meshNames: new Set(),
    lists: new Map(),
    sections: new Map(),
  };
  return {
    log,
    section: (schema, path, what, keyByKey = false) =>
      readSection({ syntax, describer, kept, log }, schema, { path, what, keyByKey }),
    list: (path, kind, around) => readList({ syntax, describer, kept, log }, path, kind, around),
  };
}

interface Reading {
  readonly syntax: Syntax;
  readonly describer: Describer;
  readonly kept: KeptEntries | undefined;
  readonly log: Log;
}

function readSection<T>(
  { syntax, describer, kept, log }: Reading,
  schemaOf: () => z.ZodType<T>,
  { path, what, keyByKey }: { readonly path: Path; readonly what: string; readonly keyByKey: boolean },
): T | null {
  const raw = valueAt(syntax, path);
  if (raw === undefined || raw === null) return null;
  const schema = schemaOf();
  const key = pathKey(path);
  const had = kept?.sections.get(key);
  const isSame = had?.schema === schema && sameData(had.raw, raw);
  const keysAt = (inside: Path) => describer.keysAt([...path, ...inside]);
  const checked = isSame ? (had.checked as CheckedValue<T>) : checkValue(schema, raw, { path, what, keysAt, keyByKey });
  log.sections.set(key, isSame ? had : { schema, raw, checked });
  log.findings.push(...checked.findings);
  return checked.value;
}

/** So many entries are read in one step; one that is known from the last reading counts for less. */
const STEP = 1;
const KNOWN = 0.02;

function* readList<T, E extends Entry>(
  { syntax, describer, kept, log }: Reading,
  path: Path,
  { what, schema, read, ready }: ListKind<T, E>,
  around: ReadingContext,
): Steps<readonly Source<T, E>[]> {
  const { findings } = log;
  // Without them no other figure changes.
  const leaveOut = ([section]: Path, name: string) => {
    if (!APART.includes(String(section))) log.leftOut.push(name);
  };
  const kind = kindAt(syntax, path);
  if (kind && kind !== 'list') {
    findings.push(notAList(path, syntax));
    leaveOut(path, String(path.at(-1)));
    return [];
  }
  const { units, scale, stock } = around;
  const context = `${unitsKey({ ...units, scale })} ${stock.lead} ${stock.foam} ${stock.shot}`;
  const before = kept?.lists.get(pathKey(path)) ?? [];
  const results: KeptEntry[] = [];
  log.lists.set(pathKey(path), results);
  const sources: Source<T, E>[] = [];
  const isDue = pacer(STEP);
  for (const [i, { path: at, value: raw }] of entriesRead(
    entriesOf(syntax, path),
    what,
    findings,
    leaveOut,
  ).entries()) {
    const had = before[i];
    const isSame = had?.context === context && sameData(had.raw, raw) && hasItsWorld(had, around);
    if (isDue(isSame ? KNOWN : 1)) yield;
    const result = isSame
      ? had
      : keptEntry(yield* readOne(schema(), at, raw, { what, describer, around, read, ready }), raw, context);
    results.push(result);
    findings.push(...result.findings);
    for (const name of result.files.keys()) log.meshNames.add(name);
    if (result.source === null) leaveOut(path, nameOf(raw) ?? `${what} ${i + 1}`);
    else sources.push(result.source as Source<T, E>);
  }
  return sources;
}

const keptEntry = (read: ReadEntry, raw: unknown, context: string): KeptEntry => ({
  ...read,
  source: read.entry && { checked: read.checked, entry: read.entry },
  raw,
  context,
});

/** What the figures of a file are read by. */
export const unitsKey = ({ length, mass, scale, origin }: FileUnits): string =>
  [length, mass, scale, ...Object.values(origin ?? {})].join(' ');

/** Lists that are in no figure of the boat as it is surfaced and submerged. */
const APART = ['bays', 'trials', 'conditions'];

/** The mesh files that an entry was made from, and the rooms that it was fitted into, are still what they were. */
function hasItsWorld({ files, rooms }: ReadEntry, { meshes, roomsOf }: ReadingContext): boolean {
  for (const [name, file] of files) if (meshes(name) !== file) return false;
  for (const [name, forms] of rooms) {
    const now = roomsOf(name);
    if (now.length !== forms.length || now.some((form, i) => form !== forms[i])) return false;
  }
  return true;
}

/** The name that an entry says, as it was read. */
export function nameOf(raw: unknown): string | null {
  const name = isMap(raw) ? raw.name : undefined;
  return typeof name === 'string' || typeof name === 'number' ? String(name) : null;
}
