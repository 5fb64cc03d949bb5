import { pacer, type Steps } from '../../steps/steps.ts';
import { refuse } from './bound.ts';
import { lineStartsOf } from './lines.ts';
import { longFlow } from './longFlow.ts';
import { mayNest, tooDeep } from './nesting.ts';
import {
  endOfItem,
  endOfPair,
  isAlias,
  isMapNode,
  isScalar,
  isSeq,
  type ListNode,
  type MapNode,
  movedPair,
  type Node,
  type NodePair,
  toNode,
  visit,
} from './nodes.ts';
import { parse } from './parse.ts';
import { isRefused } from './parseYaml.ts';
import { plainPair } from './plainPair.ts';
import { quietFaults } from './quietFaults.ts';

/**
 * A key with its value, or a list entry, that was parsed by itself: whole lines of a file, its own and the blank lines
 * and comments below them.
 */
interface Piece {
  /** Where the lines start that it was last asked for. */
  at: number;
  /** What is written there. An entry comes as a pair without a key, its dash for a colon. */
  pair: NodePair;
  /** It may be deep by itself. */
  readonly mayNest: boolean;
  /** Its value as it was parsed, wherever it stood then. */
  readonly parsed: Node | null;
  /** What a long entry was put together from: kept as long as it is, so that a change to one of its rows finds the others. */
  readonly within: TextPieces;
}

/** Values of pieces that have come to stand elsewhere, as they were parsed. */
const parsedAs = new WeakMap<Node, Node>();

/** The value of a piece as it was parsed first; any other node itself. */
export const asParsed = (node: Node): Node => parsedAs.get(node) ?? node;

/** Pieces by their lines. */
export type TextPieces = ReadonlyMap<string, Piece>;

export const noPieces: TextPieces = new Map();

interface Pieced {
  readonly root: MapNode;
  readonly pieces: TextPieces;
}

/**
 * A text put together from its sections and entries, of which only those are parsed that `before` has not got. Null where
 * the text must be parsed as a whole: something in it slips, or the columns of its lines alone do not tell where each
 * section and entry ends.
 */
export function* parsePieces(text: string, lineStarts: readonly number[], before: TextPieces): Steps<Pieced | null> {
  if (refuse(text)) return null;
  const pieces = new Map<string, Piece>();
  const root = yield* mapOf({ text, lineStarts, before, pieces, isDue: pacer(STEP) }, 0);
  if (!root) return null;
  // A line tells by its own indent how deep it stands: pieces that do not nest are not too deep together either.
  const nests = [...pieces.values()].some(piece => piece.mayNest) && (yield* tooDeep(text)) !== null;
  return nests ? null : { root, pieces };
}

/** A text that is a map from its first line to its last, its keys in the column given, or in that of the first. */
function* mapOf(asked: Omit<Reading, 'columns'>, column: number | null): Steps<MapNode | null> {
  const { text, lineStarts } = asked;
  const columns = lineStarts.map(start => contentColumn(text, start));
  const from = columns.findIndex(at => at !== null);
  if (from < 0 || isUnsafe(text.slice(0, lineStarts[from]))) return null;
  return yield* readMap({ ...asked, columns }, { from, to: columns.length, column: column ?? columns[from]! });
}

interface Reading {
  readonly text: string;
  readonly lineStarts: readonly number[];
  /** Where each line's writing starts; null for a line with none, or only a comment. */
  readonly columns: readonly (number | null)[];
  readonly before: TextPieces;
  readonly pieces: Map<string, Piece>;
  readonly isDue: (work: number) => boolean;
}

/** A list in brackets of so many characters is parsed entry by entry. */
const LONG_FLOW = 8000;

/** So many characters are parsed in one step; those that are read without the parser count for less. */
const STEP = 800;
const PLAIN = 0.1;

/** Lines from the first that something is written on, and the column that its keys or dashes stand in. */
interface Block {
  readonly from: number;
  readonly to: number;
  readonly column: number;
}

/** What may end a line, end a file, or count as a blank in YAML or in the parser and is no plain space or line break. */
const unsafe = /(?![\r\n])\p{Cc}|\r(?!\n)|[\u2028\u2029\ufeff]/u;

const isUnsafe = (lines: string): boolean => unsafe.test(lines);

const keyStart = /[A-Za-z][\w-]*:(?=[ \r\n]|$)/y;

