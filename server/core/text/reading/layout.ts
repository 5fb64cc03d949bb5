import { firstColumn, isBlankLine } from './faults.ts';
import { columnAt, lineEnd, lineEndingOf, lineStart, nextLineStart } from './lines.ts';
import { isMapNode, isScalar, isSeq, type ListNode, type MapNode, type Node, type NodePair, visit } from './nodes.ts';
import type { Syntax } from './syntax.ts';
import { dashOf, spanOf } from './tree.ts';

/** An edit of the text: the characters from `start` to `end` become `text`. */
export interface TextSplice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Where the writing of a value ends: comments, blank lines and line breaks after it are not part of it. */
export function contentEnd(text: string, node: Node | null, fallback: number): number {
  // A pair that is not closed may have neither a key nor a value with a place.
  if (isMapNode(node) && !node.flow) {
    return node.items.length > 0 ? pairEnd(text, node.items.at(-1)!) || fallback : fallback;
  }
  if (isSeq(node) && !node.flow) {
    const last = node.items.length - 1;
    return last < 0 ? fallback : contentEnd(text, node.items[last]!, (dashOf(node, last) ?? fallback) + 1);
  }
  const span = spanOf(node);
  if (!span) return fallback;
  const isBlock = isScalar(node) && node.style.startsWith('BLOCK');
  return isBlock ? blockScalarEnd(text, ...span) : span[1];
}

export function pairEnd(text: string, pair: NodePair): number {
  const key = contentEnd(text, pair.key, 0);
  const { colon } = pair;
  return contentEnd(text, pair.value, colon === null ? key : colon + 1);
}

/** Blank lines after a block scalar belong to it only when its header says `+`. */
function blockScalarEnd(text: string, start: number, end: number): number {
  const source = text.slice(start, end);
  const keepsBlanks = /^[|>]\d?\+/.test(source);
  return keepsBlanks ? Math.max(start, end - 1) : start + source.trimEnd().length;
}

/**
 * The end of the last line that belongs to an entry or pair: its content, and lines below it that could not be read but
 * are indented further than `column`.
 */
export function lastLineEnd(syntax: Syntax, end: number, column: number): number {
  const { text, readText } = syntax;
  let last = end;
  // Ends: the next line starts further down.
  for (let line = nextLineStart(text, end); line < text.length; line = nextLineStart(text, line)) {
    const isReadBlank = isBlankLine(readText, line);
    if (!isReadBlank) break;
    if (!isBlankLine(text, line) && firstColumn(text, line) > column) last = lineEnd(text, line);
  }
  return lineEnd(text, last);
}

/** Whole lines put in below the line that an offset is on, with the line ending used there. */
export function insertLines(text: string, offset: number, lines: readonly string[]): TextSplice {
  const end = lineEnd(text, offset);
  const next = nextLineStart(text, end);
  if (next > end) {
    const ending = text.slice(end, next);
    return { start: next, end: next, text: lines.map(line => line + ending).join('') };
  }
  const ending = lineEndingOf(text);
  return { start: end, end, text: lines.map(line => ending + line).join('') };
}

/** How this file indents. */
export interface Style {
  /** Columns from a key to the keys of the map below it. */
  readonly map: number;
  /** Columns from a key to the dashes of the list below it. */
  readonly list: number;
  /** Blanks between a dash and what follows it. */
  readonly dashGap: string;
}

/** Reads a file's habits off the first map and list in it; two spaces where it has none. */
export function styleOf({ root, readText: text }: Syntax): Style {
  let map: number | null = null;
  let list: number | null = null;
  let dashGap: string | null = null;
  visit(root, {
    pair: ({ key: written, value }) => {
      const key = spanOf(written);
      const start = spanOf(value)?.[0];
      if (!key || start === undefined || lineStart(text, start) <= key[0]) return;
      const depth = columnAt(text, start) - columnAt(text, key[0]);
      if (isMapNode(value) && !value.flow && depth > 0) map ??= depth;
      if (isSeq(value) && !value.flow && depth >= 0) {
        list ??= depth;
        dashGap ??= gapAfterDash(text, value, 0);
      }
    },
  });
  return { map: map ?? 2, list: list ?? map ?? 2, dashGap: dashGap ?? ' ' };
}

/** The blanks between an entry's dash and what stands on its line; null when that is on the next line. */
export function gapAfterDash(text: string, list: ListNode, index: number): string | null {
  const dash = dashOf(list, index);
  const start = spanOf(list.items[index])?.[0];
  if (dash === null || start === undefined || lineEnd(text, dash) < start) return null;
  return /^[ \t]*/.exec(text.slice(dash + 1, start))![0];
}

/** Blanks just inside the brackets: `{ a: 1 }` has them, `{a: 1}` does not. */
export function bracketPadding(text: string, node: MapNode | ListNode | null): string {
  const span = spanOf(node);
  if (!span || !node?.flow || node.items.length === 0) return ' ';
  return /^[{[][^\S\r\n]/.test(text.slice(span[0], span[0] + 2)) ? ' ' : '';
}
