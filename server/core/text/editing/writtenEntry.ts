import type { Path } from '../../../../schema/path.ts';
import type { EntryText } from '../../findings/finding.ts';
import { locate } from '../reading/locate.ts';
import { isMapNode, isScalar, isSeq, type Node, type NodePair, type ScalarNode } from '../reading/nodes.ts';
import { keyText, textScalar } from '../reading/quoteScalar.ts';
import type { Syntax } from '../reading/syntax.ts';
import { type Aliases, follow, keyName, pairsOf } from '../reading/tree.ts';

/** An entry of the file as it would be written again elsewhere: what stands below a key goes between brackets. */
export function writtenEntry(syntax: Syntax, path: Path): EntryText | null {
  const { aliases } = syntax;
  const map = locate(syntax, path)?.node;
  if (!isMapNode(map)) return null;
  const fields = pairsOf(map, aliases).flatMap(pair => {
    const field = follow(pair.value, aliases);
    return field === null || saysNothing(field)
      ? []
      : [[keyName(pair) ?? '', isScalar(field) ? scalarText(field, false) : flowText(field, aliases)] as const];
  });
  return { fields };
}

/** What stands at a path as it would be written again, on one line; null where that is nothing. */
export function writtenValue(syntax: Syntax, path: Path): string | null {
  const node = locate(syntax, path)?.node ?? null;
  return node === null || saysNothing(node) ? null : flowText(node, syntax.aliases);
}

/** Names between brackets. */
export const listText = (names: readonly string[]): string =>
  `[${names.map(name => textScalar(name, true)).join(', ')}]`;

function flowText(node: Node, aliases: Aliases): string {
  const written = (each: Node | null): string => {
    const value = follow(each, aliases);
    return value === null ? 'null' : flowText(value, aliases);
  };
  if (isSeq(node)) return `[${node.items.map(written).join(', ')}]`;
  if (isMapNode(node)) {
    const pair = (each: NodePair): string => `${keyText(keyName(each) ?? '')}: ${written(each.value)}`;
    return `{ ${pairsOf(node, aliases).map(pair).join(', ')} }`;
  }
  return isScalar(node) ? scalarText(node, true) : 'null';
}

/** A figure as it was written, however it was: read and written again, a long one would be another. */
const scalarText = ({ value, style, source }: ScalarNode, isInFlow: boolean): string =>
  typeof value === 'string' ? textScalar(value, isInFlow) : style === 'PLAIN' && source !== '' ? source : String(value);

const saysNothing = (node: Node): boolean => isScalar(node) && node.value === null;
