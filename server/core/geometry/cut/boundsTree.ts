import { dot, type Vec3 } from '../form/vector.ts';
import type { Box } from './immersion.ts';

/**
 * Triangles sorted into a tree of boxes, so that a plane touches only the ones near its cut: a box wholly below is
 * answered by stored sums, one wholly above costs a comparison. Nodes stand in depth-first order.
 */
export interface BoundsTree {
  /** Middle of the whole body's box; all the rest is measured from it, which keeps sums exact far from the origin. */
  readonly centre: Vec3;
  /** Nine numbers a triangle: its corners, from `centre`. Each node's triangles stand side by side. */
  readonly corners: Float64Array;
  /** Six numbers a node: middle and half-size of its box. */
  readonly boxes: Float64Array;
  readonly firstFace: Uint32Array;
  readonly endFace: Uint32Array;
  /** The node to go on with when a node's descendants need no look. */
  readonly next: Uint32Array;
  readonly split: Split;
}

/** What the last plane made of the nodes; written over by the next, so that a cut allocates nothing. */
interface Split {
  /** Nodes of which all triangles lie below the plane. */
  readonly below: Uint32Array;
  belowCount: number;
  /** Leaves of which some triangles may cross it. */
  readonly near: Uint32Array;
  nearCount: number;
}

/**
 * Sums for each node: `addFace` adds a triangle's `stride` numbers at `at` in `sums`. Parents gather from their
 * children, so each triangle is visited once.
 */
export function nodeSums(
  tree: BoundsTree,
  stride: number,
  addFace: (face: number, sums: Float64Array, at: number) => void,
): Float64Array {
  const count = tree.next.length;
  const sums = new Float64Array(stride * count);
  for (let node = count - 1; node >= 0; node--) {
    const end = tree.next[node]!;
    if (end === node + 1) {
      for (let face = tree.firstFace[node]!; face < tree.endFace[node]!; face++) addFace(face, sums, stride * node);
      continue;
    }
    // Ends: the next node always has a greater number.
    for (let child = node + 1; child < end; child = tree.next[child]!) {
      for (let k = 0; k < stride; k++) sums[stride * node + k]! += sums[stride * child + k]!;
    }
  }
  return sums;
}

/** Sorts the nodes by the plane n·p = h, `h` measured from the tree's centre, into `tree.split`. */
export function splitBelow({ boxes, next, split }: BoundsTree, n: Vec3, h: number): void {
  const [nx, ny, nz] = n;
  const [ax, ay, az] = [Math.abs(nx), Math.abs(ny), Math.abs(nz)];
  const { below, near } = split;
  let belowCount = 0;
  let nearCount = 0;
  let node = 0;
  // Ends: as above.
  while (node < next.length) {
    const at = 6 * node;
    const height = nx * boxes[at]! + ny * boxes[at + 1]! + nz * boxes[at + 2]! - h;
    const reach = ax * boxes[at + 3]! + ay * boxes[at + 4]! + az * boxes[at + 5]!;
    const after = next[node]!;
    if (height > reach) node = after;
    else if (height < -reach) {
      below[belowCount++] = node;
      node = after;
    } else {
      if (after === node + 1) near[nearCount++] = node;
      node++;
    }
  }
  split.belowCount = belowCount;
  split.nearCount = nearCount;
}

/** The stored sums, so many a node as `total` has, of all nodes that the last split found below; `total` is written over. */
export function sumBelow({ split }: BoundsTree, stored: Float64Array, total: Float64Array): void {
  const stride = total.length;
  total.fill(0);
  for (let i = 0; i < split.belowCount; i++) {
    const at = stride * split.below[i]!;
    for (let k = 0; k < stride; k++) total[k]! += stored[at + k]!;
  }
}

/** The box round all triangles. */
export function treeBox({ centre, boxes }: BoundsTree): Box {
  return { middle: centre, half: [boxes[3] ?? 0, boxes[4] ?? 0, boxes[5] ?? 0] };
}

/** Least and greatest of `n·p` over the triangles, m, exact. The last answer is kept: a solver asks many levels of one n. */
export function treeExtent(tree: BoundsTree): (n: Vec3) => readonly [number, number] {
  let known: { readonly n: Vec3; readonly extent: readonly [number, number] } | null = null;
  return n => {
    if (known !== null && known.n[0] === n[0] && known.n[1] === n[1] && known.n[2] === n[2]) return known.extent;
    const middleHeight = dot(n, tree.centre);
    const extent = [middleHeight - highest(tree, [-n[0], -n[1], -n[2]]), middleHeight + highest(tree, n)] as const;
    known = { n, extent };
    return extent;
  };
}

/** Greatest of `n·p`, from the tree's centre; boxes that cannot beat the best so far are skipped. */
function highest(tree: BoundsTree, n: Vec3): number {
  const { boxes, corners, next } = tree;
  const [nx, ny, nz] = n;
  const [ax, ay, az] = [Math.abs(nx), Math.abs(ny), Math.abs(nz)];
  const top = (node: number): number => {
    const at = 6 * node;
    const height = nx * boxes[at]! + ny * boxes[at + 1]! + nz * boxes[at + 2]!;
    return height + ax * boxes[at + 3]! + ay * boxes[at + 4]! + az * boxes[at + 5]!;
  };
  let best = -Infinity;
  const climb = (node: number): void => {
    if (top(node) <= best) return;
    if (next[node] === node + 1) {
      for (let k = 9 * tree.firstFace[node]!; k < 9 * tree.endFace[node]!; k += 3) {
        const height = nx * corners[k]! + ny * corners[k + 1]! + nz * corners[k + 2]!;
        if (height > best) best = height;
      }
      return;
    }
    const one = node + 1;
    const other = next[one]!;
    const oneFirst = top(one) >= top(other);
    climb(oneFirst ? one : other);
    climb(oneFirst ? other : one);
  };
  if (next.length > 0) climb(0);
  return best;
}
