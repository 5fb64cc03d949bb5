import { firstOnLine } from '../reading/faults.ts';
import { pairEnd, type TextSplice } from '../reading/layout.ts';
import { lineEnd, lineEndingOf, lineStart, nextLineStart, type Span } from '../reading/lines.ts';
import { isMapNode, type ListNode, type MapNode, type NodePair } from '../reading/nodes.ts';
import type { Syntax } from '../reading/syntax.ts';
import { spanOf } from '../reading/tree.ts';

/** What stands between brackets: entries or pairs, and where each one's comma is. */
interface FlowItem {
  readonly span: Span;
  /** Just behind the comma after it; null when none follows. */
  readonly commaEnd: number | null;
}

/** Puts an item in after the last one, in the layout of that one. */
export function appendFlowItem(
  { text }: Syntax,
  collection: MapNode | ListNode,
  item: string,
  comment: string,
): readonly TextSplice[] | null {
  const brackets = spanOf(collection);
  if (!brackets || !collection.isClosed) return null;
  const items = itemsOf(text, collection);
  const last = items.at(-1);
  if (!last) return [insert(brackets[0] + 1, brackets[1] - brackets[0] > 2 ? item : padded(item, collection))];
  const [start] = last.span;
  const end = last.commaEnd ?? last.span[1];
  const comma = last.commaEnd === null ? '' : ',';
  const isOnOwnLine = firstOnLine(text, start) === start;
  if (!isOnOwnLine) return [insert(end, last.commaEnd === null ? `, ${item}` : ` ${item},`)];
  const ending = lineEndingOf(text);
  const indent = text.slice(lineStart(text, start), start);
  const after = text.slice(end, lineEnd(text, end));
  const isLineFree = /^[ \t]*(?:#.*)?$/.test(after);
  const line = `${ending}${indent}${item}${comma}${isLineFree ? comment : ''}`;
  const lineAt = isLineFree && after.trim() !== '' ? lineEnd(text, end) : end;
  if (last.commaEnd !== null) return [insert(lineAt, line)];
  return lineAt === end ? [insert(end, `,${line}`)] : [insert(end, ','), insert(lineAt, line)];
}

/** Takes an item out, with its line where it has one to itself, and with the comma that only it needed. */
export function removeFlowItem(
  { text }: Syntax,
  collection: MapNode | ListNode,
  index: number,
): readonly TextSplice[] | null {
  const items = itemsOf(text, collection);
  const item = items[index];
  if (!item || !collection.isClosed) return null;
  const before = items[index - 1] ?? null;
  const after = items[index + 1] ?? null;
  const [start] = item.span;
  const end = item.commaEnd ?? item.span[1];
  const isOnOwnLine =
    firstOnLine(text, start) === start && /^[ \t]*(?:#.*)?$/.test(text.slice(end, lineEnd(text, end)));
  const isCommaSpare = after === null && item.commaEnd === null && before?.commaEnd != null;
  if (isOnOwnLine) {
    const line = cut(lineStart(text, start), nextLineStart(text, end));
    return isCommaSpare ? [cut(before.commaEnd! - 1, before.commaEnd!), line] : [line];
  }
  if (isCommaSpare) return [cut(before.commaEnd! - 1, end)];
  if (before?.commaEnd != null && after === null) return [cut(before.commaEnd, end)];
  if (after && lineEnd(text, start) > after.span[0]) return [cut(start, after.span[0])];
  return [cut(start, end)];
}

/** Behind an item, past blanks and notes. */
const COMMA = /^\s*(?:#[^\r\n]*[\r\n]\s*)*,/;

function itemsOf(text: string, collection: MapNode | ListNode): readonly FlowItem[] {
  const spans = isMapNode(collection)
    ? collection.items.map(pair => flowPairSpan(text, pair))
    : collection.items.map(item => spanOf(item));
  return spans
    .filter(span => span !== null)
    .map(span => {
      const comma = COMMA.exec(text.slice(span[1]));
      return { span, commaEnd: comma ? span[1] + comma[0].length : null };
    });
}

function flowPairSpan(text: string, pair: NodePair): Span | null {
  const key = spanOf(pair.key);
  return key ? [key[0], pairEnd(text, pair)] : null;
}

/** Into empty brackets: braces have room inside, as this tool writes them. */
const padded = (item: string, collection: MapNode | ListNode): string => (isMapNode(collection) ? ` ${item} ` : item);

const insert = (at: number, text: string): TextSplice => ({ start: at, end: at, text });
const cut = (start: number, end: number): TextSplice => ({ start, end, text: '' });
