import { Lexer } from 'yaml';
import { pacer, type Steps } from '../../steps/steps.ts';

/** Deeper nesting is refused before it is parsed: the parser ends the whole process at about 1000 levels. */
export const deepestNesting = 200;

/** Where a text first goes too deep. */
export interface TooDeep {
  readonly offset: number;
  /** The open bracket behind which alone it goes so deep, key in key and line after line; null where there is none. */
  readonly bracket: number | null;
}

/** Where a text goes too deep to be handed to the parser, exactly as it would be; null when it does not. */
export function* tooDeep(text: string): Steps<TooDeep | null> {
  return mayNest(text) ? yield* firstTooDeep(text) : null;
}

/** A cheap look that clears nearly every file: too few brackets, and on every line too few indents and indicators. */
export function mayNest(text: string): boolean {
  const most = deepestNesting / 2;
  let brackets = 0;
  let onLine = 0;
  // A second key on one line is nested in the first, and may stay so in the lines below.
  let keys = 0;
  let dashes = 0;
  let spare = 0;
  // While a bracket may be open, the key of the next line too. What seems to close it may be quoted, or in a note.
  let open = 0;
  let isPlain = true;
  let isNote = false;
  for (let i = 0; i < text.length; i += 1) {
    const char = text[i]!;
    if (char === '[' || char === '{') {
      brackets += 1;
      open += 1;
      [keys, dashes] = [0, 0];
    } else if ((char === ']' || char === '}') && open > 0 && isPlain && !isNote) open -= 1;
    else if (char === '\n' || char === '\r') {
      [onLine, dashes, isNote] = [0, 0, false];
      if (open === 0) [keys, isPlain] = [0, true];
    } else if (char === ',') [keys, dashes] = [0, 0];
    else if (char === '#') isNote = true;
    else if (char === '"' || char === "'") isPlain = false;
    else if (char === ' ' || char === '\t') onLine += 1;
    else if (char === '-' || char === '?' || char === ':') {
      onLine += 1;
      if (char !== '-') keys += 1;
      else if (!(text[i + 1]! > ' ')) dashes += 1;
      if (keys > 1 || dashes > 1) spare += 1;
    }
    if (brackets > most || onLine > most || spare > most) return true;
  }
  return false;
}

/** So many words and signs are looked at in one step. */
const STEP = 2000;

/** Where indentation, dashes, keys on one line and open brackets together first go too deep, as the parser's own lexer sees them. */
function* firstTooDeep(text: string): Steps<TooDeep | null> {
  const isDue = pacer(STEP);
  let offset = 0;
  const depth = createDepth();
  let isScalar = false;
  for (const token of new Lexer().lex(text)) {
    if (isDue(1)) yield;
    if (token === cutOffMark) depth.leaveAll();
    if (isMark(token)) {
      isScalar = token === scalarMark;
      continue;
    }
    depth.take(isScalar ? 'scalar' : token, offset);
    // How deep a line stands shows with its first word: a blank line and a note stand nowhere.
    if (depth.now() > deepestNesting && token.trim() !== '') return { offset, bracket: depth.longestBracket() };
    isScalar = false;
    offset += token.length;
  }
  return null;
}

/** What is nested without an indent of its own: by keys on one line, behind a bracket or in a column. */
interface Level {
  /** Of a bracket its offset, else the column. */
  readonly at: number;
  readonly isBracket: boolean;
  count: number;
}

/** Counts how deep the parser is, or deeper. */
function createDepth() {
  const levels: Level[] = [];
  let inLevels = 0;
  let onLine = 0;
  let column = 0;
  let isAtLineStart = true;
  let isFirst = { ':': true, '-': true, '?': true };
  const add = (level: Level, count: number): void => {
    level.count += count;
    inLevels += count;
  };
  const enter = (at: number, isBracket: boolean): Level => {
    const level = { at, isBracket, count: 0 };
    levels.push(level);
    return level;
  };
  const leave = (): void => {
    inLevels -= levels.pop()?.count ?? 0;
  };
  const bracket = (): Level | undefined => (levels.at(-1)?.isBracket ? levels.at(-1) : undefined);
  /** The first word of a line ends what stands further in. */
  const begin = (): void => {
    // Ends: each round takes a level away.
    while (levels.length > 0 && !bracket() && levels.at(-1)!.at > column) leave();
  };
  const indicate = (token: ':' | '-' | '?', indent: number): void => {
    const open = bracket();
    if (!open) onLine += 1;
    if (open ? !isFirst[token] : token === ':' && !isFirst[token])
      add(open ?? (levels.at(-1)?.at === indent ? levels.at(-1)! : enter(indent, false)), 1);
    isFirst[token] = false;
  };
  return {
    now: () => inLevels + onLine,
    longestBracket: (): number | null =>
      levels.find(({ isBracket, count }) => isBracket && count > deepestNesting / 2)?.at ?? null,
    leaveAll() {
      // Ends: each round takes a level away.
      while (levels.some(({ isBracket }) => isBracket)) leave();
    },
    take(token: string, offset: number): void {
      if (token === '\n' || token === '\r\n') {
        [onLine, column, isAtLineStart] = [0, 0, true];
        isFirst = { ':': true, '-': true, '?': true };
      } else if (isAtLineStart && /^[ \t]/.test(token)) {
        onLine += token.length;
        column += token.length;
      } else if (isAtLineStart && token.startsWith('#')) {
        onLine = 0;
      } else {
        if (isAtLineStart) begin();
        isAtLineStart &&= token === '-';
        if (token === '{' || token === '[') add(enter(offset, true), 1);
        else if ((token === '}' || token === ']') && levels.some(({ isBracket }) => isBracket)) {
          // Ends: each round takes a level away.
          while (!bracket()) leave();
          leave();
        } else if (token === ',' && bracket()) add(bracket()!, 1 - bracket()!.count);
        else if (token === '-' || token === '?' || token === ':') indicate(token, column);
        if (isAtLineStart) column += token.length;
      }
    },
  };
}

/** The lexer marks documents, scalars and cut-off brackets by tokens of one control character that stand for no text. */
const scalarMark = '\u001f';
const cutOffMark = '\u0018';
const isMark = (token: string): boolean => token === scalarMark || token === '\u0002' || token === cutOffMark;
