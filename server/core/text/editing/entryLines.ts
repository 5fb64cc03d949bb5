import type { EntryText } from '../../findings/finding.ts';
import { keyText, quoteScalar } from '../reading/quoteScalar.ts';

/** An entry between braces, on one line. */
export function flowEntry(entry: EntryText, padding: string): string {
  const fields = entry.fields.map(([key, text]) => `${keyText(key)}: ${quoteScalar(text, true)}`);
  return `{${padding}${fields.join(', ')}${padding}}`;
}

/** An entry as keys below each other, its comment after the first. */
export function blockEntry(entry: EntryText): readonly string[] {
  return entry.fields.map(([key, text], i) => {
    const line = `${keyText(key)}: ${quoteScalar(text, false)}`;
    return i === 0 ? line + commentAfter(entry) : line;
  });
}

/** The comment as it stands at the end of a line. */
export const commentAfter = ({ comment }: EntryText): string => (comment === undefined ? '' : `  # ${comment}`);

/** Lines below a dash: the first beside it, the others in its column. */
export function dashed(lines: readonly string[], indent: string, gap: string): readonly string[] {
  const below = ' '.repeat(indent.length + 1 + gap.length);
  return lines.map((line, i) => (i === 0 ? `${indent}-${gap}${line}` : `${below}${line}`));
}
