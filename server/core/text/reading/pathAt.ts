import type { Path } from '../../../../schema/path.ts';
import { columnAt, lineEnd, lineStart } from './lines.ts';
import { isMapNode, isScalar, isSeq, type ListNode, type MapNode, type Node, type NodePair } from './nodes.ts';
import type { Syntax } from './syntax.ts';
import { keyName, spanOf } from './tree.ts';

/** Where an offset is in the boat. */
export interface At {
  /** The key or value there; between them, the map or list (or the empty place for one) that a new line there joins. */
  readonly path: Path;
  readonly on: 'key' | 'value' | 'between';
  readonly node: Node | null;
}

/** Where an offset is, by what is written there and, on a line that is empty or cannot be read, by its indentation. */
export function pathAt(syntax: Syntax, offset: number): At {
  const { readText: text, root } = syntax;
  return within({ text, offset, column: startColumn(syntax.text, offset) }, root, []);
}

/** Where what is written on a line before an offset starts, after any dashes; on an empty line the offset's own column. */
function startColumn(text: string, offset: number): number {
  const before = text.slice(lineStart(text, offset), offset);
  return /^[ \t]*(?:-[ \t]+)*/.exec(before)![0].length;
}

interface Search {
  readonly text: string;
  readonly offset: number;
  readonly column: number;
}

function within(search: Search, node: Node | null, path: Path): At {
  if (isMapNode(node)) return withinMap(search, node, path);
  if (isSeq(node)) return withinList(search, node, path);
  const span = spanOf(node);
  const isOn = span !== null && search.offset >= span[0] && isReached(search, span[1]);
  return { path, on: isOn ? 'value' : 'between', node };
}

function withinMap(search: Search, map: MapNode, path: Path): At {
  const between: At = { path, on: 'between', node: map };
  const pair = map.items.findLast(each => startOf(each) <= search.offset);
  const name = pair ? keyName(pair) : null;
  if (!pair || name === null) return between;
  const inside = [...path, name];
  const { value, colon } = pair;
  const key = spanOf(pair.key) ?? [startOf(pair), startOf(pair)];
  if (search.offset <= key[1]) return { path: inside, on: 'key', node: value };
  if (isMapNode(value) || isSeq(value)) {
    if (value.flow ? isInBrackets(search, value) : isBelow(search, key[0], value)) return within(search, value, inside);
    return between;
  }
  if (colon === null || search.offset <= colon) return between;
  const span = spanOf(value);
  if (span && search.offset <= span[1]) return { path: inside, on: 'value', node: value };
  if (isReached(search, span?.[1] ?? colon + 1)) return { path: inside, on: 'value', node: value };
  const isDeeper = !map.flow && search.column > columnAt(search.text, key[0]);
  return isDeeper && lineStart(search.text, search.offset) > key[0]
    ? { path: inside, on: 'between', node: value }
    : between;
}

function withinList(search: Search, list: ListNode, path: Path): At {
  const between: At = { path, on: 'between', node: list };
  const starts = list.items.map((item, i) => list.dashes[i] ?? spanOf(item)?.[0] ?? Number.POSITIVE_INFINITY);
  const index = starts.findLastIndex(start => start <= search.offset);
  const start = starts[index];
  if (start === undefined) return between;
  const item = list.items[index] ?? null;
  const inside = [...path, index];
  if (list.flow) {
    if (isMapNode(item) || isSeq(item)) return isInBrackets(search, item) ? within(search, item, inside) : between;
    const span = spanOf(item);
    return span && isReached(search, span[1]) ? { path: inside, on: 'value', node: item } : between;
  }
  if (search.column <= columnAt(search.text, start)) return between;
  if ((isMapNode(item) || isSeq(item)) && item.flow && !isInBrackets(search, item)) return between;
  return within(search, item, inside);
}

/** On the same line as what ends at `end`, or before it, with nothing but blanks between. */
const isReached = ({ text, offset }: Search, end: number): boolean =>
  offset <= end || /^[ \t]*$/.test(text.slice(end, offset));

/** Indented so that it belongs to the block below a key; a list may stand in its key's own column. */
function isBelow({ text, offset, column }: Search, key: number, value: MapNode | ListNode): boolean {
  const keyColumn = columnAt(text, key);
  if (column > keyColumn) return true;
  return isSeq(value) && column === keyColumn && text[offset] === '-' && offset >= (spanOf(value)?.[0] ?? 0);
}

/** Between the brackets of a flow collection; one that is not closed reaches to the end of its last line. */
function isInBrackets({ text, offset }: Search, node: MapNode | ListNode): boolean {
  const span = spanOf(node);
  if (!span || offset <= span[0]) return false;
  return node.isClosed ? offset < span[1] : offset <= lineEnd(text, Math.max(span[0], span[1] - 1));
}

const startOf = (pair: NodePair): number =>
  (isScalar(pair.key) ? pair.key.start : spanOf(pair.key)?.[0]) ?? pair.colon ?? Number.POSITIVE_INFINITY;
