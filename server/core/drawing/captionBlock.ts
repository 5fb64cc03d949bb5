import { type Markup, together } from './markup.ts';
import { linesOf, textLines } from './wrapped.ts';

interface CaptionWords {
  readonly heading: string;
  readonly words: string | null;
}

/** What stands over a drawing: its heading, and how the boat lies; in as many lines as it takes. */
export function captionBlock(
  { heading, words }: CaptionWords,
  width: number,
): { readonly markup: Markup; readonly height: number } {
  const room = width - 2 * LEFT;
  const headings = linesOf(heading, BOLD * 16, room);
  const notes = words === null ? [] : linesOf(words, 13, room);
  const under = 20 + 19 * headings.length - 2;
  return {
    markup: together([
      textLines(headings, { kind: 'caption', x: LEFT, y: 20, leading: 19 }),
      textLines(notes, { kind: 'note', x: LEFT, y: under, leading: 16 }),
    ]),
    height: under + 16 * notes.length - 9,
  };
}

const LEFT = 12;
/** Bold type is so much wider. */
const BOLD = 1.12;
