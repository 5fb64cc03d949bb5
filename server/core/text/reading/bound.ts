import { Lexer } from 'yaml';
import type { Finding } from '../../findings/finding.ts';
import { lineEnd, nextLineStart } from './lines.ts';

/** A boat of a thousand entries has some 150,000 characters in some 6,000 lines; an outline of 500 points has 7,000 in one. */
export const longestText = 300_000;
export const mostLines = 20_000;
export const longestLine = 20_000;

/** Deeper nesting is refused before it is parsed: the parser ends the whole process at about 1000 levels. */
export const deepestNesting = 200;

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

/** Why a text must not be handed to the parser, exactly as it would be; null when it may be. */
export const refuseNesting = (text: string): Finding | null => {
  const offset = mayNest(text) ? firstTooDeep(text) : null;
  if (offset === null) return null;
  return {
    code: 'file-too-deep',
    severity: 'error',
    about: 'file',
    message: `Lists and sections are nested more than ${deepestNesting} deep here, and the file is not read. A boat file is nested about five deep: take out the spare brackets, dashes or spaces.`,
    place: { on: 'text', start: offset, end: Math.min(offset + 1, text.length) },
  };
};

/** A cheap look that clears nearly every file: too few brackets, and on every line too few indents and indicators. */
const mayNest = (text: string): boolean => {
  const most = deepestNesting / 2;
  let brackets = 0;
  let onLine = 0;
  for (let i = 0; i < text.length; i += 1) {
    const char = text[i];
    if (char === '[' || char === '{') brackets += 1;
    else if (char === '\n' || char === '\r') onLine = 0;
    else if (char === ' ' || char === '\t' || char === '-' || char === '?' || char === ':') onLine += 1;
    if (brackets > most || onLine > most) return true;
  }
  return false;
};

/** Where indentation, dashes, keys on one line and open brackets together first go too deep, as the parser's own lexer sees them. */
const firstTooDeep = (text: string): number | null => {
  let offset = 0;
  let brackets = 0;
  let lineDepth = 0;
  let isAtLineStart = true;
  let isScalar = false;
  for (const token of new Lexer().lex(text)) {
    if (isMark(token)) {
      isScalar = token === scalarMark;
      continue;
    }
    const isIndicator = token === '-' || token === '?' || token === ':';
    if (isScalar) isAtLineStart = false;
    else if (token === '\n' || token === '\r\n') {
      lineDepth = 0;
      isAtLineStart = true;
    } else if (token === '{' || token === '[') brackets += 1;
    else if (token === '}' || token === ']') brackets = Math.max(0, brackets - 1);
    else if (isIndicator && brackets === 0) lineDepth += 1;
    else if (isAtLineStart && /^[ \t]/.test(token)) lineDepth += token.length;
    else isAtLineStart = false;
    if (brackets + lineDepth > deepestNesting) return offset;
    isScalar = false;
    offset += token.length;
  }
  return null;
};

/** The lexer marks documents, scalars and cut-off brackets by tokens of one control character that stand for no text. */
const scalarMark = '\u001f';
const isMark = (token: string): boolean => token === scalarMark || token === '\u0002' || token === '\u0018';
