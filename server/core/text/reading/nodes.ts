import * as yaml from 'yaml';

/**
 * What a text holds, as a tree of our own: only what is asked of it, in plain values, so that what the parser made of a
 * piece of text can be kept without the parser's own records and set at another place of the file.
 */
export type Node = ScalarNode | MapNode | ListNode | AliasNode;

interface Placed {
  /** Offsets in the text; both the same for a value that is not written. */
  readonly start: number;
  /** Without blanks and comments after it; of a block map or list the end of the last thing in it. */
  readonly end: number;
}

interface Anchored extends Placed {
  /** Its name after `&`; empty where it has none. */
  readonly anchor: string;
}

/** What a scalar can say. */
type Plain = string | number | boolean | null;

export interface ScalarNode extends Anchored {
  readonly kind: 'scalar';
  readonly value: Plain;
  readonly style: 'PLAIN' | 'QUOTE_SINGLE' | 'QUOTE_DOUBLE' | 'BLOCK_FOLDED' | 'BLOCK_LITERAL';
  /** As it is written, without quotes. */
  readonly source: string;
}

interface Collection extends Anchored {
  /** Written between brackets. */
  readonly flow: boolean;
  /** The bracket that ends it is there. */
  readonly isClosed: boolean;
}

export interface MapNode extends Collection {
  readonly kind: 'map';
  readonly items: readonly NodePair[];
}

export interface ListNode extends Collection {
  readonly kind: 'list';
  readonly items: readonly (Node | null)[];
  /** Where the dashes of a block list's entries stand; none in a flow list. */
  readonly dashes: readonly (number | undefined)[];
}

export interface AliasNode extends Placed {
  readonly kind: 'alias';
  /** The name after `*`. */
  readonly source: string;
}

export interface NodePair {
  readonly key: Node | null;
  readonly value: Node | null;
  /** Where its colon stands; null when it has none. */
  readonly colon: number | null;
}

export const isScalar = (node: Node | null | undefined): node is ScalarNode => node?.kind === 'scalar';
export const isMapNode = (node: Node | null | undefined): node is MapNode => node?.kind === 'map';
export const isSeq = (node: Node | null | undefined): node is ListNode => node?.kind === 'list';
export const isAlias = (node: Node | null | undefined): node is AliasNode => node?.kind === 'alias';

/**
 * Nothing but plain values. “.nan”, “.inf”, figures too large for any machine and what tags make other things of are what is
 * written, to be told as that.
 */
function plainValue(value: unknown, source: string): Plain {
  if (value === null || value === undefined) return null;
  if (typeof value === 'number') return Number.isFinite(value) ? value : source;
  return typeof value === 'string' || typeof value === 'boolean' ? value : source;
}

/** The parser's tree as ours. */
export function toNode(from: unknown): Node | null {
  if (yaml.isAlias(from)) return { kind: 'alias', ...placeOf(from), source: from.source };
  if (yaml.isScalar(from)) {
    const { type = 'PLAIN', source = '' } = from;
    const style = type as ScalarNode['style'];
    return {
      kind: 'scalar',
      ...placeOf(from),
      anchor: from.anchor ?? '',
      value: plainValue(from.value, source),
      style,
      source,
    };
  }
  if (yaml.isMap(from)) {
    const items = from.items.map(toPair);
    const last = items.at(-1);
    return { kind: 'map', ...collectionOf(from, last ? endOfPair(last) : null), items };
  }
  if (!yaml.isSeq(from)) return null;
  const items = from.items.map(toNode);
  const dashes = toDashes(from);
  const last = items.length - 1;
  return {
    kind: 'list',
    ...collectionOf(from, last < 0 ? null : endOfItem(items[last]!, dashes[last])),
    items,
    dashes,
  };
}

/** The end of all that is written of a pair. */
export const endOfPair = ({ key, colon, value }: NodePair): number =>
  Math.max(key?.end ?? 0, colon === null ? 0 : colon + 1, value && value.end > value.start ? value.end : 0);

/** The end of all that is written of a list entry. */
export const endOfItem = (item: Node | null, dash: number | undefined): number =>
  item && item.end > item.start ? item.end : (dash ?? 0) + 1;

function toPair(pair: yaml.Pair): NodePair {
  const colon = pair.srcToken?.sep?.find(token => token.type === 'map-value-ind')?.offset ?? null;
  return { key: toNode(pair.key), value: toNode(pair.value), colon };
}

function toDashes({ srcToken }: yaml.YAMLSeq): readonly (number | undefined)[] {
  if (srcToken?.type !== 'block-seq') return [];
  const entries = srcToken.items.filter(item => item.value || item.start.some(start => start.type === 'seq-item-ind'));
  return entries.map(item => item.start.find(start => start.type === 'seq-item-ind')?.offset);
}

const placeOf = ({ range }: yaml.Node): Placed => ({ start: range?.[0] ?? 0, end: range?.[1] ?? 0 });

function collectionOf(from: yaml.YAMLMap | yaml.YAMLSeq, contentEnd: number | null): Collection {
  const { start, end } = placeOf(from);
  const flow = from.flow === true;
  const token = from.srcToken;
  const isClosed = token?.type === 'flow-collection' && token.end.some(each => /^[}\]]$/.test(each.source));
  return { start, end: flow || contentEnd === null ? end : contentEnd, anchor: from.anchor ?? '', flow, isClosed };
}

/** The same piece of text further on in the file. */
function moved<T extends Node | null>(node: T, by: number): T;
function moved(node: Node | null, by: number): Node | null {
  if (node === null || by === 0) return node;
  const start = node.start + by;
  const end = node.end + by;
  switch (node.kind) {
    // Key by key: spreading takes several times as long, and all that stands below an edit is moved.
    case 'scalar': {
      const { kind, anchor, value, style, source } = node;
      return { kind, start, end, anchor, value, style, source };
    }
    case 'alias':
      return { kind: node.kind, start, end, source: node.source };
    case 'map': {
      const { kind, anchor, flow, isClosed } = node;
      const items = node.items.map(pair => movedPair(pair, by));
      return { kind, start, end, anchor, flow, isClosed, items };
    }
    case 'list': {
      const { kind, anchor, flow, isClosed } = node;
      const items = node.items.map(item => moved(item, by));
      const dashes = node.dashes.map(dash => dash && dash + by);
      return { kind, start, end, anchor, flow, isClosed, items, dashes };
    }
  }
}

export const movedList = (list: ListNode, by: number): ListNode => moved(list, by);

export const movedPair = ({ key, value, colon }: NodePair, by: number): NodePair => ({
  key: moved(key, by),
  value: moved(value, by),
  colon: colon === null ? null : colon + by,
});

/** What is done on the way through a tree; a node is gone into where `node` answers true. */
export interface Visitor {
  readonly node?: (node: Node) => boolean;
  readonly pair?: (pair: NodePair) => void;
}

/** Goes through all of a tree in the order of the text. */
export function visit(node: Node | null, visitor: Visitor): void {
  if (node === null || (visitor.node && !visitor.node(node))) return;
  if (node.kind === 'list') for (const item of node.items) visit(item, visitor);
  if (node.kind !== 'map') return;
  for (const pair of node.items) {
    visitor.pair?.(pair);
    visit(pair.key, visitor);
    visit(pair.value, visitor);
  }
}
