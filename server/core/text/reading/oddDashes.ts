import { isListKey } from '../../../../schema/fileKeys.ts';
import { type Fault, fault, replacing, restOfLine } from './faults.ts';
import { lineEnd, lineStart, type Span } from './lines.ts';
import { isMapNode, isSeq, type ListNode, type MapNode, type Node, type NodePair, visit } from './nodes.ts';
import { keyName } from './tree.ts';

/** Dashes that are missing, one too many, or another sign: what was meant is plain, and is offered. */

const BULLET = /^([ \t]*)([–—•·*]|\d{1,2}[.)])(?=[ \t]+(?:["“']?[A-Za-z][\w -]*["”']?:(?:[ \t]|$)|\{))/;

/** The text with every bullet that begins an entry as a dash, each in its place, and the slip that says so. */
export function evenDashes(text: string): { readonly text: string; readonly faults: readonly Fault[] } {
  if (!/^[ \t]*(?:[–—•·*]|\d{1,2}[.)])[ \t]/m.test(text)) return { text, faults: [] };
  const found: Span[] = [];
  let even = '';
  let above = '';
  let block: number | null = null;
  for (const line of text.split(/(?<=\n)/)) {
    const column = /^ */.exec(line)![0].length;
    // In a text of several lines bullets are no slip.
    if (block !== null && line.trim() !== '' && column <= block) block = null;
    const bullet = block === null && !goesOn(above, column) ? BULLET.exec(line) : null;
    if (bullet) found.push([even.length + bullet[1]!.length, even.length + bullet[0].length]);
    if (block === null && /:[ \t]+[|>][-+\d]*[ \t]*(?:#|\r?\n?$)/.test(line)) block = column;
    const now = bullet ? withDash(line, bullet, text.slice(even.length + line.length)) : line;
    even += now;
    if (now.trim() !== '') above = now.trimEnd();
  }
  const [first] = found;
  if (!first) return { text, faults: [] };
  const more = found.length > 1 ? `, as on ${found.length - 1} more line${found.length > 2 ? 's' : ''}` : '';
  const message = `An entry begins with a plain dash and a space, “- ”, and not with “${text.slice(...first)}”${more}.`;
  const mend = replacing('Change to “-”', ...found.map(span => [span, '-'] as const));
  return { text: even, faults: [fault('wrong-dash', first, message, { mend })] };
}

/** A line with its bullet as a dash; of one that the keys below do not line up with only the dash. */
function withDash(line: string, [, lead = '', sign = '']: RegExpExecArray, below: string): string {
  const isOff = sign.length > 1 && /^ */.exec(below)![0].length === lead.length + 2;
  const said = line.trimEnd().length;
  if (isOff) return `${lead}-`.padEnd(said) + line.slice(said);
  return `${lead}-${' '.repeat(sign.length - 1)}${line.slice(lead.length + sign.length)}`;
}

/** A line in the column of the key above it goes on with that entry: a bullet there is one too many. */
function goesOn(above: string, column: number): boolean {
  const [, lead = '', dash = ''] = /^( *)((?:- +)*)[\w"“]/.exec(above) ?? [];
  const opens = /^ *([\w-]+):\s*(?:#.*)?$/.exec(above)?.[1];
  if (opens !== undefined && lead.length < column) return !isListKey(opens);
  return above !== '' && lead.length + dash.length === column && dash === '' && column > 0 && !/:\s*$/.test(above);
}

/** A bullet before one of the further keys of an entry: it is one too many. Null where none stands there. */
export function strayBullet(text: string, at: number): Fault | null {
  const line = lineStart(text, at);
  const [whole, lead] = BULLET.exec(text.slice(line, lineEnd(text, line))) ?? [];
  if (whole === undefined || lead === undefined) return null;
  const start = line + lead.length;
  const sign = text.slice(start, line + whole.length);
  const gap = /^[ \t]*/.exec(text.slice(line + whole.length))![0].length;
  return fault(
    'wrong-dash',
    [start, line + whole.length],
    `The keys of an entry stand below each other without “${sign}”. Remove it.`,
    {
      blanked: [start, lineEnd(text, line)],
      mend: replacing(`Remove the “${sign}”`, [[start, line + whole.length + gap], '']),
    },
  );
}

/**
 * An entry of a list without its dash: its first key stands a second time in the entry before it. Null where nothing of the
 * kind is found; where the dash belongs there is room, for the keys of an entry stand behind it.
 */
export function missingDash(root: Node | null, text: string): Fault | null {
  let found: Fault | null = null;
  visit(root, {
    node: list => {
      if (found) return false;
      if (isSeq(list) && !list.flow)
        found = list.items.map((item, i) => dashLess(list, i, item, text)).find(Boolean) ?? null;
      return true;
    },
  });
  return found;
}

function dashLess({ dashes }: ListNode, index: number, item: Node | null, text: string): Fault | null {
  const dash = dashes[index];
  if (!isMapNode(item) || item.flow || dash === undefined) return null;
  const [first, ...others] = item.items;
  const name = first && keyName(first);
  const second = name ? others.find(pair => keyName(pair) === name) : undefined;
  if (!second || !isRepeated(second, item)) return null;
  const line = lineStart(text, second.key!.start);
  const at = line + (dash - lineStart(text, dash));
  if (!/^ +$/.test(text.slice(line, second.key!.start)) || at >= second.key!.start) return null;
  const said = text.slice(...restOfLine(text, second.key!.start));
  const right = `- ${said}`;
  return fault(
    'missing-dash',
    [second.key!.start, second.key!.start + said.length],
    `Each entry of a list begins with a dash: “${right}”.`,
    {
      dash: at,
      mend: replacing('Put the dash in', [[at, at + 1], '-']),
    },
  );
}

/** What follows a repeated first key is an entry of its own, not one key written twice: another key comes again, or none follows. */
const isRepeated = (second: NodePair, { items }: MapNode): boolean => {
  const at = items.indexOf(second);
  const before = new Set(items.slice(0, at).map(keyName));
  const after = items.slice(at + 1).map(keyName);
  return at > 1 && after.length > 0 && after.some(name => before.has(name));
};

/** `{ … }` below the dash of the entry before it: an entry on one line without its dash. */
export function dashlessBraces(text: string, at: number): Fault | null {
  const line = lineStart(text, at);
  const [lead] = /^ *(?=\{)/.exec(text.slice(line, lineEnd(text, line))) ?? [];
  const above = text.slice(0, line).trimEnd().split('\n').at(-1) ?? '';
  const dash = /^( *)- *\{/.exec(above)?.[1]?.length;
  if (lead === undefined || dash === undefined || lead.length < dash + 2) return null;
  const start = line + lead.length;
  return fault('missing-dash', [start, start + 1], 'Each entry of a list begins with a dash: “- { … }”.', {
    dash: line + dash,
    mend: replacing('Put the dash in', [[line + dash, line + dash + 1], '-']),
  });
}
