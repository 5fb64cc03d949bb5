import type { Path } from '../../../../schema/path.ts';
import { insertLines, lastLineEnd, pairEnd, type Style, styleOf, type TextSplice } from '../reading/layout.ts';
import { columnAt, lineEnd } from '../reading/lines.ts';
import { type Located, locate } from '../reading/locate.ts';
import { isMapNode, isScalar, isSeq, type MapNode, type Node } from '../reading/nodes.ts';
import { quoteScalar } from '../reading/quoteScalar.ts';
import type { Syntax } from '../reading/syntax.ts';
import { isFlow, spanOf } from '../reading/tree.ts';
import { appendFlowItem } from './flowItems.ts';

/** A map or list to write below a key. */
export interface Below {
  /** As lines, without indentation. */
  readonly lines: readonly string[];
  readonly isList: boolean;
  /** As one piece between brackets. */
  readonly flow: string;
}

/** Adds `key: text` to the map at a path, after its last key; makes the map where it is missing. Null when it cannot be. */
export function addKey(syntax: Syntax, path: Path, key: string, text: string): readonly TextSplice[] | null {
  const map = locate(syntax, path);
  if (isMapNode(map?.node)) {
    if (map.written !== map.node) return null;
    return map.node.flow
      ? appendFlowItem(syntax, map.node, `${key}: ${quoteScalar(text, true)}`, '')
      : addPairLines(syntax, map.node, [`${key}: ${quoteScalar(text, false)}`]);
  }
  if (map && !isUnwritten(map)) return null;
  const flow = `{ ${key}: ${quoteScalar(text, true)} }`;
  return addLines(syntax, path, { lines: [`${key}: ${quoteScalar(text, false)}`], isList: false, flow });
}

/** Writes a map or list below the key at a path, which has no value yet or is not there yet. */
export function addLines(syntax: Syntax, path: Path, below: Below): readonly TextSplice[] | null {
  const { readText: text, root } = syntax;
  const key = path.at(-1);
  if (key === undefined) return root === null || isNull(root) ? [atEnd(syntax, below.lines)] : null;
  const found = locate(syntax, path);
  const parent = locate(syntax, path.slice(0, -1));
  if (found) return fillIn(syntax, found, parent, below);
  if (typeof key !== 'string') return null;
  if (isMapNode(parent?.node)) {
    if (parent.written !== parent.node) return null;
    if (parent.node.flow) return appendFlowItem(syntax, parent.node, `${key}: ${below.flow}`, '');
    const lines = [`${key}:`, ...indented(below, styleOf(syntax))];
    return addPairLines(syntax, parent.node, isSpaced(text, parent.node, path) ? ['', ...lines] : lines);
  }
  const lines = [`${key}:`, ...indented(below, styleOf(syntax))];
  return addLines(syntax, path.slice(0, -1), { lines, isList: false, flow: `{ ${key}: ${below.flow} }` });
}

/** Gives a key that has no value, or only empty brackets, its value. */
function fillIn(syntax: Syntax, found: Located, parent: Located | null, below: Below): readonly TextSplice[] | null {
  const { readText: text } = syntax;
  const colon = found.pair?.colon ?? null;
  if (!found.key || colon === null || found.written !== found.node) return null;
  const { value } = found;
  if (parent?.node && isFlow(parent.node))
    return [
      { start: value?.[0] ?? colon + 1, end: value?.[1] ?? colon + 1, text: value ? below.flow : ` ${below.flow}` },
    ];
  if (value && lineEnd(text, value[0]) < value[1])
    return [{ start: value[0] + 1, end: value[0] + 1, text: below.flow.slice(1, -1) }];
  const lines = indented(below, styleOf(syntax)).map(line => indentOf(text, found.key![0]) + line);
  const inserted = insertLines(syntax.text, lineEnd(text, value?.[1] ?? colon), lines);
  return value ? [{ start: colon + 1, end: value[1], text: '' }, inserted] : [inserted];
}

const indentOf = (text: string, key: number): string => ' '.repeat(columnAt(text, key));

function addPairLines(syntax: Syntax, map: MapNode, lines: readonly string[]): readonly TextSplice[] | null {
  const { readText: text } = syntax;
  const last = map.items.at(-1);
  const start = spanOf(map.items[0]?.key)?.[0];
  if (!last || start === undefined) return null;
  const column = columnAt(text, start);
  const indent = ' '.repeat(column);
  const end = lastLineEnd(syntax, pairEnd(text, last), column);
  return [
    insertLines(
      syntax.text,
      end,
      lines.map(line => (line === '' ? '' : indent + line)),
    ),
  ];
}

function atEnd({ text }: Syntax, lines: readonly string[]): TextSplice {
  const end = text.length;
  const isAtLineStart = end === 0 || /[\r\n]$/.test(text);
  if (!isAtLineStart) return insertLines(text, end, lines);
  return { start: end, end, text: lines.map(line => `${line}\n`).join('') };
}

function indented({ lines, isList }: Below, style: Style): readonly string[] {
  const indent = ' '.repeat(isList ? style.list : style.map);
  return lines.map(line => indent + line);
}

/** Sections that stand apart by blank lines go on doing so. */
function isSpaced(text: string, root: MapNode, path: Path): boolean {
  if (path.length > 1) return false;
  const starts = root.items.slice(1).map(pair => spanOf(pair.key)?.[0] ?? 0);
  return starts.filter(start => isBelowBlank(text, start)).length * 2 > starts.length;
}

/** A blank line stands above a line, or above the comments that stand there. */
function isBelowBlank(text: string, start: number): boolean {
  let end = start - 1;
  // Ends: each round looks at the line above.
  while (end > 0 && text[end] === '\n') {
    const above = text.lastIndexOf('\n', end - 1);
    const line = text.slice(above + 1, end);
    if (/^[ \t]*\r?$/.test(line)) return above >= 0;
    if (!/^#.*\r?$/.test(line)) return false;
    end = above;
  }
  return false;
}

const isNull = (node: Node | null): boolean => node === null || (isScalar(node) && node.value === null);

const isUnwritten = ({ node, written }: Located): boolean =>
  written === node && (isNull(node) || (isSeq(node) && node.items.length === 0));
