import type { Document } from 'yaml';
import { isCollection, isScalar, visit } from 'yaml';
import type { FindingCode } from '../../findings/catalogue/catalogue.ts';
import type { Finding, Mend } from '../../findings/finding.ts';
import { columnAt, lineAt, lineEnd, lineStart, lineStartsOf, nextLineStart, type Span } from './lines.ts';

/** What the YAML parser says of a text, as it says it. */
export interface ParserError {
  readonly code: string;
  readonly message: string;
  readonly pos: readonly [number, number];
}

/** A slip in the writing, in a modeller's words. */
export interface Fault {
  readonly finding: Finding;
  readonly span: Span;
  /** Blanked out before the text is parsed again, so that the slip does not drag its neighbours along. */
  readonly blanked: Span | null;
  /** Where a dash is read instead, so that an entry stays an entry. */
  readonly dash: number | null;
  /** What else it leaves in uncertainty. */
  readonly also?: readonly Span[];
  /** Characters that are read instead of those at an offset, so that nothing is lost of what was meant. */
  readonly put?: readonly (readonly [offset: number, text: string])[];
}

export interface Situation {
  readonly text: string;
  readonly doc: Document;
}

/** Builds a fault; a mend replaces the characters of a span. */
export function fault(
  code: FindingCode,
  span: Span,
  message: string,
  options: Pick<Fault, 'put'> & {
    readonly blanked?: Span;
    readonly dash?: number | null;
    readonly mend?: Mend | null;
  } = {},
): Fault {
  const { mend, blanked = null, dash = null, put = [] } = options;
  const place = { on: 'text', start: span[0], end: span[1] } as const;
  const finding: Finding = { code, severity: 'error', about: 'file', message, place };
  return { finding: mend ? { ...finding, mends: [mend] } : finding, span, blanked, dash, put };
}

/** A mend that puts a text in the place of the characters of each span. */
export const replacing = (title: string, ...pieces: readonly (readonly [span: Span, text: string])[]): Mend => ({
  title,
  changes: pieces.map(([[start, end], text]) => ({ kind: 'replace', place: { on: 'text', start, end }, text })),
});

/** The rest of a line from an offset, without its comment and trailing blanks. */
export function restOfLine(text: string, start: number): Span {
  const line = text.slice(start, lineEnd(text, start));
  const comment = /(?:^|[ \t])#/.exec(line)?.index ?? line.length;
  return [start, start + line.slice(0, comment).trimEnd().length];
}

/**
 * The line at an offset, the lines below it that are indented further, and the lines of its own kind (list entries, or
 * keys) that follow in its column. It ends where a line is back in the column `home`, unless the line above that opens
 * a block.
 */
export function stretchFrom(text: string, offset: number, home = -1): Span {
  const column = firstColumn(text, offset);
  const isEntry = startsEntry(text, offset);
  let end = lineEnd(text, offset);
  // The dashes of a list may stand in the column of their key.
  let isInList = false;
  // Ends: each line starts further down.
  for (let next = nextLineStart(text, end); next > end; next = nextLineStart(text, next)) {
    if (isBlankLine(text, next)) {
      if (next === text.length) break;
      continue;
    }
    const below = firstColumn(text, next) - column;
    const isHome = below > 0 && firstColumn(text, next) === home && !opensBlock(text, end);
    if (below === 0) isInList = startsEntry(text, next) && (isInList || (!isEntry && opensBlock(text, end)));
    if (isHome || below < 0 || (below === 0 && startsEntry(text, next) !== isEntry && !isInList)) break;
    end = lineEnd(text, next);
  }
  return [lineStart(text, offset), end];
}

/** `key:` with nothing behind it: what is indented below belongs to it. */
export const opensBlock = (text: string, offset: number): boolean =>
  text.slice(...restOfLine(text, lineStart(text, offset))).endsWith(':');

