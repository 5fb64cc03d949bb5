import type { Span } from './lines.ts';
import {
  type AliasNode,
  isAlias,
  isMapNode,
  isScalar,
  isSeq,
  type ListNode,
  type MapNode,
  type Node,
  type NodePair,
  visit,
} from './nodes.ts';

/** What each alias stands for; null when its anchor does not exist. */
export type Aliases = ReadonlyMap<AliasNode, Node | null>;

/** A key's name as plain data shows it; null for a list or map used as a key. */
export function keyName(pair: NodePair): string | null {
  if (pair.key === null) return '';
  if (!isScalar(pair.key)) return null;
  return pair.key.value === null ? '' : String(pair.key.value);
}

/** `<<: *other`, which takes in the keys of another map. */
export const isMerge = (pair: NodePair): boolean =>
  isScalar(pair.key) && pair.key.value === '<<' && pair.key.style === 'PLAIN';

/** What an alias stands for, through any number of steps; null for an alias to nothing or to itself. */
export function follow(node: Node | null, aliases: Aliases): Node | null {
  let at = node;
  // Ends: after as many steps as there are aliases.
  for (let steps = 0; isAlias(at); steps += 1) {
    if (steps > aliases.size) return null;
    at = aliases.get(at) ?? null;
  }
  return at;
}

/** The pairs of a map, the first of each name, then those that it merges in. */
export function pairsOf(map: MapNode, aliases: Aliases): readonly NodePair[] {
  const byName = new Map<string, NodePair>();
  // A map merged in twice, or into itself, adds nothing the second time.
  const seen = new Set<MapNode>();
  const take = (from: MapNode): void => {
    if (seen.has(from)) return;
    seen.add(from);
    const own = ownPairs(from);
    for (const [name, pair] of own.byName) if (!byName.has(name)) byName.set(name, pair);
    if (!own.isMerging) return;
    for (const pair of from.items) if (isMerge(pair)) for (const merged of mergedMaps(pair, aliases)) take(merged);
  };
  take(map);
  return [...byName.values()];
}

function mergedMaps(pair: NodePair, aliases: Aliases): readonly MapNode[] {
  const value = follow(pair.value, aliases);
  if (isMapNode(value)) return [value];
  return isSeq(value) ? value.items.map(item => follow(item, aliases)).filter(item => isMapNode(item)) : [];
}

/** What stands one step below a node: a value, and the pair that holds it where the node is a map. */
export function childOf(
  node: Node | null,
  step: string | number,
  aliases: Aliases,
): { pair: NodePair | null; value: Node | null } | null {
  if (isMapNode(node)) {
    const { byName, isMerging } = ownPairs(node);
    const isCalledSo = (pair: NodePair): boolean => keyName(pair) === String(step);
    const pair = byName.get(String(step)) ?? (isMerging ? pairsOf(node, aliases).find(isCalledSo) : undefined);
    return pair ? { pair, value: pair.value } : null;
  }
  if (!isSeq(node) || typeof step !== 'number') return null;
  const item = node.items[step];
  return item === undefined ? null : { pair: null, value: item };
}

interface OwnPairs {
  /** The first of each name. */
  readonly byName: ReadonlyMap<string, NodePair>;
  readonly isMerging: boolean;
}

/** Looked through once for each map, however often something in it is asked for: a text may have thousands of keys. */
const looked = new WeakMap<MapNode, OwnPairs>();

function ownPairs(map: MapNode): OwnPairs {
  const known = looked.get(map);
  if (known) return known;
  const byName = new Map<string, NodePair>();
  let isMerging = false;
  for (const pair of map.items) {
    const name = keyName(pair);
    if (isMerge(pair)) isMerging = true;
    else if (name !== null && !byName.has(name)) byName.set(name, pair);
  }
  const pairs = { byName, isMerging };
  looked.set(map, pairs);
  return pairs;
}

/** What every alias of a document stands for: the last anchor of its name before it. */
export function resolveAliases(root: Node | null): Aliases {
  const anchors = new Map<string, Node>();
  const aliases = new Map<AliasNode, Node | null>();
  visit(root, {
    node: node => {
      if (isAlias(node)) aliases.set(node, anchors.get(node.source) ?? null);
      else if (node.anchor !== '') anchors.set(node.anchor, node);
      return true;
    },
  });
  return aliases;
}

/** The characters of a node without what follows it; null for a value that is not written. */
export const spanOf = (node: Node | null | undefined): Span | null =>
  node && node.start !== node.end ? [node.start, node.end] : null;

export const isFlow = (node: Node | null): boolean => (isMapNode(node) || isSeq(node)) && node.flow;

/** Where the dash of one entry stands; null in a flow list. */
export const dashOf = (list: ListNode, index: number): number | null => list.dashes[index] ?? null;
