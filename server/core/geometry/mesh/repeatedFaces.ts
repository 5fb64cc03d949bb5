import { inStretches, type Steps } from '../../steps/steps.ts';
import type { Polyhedron } from '../form/form.ts';

export interface OnceEach {
  readonly form: Polyhedron;
  /** Triangles that were left out. */
  readonly repeated: number;
}

/** Triangles that are looked at in one step. */
const STEP = 100_000;

/**
 * A surface with each of its triangles once: one that has the same corners as another before it and faces the same way,
 * as all have of a body that was exported twice, is left out. Sorted by corners, those that are the same come to stand
 * side by side, however many they are.
 */
export function* onceEach(form: Polyhedron): Steps<OnceEach> {
  const { vertices, faces } = form;
  const count = faces.length / 3;
  // The same triangle may be written from each of its corners: here it begins with the lowest.
  const turned = new Uint32Array(faces.length);
  yield* inStretches(count, STEP, (from, to) => {
    for (let at = 3 * from; at < 3 * to; at += 3) {
      const [a, b, c] = [faces[at]!, faces[at + 1]!, faces[at + 2]!];
      const first = a < b && a < c ? 0 : b < c ? 1 : 2;
      for (let k = 0; k < 3; k++) turned[at + k] = faces[at + ((first + k) % 3)]!;
    }
  });
  let order = new Uint32Array(count);
  for (let face = 0; face < count; face++) order[face] = face;
  for (let k = 2; k >= 0; k--) {
    yield;
    order = sortedBy(order, turned, k, vertices.length / 3);
  }
  yield;
  const isAgain = new Uint8Array(count);
  let repeated = 0;
  for (let i = 1; i < count; i++) {
    const [one, other] = [3 * order[i - 1]!, 3 * order[i]!];
    if (turned[one] !== turned[other] || turned[one + 1] !== turned[other + 1]) continue;
    if (turned[one + 2] !== turned[other + 2]) continue;
    isAgain[order[i]!] = 1;
    repeated++;
  }
  if (repeated === 0) return { form, repeated };
  yield;
  return { form: { ...form, faces: faces.filter((_, i) => isAgain[Math.trunc(i / 3)] === 0) }, repeated };
}

/** By their k-th corner; those that have the same one keep their order. */
function sortedBy(order: Uint32Array, corners: Uint32Array, k: number, most: number): Uint32Array<ArrayBuffer> {
  const first = new Uint32Array(most + 1);
  for (const face of order) first[corners[3 * face + k]! + 1]!++;
  for (let i = 1; i <= most; i++) first[i]! += first[i - 1]!;
  const sorted = new Uint32Array(order.length);
  for (const face of order) sorted[first[corners[3 * face + k]!]!++] = face;
  return sorted;
}
