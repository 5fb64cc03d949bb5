import type { BoatSource } from '../boat/source.ts';
import { pacer, type Steps } from '../steps/steps.ts';
import type { Input } from './input.ts';
import { joinedRow, rowByBodies } from './pushRow.ts';
import { knownVariation, type VariationCache, variationSteps } from './variations.ts';

/** Inputs that are varied in one step, and how many that were varied before take as long as one. */
const STEP = 50;
const KNOWN = 50;

/** What inputs of a boat push, row by row; remembered with the list of them. */
export function* rowSteps(source: BoatSource, inputs: readonly Input[], cache: VariationCache): Steps<Float64Array> {
  const known = cache.rows.get(inputs);
  if (known && isSameBoat(known.source, source)) return known.rows;
  const rows = yield* madeSteps(source, inputs, cache);
  cache.rows.set(inputs, { source, rows });
  return rows;
}

/** The same, not remembered. */
export function* madeSteps(source: BoatSource, inputs: readonly Input[], cache: VariationCache): Steps<Float64Array> {
  const isDue = pacer(STEP);
  const blocks: Float64Array[] = [];
  for (const input of inputs) {
    const { target } = input;
    if (target.on === 'water') {
      // Other water is felt by all that lies in it.
      blocks.push(rowByBodies());
      continue;
    }
    const isKnown = target.at.every(at => knownVariation(source, input, at, cache));
    const rows: Float64Array[] = [];
    for (const at of target.at) rows.push((yield* variationSteps(source, input, at, cache)).row);
    blocks.push(joinedRow(rows));
    if (isDue(isKnown ? 1 / KNOWN : 1)) yield;
  }
  return endToEnd(blocks);
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
