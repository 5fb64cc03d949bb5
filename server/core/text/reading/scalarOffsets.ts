import type { Span } from './lines.ts';
import { isScalar, type Node } from './nodes.ts';
import { spanOf } from './tree.ts';

/**
 * Characters inside a scalar as the schema saw it, found in the file: quotes and escapes are stepped over. Null for text
 * over several lines, whose breaks are folded.
 */
export function sourceSpan(text: string, node: Node | null, [start, end]: Span): Span | null {
  const span = spanOf(node);
  if (!span || !isScalar(node)) return null;
  const source = text.slice(...span);
  if (/[\r\n]/.test(source)) return null;
  const starts = startsOf(source, node.style);
  if (!starts || start >= end || end >= starts.length) return null;
  return [span[0] + starts[start]!, span[0] + starts[end]!];
}

/** Where each character of the value starts in its source, and where the last one ends. */
function startsOf(source: string, type: string): readonly number[] | null {
  const isQuoted = type === 'QUOTE_SINGLE' || type === 'QUOTE_DOUBLE';
  if (!isQuoted && type !== 'PLAIN') return null;
  const piece = pieces[type];
  const starts: number[] = [];
  const last = isQuoted ? source.length - 1 : source.length;
  let at = isQuoted ? 1 : 0;
  // Ends: for `at` only grows.
  while (at < last) {
    piece.lastIndex = at;
    const length = piece.exec(source)?.[0].length ?? 1;
    // `\U` may stand for a character of two units; both start at its escape.
    if (/^\\U(?!0000)/.test(source.slice(at, at + 6))) starts.push(at);
    starts.push(at);
    at += length;
  }
  return [...starts, at];
}

/** The source of one UTF-16 unit of the value. */
const pieces = {
  PLAIN: /./y,
  QUOTE_SINGLE: /''|./y,
  QUOTE_DOUBLE: /\\x.{2}|\\u.{4}|\\U.{8}|\\.|./y,
} as const;
