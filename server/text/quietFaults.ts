import { isScalar, type Node, type Pair, visit } from 'yaml';
import { missingColonSpace, missingDashSpace } from './explain.ts';
import type { Fault } from './faults.ts';
import { colonOf, keyName } from './tree.ts';

/** Slips that are good YAML, but of another meaning than the writer had in mind. */
export function quietFaults(root: Node | null, text: string): readonly Fault[] {
  if (root === null) return [];
  const faults: Fault[] = [];
  const add = (found: Fault | null): void => {
    if (found) faults.push(found);
  };
  // `- name:battery` is one piece of text, not a key and its value.
  const addLonePlain = (node: unknown): void => {
    if (isScalar(node) && node.type === 'PLAIN' && node.range) add(missingColonSpace(text, node.range[0]));
  };
  addLonePlain(root);
  visit(root, {
    Seq: (_, seq) => {
      for (const item of seq.items) addLonePlain(item);
    },
    Map: (_, map) => {
      for (const pair of map.items) add(map.flow ? gluedFlowKey(pair, text) : gluedDash(pair, text));
    },
  });
  return faults;
}

/** `{ name:battery }`: a key without a value. */
function gluedFlowKey(pair: Pair, text: string): Fault | null {
  const start = plainStart(pair);
  return colonOf(pair) !== null || start === null ? null : missingColonSpace(text, start);
}

/** `-name: battery`: a key that starts with a dash. */
function gluedDash(pair: Pair, text: string): Fault | null {
  const start = plainStart(pair);
  return start !== null && /^-[A-Za-z]/.test(keyName(pair) ?? '') ? missingDashSpace(text, start) : null;
}

const plainStart = (pair: Pair): number | null =>
  isScalar(pair.key) && pair.key.type === 'PLAIN' && pair.key.range ? pair.key.range[0] : null;
