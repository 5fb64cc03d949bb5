import type { Steps } from '../../steps/steps.ts';
import type { BoundsTree } from '../cut/boundsTree.ts';
import { boundsTreeSteps } from '../cut/growTree.ts';
import type { Polyhedron } from '../form/form.ts';
import type { Vec3 } from '../form/vector.ts';
import { type Hit, hitsAft, type Looks } from './lineCast.ts';

export interface Crossings {
  /** Pairs of triangles that go through each other. */
  readonly pairs: number;
  /** The search was ended early: there may be more. */
  readonly isPartial: boolean;
  /** Where the first of them is; null without any. */
  readonly at: Vec3 | null;
}

/** Pairs enough to say that a mesh crosses itself, and work enough to say that it hardly does. */
const MOST_PAIRS = 1000;
const MOST_TESTS = 20_000_000;
/** Of it in one step. */
const TESTS_A_STEP = 50_000;

/**
 * Triangles of a surface that go through each other, found by walking its tree of bounds against itself. Neighbours,
 * which share a corner, do not count, nor do triangles that only touch: an edge must come out by more than `depth` on
 * both sides.
 */
export function* findCrossings(form: Polyhedron, depth: number): Steps<Crossings> {
  const tree = yield* boundsTreeSteps(form);
  const { corners, boxes, next } = tree;
  let pairs = 0;
  let tests = 0;
  let at: Vec3 | null = null;
  const areApart = (one: number, other: number): boolean => {
    for (let axis = 0; axis < 3; axis++) {
      const reach = boxes[6 * one + 3 + axis]! + boxes[6 * other + 3 + axis]!;
      if (Math.abs(boxes[6 * one + axis]! - boxes[6 * other + axis]!) > reach) return true;
    }
    return false;
  };
  const isDone = (): boolean => pairs >= MOST_PAIRS || tests >= MOST_TESTS;
  const tryFaces = (one: number, other: number): void => {
    tests++;
    if (facesApart(corners, 9 * one, 9 * other) || shareCorner(corners, 9 * one, 9 * other)) return;
    const place = crossingOf(corners, 9 * one, 9 * other, depth) ?? crossingOf(corners, 9 * other, 9 * one, depth);
    if (!place) return;
    pairs++;
    at ??= [place[0] + tree.centre[0], place[1] + tree.centre[1], place[2] + tree.centre[2]];
  };
  const isLeaf = (node: number): boolean => next[node] === node + 1;
  /** Those of two leaves, or of one, each pair once. */
  const tryLeaves = (one: number, other: number): void => {
    for (let i = tree.firstFace[one]!; i < tree.endFace[one]!; i++) {
      const from = one === other ? i + 1 : tree.firstFace[other]!;
      for (let j = from; j < tree.endFace[other]! && !isDone(); j++) tryFaces(i, j);
    }
  };
  /** Pairs of nodes still to be held against each other, the next one last; a node with itself is all that is in it. */
  const waiting: (readonly [number, number])[] = next.length > 0 ? [[0, 0]] : [];
  let pause = TESTS_A_STEP;
  yield;
  // Ends: a pair gives way to pairs of smaller nodes, and leaves to none.
  while (waiting.length > 0 && !isDone()) {
    if (tests >= pause) {
      pause = tests + TESTS_A_STEP;
      yield;
    }
    const [one, other] = waiting.pop()!;
    tests++;
    if (one !== other && areApart(one, other)) continue;
    if (isLeaf(one) && isLeaf(other)) {
      tryLeaves(one, other);
    } else if (one === other) {
      const [left, right] = childrenOf(tree, one);
      waiting.push([left, right], [right, right], [left, left]);
    } else {
      const [larger, smaller] = sizeOf(tree, one) >= sizeOf(tree, other) ? [one, other] : [other, one];
      const [left, right] = childrenOf(tree, larger);
      waiting.push([right, smaller], [left, smaller]);
    }
  }
  return { pairs, isPartial: isDone(), at };
}

const childrenOf = ({ next }: BoundsTree, node: number): readonly [number, number] => [node + 1, next[node + 1]!];

/** Nodes below, itself included: a leaf is the smallest. */
const sizeOf = ({ next }: BoundsTree, node: number): number => next[node]! - node;

function facesApart(corners: Float64Array, a: number, b: number): boolean {
  for (let axis = 0; axis < 3; axis++) {
    const [a0, a1, a2] = [corners[a + axis]!, corners[a + 3 + axis]!, corners[a + 6 + axis]!];
    const [b0, b1, b2] = [corners[b + axis]!, corners[b + 3 + axis]!, corners[b + 6 + axis]!];
    if (Math.max(a0, a1, a2) < Math.min(b0, b1, b2) || Math.max(b0, b1, b2) < Math.min(a0, a1, a2)) return true;
  }
  return false;
}

