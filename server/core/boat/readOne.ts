import type * as z from 'zod';
import type { Describer } from '../../../schema/describe.ts';
import type { Path } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import type { Form } from '../geometry/form/form.ts';
import type { MeshFile, MeshLookup } from '../meshFiles/meshFile.ts';
import type { Steps } from '../steps/steps.ts';
import type { Entry } from './boat.ts';
import { checkSteps } from './readEntry.ts';
import type { ReadingContext, RoomLookup } from './readingContext.ts';

export interface ReadEntry {
  readonly entry: Entry | null;
  /** As its schema read it. */
  readonly checked: unknown;
  readonly findings: readonly Finding[];
  /** Mesh files that it was made from, as they were. */
  readonly files: ReadonlyMap<string, MeshFile | null>;
  /** Forms that it was fitted into, as they were. */
  readonly rooms: ReadonlyMap<string | null, readonly Form[]>;
}

/** How an entry of one kind is read. */
export interface OneEntry<T, E> {
  readonly what: string;
  readonly describer: Describer;
  readonly around: ReadingContext;
  readonly read: (entry: T, path: Path, around: ReadingContext, findings: Finding[]) => E | null;
  /** Makes in steps what reading it asks for and takes long; left out where nothing does. */
  readonly ready?: ((entry: T, around: ReadingContext) => Steps<void>) | undefined;
}

/** One entry of a list by its schema and its reader; findings of both, the same slip told once. */
export function* readOne<T, E extends Entry>(
  schema: z.ZodType<T>,
  path: Path,
  raw: unknown,
  one: OneEntry<T, E>,
): Steps<ReadEntry> {
  const keysAt = (inside: Path) => one.describer.keysAt([...path, ...inside]);
  const checked = yield* checkSteps(schema, raw, { path, what: `a ${one.what}`, keysAt });
  const files = new Map<string, MeshFile | null>();
  const rooms = new Map<string | null, readonly Form[]>();
  if (checked.value === null) return { entry: null, checked: null, findings: checked.findings, files, rooms };
  yield;
  if (one.ready) yield* one.ready(checked.value, one.around);
  const said: Finding[] = [];
  const meshes: MeshLookup = name => {
    const file = one.around.meshes(name);
    files.set(name, file);
    return file;
  };
  const roomsOf: RoomLookup = name => {
    const forms = one.around.roomsOf(name);
    rooms.set(name, forms);
    return forms;
  };
  const entry = one.read(checked.value, path, { ...one.around, meshes, roomsOf }, said);
  return {
    entry,
    checked: checked.value,
    findings: [...checked.findings, ...withoutEchoes(checked.findings, said)],
    files,
    rooms,
  };
}

const UNKNOWNS = ['mass-unknown', 'volume-unknown', 'length-unknown'];
const LACKS = [
  ...UNKNOWNS,
  'form-unknown',
  'missing-key',
  'trial-empty',
  'row-incomplete',
  'pair-overlaps',
  'in-water-mass',
];

/** What an entry lacks because of an unknown key or material was said there already. */
function withoutEchoes(told: readonly Finding[], said: readonly Finding[]): readonly Finding[] {
  const isMisspelt = told.some(({ code }) => code === 'unknown-key');
  const isUnknown = said.some(({ code }) => code === 'unknown-material');
  const echoes = isMisspelt ? LACKS : isUnknown ? UNKNOWNS : [];
  return said.filter(({ code }) => !echoes.includes(code));
}
