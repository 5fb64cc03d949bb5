import {
  type Alias,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  type Scalar,
  visit,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Span } from './lines.ts';

/** What each alias stands for; null when its anchor does not exist. */
export type Aliases = ReadonlyMap<Alias, Node | null>;

/** A key's name as plain data shows it; null for a list or map used as a key. */
export function keyName(pair: Pair): string | null {
  if (pair.key === null) return '';
  if (!isScalar(pair.key)) return null;
  return pair.key.value === null ? '' : String(pair.key.value);
}

/** `<<: *other`, which takes in the keys of another map. */
export const isMerge = (pair: Pair): boolean =>
  isScalar(pair.key) && pair.key.value === '<<' && (pair.key as Scalar).type === 'PLAIN';

/** What an alias stands for, through any number of steps; null for an alias to nothing or to itself. */
export function follow(node: unknown, aliases: Aliases): Node | null {
  let at = node;
  for (let steps = 0; isAlias(at); steps += 1) {
    if (steps > aliases.size) return null;
    at = aliases.get(at) ?? null;
  }
  return isScalar(at) || isMap(at) || isSeq(at) ? at : null;
}

/** The pairs of a map, the first of each name, then those that it merges in. */
export function pairsOf(map: YAMLMap, aliases: Aliases): readonly Pair[] {
  const byName = new Map<string, Pair>();
  // A map merged in twice, or into itself, adds nothing the second time.
  const seen = new Set<YAMLMap>();
  const take = (from: YAMLMap): void => {
    if (seen.has(from)) return;
    seen.add(from);
    for (const pair of from.items) {
      const name = keyName(pair);
      if (!isMerge(pair) && name !== null && !byName.has(name)) byName.set(name, pair);
    }
    for (const pair of from.items) if (isMerge(pair)) for (const merged of mergedMaps(pair, aliases)) take(merged);
  };
  take(map);
  return [...byName.values()];
}

function mergedMaps(pair: Pair, aliases: Aliases): readonly YAMLMap[] {
  const value = follow(pair.value, aliases);
  if (isMap(value)) return [value];
  return isSeq(value) ? value.items.map(item => follow(item, aliases)).filter(item => isMap(item)) : [];
}

/** What stands one step below a node: a value, and the pair that holds it where the node is a map. */
export function childOf(
  node: Node | null,
  step: string | number,
  aliases: Aliases,
): { pair: Pair | null; value: Node | null } | null {
  if (isMap(node)) {
    const own = node.items.find(pair => !isMerge(pair) && keyName(pair) === String(step));
    const pair = own ?? pairsOf(node, aliases).find(each => keyName(each) === String(step));
    return pair ? { pair, value: pair.value as Node | null } : null;
  }
  if (!isSeq(node) || typeof step !== 'number') return null;
  const item = node.items[step];
  return item === undefined ? null : { pair: null, value: item as Node | null };
}

/** What every alias of a document stands for: the last anchor of its name before it. */
export function resolveAliases(root: Node | null): Aliases {
  const anchors = new Map<string, Node>();
  const aliases = new Map<Alias, Node | null>();
  if (root)
    visit(root, {
      Alias: (_, alias) => void aliases.set(alias, anchors.get(alias.source) ?? null),
      Node: (_, node) => {
        if (!isAlias(node) && node.anchor) anchors.set(node.anchor, node);
      },
    });
  return aliases;
}

/** The characters of a node without what follows it; null for a value that is not written. */
export function spanOf(node: unknown): Span | null {
  if (!isAlias(node) && !isScalar(node) && !isMap(node) && !isSeq(node)) return null;
  if (!node.range || node.range[0] === node.range[1]) return null;
  return [node.range[0], node.range[1]];
}

export const isFlow = (node: Node | null): boolean => (isMap(node) || isSeq(node)) && node.flow === true;

/** Where the dashes of a block list's entries stand; none in a flow list. */
export function dashesOf({ srcToken }: YAMLSeq): readonly (number | undefined)[] {
  if (srcToken?.type !== 'block-seq') return [];
  const entries = srcToken.items.filter(item => item.value || item.start.some(start => start.type === 'seq-item-ind'));
  return entries.map(item => item.start.find(start => start.type === 'seq-item-ind')?.offset);
}

/** Where the dash of one entry stands; null in a flow list. */
export const dashOf = (list: YAMLSeq, index: number): number | null => dashesOf(list)[index] ?? null;

/** Where the colon of a pair stands; null when it has none. */
export const colonOf = (pair: Pair): number | null =>
  pair.srcToken?.sep?.find(token => token.type === 'map-value-ind')?.offset ?? null;
