import { endOfPair, type NodePair, type ScalarNode } from './nodes.ts';

/*
 * What nearly every entry of a boat file is: a key a line, each with a word or a figure behind it. Read without the parser,
 * which takes a hundred times as long; whatever is written in any other way is left to it.
 */

/** A key and a value of one line, in which nothing can be meant but themselves. */
const line = /( *)(- )?([A-Za-z][\w-]{0,60}): ([A-Za-z0-9-](?:[\w.,°±%/+()-]| (?! |\n|$))*)(?:\n|$)/y;

/** Empty lines at the end. */
const rest = /\n*$/y;

/** A figure with its unit, or several words: never a number to YAML. */
const words = /^[A-Za-z0-9].* /;
const word = /^[A-Za-z][\w.-]*$/;
/** YAML 1.2 core schema, 10.3.2 (seen): what is no plain word. */
export const otherThanText = /^(?:null|true|false)$/i;
const number = /^-?\d{1,15}(?:\.\d{1,15})?$/;

/**
 * The pair that the lines of a piece hold, as the parser would read it, its place that of the text; null where it takes the
 * parser to tell. An entry comes as a pair without a key, its dash for a colon.
 */
export function plainPair(text: string): NodePair | null {
  const pairs: NodePair[] = [];
  const names = new Set<string>();
  let dash: number | null = null;
  let column = 0;
  line.lastIndex = 0;
  // Ends: each match begins where the one before it ends, behind it.
  for (let at = 0; at < text.length; at = line.lastIndex) {
    line.lastIndex = at;
    const found = line.exec(text);
    if (!found) {
      rest.lastIndex = at;
      if (!rest.test(text)) return null;
      break;
    }
    const [, indent = '', bullet, name = '', said = ''] = found;
    const value = dataOf(said);
    const start = at + indent.length + (bullet?.length ?? 0);
    if (pairs.length === 0) {
      dash = bullet === undefined ? null : at + indent.length;
      column = start;
    } else if (bullet !== undefined || start - at !== column || dash === null) return null;
    if (value === undefined || otherThanText.test(name) || names.has(name)) return null;
    names.add(name);
    const colon = start + name.length;
    pairs.push({ key: plainScalar(start, name, name), value: plainScalar(colon + 2, said, value), colon });
  }
  const [first] = pairs;
  if (!first) return null;
  if (dash === null) return first;
  const [start, end] = [first.key!.start, endOfPair(pairs.at(-1)!)];
  const map = { kind: 'map', start, end, anchor: '', flow: false, isClosed: false, items: pairs } as const;
  return { key: null, value: map, colon: dash };
}

/** A word or a figure without quotes. */
export const plainScalar = (start: number, source: string, value: string | number): ScalarNode => ({
  kind: 'scalar',
  start,
  end: start + source.length,
  anchor: '',
  value,
  style: 'PLAIN',
  source,
});

function dataOf(said: string): string | number | undefined {
  if (words.test(said) || (word.test(said) && !otherThanText.test(said))) return said;
  return number.test(said) ? Number(said) : undefined;
}
