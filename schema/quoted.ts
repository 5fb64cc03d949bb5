/** Characters that are shown of one value of a file. */
const MOST_SHOWN = 40;

/** Line ends and other control characters, what turns the direction of the text round, and halves of characters. */
export const UNSHOWN = /[\p{Cc}\p{Cs}\p{Bidi_Control}\u2028\u2029]/gu;

/** Words out of a file, whatever stands in them, cut to be shown within a sentence: it stays one line, and a short one. */
export function cutShort(words: string, most = MOST_SHOWN): string {
  const cut = words.length > most ? `${words.slice(0, most - 3)}…` : words;
  return cut.replace(UNSHOWN, sign => (/\s/.test(sign) ? ' ' : '�'));
}

/** The same between quotation marks. */
export const quoted = (words: string): string => `“${cutShort(words)}”`;
