import * as z from 'zod';
import { boatKeyHelp, boatSchema } from './boatFile.ts';

let every: ReadonlySet<string> | null = null;
let lists: ReadonlySet<string> | null = null;
let sections: ReadonlySet<string> | null = null;

/** Whether a word is a key of the boat file, wherever it belongs. Made when first asked, of the schema itself. */
export function isFileKey(word: string): boolean {
  every ??= new Set(keysIn(boatSchema()));
  return every.has(word);
}

/** Whether a word is a key that stands at the margin of the file. */
export function isSectionKey(word: string): boolean {
  sections ??= new Set(Object.keys(boatKeyHelp().properties ?? {}));
  return sections.has(word);
}

/** Whether a word is a key below which entries stand, each with a dash. */
export function isListKey(word: string): boolean {
  lists ??= new Set(listsIn(boatSchema()));
  return lists.has(word);
}

function listsIn(schema: z.ZodType): readonly string[] {
  return Object.entries(shapeOf(schema)).flatMap(([key, value]) => {
    const list = bare(value);
    const isOfEntries = list instanceof z.ZodArray && bare(list.element) instanceof z.ZodObject;
    return isOfEntries ? [key] : listsIn(list);
  });
}

function keysIn(schema: unknown): readonly string[] {
  const inner = bare(schema);
  const shape = shapeOf(inner);
  return [...Object.keys(shape), ...[...Object.values(shape), ...within(inner)].flatMap(keysIn)];
}

const shapeOf = (schema: unknown): Readonly<Record<string, unknown>> =>
  schema instanceof z.ZodObject ? schema.shape : {};

/** What may be left out is what it is where it stands. */
const bare = (schema: unknown): z.ZodType =>
  schema instanceof z.ZodOptional ? bare(schema.unwrap()) : (schema as z.ZodType);

/** The schemas in one, but for those of its keys: one of several that are noted on it, entries, what is read before it is turned. */
function within(schema: z.ZodType): readonly unknown[] {
  const noted = schema.meta()?.alternatives as readonly unknown[] | undefined;
  if (noted) return noted;
  if (schema instanceof z.ZodArray) return [schema.element];
  if (schema instanceof z.ZodPipe) return [schema.def.in];
  if (schema instanceof z.ZodTuple) return schema.def.items;
  return schema instanceof z.ZodUnion ? schema.options : [];
}
