import { type Path, samePath } from '../../../../schema/path.ts';
import type { Change, EntryText, Place } from '../../findings/finding.ts';
import type { TextSplice } from '../reading/layout.ts';
import { locate } from '../reading/locate.ts';
import { isMapNode, isSeq } from '../reading/nodes.ts';
import { rangeOf } from '../reading/rangeOf.ts';
import { sourceSpan } from '../reading/scalarOffsets.ts';
import type { Syntax } from '../reading/syntax.ts';
import { isFlow } from '../reading/tree.ts';
import { addKey } from './addKey.ts';
import { appendEntries } from './append.ts';
import { removeAt } from './remove.ts';

/**
 * The edits that make changes to a file, in the order of the text and free of overlaps. They touch only what they must:
 * comments, layout, line endings and every other character stay. Null when one of the changes cannot be made here, or none
 * changes anything.
 */
export function applyChanges(syntax: Syntax, changes: readonly Change[]): readonly TextSplice[] | null {
  if (syntax.isRefused) return null;
  const splices: TextSplice[] = [];
  const steps = together(changes);
  // A key of the last entry is put in where a new entry begins: the key comes first.
  const isAppend = ({ kind }: Step) => kind === 'append';
  for (const step of [...steps.filter(each => !isAppend(each)), ...steps.filter(isAppend)]) {
    const made = step.kind === 'append' ? appendEntries(syntax, step.path, step.entries) : applyOne(syntax, step);
    if (made === null) return null;
    splices.push(...made);
  }
  const changing = splices.filter(({ start, end, text }) => text !== syntax.text.slice(start, end));
  if (changing.length === 0) return null;
  changing.sort((a, b) => a.start - b.start || a.end - b.end);
  const overlaps = changing.some((splice, i) => i > 0 && splice.start < changing[i - 1]!.end);
  return overlaps ? null : changing;
}

/** The text with edits made. */
export const splice = (text: string, splices: readonly TextSplice[]): string =>
  splices.reduceRight(
    (result, { start, end, text: piece }) => result.slice(0, start) + piece + result.slice(end),
    text,
  );

type Append = { readonly kind: 'append'; readonly path: Path; readonly entries: readonly EntryText[] };
type Step = Exclude<Change, { readonly kind: 'append' }> | Append;

/** Entries for one list are appended together, so that a list which is missing is made once. */
function together(changes: readonly Change[]): readonly Step[] {
  const steps: Step[] = [];
  for (const change of changes) {
    if (change.kind !== 'append') {
      steps.push(change);
      continue;
    }
    const earlier = steps.findIndex(step => step.kind === 'append' && samePath(step.path, change.path));
    const at = steps[earlier];
    if (at?.kind === 'append') steps[earlier] = { ...at, entries: [...at.entries, change.entry] };
    else steps.push({ kind: 'append', path: change.path, entries: [change.entry] });
  }
  return steps;
}

function applyOne(syntax: Syntax, change: Exclude<Change, { readonly kind: 'append' }>): readonly TextSplice[] | null {
  switch (change.kind) {
    case 'replace':
      return replaceAt(syntax, change.place, change.text);
    case 'add-key':
      return addKey(syntax, change.path, change.key, change.text);
    case 'remove':
      return removeAt(syntax, change.path);
  }
}

/** Only what is written can be replaced; a key without a value gets one. */
function replaceAt(syntax: Syntax, place: Place, text: string): readonly TextSplice[] | null {
  if (place.on === 'text') {
    const [start, end] = rangeOf(syntax, place);
    return [{ start, end, text }];
  }
  const found = locate(syntax, place.path);
  if (!found || place.on === 'entry') return null;
  if (place.on === 'key') return found.key && [{ start: found.key[0], end: found.key[1], text }];
  const { value, written, pair } = found;
  if (!value) {
    const colon = pair?.colon ?? null;
    return colon === null ? null : [{ start: colon + 1, end: colon + 1, text: ` ${text}` }];
  }
  if ((isMapNode(written) || isSeq(written)) && !isFlow(written)) return null;
  const [start, end] = (place.within && sourceSpan(syntax.readText, written, place.within)) ?? value;
  return [{ start, end, text }];
}
