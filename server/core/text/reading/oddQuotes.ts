import { type Fault, fault, replacing } from './faults.ts';
import type { Span } from './lines.ts';

/** A name or value in the quotes of a word processor, where one begins and ends. */
const QUOTED =
  /(?=[“„«‘‚])(?<=^[ \t]*|: +|- +|[{[,] *).([^“”„«»‘’‚"'\\\r\n#]*)[”“»’‘](?=[ \t]*(?::(?:\s|$)|[,}\]]|#|\r?$))/gm;

/** The text with such quotes as plain ones, each in its place, and the slip that says so. */
export function evenQuotes(text: string): { readonly text: string; readonly faults: readonly Fault[] } {
  if (!/[“„«‘‚]/.test(text)) return { text, faults: [] };
  const isNote = (at: number): boolean => /(?:^|[ \t])#/.test(text.slice(text.lastIndexOf('\n', at) + 1, at));
  const found = [...text.matchAll(QUOTED)]
    .filter(({ index }) => !isNote(index))
    .map(({ 0: quoted, index }): Span => [index, index + quoted.length]);
  const [first] = found;
  if (!first) return { text, faults: [] };
  const ends = found.flatMap(([start, end]) => [start, end - 1]);
  const more = found.length > 1 ? `, as in ${found.length - 1} more place${found.length > 2 ? 's' : ''}` : '';
  const message = `These are the quotes of a letter, ${text.slice(...first)}${more}. A name or figure needs none here, or plain ones.`;
  const mend = replacing('Change to plain quotes', ...ends.map(at => [[at, at + 1], '"'] as const));
  return {
    text: [0, ...ends.map(at => at + 1)].map((from, i) => text.slice(from, ends[i])).join('"'),
    faults: [fault('odd-quotes', first, message, { mend })],
  };
}
