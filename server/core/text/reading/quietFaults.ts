import { isMap, isScalar, isSeq, type Node, type Pair, visit } from 'yaml';
import { gluedBracket, missingColonSpace, missingDashSpace } from './explain.ts';
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
        else if (isBelowKey(pair, text)) addLonePlain(pair.value);
      }
    },
  });
  return faults;
}

/** Among them the first that shapes what is around it: `-name: battery` and `water:{ kind: sea }`. */
export function gluedKey(root: unknown, text: string): Fault | null {
  let found: Fault | null = null;
  if (isMap(root) || isSeq(root))
    visit(root, {
      Map: (_, map) => {
        for (const pair of map.items) {
          const start = plainStart(pair);
          if (map.flow || start === null) continue;
          const name = keyName(pair) ?? '';
          found = /^-[A-Za-z]/.test(name) ? missingDashSpace(text, start) : gluedBracket(text, start);
          if (found) return visit.BREAK;
        }
        return undefined;
      },
    });
  return found;
}

/** `{ name:battery }`: a key without a value. */
function gluedFlowKey(pair: Pair, text: string): Fault | null {
  const start = plainStart(pair);
  return colonOf(pair) !== null || start === null ? null : missingColonSpace(text, start);
}

/** `hull:` and below it `length:900 mm`. */
function isBelowKey(pair: Pair, text: string): boolean {
  const key = spanOf(pair.key);
  const value = spanOf(pair.value);
  return key !== null && value !== null && lineStart(text, value[0]) > key[0];
}

const plainStart = (pair: Pair): number | null =>
  isScalar(pair.key) && pair.key.type === 'PLAIN' && pair.key.range ? pair.key.range[0] : null;
