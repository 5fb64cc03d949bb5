import type { Box } from '../geometry/cut/immersion.ts';
import type { MassAndMoment } from './exchange.ts';

/*
 * What an input pushes, as a row of numbers: of a thousand inputs they stand in one array, which is gone through at every
 * keystroke.
 */

/** Half the difference between one uncertainty more and one less: mass, kg, and its moment, kg·m. */
export const WEIGHT = 0;
/** Likewise of all that it displaces: volume, m3, and its moment, m4. */
export const DISPLACED = 4;
/** The box round all that displaces before and after: its middle and half its sizes, m. */
const MIDDLE = 8;
const HALF = 11;
const KIND = 14;
export const WIDTH = 15;

/** It weighs something else, and nothing besides. */
const BARE_WEIGHT = 0;
/** What it does follows from the row, unless the surface goes through its box. */
const WHOLE = 1;
/** It hangs on how the boat lies, whatever the surface does. */
const BY_BODIES = 2;

export const isBare = (rows: Float64Array, at: number): boolean => rows[at + KIND] === BARE_WEIGHT;
export const isByBodies = (rows: Float64Array, at: number): boolean => rows[at + KIND] === BY_BODIES;

export function bareRow({ mass, moment }: MassAndMoment): Float64Array {
  const row = new Float64Array(WIDTH);
  row.set([mass, ...moment], WEIGHT);
  row[KIND] = BARE_WEIGHT;
  return row;
}

export function wholeRow(weight: MassAndMoment, displaced: MassAndMoment, { middle, half }: Box): Float64Array {
  const row = bareRow(weight);
  row.set([displaced.mass, ...displaced.moment, ...middle, ...half], DISPLACED);
  row[KIND] = WHOLE;
  return row;
}

export const rowByBodies = (): Float64Array => new Float64Array(WIDTH).fill(BY_BODIES, KIND);

/** Several entries that one input touches as one row: the sums, and the box round all boxes. */
export function joinedRow(rows: readonly Float64Array[]): Float64Array {
  if (rows.length === 1) return rows[0]!;
  const joined = new Float64Array(WIDTH);
  let hasBox = false;
  for (const row of rows) {
    for (let k = WEIGHT; k < MIDDLE; k++) joined[k]! += row[k]!;
    if (row[KIND] === BARE_WEIGHT) continue;
    for (let axis = 0; axis < 3; axis++) widen(joined, row, axis, hasBox);
    joined[KIND] = Math.max(joined[KIND]!, row[KIND]!);
    hasBox = true;
  }
  return joined;
}

function widen(joined: Float64Array, row: Float64Array, axis: number, hasBox: boolean): void {
  const [middle, half] = [row[MIDDLE + axis]!, row[HALF + axis]!];
  const [was, reach] = hasBox ? [joined[MIDDLE + axis]!, joined[HALF + axis]!] : [middle, half];
  const low = Math.min(middle - half, was - reach);
  const high = Math.max(middle + half, was + reach);
  joined[MIDDLE + axis] = (low + high) / 2;
  joined[HALF + axis] = (high - low) / 2;
}

/** So that rounding leaves no corner outside its box. */
const MARGIN = 1 + 1e-9;

/** Where the box of the row at a place lies to the surface `up·p = level`: 1 above it, -1 under it, 0 across. */
export function sideOf(rows: Float64Array, at: number, up: readonly number[], level: number): -1 | 0 | 1 {
  let height = -level;
  let reach = 0;
  for (let axis = 0; axis < 3; axis++) {
    height += up[axis]! * rows[at + MIDDLE + axis]!;
    reach += Math.abs(up[axis]!) * rows[at + HALF + axis]!;
  }
  reach *= MARGIN;
  return height >= reach ? 1 : height <= -reach ? -1 : 0;
}
