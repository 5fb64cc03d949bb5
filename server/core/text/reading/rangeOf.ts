import type { Place } from '../../findings/finding.ts';
import { restOfLine } from './faults.ts';
import { lineEnd, type Span } from './lines.ts';
import { type Located, locate, locateNearest } from './locate.ts';
import { isMapNode, isSeq } from './nodes.ts';
import { sourceSpan } from './scalarOffsets.ts';
import type { Syntax } from './syntax.ts';
import { isFlow, keyName, spanOf } from './tree.ts';

/** The characters that a finding's place marks, always on one line; where nothing stands there, the nearest place above. */
export function rangeOf(syntax: Syntax, place: Place): Span {
  const { text } = syntax;
  if (place.on === 'text') {
    const start = Math.max(0, Math.min(place.start, text.length));
    return [start, Math.max(start, Math.min(place.end, text.length))];
  }
  const found = locate(syntax, place.path);
  if (!found) return entryRange(syntax, locateNearest(syntax, place.path));
  if (place.on === 'key') return found.key ?? valueRange(syntax, found);
  if (place.on === 'entry') return entryRange(syntax, found);
  const inside = place.within ? sourceSpan(text, found.written, place.within) : null;
  return inside ?? valueRange(syntax, found);
}

/** A plain value or a bracketed one on one line is marked whole; of a longer one its key, or the first line. */
function valueRange(syntax: Syntax, found: Located): Span {
  const { text } = syntax;
  const { value, key, written } = found;
  if (!value) return key ?? firstLine(text, found);
  const isBlock = (isMapNode(written) || isSeq(written)) && !isFlow(written);
  if (!isBlock && lineEnd(text, value[0]) >= value[1]) return value;
  return key ?? (isBlock ? entryRange(syntax, found) : restOfLine(text, value[0]));
}

/** The key that holds a map or list; of a list entry its name, else its first key and value. */
function entryRange(syntax: Syntax, found: Located): Span {
  const { text } = syntax;
  if (found.key) return found.key;
  const { node } = found;
  if (isMapNode(node) && node.items.length > 0) {
    const named = found.path.length > 0 ? node.items.find(pair => keyName(pair) === 'name') : undefined;
    const pair = named ?? node.items[0]!;
    const key = spanOf(pair.key);
    const value = spanOf(pair.value);
    const start = (named && value ? value : key)?.[0] ?? spanOf(node)?.[0] ?? 0;
    return [start, Math.max(start, Math.min(value?.[1] ?? key?.[1] ?? start, lineEnd(text, start)))];
  }
  if (found.value) return [found.value[0], Math.min(found.value[1], lineEnd(text, found.value[0]))];
  return firstLine(text, found);
}

/** For an entry of which nothing is written: its place, as far as the line goes. */
function firstLine(text: string, { written }: Located): Span {
  const start = written?.start ?? 0;
  return [start, restOfLine(text, start)[1]];
}
