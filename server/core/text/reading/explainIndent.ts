import { isListKey, isSectionKey } from '../../../../schema/fileKeys.ts';
import type { Mend } from '../../findings/finding.ts';
import {
  type Fault,
  fault,
  firstColumn,
  firstOnLine,
  isBlankLine,
  lineNumber,
  linesInColumn,
  opensBlock,
  replacing,
  restOfLine,
  skipBlankLines,
  startsEntry,
  stretchFrom,
} from './faults.ts';
import { lineEnd, lineStart, nextLineStart, type Span } from './lines.ts';

/** Columns at which a line could start so that it belongs to something above it. */
interface Level {
  readonly column: number;
  readonly isList: boolean;
  /** The key or dash that starts the level, and where it stands. */
  readonly offset: number;
}

/** A line that lines up with nothing above it. */
export function explainIndent(text: string, at: number): Fault {
  const first = firstOnLine(text, skipBlankLines(text, at));
  const isDash = startsEntry(text, first);
  const column = firstColumn(text, first);
  const said = isDash ? '-' : firstWord(text, first);
  const span: Span = [first, first + said.length];
  const all = levelsAbove(text, first);
  const levels = all.filter(level => level.isList === isDash);
  // Of two as near, what opens a block is no further key of the entry above.
  const outwards = !isDash && opensBlock(text, first) ? 1 : 0;
  const [nearest] = [...levels].sort(
    (a, b) => Math.abs(a.column - column) - Math.abs(b.column - column) || outwards * (a.column - b.column),
  );
  const stray = isDash ? (oddBracesAbove(text, first, all) ?? strayDash(text, first, all)) : null;
  if (stray) return stray;
  const dashless = isDash ? null : missingDashAt(text, first, all);
  if (dashless) return dashless;
  if (!nearest || nearest.column === column)
    return fault(
      'bad-indent',
      span,
      `This “${said}” belongs to nothing above it. The entries of a list start with “- ” in one column, the keys of an entry stand in one column, and the two do not mix.`,
      { blanked: stretchFrom(text, first) },
    );
  const stretch = stretchFrom(text, first, nearest.column);
  const odd = isDash ? null : oddOneAbove(text, nearest, stretch, all);
  if (odd) return odd;
  const model = isDash ? '-' : firstWord(text, nearest.offset);
  const where = `“${model}” on line ${lineNumber(text, nearest.offset)}`;
  const message = `This “${said}” lines up with nothing above it. Start it in the column of ${where}.`;
  const title = `Line it up with ${where}`;
  if (isDash && !movesWithDash(text, first, nearest.column - column)) {
    const line: Span = [lineStart(text, first), lineEnd(text, first)];
    const dash = line[0] + nearest.column;
    return fault('bad-indent', span, message, {
      blanked: line,
      dash,
      mend: shifting(text, line, nearest.column, title),
    });
  }
  return fault('bad-indent', span, message, {
    blanked: stretch,
    mend: shifting(text, keysOf(text, stretch), nearest.column, title),
  });
}

/** The first key of an entry in the column where its dash belongs. */
function missingDashAt(text: string, first: number, levels: readonly Level[]): Fault | null {
  const column = firstColumn(text, first);
  const above = levels.find(level => level.column <= column);
  const isEntry = above?.isList && above.column === column && opensWith(text, above.offset, firstWord(text, first));
  return isEntry ? dashBefore(text, first) : null;
}

