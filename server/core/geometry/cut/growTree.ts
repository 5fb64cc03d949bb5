import { finish, inStretches, type Steps } from '../../steps/steps.ts';
import type { Polyhedron } from '../form/form.ts';
import type { Vec3 } from '../form/vector.ts';
import type { BoundsTree } from './boundsTree.ts';

/** Triangles a leaf holds at most: fewer make more boxes to test than triangles saved. A block is one leaf. */
const LEAF = 20;

/** Room to sort triangles in: their corners and centroids, and the order that they come to stand in. */
const sortingRoom = (count: number) => ({
  loose: new Float64Array(9 * count),
  centroids: new Float64Array(3 * count),
  order: new Uint32Array(count),
});

/** Blocks and the like are sorted in the same room one after the other: there are thousands of them. */
const SMALL = 64;
const smallRoom = sortingRoom(SMALL);

export const boundsTree = (form: Polyhedron): BoundsTree => finish(boundsTreeSteps(form));

/** Triangles that are sorted in one step: below it a part of the tree is grown at once. */
const STEP = 4000;

/** The same in steps. */
export function* boundsTreeSteps(form: Polyhedron): Steps<BoundsTree> {
  const { vertices, faces } = form;
  const count = faces.length / 3;
  const isLarge = count > STEP;
  const centre = middleOf(form);
  if (isLarge) yield;

  const { loose, centroids, order } = count > SMALL ? sortingRoom(count) : smallRoom;
  const place = (from: number, to: number): void => {
    for (let i = 3 * from; i < 3 * to; i++) {
      for (let axis = 0; axis < 3; axis++) loose[3 * i + axis] = vertices[3 * faces[i]! + axis]! - centre[axis]!;
    }
    for (let face = from; face < to; face++) {
      order[face] = face;
      const at = 9 * face;
      for (let axis = 0; axis < 3; axis++)
        centroids[3 * face + axis] = loose[at + axis]! / 3 + loose[at + 3 + axis]! / 3 + loose[at + 6 + axis]! / 3;
    }
  };
  yield* inStretches(count, PLACED, place);

  const nodes = emptyNodes();
  const grow = (first: number, end: number): Bounds => {
    const node = addNode(nodes, first, end);
    const bounds = emptyBounds();
    if (end - first > LEAF) {
      const cut = divide(centroids, order, first, end);
      widenBy(bounds, grow(first, cut));
      widenBy(bounds, grow(cut, end));
    } else for (let i = first; i < end; i++) for (let k = 0; k < 9; k += 3) widen(bounds, loose, 9 * order[i]! + k);
    return closeNode(nodes, node, bounds);
  };
  function* growLarge(first: number, end: number): Steps<Bounds> {
    if (end - first <= STEP) {
      yield;
      return grow(first, end);
    }
    const node = addNode(nodes, first, end);
    const bounds = emptyBounds();
    yield;
    const cut = divide(centroids, order, first, end);
    widenBy(bounds, yield* growLarge(first, cut));
    widenBy(bounds, yield* growLarge(cut, end));
    return closeNode(nodes, node, bounds);
  }
  if (isLarge) yield* growLarge(0, count);
  else if (count > 0) grow(0, count);

  const corners = new Float64Array(9 * count);
  yield* inStretches(count, PLACED, (from, to) => {
    for (let i = from; i < to; i++) for (let k = 0; k < 9; k++) corners[9 * i + k] = loose[9 * order[i]! + k]!;
  });
  const { boxes, firstFace, endFace, next } = nodes;
  return {
    centre,
    corners,
    boxes: Float64Array.from(boxes),
    firstFace: Uint32Array.from(firstFace),
    endFace: Uint32Array.from(endFace),
    next: Uint32Array.from(next),
    split: {
      below: new Uint32Array(next.length),
      belowCount: 0,
      near: new Uint32Array(next.length),
      nearCount: 0,
    },
  };
}

