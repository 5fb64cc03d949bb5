import type { Path } from '../../../../schema/path.ts';
import { contentEnd, pairEnd } from './layout.ts';
import type { Span } from './lines.ts';
import { locate } from './locate.ts';
import type { Syntax } from './syntax.ts';
import { spanOf } from './tree.ts';

/** All that is written of the key or entry at a path, from its key or first character to the end of its value. */
export function extentOf(syntax: Syntax, path: Path): Span | null {
  const found = locate(syntax, path);
  if (!found) return null;
  const { readText: text } = syntax;
  if (found.pair && found.key) return forward(found.key[0], pairEnd(text, found.pair));
  const span = spanOf(found.written);
  return span && forward(span[0], contentEnd(text, found.written, span[1]));
}

/** What is written oddly, such as a list for a key, may have no end that is known. */
const forward = (start: number, end: number): Span => [start, Math.max(start, end)];
