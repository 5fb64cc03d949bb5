import { isScalar, type Node, type Pair, visit } from 'yaml';
import { missingColonSpace, missingDashSpace } from './explain.ts';
import type { Fault } from './faults.ts';
import { lineStart } from './lines.ts';
import { colonOf, keyName, spanOf } from './tree.ts';

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
      for (const pair of map.items) {
        if (map.flow) add(gluedFlowKey(pair, text));
        else {
          add(gluedDash(pair, text));
          if (isBelowKey(pair, text)) addLonePlain(pair.value);
        }
      }
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

/** `hull:` and below it `length:900 mm`. */
function isBelowKey(pair: Pair, text: string): boolean {
  const key = spanOf(pair.key);
  const value = spanOf(pair.value);
  return key !== null && value !== null && lineStart(text, value[0]) > key[0];
}

const plainStart = (pair: Pair): number | null =>
  isScalar(pair.key) && pair.key.type === 'PLAIN' && pair.key.range ? pair.key.range[0] : null;
