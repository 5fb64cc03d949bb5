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
  const [nearest] = [...levels].sort((a, b) => Math.abs(a.column - column) - Math.abs(b.column - column));
  const stray = isDash ? strayDash(text, first, all) : null;
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
    mend: shifting(text, stretch, nearest.column, title),
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

/** A dash before one of the further keys of an entry, in their column: it begins no entry of its own. */
function strayDash(text: string, first: number, levels: readonly Level[]): Fault | null {
  const column = firstColumn(text, first);
  const key = levels.find(level => !level.isList);
  const entry = levels.find(level => level.isList && level.column < column);
  if (!key || !entry || key.column !== column) return null;
  const [dash, behind] = /^-[ \t]+([^:\s]+):/.exec(text.slice(first, lineEnd(text, first))) ?? [];
  const opening = firstWord(text, entry.offset);
  if (dash === undefined || behind === opening) return null;
  const length = /^-[ \t]+/.exec(dash)![0].length;
  return fault(
    'bad-indent',
    [first, first + 1],
    `This dash begins a new entry, but “${behind}” goes on with the one above. Take it out.`,
    {
      blanked: [first, lineEnd(text, first)],
      mend: replacing('Take the dash out', [[first, first + length], '']),
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
    `This “${said}” is indented below “${key}”, which already has the value “${given}”. Line it up with “${key}”, or take that value out.`,
    { blanked: stretch, mend: shifting(text, stretch, keyColumn(text, value), `Line it up with “${key}”`) },
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

/** Blanks with a tab among them, at the start of a line or after its dash. */
const tabbedLead = /^(?: *\t[ \t]*|[ \t]*-(?: *\t[ \t]*))(?=[^ \t\r\n])/;
const tabbedLeads = new RegExp(tabbedLead, 'gm');

/** Tabs used to indent: one finding for the whole file, as an editor's setting put them all there. */
export function explainTabs(text: string, at: number): Fault {
  const leads = [...text.matchAll(tabbedLeads)];
  const tabs = /\t+/g;
  tabs.lastIndex = lineStart(text, at);
  const first = tabs.exec(text);
  const more = leads.length > 1 ? `, as on ${leads.length - 1} more line${leads.length > 2 ? 's' : ''}` : '';
  return fault(
    'tab-indent',
    first ? [first.index, first.index + first[0].length] : [at, at + 1],
    `A tab is used to indent here${more}. YAML takes spaces only, for example two for each step.`,
    {
      mend: replacing(
        'Replace tabs by spaces',
        ...leads.map(
          ({ 0: lead, index }) =>
            [[index, index + lead.length], lead.replaceAll('\t', lead.includes('-') ? ' ' : '  ')] as const,
        ),
      ),
    },
  );
}

/** The same text with each indenting tab as one space, so that offsets stay. */
export const withoutTabs = (text: string): string => text.replace(tabbedLeads, lead => lead.replaceAll('\t', ' '));

/** The maps and lists that a line could belong to, nearest first, as their first words stand in the lines above. */
function levelsAbove(text: string, at: number): readonly Level[] {
  const levels: Level[] = [];
  let bound = Number.POSITIVE_INFINITY;
  // Ends: each round is a line further up.
  for (let start = lineStart(text, at); start > 0 && bound > 0; ) {
    start = lineStart(text, start - 1 - (text.startsWith('\r\n', start - 2) ? 1 : 0));
    if (isBlankLine(text, start)) continue;
    const first = firstOnLine(text, start);
    const own: Level[] = [];
    let offset = first;
    // Ends: each round is further along the line.
    for (; /^-[ \t]/.test(text.slice(offset, offset + 2)); offset += 1 + blanksAt(text, offset + 1))
      own.push({ column: offset - start, isList: true, offset });
    own.push({ column: offset - start, isList: false, offset });
    for (const level of own.reverse()) if (level.column < bound) levels.push(level);
    bound = Math.min(bound, first - start);
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
