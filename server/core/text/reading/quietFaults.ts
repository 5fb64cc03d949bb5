import { gluedBracket, missingColonSpace, missingDashSpace } from './explain.ts';
import type { Fault } from './faults.ts';
import { lineStart } from './lines.ts';
import { isMapNode, isScalar, isSeq, type Node, type NodePair, visit } from './nodes.ts';
import { missingDash, strayBullet } from './oddDashes.ts';
import { decimalComma, noColon, wrongColon } from './oddSigns.ts';
import { keyName, spanOf } from './tree.ts';

/** Slips that are good YAML, but of another meaning than the writer had in mind. */
export function quietFaults(root: Node | null, text: string): readonly Fault[] {
  if (root === null) return [];
  const faults: Fault[] = [];
  const add = (found: Fault | null): void => {
    if (found) faults.push(found);
  };
  // `- name:battery` is one piece of text, not a key and its value.
  const addLonePlain = (node: Node | null, { isBelow = false, isBetween = false } = {}): void => {
    if (isScalar(node) && node.style === 'PLAIN')
      add(
        missingColonSpace(text, node.start) ??
          // A comma behind one of a list in brackets is the list's.
          wrongColon(text, node.start, isBetween ? node.end : undefined) ??
          (isBelow ? noColon(text, node.start) : null),
      );
  };
  addLonePlain(root);
  visit(root, {
    node: node => {
      if (isSeq(node)) for (const item of node.items) addLonePlain(item, { isBetween: node.flow });
      if (!isMapNode(node)) return true;
      for (const [i, pair] of node.items.entries()) {
        if (node.flow) add(decimalComma(node, i, text) ?? gluedFlowKey(pair, text));
        else if (isBelowKey(pair, text)) addLonePlain(pair.value, { isBelow: true });
      }
      return true;
    },
  });
  return faults;
}

/** Among them the first that shapes what is around it: `-name: battery` and `water:{ kind: sea }`; a dash that is missing. */
export function gluedKey(root: Node | null, text: string): Fault | null {
  let found: Fault | null = missingDash(root, text);
  visit(root, {
    node: map => {
      if (found) return false;
      if (!isMapNode(map) || map.flow) return true;
      for (const pair of map.items) {
        const start = plainStart(pair);
        if (start === null) continue;
        const name = keyName(pair) ?? '';
        found ??= /^-[A-Za-z]/.test(name)
          ? missingDashSpace(text, start)
          : (gluedBracket(text, start) ?? strayBullet(text, start));
      }
      return true;
    },
  });
  return found;
}

/** `{ name:battery }`: a key without a value. */
function gluedFlowKey(pair: NodePair, text: string): Fault | null {
  const start = plainStart(pair);
  if (pair.colon !== null || start === null) return null;
  return missingColonSpace(text, start) ?? wrongColon(text, start, pair.key!.end);
}

/** `hull:` and below it `length:900 mm`. */
function isBelowKey(pair: NodePair, text: string): boolean {
  const key = spanOf(pair.key);
  const value = spanOf(pair.value);
  return key !== null && value !== null && lineStart(text, value[0]) > key[0];
}

const plainStart = (pair: NodePair): number | null =>
  isScalar(pair.key) && pair.key.style === 'PLAIN' ? pair.key.start : null;
