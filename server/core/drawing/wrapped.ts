import { element, type Markup, svgText, together } from './markup.ts';
import { textWidth } from './textWidth.ts';

/**
 * A text in lines that are no longer than `width`; a word that is too long by itself stands alone. A number and the unit
 * behind it are one word.
 */
export function linesOf(words: string, size: number, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.replace(/(\d) (?=\S)/g, '$1\n').split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && textWidth(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines.map(line => line.replaceAll('\n', ' '));
}

/** Lines one under the other, the first with its foot at `y`. */
export const textLines = (
  lines: readonly string[],
  { kind, x, y, leading }: { readonly kind: string; readonly x: number; readonly y: number; readonly leading: number },
): Markup => together(lines.map((line, i) => element('text', { class: kind, x, y: y + i * leading }, svgText(line))));
