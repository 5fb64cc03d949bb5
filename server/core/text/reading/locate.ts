import type { Path } from '../../../../schema/path.ts';
import type { Span } from './lines.ts';
import { isScalar, type Node, type NodePair } from './nodes.ts';
import type { Syntax } from './syntax.ts';
import { childOf, follow, spanOf } from './tree.ts';

/** What stands at a path. */
export interface Located {
  readonly path: Path;
  /** The characters of its key; null for a list entry and the whole file. */
  readonly key: Span | null;
  /** The characters of its value as written, an alias as the alias; null where no value is written. */
  readonly value: Span | null;
  /** The value, aliases followed. */
  readonly node: Node | null;
  /** The value as written: an alias stays one. */
  readonly written: Node | null;
  readonly pair: NodePair | null;
}

/** Finds what stands at a path, through aliases and merged maps; null where nothing does. */
export function locate(syntax: Syntax, path: Path): Located | null {
  let at = located([], null, syntax.root, syntax);
  for (const step of path) {
    const child = childOf(at.node, step, syntax.aliases);
    if (!child) return null;
    at = located([...at.path, step], child.pair, child.value, syntax);
  }
  return at;
}

/** What stands at a path, or at the nearest place above it where something does. */
export function locateNearest(syntax: Syntax, path: Path): Located {
  for (let length = path.length; length > 0; length -= 1) {
    const found = locate(syntax, path.slice(0, length));
    if (found) return found;
  }
  return located([], null, syntax.root, syntax);
}

const located = (path: Path, pair: NodePair | null, written: Node | null, syntax: Syntax): Located => ({
  path,
  key: pair && isScalar(pair.key) ? spanOf(pair.key) : null,
  value: spanOf(written),
  node: follow(written, syntax.aliases),
  written,
  pair,
});
