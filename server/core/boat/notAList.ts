import type { Path } from '../../../schema/path.ts';
import type { Finding, Mend } from '../findings/finding.ts';
import { isBlankLine } from '../text/reading/faults.ts';
import { lineStart, nextLineStart } from '../text/reading/lines.ts';
import { locate } from '../text/reading/locate.ts';
import { isMapNode } from '../text/reading/nodes.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { valueFault } from './fault.ts';

/** A section of entries that is none; where the keys of one entry stand there, its dash is offered. */
export const notAList = (path: Path, syntax: Syntax): Finding =>
  valueFault(
    'not-a-list',
    path,
    `“${path.at(-1)}” is a list: begin each entry on a line with “- ”, such as “- name: battery”.`,
    { mends: withDash(path, syntax) },
  );

function withDash(path: Path, syntax: Syntax): readonly Mend[] {
  const { text } = syntax;
  const { node, written } = locate(syntax, path) ?? {};
  if (!isMapNode(node) || node !== written || node.items.length === 0) return [];
  const put = (at: number, piece: string) =>
    ({ kind: 'replace', place: { on: 'text', start: at, end: at }, text: piece }) as const;
  if (node.flow) return [{ title: 'Make it a list', changes: [put(node.start, '['), put(node.end, ']')] }];
  const changes = [put(node.start, '- ')];
  // Ends: the next line starts further down.
  for (
    let line = nextLineStart(text, node.start);
    line > node.start && line < node.end;
    line = nextLineStart(text, line)
  )
    if (!isBlankLine(text, line)) changes.push(put(lineStart(text, line), '  '));
  return [{ title: 'Put the dash in', changes }];
}
