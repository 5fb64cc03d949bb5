import { finish, inStretches, type Steps } from '../../steps/steps.ts';
import type { BoundsTree } from './boundsTree.ts';
import type { PlaneAxes } from './planeFrame.ts';

/**
 * The triangles near a plane, sorted for sums over their wet part. Written for speed: a plane crosses thousands of them,
 * and at a crossing the processor guesses every other branch wrong; so their sides are looked up and not branched on.
 */
export interface NearFaces {
  /** Three numbers a corner, from the tree's centre: the corners of each leaf, each once, side by side. */
  readonly points: Float64Array;
  /** By node: where its corners begin in `points`; the next node's is the end. */
  readonly begin: Uint32Array;
  /** Three numbers a triangle: which of its leaf's corners it has. */
  readonly ofFace: Uint8Array;
  readonly sorted: SortedFaces;
}

/**
 * What the last plane made of them; written over by the next, so that a cut allocates nothing. Each triangle takes two
 * numbers: which it is, and eight times where its leaf's corners begin here plus its side (see `TIP`).
 */
export interface SortedFaces {
  /** Of corners near the plane: over it, and along it from the foot of the tree's centre on it, m. */
  readonly heights: Float64Array;
  readonly alongX: Float64Array;
  readonly alongY: Float64Array;
  /** Triangles wet as a whole, or but for a tip. */
  readonly whole: Uint32Array;
  wholeCount: number;
  /** Triangles that the plane crosses. */
  readonly crossed: Uint32Array;
  crossedCount: number;
}

/** Nodes of which the corners are gathered in one step. */
const STEP = 4000;

export const nearFaces = (tree: BoundsTree): NearFaces => finish(nearFacesSteps(tree));

/** The same in steps. */
export function* nearFacesSteps({ corners, firstFace, endFace, next }: BoundsTree): Steps<NearFaces> {
  const points: number[] = [];
  const begin = new Uint32Array(next.length + 1);
  const count = corners.length / 9;
  const ofFace = new Uint8Array(3 * count);
  /** The number in its leaf, which begins at `start`, of the corner that stands at `at` in `corners`. */
  const numbered = (at: number, start: number): number => {
    const [x, y, z] = [corners[at]!, corners[at + 1]!, corners[at + 2]!];
    let k = start;
    // Ends: for `k` only grows.
    while (k < points.length && (points[k] !== x || points[k + 1] !== y || points[k + 2] !== z)) k += 3;
    if (k === points.length) points.push(x, y, z);
    return (k - start) / 3;
  };
  yield* inStretches(next.length, STEP, (from, to) => {
    for (let node = from; node < to; node++) {
      const start = points.length;
      begin[node] = start;
      if (next[node] !== node + 1) continue;
      for (let i = 3 * firstFace[node]!; i < 3 * endFace[node]!; i++) ofFace[i] = numbered(3 * i, start);
    }
  });
  begin[next.length] = points.length;
  return { points: Float64Array.from(points), begin, ofFace, sorted: sortingRoom(points.length / 3, count) };
}

/** Room to sort so many triangles in. */
export const sortingRoom = (corners: number, faces: number): SortedFaces => ({
  heights: new Float64Array(corners),
  alongX: new Float64Array(corners),
  alongY: new Float64Array(corners),
  // One place more, for each is written before it is known whether it counts.
  whole: new Uint32Array(2 * faces + 2),
  wholeCount: 0,
  crossed: new Uint32Array(2 * faces + 2),
  crossedCount: 0,
});

/**
 * By a triangle's side, which is 1, 2 and 4 for its wet corners added: 1 where the tip that the plane cuts off is wet, -1
 * where it is dry; and its corners turned so that the one alone on its side, the tip's, is first.
 */
export const TIP = Int8Array.of(0, 1, 1, -1, 1, -1, -1, 0);
export const ALONE = Uint8Array.of(0, 0, 1, 2, 2, 1, 0, 0);
export const SECOND = Uint8Array.of(1, 1, 2, 0, 0, 2, 1, 1);
export const THIRD = Uint8Array.of(2, 2, 0, 1, 1, 0, 2, 2);
export const IS_CROSSED = Uint8Array.of(0, 1, 1, 1, 1, 1, 1, 0);
export const IS_WHOLE = Uint8Array.of(0, 0, 0, 1, 0, 1, 1, 1);

/**
 * Looks closer at the leaves that `splitBelow` left near the plane: those wholly under it join the nodes below, those
 * wholly over it drop out, and the triangles of the rest are sorted. A corner exactly on the plane counts as dry.
 */
export function sortNear(
  { split, firstFace, endFace }: BoundsTree,
  near: NearFaces,
  { x, y, n, level }: PlaneAxes,
): void {
  const { points, begin, ofFace, sorted } = near;
  const { heights, alongX, alongY, whole, crossed } = sorted;
  const [x0, x1, x2] = x;
  const [y0, y1, y2] = y;
  const [n0, n1, n2] = n;
  let first = 0;
  let wholeCount = 0;
  let crossedCount = 0;
  for (let i = 0; i < split.nearCount; i++) {
    const node = split.near[i]!;
    const start = begin[node]!;
    const end = begin[node + 1]!;
    // A comparison made a number is not branched on; one of two numbers chosen by it would be.
    let wetCount = 0;
    for (let k = start, corner = first; k < end; k += 3, corner++) {
      const height = n0 * points[k]! + n1 * points[k + 1]! + n2 * points[k + 2]! - level;
      heights[corner] = height;
      wetCount += Number(height < 0);
    }
    if (wetCount === 0) continue;
    if (3 * wetCount === end - start) {
      split.below[split.belowCount++] = node;
      continue;
    }
    for (let k = start, corner = first; k < end; k += 3, corner++) {
      alongX[corner] = x0 * points[k]! + x1 * points[k + 1]! + x2 * points[k + 2]!;
      alongY[corner] = y0 * points[k]! + y1 * points[k + 1]! + y2 * points[k + 2]!;
    }
    const endOfFaces = endFace[node]!;
    for (let face = firstFace[node]!; face < endOfFaces; face++) {
      const k = 3 * face;
      const side =
        Number(heights[first + ofFace[k]!]! < 0) +
        2 * Number(heights[first + ofFace[k + 1]!]! < 0) +
        4 * Number(heights[first + ofFace[k + 2]!]! < 0);
      const cornersAndSide = 8 * first + side;
      whole[2 * wholeCount] = face;
      whole[2 * wholeCount + 1] = cornersAndSide;
      wholeCount += IS_WHOLE[side]!;
      crossed[2 * crossedCount] = face;
      crossed[2 * crossedCount + 1] = cornersAndSide;
      crossedCount += IS_CROSSED[side]!;
    }
    first += (end - start) / 3;
  }
  sorted.wholeCount = wholeCount;
  sorted.crossedCount = crossedCount;
}
