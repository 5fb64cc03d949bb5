/** Offsets count UTF-16 units, as editors and the YAML parser do; lines and columns count from 0. */
export type Span = readonly [start: number, end: number];

export interface Position {
  readonly line: number;
  readonly character: number;
}

/** Where each line starts. Lines end as in the editor: LF, CR LF or a lone CR. */
export const lineStartsOf = (text: string): readonly number[] => {
  const starts = [0];
  if (text.includes('\r'))
    for (const ending of text.matchAll(/\r\n|\n|\r/g)) starts.push(ending.index + ending[0].length);
  // Ends: each round is further on in the text.
  else for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
};

/** The line an offset is on; offsets beyond the text count as on its first or last line. */
export const lineAt = (lineStarts: readonly number[], offset: number): number => {
  let low = 0;
  let high = lineStarts.length - 1;
  // Ends: each round halves a whole number of lines.
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lineStarts[middle]! <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
};

export const positionAt = (lineStarts: readonly number[], offset: number): Position => {
  const line = lineAt(lineStarts, offset);
  return { line, character: Math.max(0, offset - lineStarts[line]!) };
};

/** Where the line that holds `offset` starts; a byte order mark before the first one is no part of it. */
export const lineStart = (text: string, offset: number): number => {
  if (offset <= 0) return 0;
  // The machine's own search: a line may be as long as the text, and be asked for at each of its words.
  const after = text.lastIndexOf('\n', offset - 1) + 1;
  const start = after + text.slice(after, offset).lastIndexOf('\r') + 1;
  return start === 0 && text[0] === '\ufeff' ? 1 : start;
};

/** Where the line that holds `offset` ends, before its line ending. */
export const lineEnd = (text: string, offset: number): number => {
  const next = text.indexOf('\n', offset);
  const end = next < 0 ? text.length : next;
  const early = text.slice(offset, end).indexOf('\r');
  return early < 0 ? Math.max(offset, end) : offset + early;
};

/** Where the line after the one that holds `offset` starts, or the end of the text. */
export const nextLineStart = (text: string, offset: number): number => {
  const end = lineEnd(text, offset);
  if (text.startsWith('\r\n', end)) return end + 2;
  return Math.min(end + 1, text.length);
};

/** How far into its line an offset is. */
export const columnAt = (text: string, offset: number): number => offset - lineStart(text, offset);

/** The line ending the file uses: that of its first line. */
export const lineEndingOf = (text: string): string => /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';

/** The same length of text with everything but line endings blanked out between two offsets. */
export const blank = (text: string, start: number, end: number): string =>
  text.slice(0, start) + text.slice(start, end).replace(/[^\r\n]/g, ' ') + text.slice(end);
