import { type Document, isScalar, parseDocument, visit, type YAMLMap, YAMLParseError } from 'yaml';
import type { Finding } from '../../findings/finding.ts';
import { deepestNesting, tooDeep } from './nesting.ts';

/** A text that must not be parsed. */
export interface Refused {
  readonly refusal: Finding;
  /** The bracket behind which all of it goes too deep. */
  readonly bracket: number | null;
}

/**
 * The only way to the YAML parser: what nests too deep for it, which would end the whole process, does not get there,
 * whatever was done to the text before.
 */
export function parseYaml(text: string): Document.Parsed | Refused {
  const deep = tooDeep(text);
  if (deep) return { refusal: tooDeepAt(text, deep.offset), bracket: deep.bracket };
  return withoutTraces(() => {
    const doc = parseDocument(text, {
      version: '1.2',
      prettyErrors: false,
      keepSourceTokens: true,
      logLevel: 'error',
      // The parser compares each key with every other of its map.
      uniqueKeys: false,
    });
    visit(doc, { Map: (_, map) => void doc.errors.push(...secondKeys(map)) });
    return doc;
  });
}

const tooDeepAt = (text: string, offset: number): Finding => ({
  code: 'file-too-deep',
  severity: 'error',
  about: 'file',
  message: `Lists and sections are nested more than ${deepestNesting} deep here, and the file is not read. A boat file is nested about five deep: take out the spare brackets, dashes or spaces.`,
  place: { on: 'text', start: offset, end: Math.min(offset + 1, text.length) },
});

/** Each complaint of the parser is an error with the trace of its calls, which nobody reads and which takes most of the time. */
function withoutTraces<T>(run: () => T): T {
  const limit = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return run();
  } finally {
    Error.stackTraceLimit = limit;
  }
}

/** Keys that a map has twice, as the parser would say it. */
function secondKeys({ items }: YAMLMap): readonly YAMLParseError[] {
  const first = new Set<unknown>();
  return items.flatMap(({ key }) => {
    if (!isScalar(key) || !key.range) return [];
    const isSecond = first.has(key.value);
    first.add(key.value);
    const [start] = key.range;
    return isSecond ? [new YAMLParseError([start, start + 1], 'DUPLICATE_KEY', 'Map keys must be unique')] : [];
  });
}

export const isRefused = (parsed: object): parsed is Refused => 'refusal' in parsed;
