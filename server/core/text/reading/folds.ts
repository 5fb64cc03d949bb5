import { contentEnd, pairEnd } from './layout.ts';
import { lineAt, lineEnd, nextLineStart } from './lines.ts';
import { isMapNode, isSeq, visit } from './nodes.ts';
import type { Syntax } from './syntax.ts';
import { spanOf } from './tree.ts';

/** Lines that can be folded away below the first of them; lines count from 0. */
export interface Fold {
  readonly from: number;
  readonly to: number;
  readonly isComment: boolean;
}

/**
 * What can be folded: every key and list entry that goes on over several lines, without the comments and blank lines
 * after it, and comments of several lines. In the order of the text.
 */
export function foldsOf(syntax: Syntax): readonly Fold[] {
  const { root, lineStarts, readText: text } = syntax;
  const folds = new Map<number, Fold>();
  // Of two that begin on one line, such as an entry and its first key, the longer.
  const add = (from: number, to: number, isComment = false): void => {
    const [first, last] = [lineAt(lineStarts, from), lineAt(lineStarts, to)];
    const had = folds.get(first);
    if (last > first && (!had || had.to < last)) folds.set(first, { from: first, to: last, isComment });
  };
  visit(root, {
    pair: pair => {
      const key = spanOf(pair.key);
      if (key) add(key[0], pairEnd(text, pair));
    },
    node: list => {
      if (!isSeq(list)) return true;
      for (const [i, item] of list.items.entries()) {
        const start = list.dashes[i] ?? (isMapNode(item) || isSeq(item) ? spanOf(item)?.[0] : undefined);
        if (start !== undefined) add(start, contentEnd(text, item, start));
      }
      return true;
    },
  });
  for (const [from, to] of commentRuns(syntax.text)) add(from, to, true);
  return [...folds.values()].sort((a, b) => a.from - b.from);
}

/** Runs of lines that hold nothing but a comment. */
function commentRuns(text: string): readonly (readonly [start: number, end: number])[] {
  const runs: [number, number][] = [];
  let isRunning = false;
  // Ends: the next line starts further down.
  for (let at = 0; at < text.length; at = nextLineStart(text, at)) {
    const end = lineEnd(text, at);
    const isComment = /^[ \t]*#/.test(text.slice(at, end));
    if (isComment && isRunning) runs.at(-1)![1] = end;
    else if (isComment) runs.push([at, end]);
    isRunning = isComment;
  }
  return runs;
}
