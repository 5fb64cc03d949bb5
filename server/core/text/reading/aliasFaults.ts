import type { FindingCode } from '../../findings/catalogue/catalogue.ts';
import { type Fault, fault } from './faults.ts';
import type { Span } from './lines.ts';
import { type AliasNode, isAlias, isMap, isSeq, type Node } from './nodes.ts';
import { type Aliases, follow, resolveAliases } from './tree.ts';

/** More values than this do not come out of a boat file honestly: aliases of aliases multiply. */
const mostValues = 100_000;

/**
 * What the aliases of a document stand for. One that stands for nothing, for what it is itself part of, or for far too
 * much is a fault and stands for nothing, so that following aliases always comes to an end.
 */
export function readAliases(root: Node | null): { readonly aliases: Aliases; readonly faults: readonly Fault[] } {
  const found = resolveAliases(root);
  const faults: Fault[] = [];
  const sound = new Map(found);
  for (const [alias, target] of found) {
    const name = `“*${alias.source}”`;
    const circular = target !== null && leadsTo(target, alias, found);
    if (circular) {
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
  const counts = new Map<Node, number>();
  const last = [...sound.keys()].at(-1);
  if (root === null || !last || countValues(root, sound, counts) <= mostValues) return { aliases: sound, faults };
  const first = [...sound.keys()].find(alias => (counts.get(alias) ?? 0) > mostValues) ?? last;
  const message = `“*${first.source}” repeats so much that the file cannot be read. Write the values out.`;
  const none = new Map([...sound.keys()].map(alias => [alias, null]));
  return { aliases: none, faults: [...faults, aliasFault('alias-too-large', first, message)] };
}

const aliasFault = (code: FindingCode, alias: AliasNode, message: string): Fault =>
  fault(code, spanOfAlias(alias), message);

const spanOfAlias = (alias: AliasNode): Span => [alias.start, alias.end];

const partsOf = (node: Node): readonly Node[] => {
  if (isMap(node)) return node.items.flatMap(pair => [pair.key, pair.value]).filter(isPart);
  return isSeq(node) ? node.items.filter(isPart) : [];
};

const isPart = (part: Node | null): part is Node => isAlias(part) || isMap(part) || isSeq(part);

/** Whether an alias is found again inside what it stands for. */
function leadsTo(target: Node, alias: AliasNode, aliases: Aliases): boolean {
  const seen = new Set<Node>();
  const pending: Node[] = [target];
  for (let node = pending.pop(); node; node = pending.pop()) {
    if (node === alias) return true;
    if (seen.has(node)) continue;
    seen.add(node);
    const next = isAlias(node) ? follow(node, aliases) : null;
    pending.push(...(next ? [next] : partsOf(node)));
  }
  return false;
}

/** How many values a node comes to once its aliases are written out; only asked where none is circular. */
function countValues(node: Node, aliases: Aliases, counts: Map<Node, number>): number {
  const known = counts.get(node);
  if (known !== undefined) return known;
  const target = follow(isAlias(node) ? node : null, aliases);
  const own = isMap(node) || isSeq(node) ? node.items.length : 0;
  const parts = target ? [target] : partsOf(node);
  const count = parts.reduce((sum, part) => sum + countValues(part, aliases, counts), 1 + own);
  counts.set(node, count);
  return count;
}
