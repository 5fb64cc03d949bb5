import type { FindingCode } from '../../findings/catalogue/catalogue.ts';
import { type Fault, fault } from './faults.ts';
import type { Span } from './lines.ts';
import { type AliasNode, isAlias, isMapNode, isSeq, type Node } from './nodes.ts';
import { type Aliases, follow, resolveAliases } from './tree.ts';

/** More values than this do not come out of a boat file honestly: aliases of aliases multiply. */
const mostValues = 100_000;
/** Nor does one alias lead to another so many times over. */
const mostDeep = 1000;

/**
 * What the aliases of a document stand for. One that stands for nothing, for what it is itself part of, or for far too
 * much is a fault and stands for nothing, so that following aliases always comes to an end.
 */
export function readAliases(root: Node | null): { readonly aliases: Aliases; readonly faults: readonly Fault[] } {
  const found = resolveAliases(root);
  const faults: Fault[] = [];
  const sound = new Map(found);
  if (root === null || found.size === 0) return { aliases: sound, faults };
  const circular = circularAliases(root, found);
  for (const [alias, target] of found) {
    const name = `“*${alias.source}”`;
    if (circular.has(alias)) {
      sound.set(alias, null);
      faults.push(
        aliasFault('circular-alias', alias, `${name} would repeat the very thing it stands in. Write the values out.`),
      );
    } else if (target === null && alias.source !== '')
      faults.push(
        aliasFault(
          'unknown-alias',
          alias,
          `${name} repeats what is marked “&${alias.source}”, and nothing above it is.`,
        ),
      );
  }
  const sizes = writtenOut(root, sound);
  const isTooMuch = (node: Node): boolean => {
    const size = sizes.get(node);
    return size !== undefined && (size.values > mostValues || size.depth > mostDeep);
  };
  if (!isTooMuch(root)) return { aliases: sound, faults };
  const first = [...sound.keys()].find(isTooMuch) ?? [...sound.keys()].at(-1)!;
  const message = `“*${first.source}” repeats so much that the file cannot be read. Write the values out.`;
  const none = new Map([...sound.keys()].map(alias => [alias, null]));
  return { aliases: none, faults: [...faults, aliasFault('alias-too-large', first, message)] };
}

const aliasFault = (code: FindingCode, alias: AliasNode, message: string): Fault =>
  fault(code, spanOfAlias(alias), message);

const spanOfAlias = (alias: AliasNode): Span => [alias.start, alias.end];

const partsOf = (node: Node): readonly Node[] => {
  if (isMapNode(node)) return node.items.flatMap(pair => [pair.key, pair.value]).filter(isPart);
  return isSeq(node) ? node.items.filter(isPart) : [];
};

const isPart = (part: Node | null): part is Node => isAlias(part) || isMapNode(part) || isSeq(part);

/** What a node leads to: its parts, or what an alias stands for. */
const below = (node: Node, aliases: Aliases): readonly Node[] => {
  const target = follow(isAlias(node) ? node : null, aliases);
  return target ? [target] : partsOf(node);
};

/**
 * Every node once, those that it leads to before it, as far as nothing goes round in a circle. `meets` is told of each step
 * to a node that is still being looked into, with the way from there: that is a circle.
 */
function inOrder(root: Node, aliases: Aliases, meets: (circle: readonly Node[]) => void): readonly Node[] {
  const order: Node[] = [];
  const places = new Map<Node, number>();
  const DONE = -1;
  const way: { readonly node: Node; readonly left: Node[] }[] = [];
  const enter = (node: Node): void => {
    places.set(node, way.length);
    way.push({ node, left: [...below(node, aliases)].reverse() });
  };
  enter(root);
  // Ends: each node is entered once, and each of its parts taken off once.
  for (let last = way.at(-1); last; last = way.at(-1)) {
    const next = last.left.pop();
    if (next === undefined) {
      places.set(last.node, DONE);
      order.push(last.node);
      way.pop();
      continue;
    }
    const place = places.get(next);
    if (place === undefined) enter(next);
    else if (place !== DONE) meets(way.slice(place).map(({ node }) => node));
  }
  return order;
}

/** Aliases that are found again inside what they stand for: without the last one of each circle nothing goes round. */
function circularAliases(root: Node, aliases: Aliases): ReadonlySet<AliasNode> {
  const circular = new Set<AliasNode>();
  inOrder(root, aliases, circle => {
    const alias = circle.findLast(node => isAlias(node));
    if (alias) circular.add(alias);
  });
  return circular;
}

interface WrittenOut {
  readonly values: number;
  readonly depth: number;
}

/** How many values each node comes to once its aliases are written out, and how deep; only asked where none is circular. */
function writtenOut(root: Node, aliases: Aliases): ReadonlyMap<Node, WrittenOut> {
  const sizes = new Map<Node, WrittenOut>();
  for (const node of inOrder(root, aliases, () => {})) {
    const parts = below(node, aliases).flatMap(part => sizes.get(part) ?? []);
    const own = isMapNode(node) || isSeq(node) ? node.items.length : 0;
    sizes.set(node, {
      values: parts.reduce((sum, { values }) => sum + values, 1 + own),
      depth: 1 + parts.reduce((most, { depth }) => Math.max(most, depth), 0),
    });
  }
  return sizes;
}