/** How many lines of a stretch stand in the column of its first. */
export function linesInColumn(text: string, [start, end]: Span): number {
  const column = firstColumn(text, start);
  let count = 0;
  // Ends: the next line starts further down, or at the end of the text.
  for (let line = start; line < end; line = nextLineStart(text, line))
    if (!isBlankLine(text, line) && firstColumn(text, line) === column) count += 1;
  return count;
}

/** A line that starts with the dash of a list entry. */
export function startsEntry(text: string, offset: number): boolean {
  const first = firstOnLine(text, offset);
  return /^-(?:\s|$)/.test(text.slice(first, first + 2));
}

/** The column of the first character on a line that is not a blank. */
export const firstColumn = (text: string, offset: number): number => columnAt(text, firstOnLine(text, offset));

export function firstOnLine(text: string, offset: number): number {
  let at = lineStart(text, offset);
  // Ends: for `at` only grows.
  while (text[at] === ' ' || text[at] === '\t') at += 1;
  return at;
}

export const isBlankLine = (text: string, offset: number): boolean =>
  /^[ \t]*(?:#.*)?$/.test(text.slice(lineStart(text, offset), lineEnd(text, offset)));

/** Where the bracket stands that a recovered flow collection opened and never closed, seen from the error's place. */
export function unclosedBracket({ text, doc }: Situation, before: number): number | null {
  let found: number | null = null;
  visit(doc, {
    Collection: (_, node) => {
      const token = node.srcToken;
      if (token?.type !== 'flow-collection' || token.offset >= before) return;
      const closer = text[token.offset] === '{' ? '}' : ']';
      if (!token.end.some(end => end.source === closer)) found = Math.max(found ?? 0, token.offset);
    },
  });
  return found;
}

/** The quoted text that starts last before an offset. */
export function quotedBefore({ doc }: Situation, before: number): Span | null {
  let found: Span | null = null;
  visit(doc, {
    Scalar: (_, node) => {
      if (!node.range || node.range[0] >= before || !node.type?.startsWith('QUOTE')) return;
      if (!found || node.range[0] > found[0]) found = [node.range[0], node.range[1]];
    },
  });
  return found;
}

/** A pair written twice: the first one with the same name in the same map. */
export function firstTwin({ doc }: Situation, second: number): { first: Span; secondEnd: number } | null {
  let found: { first: Span; secondEnd: number } | null = null;
  visit(doc, {
    Map: (_, map) => {
      const index = map.items.findIndex(pair => isScalar(pair.key) && pair.key.range?.[0] === second);
      const twin = map.items[index];
      if (!twin || !isScalar(twin.key)) return;
      const name = twin.key.value;
      const first = map.items.find(pair => isScalar(pair.key) && pair.key.value === name);
      if (!first || !isScalar(first.key) || !first.key.range) return;
      const value = isScalar(twin.value) || isCollection(twin.value) ? twin.value.range?.[1] : undefined;
      found = { first: [first.key.range[0], first.key.range[1]], secondEnd: value ?? twin.key.range![1] };
      return visit.BREAK;
    },
  });
  return found;
}

/** A line's number as people count, from 1. */
export const lineNumber = (text: string, offset: number): number => lineAt(lineStartsOf(text), offset) + 1;

/** The offset itself, or the start of the first line below it that is neither blank nor all comment. */
export function skipBlankLines(text: string, offset: number): number {
  let line = offset;
  // Ends: each line starts further down.
  while (isBlankLine(text, line) && lineEnd(text, line) < text.length) line = nextLineStart(text, line);
  return line;
}

/** Where the bracket opened at an offset is closed, by count alone. */
export function partnerOf(text: string, opened: number): number | null {
  let depth = 0;
  for (let i = opened; i < text.length; i += 1) {
    const char = text[i];
    if (char === '{' || char === '[') depth += 1;
    if (char === '}' || char === ']') depth -= 1;
    if (depth === 0) return text[opened] === '{' && char === '}' ? i : text[opened] === '[' && char === ']' ? i : null;
  }
  return null;
}
