import { isInside, type Path, samePath } from '../../../../schema/path.ts';
import { lineStart } from './lines.ts';
import { locate } from './locate.ts';
import { isMapNode, isScalar, isSeq, type Node } from './nodes.ts';
import { pathAt } from './pathAt.ts';
import { asParsed } from './pieces.ts';
import type { Syntax } from './syntax.ts';
import { childOf, follow, keyName, pairsOf } from './tree.ts';

/** The sub-tree at a path as plain data; undefined where nothing stands, and for an alias that leads nowhere. */
export function valueAt(syntax: Syntax, path: Path): unknown {
  const found = locate(syntax, path);
  return found ? plainOf(found.written, syntax) : undefined;
}

/** What kind of thing stands at a path; undefined where nothing does, null for a key without a value. */
export function kindAt(syntax: Syntax, path: Path): 'scalar' | 'map' | 'list' | null | undefined {
  const found = locate(syntax, path);
  if (!found) return undefined;
  const { node, written } = found;
  if (isScalar(node)) return node.value === null ? null : 'scalar';
  return isMapNode(node) ? 'map' : isSeq(node) ? 'list' : written === null ? null : undefined;
}

/** One entry of a list. */
export interface ListItem {
  readonly path: Path;
  readonly value: unknown;
}

/** The entries of the list at a path; none where no list stands. */
export function entriesOf(syntax: Syntax, path: Path): readonly ListItem[] {
  const list = locate(syntax, path)?.node;
  if (!isSeq(list)) return [];
  return list.items.map((written, index) => ({ path: [...path, index], value: plainOf(written, syntax) }));
}

/** The keys of the map at a path, those it merges in included; none where no map stands. */
export function keysOf(syntax: Syntax, path: Path): readonly string[] {
  const map = locate(syntax, path)?.node;
  return isMapNode(map) ? pairsOf(map, syntax.aliases).map(pair => keyName(pair) ?? '') : [];
}

/** Made once for each piece of a file, wherever it comes to stand: nearly all of it stays as it was. */
const plainPieces = new WeakMap<Node, unknown>();

/** What stands in a piece of a file is always the same data; what an alias stands for is no piece's own. */
function plainOf(written: Node | null, syntax: Syntax): unknown {
  if (!syntax.isPieced || written === null || isScalar(written)) return toPlain(written, syntax);
  const piece = asParsed(written);
  const known = plainPieces.get(piece);
  if (known !== undefined) return known;
  const plain = toPlain(written, syntax);
  plainPieces.set(piece, plain);
  return plain;
}

function toPlain(written: Node | null, syntax: Syntax): unknown {
  const node = follow(written, syntax.aliases);
  if (isScalar(node)) return node.value;
  if (isSeq(node)) return node.items.map(item => toPlain(item, syntax));
  if (!isMapNode(node)) return written === null ? null : undefined;
  const pairs = pairsOf(node, syntax.aliases).map(pair => [keyName(pair), toPlain(pair.value, syntax)]);
  return Object.fromEntries(pairs.filter(([, value]) => value !== undefined));
}

/**
 * Whether a slip of the pen leaves the value at a path in uncertainty, or the absence of one: what else there is to say of it
 * would be a second complaint about the same slip.
 */
export function isBroken(syntax: Syntax, path: Path): boolean {
  return syntax.isGivenUp || slipsOf(syntax).some(slip => uncertainties(syntax, slip, path));
}

/** Whether anything that is written at a path or below it slips, so that what it should say is not all known. */
export const hasSlip = (syntax: Syntax, path: Path): boolean =>
  isBroken(syntax, path) || slipsOf(syntax).some(({ at }) => isInside(at.path, path));

/** Whether the section of the file that a path is in has a slip, or all of the file. */
export const sectionSlips = (syntax: Syntax, path: Path): boolean =>
  slipsOf(syntax).some(({ at }) => sectionOf(at.path).every((step, i) => path[i] === step));

/** A section of the file, or a list of the hull. */
const sectionOf = ([first, second]: Path): Path =>
  first === 'hull' && second !== undefined ? [first, second] : first === undefined ? [] : [first];

interface Slip {
  readonly at: ReturnType<typeof pathAt>;
  /** All at this path and below it is in uncertainty; null where that is nothing. */
  readonly below: Path | null;
  /** The map or list that has the slip in it, of which more may be (`isInUncertainty`). */
  readonly container: Path | null;
}

/** Found out once for each text: every value asks. */
const found = new WeakMap<Syntax, readonly Slip[]>();

function slipsOf(syntax: Syntax): readonly Slip[] {
  const known = found.get(syntax) ?? syntax.slips.map(([start]) => slipAt(syntax, start));
  found.set(syntax, known);
  return known;
}

function slipAt(syntax: Syntax, start: number): Slip {
  const at = pathAt(syntax, start);
  const parent = at.path.slice(0, -1);
  if (at.on === 'value') return { at, below: at.path, container: null };
  if (at.on === 'key') return { at, below: at.path, container: parent };
  if (isSeq(at.node)) {
    const line = lineStart(syntax.text, start);
    const entry = at.node.dashes.findIndex(dash => dash !== undefined && lineStart(syntax.text, dash) === line);
    return { at, below: null, container: entry < 0 ? at.path : [...at.path, entry] };
  }
  if (isMapNode(at.node)) return { at, below: null, container: at.path };
  // Below a key that has no map: the line may belong there or beside it.
  return { at, below: at.path, container: parent };
}

const uncertainties = (syntax: Syntax, { below, container }: Slip, path: Path): boolean =>
  (below !== null && isInside(path, below)) || (container !== null && isInUncertainty(syntax, container, path));

/** A map or list that has a slip in it is in uncertainty as a whole, and so is all that it seems to lack. */
const isInUncertainty = (syntax: Syntax, container: Path, path: Path): boolean =>
  samePath(path, container) ||
  (path.length > container.length &&
    isInside(path, container) &&
    childOf(locate(syntax, container)?.node ?? null, path[container.length]!, syntax.aliases) === null);
