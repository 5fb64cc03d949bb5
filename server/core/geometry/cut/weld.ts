import { inStretches, type Steps } from '../../steps/steps.ts';
import type { Polyhedron } from '../form/form.ts';

export interface Welded {
  /** Every corner once; triangles with two corners in one spot are gone. */
  readonly form: Polyhedron;
  /** Corners that lay apart, by less than the tolerance, and were joined. */
  readonly joined: number;
  /** Triangles that had two corners in one spot. */
  readonly degenerate: number;
}

/** Corners that are joined in one step. */
const STEP = 20_000;

/**
 * Joins corners that lie within `tolerance` (m, or whatever the mesh is in) of each other: the first one stands for all.
 * STL writes each triangle with corners of its own, so this is what makes a surface of them.
 */
export function* weldSteps({ vertices, faces }: Polyhedron, tolerance: number): Steps<Welded> {
  const count = vertices.length / 3;
  const grid = pointGrid(count, 4 * tolerance);
  const kept = new Float64Array(3 * count);
  let points = 0;
  const numbers = new Uint32Array(count);
  if (count > STEP) yield;
  let joined = 0;
  const join = (i: number): void => {
    const [x, y, z] = [vertices[3 * i]!, vertices[3 * i + 1]!, vertices[3 * i + 2]!];
    const near = grid.find(x, y, z, tolerance, kept);
    if (near < 0) {
      numbers[i] = points;
      grid.add(x, y, z, points);
      kept[3 * points] = x;
      kept[3 * points + 1] = y;
      kept[3 * points + 2] = z;
      points += 1;
      return;
    }
    numbers[i] = near;
    if (kept[3 * near] !== x || kept[3 * near + 1] !== y || kept[3 * near + 2] !== z) joined++;
  };
  yield* inStretches(count, STEP, (from, to) => {
    for (let i = from; i < to; i++) join(i);
  });
  if (count > STEP) yield;
  const whole = new Uint32Array(faces.length);
  let corners = 0;
  for (let i = 0; i < faces.length; i += 3) {
    const [a, b, c] = [numbers[faces[i]!]!, numbers[faces[i + 1]!]!, numbers[faces[i + 2]!]!];
    if (a === b || b === c || c === a) continue;
    whole[corners] = a;
    whole[corners + 1] = b;
    whole[corners + 2] = c;
    corners += 3;
  }
  return {
    form: { shape: 'polyhedron', vertices: kept.slice(0, 3 * points), faces: whole.slice(0, corners) },
    joined,
    degenerate: (faces.length - corners) / 3,
  };
}

interface PointGrid {
  add(x: number, y: number, z: number, point: number): void;
  /** A point within reach, or -1. */
  find(x: number, y: number, z: number, reach: number, points: Float64Array): number;
}

/** Points by the cubic cell that they lie in, in chains by hash (Teschner et al. 2003, from memory); strangers cost only time. */
function pointGrid(count: number, cell: number): PointGrid {
  const size = 1 << Math.ceil(Math.log2(2 * count + 2));
  const heads = new Int32Array(size).fill(-1);
  const next = new Int32Array(count);
  const cellOf = (value: number): number => Math.floor(value / cell);
  const hash = (i: number, j: number, k: number): number =>
    (Math.imul(i | 0, 73856093) ^ Math.imul(j | 0, 19349663) ^ Math.imul(k | 0, 83492791)) & (size - 1);
  return {
    add(x, y, z, point) {
      const at = hash(cellOf(x), cellOf(y), cellOf(z));
      next[point] = heads[at]!;
      heads[at] = point;
    },
    find(x, y, z, reach, points) {
      const [i1, j1, k1] = [cellOf(x + reach), cellOf(y + reach), cellOf(z + reach)];
      for (let i = cellOf(x - reach); i <= i1; i++) {
        for (let j = cellOf(y - reach); j <= j1; j++) {
          for (let k = cellOf(z - reach); k <= k1; k++) {
            // Ends: each point is once in a list.
            for (let point = heads[hash(i, j, k)]!; point >= 0; point = next[point]!) {
              const dx = points[3 * point]! - x;
              const dy = points[3 * point + 1]! - y;
              const dz = points[3 * point + 2]! - z;
              if (dx * dx + dy * dy + dz * dz <= reach * reach) return point;
            }
          }
        }
      }
      return -1;
    },
  };
}
