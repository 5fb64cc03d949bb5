import { type Fault, fault, replacing } from './faults.ts';
import type { Span } from './lines.ts';

/** Indentation, dashes, and the blanks after a key's colon, where only plain spaces count as blanks. */
const leads = /^[^\S\r\n\ufeff]*(?:-[^\S\r\n]+)*(?:[\w-]+:[^\S\r\n]+)?/gm;

/** Blanks that look like a space and are not: no-break spaces and the like, as web pages have them. */
const oddSpace = /[^\S \t\r\n\ufeff\u2028\u2029]/g;

/** The text with such blanks as plain spaces where they shape the file, each in its place, and the slip that says so. */
export function evenSpaces(text: string): { readonly text: string; readonly faults: readonly Fault[] } {
  const found: Span[] = [];
  for (const { 0: lead, index } of text.matchAll(leads))
    for (const odd of lead.matchAll(oddSpace)) found.push([index + odd.index, index + odd.index + 1]);
  const [first] = found;
  if (!first) return { text, faults: [] };
  const more = found.length > 1 ? `, as in ${found.length - 1} more place${found.length > 2 ? 's' : ''}` : '';
  const message = `This is a no-break space and not a plain one${more}; it may have come along with text copied from elsewhere. YAML takes plain spaces only.`;
  const mend = replacing('Change to plain spaces', ...found.map(span => [span, ' '] as const));
  return {
    text: text.replace(leads, lead => lead.replace(oddSpace, ' ')),
    faults: [fault('odd-space', first, message, { mend })],
  };
}
