import { Composer, type CST, type Document, isScalar, Lexer, Parser, visit, type YAMLMap, YAMLParseError } from 'yaml';
import type { Finding } from '../../findings/finding.ts';
import { pacer, type Steps } from '../../steps/steps.ts';
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
export function* parseYaml(text: string): Steps<Document.Parsed | Refused> {
  const deep = yield* tooDeep(text);
  if (deep) return { refusal: tooDeepAt(text, deep.offset), bracket: deep.bracket };
  const tokens = yield* tokensOf(text);
  yield;
  return withoutTraces(() => {
    const doc = documentOf(tokens, text.length);
    visit(doc, {
      Map: (_, map) => {
        for (const error of secondKeys(map)) doc.errors.push(error);
      },
    });
    return doc;
  });
}

/** So many words and signs are looked at in one step: most of the time goes into this. */
const STEP = 800;

/** The words and signs of a text, put together as they stand. */
function* tokensOf(text: string): Steps<readonly CST.Token[]> {
  const parser = new Parser();
  const isDue = pacer(STEP);
  const tokens: CST.Token[] = [];
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    if (isDue(1)) yield;
  }
  for (const token of parser.end()) tokens.push(token);
  return tokens;
}

/** The first document of a text, as `parseDocument` of the parser makes it of the same tokens. */
function documentOf(tokens: readonly CST.Token[], length: number): Document.Parsed {
  const composer = new Composer({
    version: '1.2',
    prettyErrors: false,
    keepSourceTokens: true,
    logLevel: 'error',
    // The parser compares each key with every other of its map.
    uniqueKeys: false,
  });
  const [first, second] = composer.compose(tokens, true, length);
  if (second) {
    const [start, end] = second.range;
    first!.errors.push(new YAMLParseError([start, end], 'MULTIPLE_DOCS', 'Only the first document is read'));
  }
  return first! as Document.Parsed;
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