function shareCorner(corners: Float64Array, a: number, b: number): boolean {
  for (let i = a; i < a + 9; i += 3) {
    for (let j = b; j < b + 9; j += 3) {
      if (corners[i] === corners[j] && corners[i + 1] === corners[j + 1] && corners[i + 2] === corners[j + 2])
        return true;
    }
  }
  return false;
}

/** Where a side of triangle a goes through triangle b by more than `depth` at either end; null when none does. */
function crossingOf(corners: Float64Array, a: number, b: number, depth: number): Vec3 | null {
  const at = (k: number, axis: number): number => corners[k + axis]!;
  const [ox, oy, oz] = [at(b, 0), at(b, 1), at(b, 2)];
  const [ux, uy, uz] = [at(b + 3, 0) - ox, at(b + 3, 1) - oy, at(b + 3, 2) - oz];
  const [vx, vy, vz] = [at(b + 6, 0) - ox, at(b + 6, 1) - oy, at(b + 6, 2) - oz];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const square = nx * nx + ny * ny + nz * nz;
  const enough = depth * Math.sqrt(square);
  const height = (k: number): number => nx * (at(k, 0) - ox) + ny * (at(k, 1) - oy) + nz * (at(k, 2) - oz);
  const heights = [height(a), height(a + 3), height(a + 6)];
  for (let i = 0; i < 3; i++) {
    const [p, q] = [a + 3 * i, a + 3 * ((i + 1) % 3)];
    const [hp, hq] = [heights[i]!, heights[(i + 1) % 3]!];
    if (!((hp > enough && hq < -enough) || (hp < -enough && hq > enough))) continue;
    const f = hp / (hp - hq);
    const along = (axis: number): number => at(p, axis) + f * (at(q, axis) - at(p, axis));
    const [x, y, z] = [along(0) - ox, along(1) - oy, along(2) - oz];
    // Coordinates in the triangle: x·n-wise areas over the whole.
    const s = ((y * vz - z * vy) * nx + (z * vx - x * vz) * ny + (x * vy - y * vx) * nz) / square;
    const t = ((uy * z - uz * y) * nx + (uz * x - ux * z) * ny + (ux * y - uy * x) * nz) / square;
    if (s > 0 && t > 0 && s + t < 1) return [along(0), along(1), along(2)];
  }
  return null;
}

/** Lines a side of the grid by which volumes are compared: 4096 in all tell a share to about a tenth of itself. */
const LINES = 64;
/** From each to the next by so many, so that those up to anyone lie all over the grid: it has no factor of their number. */
const STRIDE = 2531;
/** Lines that tell enough, where there is no time for all: three hundredths of a share. */
const FEWEST_LINES = 1000;
/** Triangles that are looked at for all of them, and in one step, and that one line may go through. */
const MOST_LOOKS = 50_000_000;
const LOOKS_A_STEP = 200_000;
const MOST_HITS = 20_000;

/**
 * The share of a closed surface's volume that counts more than once (or less than once, where a part is inside out), by
 * lines through it: signed length inside against length inside at all. Null where so many
 * triangles lie one behind the other that it would take too long.
 */
export function* countedTwice(form: Polyhedron): Steps<number | null> {
  const tree = yield* boundsTreeSteps(form);
  const [cy, cz] = [tree.centre[1], tree.centre[2]];
  const [ry, rz] = [tree.boxes[4] ?? 0, tree.boxes[5] ?? 0];
  const looks: Looks = { left: MOST_LOOKS };
  let pause = MOST_LOOKS - LOOKS_A_STEP;
  let once = 0;
  let off = 0;
  for (let line = 0; line < LINES * LINES; line++) {
    if (looks.left < pause) {
      pause = looks.left - LOOKS_A_STEP;
      yield;
    }
    const cell = (line * STRIDE) % (LINES * LINES);
    const [i, j] = [Math.floor(cell / LINES), cell % LINES];
    // Lines stand off the middles of their cells by an odd share, so that they miss the edges of a regular mesh.
    const y = cy + ry * ((2 * (i + 0.4723)) / LINES - 1);
    const z = cz + rz * ((2 * (j + 0.5381)) / LINES - 1);
    const hits = hitsAft(tree, y, z, looks);
    if (hits.length > MOST_HITS || (looks.left <= 0 && line < FEWEST_LINES)) return null;
    if (looks.left <= 0) break;
    const along = alongLine(hits.sort((a, b) => a.x - b.x));
    once += along.once;
    off += along.off;
  }
  return once > 0 ? off / once : 0;
}

/** Of a line: the length of it that is inside at all, and what counts beside that. */
function alongLine(hits: readonly Hit[]): { readonly once: number; readonly off: number } {
  let [depth, once, off] = [0, 0, 0];
  for (const [k, hit] of hits.entries()) {
    depth += hit.step;
    const run = (hits[k + 1]?.x ?? hit.x) - hit.x;
    if (depth !== 0) once += run;
    if (depth !== 0 && depth !== 1) off += Math.abs(depth - 1) * run;
  }
  return { once, off };
}
