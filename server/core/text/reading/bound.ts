import { Lexer } from 'yaml';
import type { Finding } from '../../findings/finding.ts';
import { lineEnd } from './lines.ts';

/** A boat of a thousand entries has some 150,000 characters. */
export const longestText = 1_000_000;

/** Deeper nesting is refused before it is parsed: the parser ends the whole process at about 1000 levels. */
export const deepestNesting = 200;

/** Why a text is not parsed at all; null when it is safe to parse. */
export const refuse = (text: string): Finding | null => {
  if (text.length > longestText)
    return {
      code: 'file-too-large',
      severity: 'error',
      message: `This file has more than ${longestText.toLocaleString('en')} characters, more than any boat needs, and is not read. Is it a boat file?`,
      place: { on: 'text', start: 0, end: lineEnd(text, 0) },
    };
  const offset = mayNest(text) ? firstTooDeep(text) : null;
  if (offset === null) return null;
  return {
    code: 'file-too-deep',
    severity: 'error',
    message: `Lists and sections are nested more than ${deepestNesting} deep here, and the file is not read. A boat file is nested about five deep: take out the spare brackets, dashes or spaces.`,
    place: { on: 'text', start: offset, end: Math.min(offset + 1, text.length) },
  };
};

/** A cheap look that clears nearly every file: too few brackets and too little indentation to nest deeply. */
const mayNest = (text: string): boolean => {
  const most = deepestNesting / 2;
  let openers = 0;
  for (let i = 0; i < text.length; i += 1) {
    const char = text[i];
    if (char === '[' || char === '{') openers += 1;
  }
  return openers > most || text.match(/^[ \t?:-]{100,}/m) !== null;
};

/** Where indentation, nested dashes and open brackets together first go too deep, as the parser's own lexer sees them. */
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
    else if (isAtLineStart && (isIndicator || /^[ \t]/.test(token))) lineDepth += token.length;
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
