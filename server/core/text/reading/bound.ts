import type { Finding } from '../../findings/finding.ts';
import { lineEnd, nextLineStart } from './lines.ts';

/** A boat of a thousand entries has some 150,000 characters in some 6,000 lines; an outline of 500 points has 7,000 in one. */
export const longestText = 300_000;
export const mostLines = 20_000;
export const longestLine = 20_000;

/** Why a text is not read at all; null when it may be. Reading takes as long as the text, and an editor waits for it. */
export const refuse = (text: string): Finding | null => {
  if (text.length > longestText) return tooLarge(0, `${longestText.toLocaleString('en')} characters`);
  let line = 0;
  for (let count = 1; count <= mostLines; count += 1) {
    const end = lineEnd(text, line);
    if (end - line > longestLine) return tooLarge(line, `${longestLine.toLocaleString('en')} characters in this line`);
    if (end === text.length) return null;
    line = nextLineStart(text, end);
  }
  return tooLarge(0, `${mostLines.toLocaleString('en')} lines`);
};

const tooLarge = (start: number, what: string): Finding => ({
  code: 'file-too-large',
  severity: 'error',
  about: 'file',
  message: `This file has more than ${what}, more than any boat needs, and is not read. Is it a boat file?`,
  // Enough to be seen.
  place: { on: 'text', start, end: start + 80 },
});
