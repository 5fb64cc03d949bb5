import type { BoatSource } from '../boat/source.ts';
import type { Input } from './input.ts';
import { joinedRow, rowByBodies } from './pushRow.ts';
import { type VariationCache, variationOf } from './variations.ts';

/** What inputs of a boat push, row by row; remembered with the list of them. */
export function rowsOf(source: BoatSource, inputs: readonly Input[], cache: VariationCache): Float64Array {
  const known = cache.rows.get(inputs);
  if (known && isSameBoat(known.source, source)) return known.rows;
  const rows = makeRows(source, inputs, cache);
  cache.rows.set(inputs, { source, rows });
  return rows;
}

export const makeRows = (source: BoatSource, inputs: readonly Input[], cache: VariationCache): Float64Array =>
  endToEnd(inputs.map(input => rowOf(source, input, cache)));

function rowOf(source: BoatSource, input: Input, cache: VariationCache): Float64Array {
  const { target } = input;
  // Other water is felt by all that lies in it.
  if (target.on === 'water') return rowByBodies();
  return joinedRow(target.at.map(at => variationOf(source, input, at, cache).row));
}

/** Tanks have no say: how much is in them is no row's. */
const isSameBoat = (one: BoatSource, other: BoatSource): boolean =>
  one === other ||
  (['shells', 'compartments', 'payload'] as const).every(list => {
    const [entries, others] = [one[list], other[list]];
    return (
      entries === others ||
      (entries.length === others.length && entries.every(({ entry }, i) => entry === others[i]!.entry))
    );
  });

/** Blocks of rows one after the other. */
export function endToEnd(blocks: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(blocks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const block of blocks) {
    all.set(block, at);
    at += block.length;
  }
  return all;
}
