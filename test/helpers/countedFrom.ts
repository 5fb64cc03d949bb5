import { isMap, isPair, isScalar, isSeq, type Node, type Pair, parseDocument } from 'yaml';
import { isRange } from '../../schema/forms.ts';
import { type Counted, countedAt, type FileOrigin } from '../../schema/places.ts';
import { readExtent } from '../../schema/quantity.ts';
import type { FileUnits } from '../../schema/units.ts';

/** A boat file by the bow tip and the baseline, rewritten so that its places count from elsewhere; nothing else changes. */
export function countedFrom(text: string, units: FileUnits, origin: FileOrigin): string {
  const edits: { readonly at: number; readonly end: number; readonly text: string }[] = [];
  const rewrite = (node: unknown, counted: Counted): void => {
    if (!isScalar(node) || !node.range) return;
    const read = readExtent(node.value, 'length', units);
    if (!read.ok) throw new Error(`no place: ${String(node.value)}`);
    const { value } = read;
    const mm = (place: number): number => Number((countedAt(place, counted, { origin }) * 1000).toFixed(7));
    const written = isRange(value)
      ? [mm(value.from), mm(value.to)].sort((a, b) => a - b).join(' to ')
      : mm(value.value);
    const sigma = value.sigma === null ? '' : ` ± ${Number((value.sigma * 1000).toFixed(9))} mm`;
    edits.push({ at: node.range[0], end: node.range[1], text: `${written} mm${sigma}` });
  };
  walk(parseDocument(text).contents, '', rewrite);
  const said = ['', `  origin: { stations: ${origin.stations}, heights: ${origin.heights} }`, ''].join('\n');
  const [first] = /^hull:.*\n/m.exec(text)!;
  edits.push({ at: text.indexOf(first) + first.length - 1, end: text.indexOf(first) + first.length, text: said });
  return edits
    .sort((a, b) => b.at - a.at)
    .reduce((now, { at, end, text: by }) => now.slice(0, at) + by + now.slice(end), text);
}

type Rewrite = (node: unknown, counted: Counted) => void;

function walk(node: Node | Pair | null | undefined, under: string, rewrite: Rewrite): void {
  if (isMap(node)) for (const pair of node.items) walk(pair, under, rewrite);
  else if (isSeq(node)) for (const item of node.items) walk(item as Node, under, rewrite);
  else if (isPair(node)) {
    const key = String(isScalar(node.key) ? node.key.value : node.key);
    const items = isSeq(node.value) ? (node.value.items as Node[]) : [];
    const inPoint = (item: Node, i: number): unknown => isSeq(item) && item.items[i];
    if (key === 'profile') for (const item of items) rewrite(inPoint(item, 0), 'station');
    else if (key === 'outline') for (const item of items) rewrite(inPoint(item, 1), 'height');
    else if (key === 'at') [rewrite(items[0], 'station'), rewrite(items[2], 'height')];
    else if (key === 'station') rewrite(node.value, 'station');
    else if (key === 'height' && under === 'freeboard') return;
    else if (['height', 'keel', 'deck'].includes(key)) rewrite(node.value, 'height');
    else if (key === 'balance' && isScalar(node.value)) rewrite(node.value, 'station');
    else walk(node.value as Node, key, rewrite);
  }
}