/** Triangles that are copied to their places in one step. */
const PLACED = 40_000;

/** Middle of the box round all triangles. */
function middleOf({ vertices, faces }: Polyhedron): Vec3 {
  if (faces.length === 0) return [0, 0, 0];
  const whole = emptyBounds();
  for (const vertex of faces) widen(whole, vertices, 3 * vertex);
  return [middle(whole, 0), middle(whole, 1), middle(whole, 2)];
}

/** Nodes as they are added, one after the other. */
interface Nodes {
  readonly boxes: number[];
  readonly firstFace: number[];
  readonly endFace: number[];
  readonly next: number[];
}

const emptyNodes = (): Nodes => ({ boxes: [], firstFace: [], endFace: [], next: [] });

/** Its number; the box and where to go on are told when all below it is there. */
function addNode({ boxes, firstFace, endFace, next }: Nodes, first: number, end: number): number {
  boxes.push(0, 0, 0, 0, 0, 0);
  firstFace.push(first);
  endFace.push(end);
  return next.push(0) - 1;
}

function closeNode({ boxes, next }: Nodes, node: number, bounds: Bounds): Bounds {
  for (let axis = 0; axis < 3; axis++) {
    boxes[6 * node + axis] = middle(bounds, axis);
    boxes[6 * node + 3 + axis] = bounds[axis + 3]! - middle(bounds, axis);
  }
  next[node] = next.length;
  return bounds;
}

/** Sorts a stretch of `order` about the middle of its triangles' centroids on the longest axis; where it parts. */
function divide(centroids: Float64Array, order: Uint32Array, first: number, end: number): number {
  // All three at once, each in numbers of its own: half of the time goes into looking the triangles up.
  let leastX = Infinity;
  let leastY = Infinity;
  let leastZ = Infinity;
  let mostX = -Infinity;
  let mostY = -Infinity;
  let mostZ = -Infinity;
  for (let i = first; i < end; i++) {
    const at = 3 * order[i]!;
    const x = centroids[at]!;
    const y = centroids[at + 1]!;
    const z = centroids[at + 2]!;
    if (x < leastX) leastX = x;
    if (x > mostX) mostX = x;
    if (y < leastY) leastY = y;
    if (y > mostY) mostY = y;
    if (z < leastZ) leastZ = z;
    if (z > mostZ) mostZ = z;
  }
  let longest = 0;
  let length = mostX - leastX;
  let pivot = (leastX + mostX) / 2;
  if (mostY - leastY > length) {
    longest = 1;
    length = mostY - leastY;
    pivot = (leastY + mostY) / 2;
  }
  if (mostZ - leastZ > length) {
    longest = 2;
    pivot = (leastZ + mostZ) / 2;
  }
  let low = first;
  let high = end;
  // Ends: each round brings the two a triangle closer.
  while (low < high) {
    const face = order[low]!;
    if (centroids[3 * face + longest]! < pivot) {
      low++;
      continue;
    }
    high--;
    order[low] = order[high]!;
    order[high] = face;
  }
  // Very uneven parts (or none, with all centroids alike) would make the tree deep: halve by count instead.
  const share = (low - first) / (end - first);
  return share > 0.01 && share < 0.99 ? low : (first + end) >> 1;
}

/** Least x, y, z, then greatest. */
type Bounds = Float64Array;
const emptyBounds = (): Bounds => Float64Array.of(Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity);
const middle = (bounds: Bounds, axis: number): number => (bounds[axis]! + bounds[axis + 3]!) / 2;

function widenBy(bounds: Bounds, part: Bounds): void {
  widen(bounds, part, 0);
  widen(bounds, part, 3);
}

function widen(bounds: Bounds, points: Float64Array, at: number): void {
  for (let axis = 0; axis < 3; axis++) {
    const value = points[at + axis]!;
    if (value < bounds[axis]!) bounds[axis] = value;
    if (value > bounds[axis + 3]!) bounds[axis + 3] = value;
  }
}
