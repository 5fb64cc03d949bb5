import { expect } from 'vitest';
import { type Cuttable, emptyImmersion, type Immersion } from '../../../server/core/geometry/cut/immersion.ts';
import type { Vec3 } from '../../../server/core/geometry/form/vector.ts';

/** Double precision after a few dozen operations: what a closed form has to meet. */
export const ROUNDING = 1e-12;

/** Fails unless `actual` lies within `tolerance` times the size of the thing measured (by default the expected value). */
export function expectClose(actual: number, expected: number, tolerance: number, size = Math.abs(expected)): void {
  const off = Math.abs(actual - expected);
  expect(off <= tolerance * size, `${actual} is ${off} off ${expected}; allowed ${tolerance * size}`).toBe(true);
}

export function cutBelow(body: Cuttable, n: Vec3, h: number): Immersion {
  const sums = emptyImmersion();
  body.cut(n, h, sums);
  return sums;
}

/** Centroid of the wet part. */
export const wetCentroid = (sums: Immersion): Vec3 => [
  sums.mx / sums.volume,
  sums.my / sums.volume,
  sums.mz / sums.volume,
];

export const centroidOf = (body: Cuttable): Vec3 => [
  body.moment[0] / body.volume,
  body.moment[1] / body.volume,
  body.moment[2] / body.volume,
];
