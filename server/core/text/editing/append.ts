import type { Path } from '../../../../schema/path.ts';
import type { EntryText } from '../../findings/finding.ts';
import {
  bracketPadding,
  contentEnd,
  gapAfterDash,
  insertLines,
  lastLineEnd,
  styleOf,
  type TextSplice,
} from '../reading/layout.ts';
import { columnAt } from '../reading/lines.ts';
import { locate } from '../reading/locate.ts';
import { isMapNode, isScalar, isSeq, type ListNode } from '../reading/nodes.ts';
import type { Syntax } from '../reading/syntax.ts';
import { dashOf, isFlow } from '../reading/tree.ts';
import { addLines } from './addKey.ts';
import { blockEntry, commentAfter, dashed, flowEntry } from './entryLines.ts';
import { appendFlowItem } from './flowItems.ts';

/** Appends entries to the list at a path, in its style; makes the list where it is missing. Null when it cannot be. */
export function appendEntries(syntax: Syntax, path: Path, entries: readonly EntryText[]): readonly TextSplice[] | null {
  const list = locate(syntax, path);
  if (list && list.written !== list.node) return null;
  const isEmpty = !list || list.node === null || (isScalar(list.node) && list.node.value === null);
  if (isSeq(list?.node)) {
    if (list.node.items.length > 0)
      return list.node.flow ? appendFlow(syntax, list.node, entries) : appendBlock(syntax, list.node, entries);
    if (!list.node.flow) return null;
  } else if (!isEmpty) return null;

  const { dashGap } = styleOf(syntax);
  const lines = entries.flatMap(entry => dashed(blockEntry(entry), '', dashGap));
  return addLines(syntax, path, {
    lines,
    isList: true,
    flow: `[${entries.map(entry => flowEntry(entry, ' ')).join(', ')}]`,
  });
}

function appendBlock(syntax: Syntax, list: ListNode, entries: readonly EntryText[]): readonly TextSplice[] | null {
  const { readText: text } = syntax;
  const index = list.items.length - 1;
  const model = list.items[index];
  const dash = dashOf(list, index);
  if (dash === null) return null;
  const column = columnAt(text, dash);
  const indent = ' '.repeat(column);
  const end = lastLineEnd(syntax, contentEnd(text, list, dash + 1), column);
  const gap = gapAfterDash(text, list, index);
  const lines = entries.flatMap(entry => {
    if (isMapNode(model) && isFlow(model))
      return [`${indent}-${gap ?? ' '}${flowEntry(entry, bracketPadding(text, model))}${commentAfter(entry)}`];
    if (isMapNode(model) && gap === null) {
      const below = ' '.repeat(columnAt(text, model.start));
      return [`${indent}-`, ...blockEntry(entry).map(line => below + line)];
    }
    return dashed(blockEntry(entry), indent, gap || ' ');
  });
  return [insertLines(syntax.text, end, lines)];
}

/** Entries go in one after the other; the layout of the last one there serves for all. */
function appendFlow(syntax: Syntax, list: ListNode, entries: readonly EntryText[]): readonly TextSplice[] | null {
  const model = list.items.at(-1);
  const padding = isMapNode(model) ? bracketPadding(syntax.readText, model) : ' ';
  const [first, ...more] = entries;
  if (!first) return [];
  const items = [first, ...more].map(entry => flowEntry(entry, padding)).join(', ');
  return appendFlowItem(syntax, list, items, more.length === 0 ? commentAfter(first) : '');
}
