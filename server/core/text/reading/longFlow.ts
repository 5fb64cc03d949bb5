import type { Steps } from '../../steps/steps.ts';
import { isSeq, type ListNode, movedList, type Node, type NodePair } from './nodes.ts';
import { otherThanText, plainScalar } from './plainPair.ts';

/** A key and, behind it, a list that begins in brackets. */
const head = /^( *)([A-Za-z][\w-]{0,60}): +(?=\[)/;

/** What may keep a bracket or a comma from being one, or reach beyond its own entry. */
const odd = /["'#&*!|>@`?\t]/;

/** Entries of so many characters are parsed together. */
const TOGETHER = 2000;

/**
 * A key whose value is a long list in brackets, such as a table of offsets out of another program, put together from its
 * entries: `parsed` is what the parser makes of a text, null where it slips. Null where the list must be parsed as a whole.
 */
export function* longFlow(lines: string, parsed: (text: string) => Steps<Node | null>): Steps<NodePair | null> {
  const [before, indent = '', name = ''] = head.exec(lines) ?? [];
  if (before === undefined || odd.test(lines) || otherThanText.test(name)) return null;
  const entries = entriesOf(lines, before.length);
  if (!entries) return null;
  const items: (Node | null)[] = [];
  for (const [from, to] of entries.stretches) {
    // A bracket stands where the list's own does, or the comma before them.
    const some = yield* parsed(`[${lines.slice(from, to)}]`);
    if (!isSeq(some) || !some.flow) return null;
    items.push(...movedList(some, from - 1).items);
  }
  const start = indent.length;
  const value: ListNode = {
    kind: 'list',
    start: before.length,
    end: entries.end,
    anchor: '',
    flow: true,
    isClosed: true,
    items,
    dashes: [],
  };
  return { key: plainScalar(start, name, name), value, colon: start + name.length };
}

interface Entries {
  /** From where to where some of them stand, without the comma behind the last. */
  readonly stretches: readonly (readonly [from: number, to: number])[];
  /** Behind the bracket that closes the list. */
  readonly end: number;
}

/** The entries of a list whose bracket stands at `at`; null where it is not closed, or something stands behind it. */
function entriesOf(text: string, at: number): Entries | null {
  const stretches: (readonly [from: number, to: number])[] = [];
  let depth = 0;
  let from = at + 1;
  for (let i = at; i < text.length; i += 1) {
    const char = text[i]!;
    if (char === '[' || char === '{') depth += 1;
    else if (char === ']' || char === '}') depth -= 1;
    else if (char === ',' && depth === 1 && i - from >= TOGETHER) {
      stretches.push([from, i]);
      from = i + 1;
    }
    if (depth > 0) continue;
    if (char !== ']' || text.slice(i + 1).trim() !== '') return null;
    if (text.slice(from, i).trim() !== '') stretches.push([from, i]);
    return { stretches, end: i + 1 };
  }
  return null;
}
