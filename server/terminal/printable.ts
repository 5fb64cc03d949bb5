/**
 * Control characters and marks that turn the direction of writing: in a name from a stranger's file they would move the
 * cursor, hide what stands there or rename the window. Line ends and tabs stay.
 */
const UNPRINTABLE = /(?![\n\t])[\p{Control}\p{Bidi_Control}]/gu;

/** Text with a mark in the place of each character that a terminal would obey. */
export const printable = (text: string): string => text.replace(UNPRINTABLE, '\ufffd');

/** The same of what has to stay on its line, where a name with a line end in it could pass for a line of our own. */
export const printableInLine = (text: string): string => printable(text).replace(/[\n\u2028\u2029]/g, '\ufffd');

/** JSON with such characters in its own escapes: whatever reads it gets them as they were. */
export const printableText = (json: string): string =>
  json.replace(UNPRINTABLE, character => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);
