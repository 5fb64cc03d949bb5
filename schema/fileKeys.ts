import { boatJsonSchema, boatKeyHelp } from './boatFile.ts';

interface Level {
  readonly properties?: Readonly<Record<string, unknown>>;
  readonly items?: unknown;
  readonly anyOf?: readonly unknown[];
}

let every: ReadonlySet<string> | null = null;
let lists: ReadonlySet<string> | null = null;
let sections: ReadonlySet<string> | null = null;

/** Whether a word is a key of the boat file, wherever it belongs. Made when first asked, of the schema itself. */
export function isFileKey(word: string): boolean {
  every ??= new Set(keysIn(boatJsonSchema() as Level));
  return every.has(word);
}

/** Whether a word is a key that stands at the margin of the file. */
export function isSectionKey(word: string): boolean {
  sections ??= new Set(Object.keys(boatKeyHelp().properties ?? {}));
  return sections.has(word);
}

/** Whether a word is a key below which entries stand, each with a dash. */
export function isListKey(word: string): boolean {
  lists ??= new Set(listsIn(boatJsonSchema() as Level));
  return lists.has(word);
}

function listsIn(level: unknown): readonly string[] {
  if (typeof level !== 'object' || level === null) return [];
  return Object.entries((level as Level).properties ?? {}).flatMap(([key, value]) => {
    const { items } = value as Level;
    const isOfEntries = typeof items === 'object' && items !== null && 'properties' in items;
    return isOfEntries ? [key] : listsIn(value);
  });
}

function keysIn(level: unknown): readonly string[] {
  if (typeof level !== 'object' || level === null) return [];
  const { properties = {}, items, anyOf = [] } = level as Level;
  const below = [...Object.values(properties), ...(Array.isArray(items) ? items : [items]), ...anyOf];
  return [...Object.keys(properties), ...below.flatMap(keysIn)];
}