/** A key with nothing but a comment behind it: what is indented below is its value. */
const bareKey = /[A-Za-z][\w-]*:(?: +#[^\n]*| *\r?)(?:\n|$)/y;

const dashStart = /-(?=[ \r\n]|$)/y;

const SPACE = 0x20;

function contentColumn(text: string, start: number): number | null {
  let at = start;
  // Ends: there is no space behind the text.
  while (text.charCodeAt(at) === SPACE) at += 1;
  return at === text.length || '#\r\n'.includes(text[at]!) ? null : at - start;
}

function* readMap(reading: Reading, block: Block): Steps<MapNode | null> {
  const items: NodePair[] = [];
  const names = new Set<unknown>();
  for (const part of partsOf(reading, block, keyStart) ?? []) {
    const pair = yield* readPair(reading, part);
    if (!pair || !isScalar(pair.key) || names.has(pair.key.value)) return null;
    names.add(pair.key.value);
    items.push(pair);
  }
  const [first] = items;
  if (!first) return null;
  const end = endOfPair(items.at(-1)!);
  return { kind: 'map', start: first.key!.start, end, anchor: '', flow: false, isClosed: false, items };
}

function* readPair(reading: Reading, part: Block): Steps<NodePair | null> {
  const body = isAt(reading, bareKey, part.from) ? bodyOf(reading, part) : null;
  if (!body) return yield* pieceAt(reading, part);
  const bare = yield* pieceAt(reading, { ...part, to: body.from });
  const value = isAt(reading, dashStart, body.from) ? yield* readList(reading, body) : yield* readMap(reading, body);
  return bare && value && { ...bare, value };
}

function* readList(reading: Reading, block: Block): Steps<ListNode | null> {
  const entries: NodePair[] = [];
  for (const part of partsOf(reading, block, dashStart) ?? []) {
    const entry = yield* pieceAt(reading, part);
    if (!entry) return null;
    entries.push(entry);
  }
  if (entries.length === 0) return null;
  const items = entries.map(entry => entry.value);
  const dashes = entries.map(entry => entry.colon!);
  const end = endOfItem(items.at(-1)!, dashes.at(-1));
  return { kind: 'list', start: dashes[0]!, end, anchor: '', flow: false, isClosed: false, items, dashes };
}

/** The lists and maps below a key, where they start as lists and maps of the usual kind do. */
function bodyOf(reading: Reading, { from, to }: Block): Block | null {
  let line = from + 1;
  // Ends: for `line` only grows.
  while (line < to && reading.columns[line] === null) line += 1;
  if (line === to) return null;
  const isPlain = isAt(reading, dashStart, line) || isAt(reading, keyStart, line);
  return isPlain ? { from: line, to, column: reading.columns[line]! } : null;
}

/**
 * The lines of each key or entry of a block: from one in the block's column to the next. Null when something stands in
 * that column, or before it, that is neither. A list may stand in the column of its key.
 */
function partsOf(reading: Reading, { from, to, column }: Block, start: RegExp): readonly Block[] | null {
  const { columns } = reading;
  const starts: number[] = [];
  for (let line = from; line < to; line += 1) {
    const at = columns[line]!;
    if (at === null || (at > column && starts.length > 0)) continue;
    if (at !== column) return null;
    if (isAt(reading, start, line)) starts.push(line);
    else if (start !== keyStart || !isAt(reading, dashStart, line) || starts.length === 0) return null;
  }
  return starts.map((first, i) => ({ from: first, to: starts[i + 1] ?? to, column }));
}

function isAt({ text, lineStarts, columns }: Reading, pattern: RegExp, line: number): boolean {
  pattern.lastIndex = lineStarts[line]! + columns[line]!;
  return pattern.test(text);
}

/** What is written on some lines, in its place. */
function* pieceAt(reading: Reading, { from, to }: Block): Steps<NodePair | null> {
  const { text, lineStarts, before, pieces } = reading;
  const at = lineStarts[from]!;
  const lines = text.slice(at, lineStarts[to]);
  const piece = pieces.get(lines) ?? before.get(lines) ?? (yield* parsePiece(reading, lines, at));
  if (!piece) return null;
  pieces.set(lines, piece);
  for (const [rows, inner] of piece.within) pieces.set(rows, inner);
  if (piece.at !== at) {
    piece.pair = movedPair(piece.pair, at - piece.at);
    piece.at = at;
    if (piece.parsed && piece.pair.value) parsedAs.set(piece.pair.value, piece.parsed);
  }
  return piece.pair;
}

function* parsePiece(reading: Reading, lines: string, at: number): Steps<Piece | null> {
  const { isDue } = reading;
  const within = new Map<string, Piece>();
  const long = lines.length > STEP ? yield* longEntry({ ...reading, pieces: within }, lines) : null;
  if (long) return { ...pieceOf(long, lines, at), within };
  const plain = plainPair(lines);
  if (isDue(plain ? PLAIN * lines.length : lines.length)) yield;
  if (plain) return pieceOf(plain, lines, at);
  if (isUnsafe(lines)) return null;
  const flow = lines.length > LONG_FLOW ? yield* longFlow(lines, soundNode) : null;
  const pair = flow ?? onlyPairOf(yield* soundNode(lines));
  return pair && pieceOf(pair, lines, at);
}

/** What the parser makes of a text; null with a slip in it, for then the file is read as a whole. */
function* soundNode(text: string): Steps<Node | null> {
  const parsed = yield* parse(text, 0);
  if (isRefused(parsed)) return null;
  const { doc, faults, readText } = parsed;
  const node = toNode(doc.contents);
  const isSound = faults.length === 0 && readText === text && !hasAnchors(node) && quietFaults(node, text).length === 0;
  return isSound ? node : null;
}

/** A list entry of many lines, such as a table of offsets, put together from its keys; null where it must be parsed as a whole. */
function* longEntry(reading: Reading, lines: string): Steps<NodePair | null> {
  const dash = /^ *-(?= +[A-Za-z])/.exec(lines)?.[0].lastIndexOf('-') ?? -1;
  if (dash < 0) return null;
  // Without its dash it is a map like any other.
  const text = `${lines.slice(0, dash)} ${lines.slice(dash + 1)}`;
  const value = yield* mapOf({ ...reading, text, lineStarts: lineStartsOf(text) }, null);
  return value && { key: null, value, colon: dash };
}

function pieceOf(found: NodePair, lines: string, at: number): Piece {
  const pair = movedPair(found, at);
  return { at, pair, parsed: pair.value, mayNest: mayNest(lines), within: noPieces };
}

function onlyPairOf(node: Node | null): NodePair | null {
  if (isMapNode(node)) return node.items.length === 1 ? node.items[0]! : null;
  if (!isSeq(node) || node.items.length !== 1) return null;
  return { key: null, value: node.items[0]!, colon: node.dashes[0] ?? null };
}

/** What is repeated by an alias may stand anywhere in the file. */
function hasAnchors(root: Node | null): boolean {
  let found = false;
  visit(root, {
    node: node => {
      found ||= isAlias(node) || node.anchor !== '';
      return !found;
    },
  });
  return found;
}
