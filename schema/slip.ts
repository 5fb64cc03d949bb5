/** Something written wrong in one value of the boat file, and how to mend it. */
export interface Slip {
  /** Whole sentences for a modeller: what is wrong, what was expected, with an example of right. */
  readonly message: string;
  /** UTF-16 offsets of the wrong characters in the text given; equal ones (0, 0) mean the whole value. */
  readonly start: number;
  readonly end: number;
  /** What to put in place of those characters, when there is one likely answer. */
  readonly replacement?: string;
  /** What the file lacks for this value to be read. */
  readonly lacks?: 'scale';
}

/** What reading a value gives: it, or the first slip in it. Reading never throws. */
export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly slip: Slip };

/** A stretch of characters, UTF-16 offsets. */
export interface SlipSpan {
  readonly start: number;
  readonly end: number;
}

export const good = <T>(value: T): Read<T> => ({ ok: true, value });

export const bad = (message: string, { start, end }: SlipSpan, replacement?: string): Read<never> => ({
  ok: false,
  slip: replacement === undefined ? { message, start, end } : { message, start, end, replacement },
});