/** Whether an entry opens with a key; one between braces too. */
const opensWith = (text: string, dash: number, key: string): boolean =>
  /^-[ \t]+(?:\{[ \t]*)?([^:\s]+):/.exec(text.slice(dash, lineEnd(text, dash)))?.[1] === key;

/** A line that begins an entry of a list and has no dash. */
function dashBefore(text: string, first: number): Fault {
  const said = text.slice(...restOfLine(text, first));
  return fault('missing-dash', [first, first + said.length], `Each entry of a list begins with a dash: “- ${said}”.`, {
    blanked: [first, lineEnd(text, first)],
    dash: first,
    mend: replacing('Put the dash in', [[first, first], '- ']),
  });
}

/** An entry between braces whose dash alone stands in another column than those below it: it is that one that was moved. */
function oddBracesAbove(text: string, first: number, levels: readonly Level[]): Fault | null {
  const above = levels.find(level => level.isList);
  const parent = levels.find(level => !level.isList && opensBlock(text, level.offset));
  if (!above || !parent || nextContent(text, parent.offset) !== lineStart(text, above.offset)) return null;
  const column = firstColumn(text, first);
  const stretch = stretchFrom(text, first);
  const isOdd = /^-[ \t]+\{/.test(text.slice(above.offset, lineEnd(text, above.offset)));
  if (!isOdd || above.column === column || linesInColumn(text, stretch) < 2) return null;
  const line: Span = [lineStart(text, above.offset), lineEnd(text, above.offset)];
  return fault(
    'bad-indent',
    [above.offset, above.offset + 1],
    `This “-” does not line up with the dashes below it. Start it in the column of “-” on line ${lineNumber(text, first)}.`,
    {
      blanked: line,
      dash: line[0] + column,
      mend: shifting(text, line, column, 'Line it up with the dashes below it'),
    },
  );
}

/** A dash before one of the further keys of an entry, in their column: it begins no entry of its own. */
function strayDash(text: string, first: number, levels: readonly Level[]): Fault | null {
  const column = firstColumn(text, first);
  const key = levels.find(level => !level.isList);
  const entry = levels.find(level => level.isList && level.column < column);
  if (!key || !entry || key.column !== column) return null;
  const [dash, behind] = /^-[ \t]+([^:\s]+):/.exec(text.slice(first, lineEnd(text, first))) ?? [];
  const opening = firstWord(text, entry.offset);
  // Nothing goes on with an entry that its braces close.
  if (dash === undefined || behind === opening || opening.startsWith('{')) return null;
  const length = /^-[ \t]+/.exec(dash)![0].length;
  return fault(
    'bad-indent',
    [first, first + 1],
    `This dash begins a new entry, but “${behind}” goes on with the one above. Remove it.`,
    {
      blanked: [first, lineEnd(text, first)],
      mend: replacing('Remove the dash', [[first, first + length], '']),
    },
  );
}

/** A line indented below a key that already has its value. */
export function explainOverIndent(text: string, value: number): Fault {
  const first = firstOnLine(text, skipBlankLines(text, nextLineStart(text, value)));
  const levels = levelsAbove(text, first);
  const above = levels.find(level => !level.isList);
  const stretch = stretchFrom(text, first);
  const odd = above ? oddOneAbove(text, above, stretch, levels) : null;
  if (odd) return odd;
  const key = firstWord(text, firstOnLine(text, value));
  const said = startsEntry(text, first) ? '-' : firstWord(text, first);
  const given = text.slice(...restOfLine(text, value));
  return fault(
    'bad-indent',
    [first, first + said.length],
    `This “${said}” is indented below “${key}”, which already has the value “${given}”. Line it up with “${key}”, or remove that value.`,
    {
      blanked: stretch,
      mend: shifting(text, keysOf(text, stretch), keyColumn(text, value), `Line it up with “${key}”`),
    },
  );
}

/**
 * Where two or more lines below a key agree on a column of their own and it stands alone in its own, it is the key's
 * line that is out of place.
 */
function oddOneAbove(text: string, key: Level, stretch: Span, levels: readonly Level[]): Fault | null {
  const column = firstColumn(text, stretch[0]);
  const line = lineStart(text, key.offset);
  const keys: Span = [line, stretch[0]];
  const isAlone = linesInColumn(text, keys) === 1 && startsEntry(text, stretch[0]) === false;
  const by = column - key.column;
  const parent = levels.find(level => !level.isList && level.column < Math.min(key.column, column));
  const isFirst = parent !== undefined && lineStart(text, nextContent(text, parent.offset)) === line;
  // What stands at the margin and is no section was moved there.
  const isMoved = key.column === 0 && !isSectionKey(firstWord(text, key.offset));
  if (!isAlone || !isFirst || (linesInColumn(text, stretch) < 2 && !isMoved)) return null;
  const first = firstOnLine(text, line);
  const isDash = startsEntry(text, first);
  if (!isDash && by === 2 && parent && isListKey(firstWord(text, parent.offset))) return dashBefore(text, first);
  const dash = isDash ? first + by : null;
  if (dash !== null && !agreesWithDashes(text, stretch[1], firstColumn(text, first) + by)) return null;
  const block: Span = isDash ? [line, lineEnd(text, line)] : stretchFrom(text, line, column);
  const said = isDash ? '-' : firstWord(text, first);
  const model = firstWord(text, firstOnLine(text, stretch[0]));
  const title = `Line it up with the lines below it`;
  return fault(
    'bad-indent',
    [first, first + said.length],
    `This “${said}” does not line up with the lines below it. Move it so that “${firstWord(text, key.offset)}” starts in the column of “${model}”.`,
    { blanked: block, dash, mend: shifting(text, block, firstColumn(text, first) + by, title) },
  );
}

/** Whether the next entry of the list has its dash in a column. */
function agreesWithDashes(text: string, offset: number, column: number): boolean {
  const next = nextContent(text, offset);
  return startsEntry(text, next) && firstColumn(text, next) === column;
}

/** Whether the keys below a dash stand as far from where they should be as the dash does itself. */
function movesWithDash(text: string, dash: number, by: number): boolean {
  const below = skipBlankLines(text, nextLineStart(text, dash));
  const isInPlace = firstColumn(text, below) === keyColumn(text, lineEnd(text, dash)) + by;
  if (isInPlace && !startsEntry(text, below)) return false;
  return (
    firstColumn(text, below) <= firstColumn(text, dash) ||
    firstColumn(text, below) !== keyColumn(text, lineEnd(text, dash)) + by
  );
}

const nextContent = (text: string, offset: number): number => skipBlankLines(text, nextLineStart(text, offset));

/** What of a stretch moves with its first line: of a lone key not the list that stands in its column and may stay there. */
function keysOf(text: string, stretch: Span): Span {
  const below = nextContent(text, stretch[0]);
  const isLone = below < stretch[1] && startsEntry(text, below) && !startsEntry(text, stretch[0]);
  if (!isLone || firstColumn(text, below) !== firstColumn(text, stretch[0])) return stretch;
  const list = stretchFrom(text, below);
  return list[1] === stretch[1] ? [stretch[0], lineEnd(text, stretch[0])] : stretch;
}

/** Moves lines sideways together, so that the first starts in the given column. */
function shifting(text: string, [start, end]: Span, column: number, title: string): Mend {
  const by = column - firstColumn(text, start);
  const pieces: (readonly [Span, string])[] = [];
  // Ends: the next line starts further down, or at the end of the text.
  for (let line = start; line < end; line = nextLineStart(text, line)) {
    const first = firstOnLine(text, line);
    if (first !== lineEnd(text, line)) pieces.push([[line, first], ' '.repeat(Math.max(0, first - line + by))]);
  }
  return replacing(title, ...pieces);
}

/** A dash in the middle of a line, where no list can start. */
export function explainStrayDash(text: string, at: number): Fault {
  const said = text.slice(...restOfLine(text, at));
  return fault(
    'bad-indent',
    [at, at + 1],
    `A list cannot start on the same line as its key. Put “${said}” on the next line, indented.`,
    { blanked: [at, lineEnd(text, at)] },
  );
}

/** The maps and lists that a line could belong to, nearest first, as their first words stand in the lines above. */
function levelsAbove(text: string, at: number): readonly Level[] {
  const levels: Level[] = [];
  let bound = Number.POSITIVE_INFINITY;
  // The dashes of a list may stand in the column of their key.
  let isUnderList = false;
  // Ends: each round is a line further up.
  for (let start = lineStart(text, at); start > 0 && (bound > 0 || isUnderList); ) {
    start = lineStart(text, start - 1 - (text.startsWith('\r\n', start - 2) ? 1 : 0));
    if (isBlankLine(text, start)) continue;
    const first = firstOnLine(text, start);
    const own: Level[] = [];
    let offset = first;
    // Ends: each round is further along the line.
    for (; /^-[ \t]/.test(text.slice(offset, offset + 2)); offset += 1 + blanksAt(text, offset + 1))
      own.push({ column: offset - start, isList: true, offset });
    own.push({ column: offset - start, isList: false, offset });
    const isListsKey = isUnderList && own.length === 1 && first - start === bound;
    for (const level of own.reverse()) if (level.column < bound || isListsKey) levels.push(level);
    if (isListsKey) isUnderList = false;
    if (first - start >= bound) continue;
    bound = first - start;
    isUnderList = own.length > 1;
  }
  return levels;
}

const blanksAt = (text: string, offset: number): number => /^[ \t]*/.exec(text.slice(offset, offset + 200))![0].length;

/** The column of the key on a line, after any dashes. */
function keyColumn(text: string, offset: number): number {
  const start = lineStart(text, offset);
  return /^[ \t]*(?:-[ \t]+)*/.exec(text.slice(start, offset))![0].length;
}

/** The key, dash or word that stands at an offset. */
function firstWord(text: string, offset: number): string {
  const rest = text.slice(...restOfLine(text, offset));
  return /^(?:-[ \t]+)*([^:\s]+)/.exec(rest)?.[1] ?? rest;
}
