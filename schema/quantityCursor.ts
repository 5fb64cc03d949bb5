import type { Sense } from './quantitySense.ts';
import type { SlipSpan } from './slip.ts';
import type { Dimension } from './units.ts';

/** How a text is to be understood. */
export interface Expected {
  readonly dimension: Dimension;
  /** Finishes the messages. */
  readonly example: string;
  /** The words that may say its sign. */
  readonly sense: Sense | null;
}

/** The text being read and how far it has been. */
export interface Cursor extends Expected {
  readonly text: string;
  at: number;
}

/** Moves over a match at the cursor, after any space. */
export function take(cursor: Cursor, pattern: RegExp): (SlipSpan & { readonly match: RegExpExecArray }) | null {
  skipSpace(cursor);
  const match = pattern.exec(cursor.text.slice(cursor.at));
  if (match === null) return null;
  const start = cursor.at;
  cursor.at += match[0].length;
  return { start, end: cursor.at, match };
}

export function skipSpace(cursor: Cursor): void {
  cursor.at += /^\s*/.exec(cursor.text.slice(cursor.at))![0].length;
}

/** The word at the cursor, or the end of the text, to be marked. */
export function nextWord(cursor: Cursor): SlipSpan {
  skipSpace(cursor);
  const length = /^\S*/.exec(cursor.text.slice(cursor.at))![0].length;
  return { start: cursor.at, end: cursor.at + length };
}
