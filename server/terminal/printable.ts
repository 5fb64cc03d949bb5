/**
 * Control characters and marks that turn the direction of writing: in a name from a stranger's file they would move the
 * cursor, hide what stands there or rename the window. Line ends and tabs stay.
 */
const UNPRINTABLE = /(?![\n\t])[\p{Control}\p{Bidi_Control}]/gu;

const ESCAPE = '\u001b';

/** The colours of `paintFor`. */
const PAINT = new RegExp(`(${ESCAPE}\\[(?:0|1|31|32)m)`);

/** Text with a mark in the place of each character that a terminal would obey. */
export const printable = (text: string): string => text.replace(UNPRINTABLE, '\ufffd');

/** The same, but for our own colours. */
export const printableInColour = (text: string): string =>
  text
    .split(PAINT)
    .map((piece, i) => (i % 2 === 1 ? piece : printable(piece)))
    .join('');

/** JSON with such characters in its own escapes: whatever reads it gets them as they were. */
export const printableText = (json: string): string =>
  json.replace(UNPRINTABLE, character => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);
