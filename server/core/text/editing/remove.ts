import type { Path } from '../../../../schema/path.ts';
import { firstOnLine } from '../reading/faults.ts';
import { contentEnd, lastLineEnd, pairEnd, type TextSplice } from '../reading/layout.ts';
import { columnAt, lineEnd, lineStart, nextLineStart } from '../reading/lines.ts';
import { locate } from '../reading/locate.ts';
import { isMapNode, isSeq, type ListNode, type MapNode } from '../reading/nodes.ts';
import type { Syntax } from '../reading/syntax.ts';
import { dashOf, isMerge, keyName, spanOf } from '../reading/tree.ts';
import { removeFlowItem } from './flowItems.ts';

/** Takes out the key or list entry at a path, with its lines and the comments on them. Null when it cannot be. */
export function removeAt(syntax: Syntax, path: Path): readonly TextSplice[] | null {
  const step = path.at(-1);
  const parent = locate(syntax, path.slice(0, -1));
  if (step === undefined || !parent || parent.written !== parent.node) return null;
  const { node } = parent;
  const index = isMapNode(node)
    ? node.items.findIndex(pair => !isMerge(pair) && keyName(pair) === String(step))
    : typeof step === 'number' && isSeq(node) && step < node.items.length
      ? step
      : -1;
  if (index < 0 || !(isMapNode(node) || isSeq(node))) return null;
  if (node.flow) return removeFlowItem(syntax, node, index);
  return isMapNode(node) ? removePair(syntax, node, index) : removeEntry(syntax, node, index);
}

function removeEntry(syntax: Syntax, list: ListNode, index: number): readonly TextSplice[] | null {
  const { readText: text } = syntax;
  const dash = dashOf(list, index);
  // A list that starts on the line of another's dash has no line of its own to take out.
  if (dash === null || firstOnLine(text, dash) !== dash) return null;
  const end = lastLineEnd(syntax, contentEnd(text, list.items[index] ?? null, dash + 1), columnAt(text, dash));
  return [cutLines(text, dash, end)];
}

function removePair(syntax: Syntax, map: MapNode, index: number): readonly TextSplice[] | null {
  const { readText: text } = syntax;
  const pair = map.items[index]!;
  const start = spanOf(pair.key)?.[0];
  if (start === undefined) return null;
  const end = lastLineEnd(syntax, pairEnd(text, pair), columnAt(text, start));
  if (firstOnLine(text, start) === start) return [cutLines(text, start, end)];
  // The first key of a list entry, beside its dash: the next key moves up there.
  const dashEnd = text.slice(0, start).trimEnd().length;
  const next = spanOf(map.items[index + 1]?.key)?.[0];
  const isNext = next !== undefined && lineStart(text, next) === nextLineStart(text, end);
  return [isNext ? { start, end: next, text: '' } : { start: dashEnd, end: lineEnd(text, end), text: '' }];
}

/** The lines from one offset to another; at the end of a file without a last line break, with the break before them. */
function cutLines(text: string, from: number, to: number): TextSplice {
  const start = lineStart(text, from);
  const end = nextLineStart(text, to);
  const isLast = end === lineEnd(text, to);
  if (!isLast || start === 0) return { start, end, text: '' };
  return { start: start - (text.startsWith('\r\n', start - 2) ? 2 : 1), end, text: '' };
}
