import { pacer, type Steps } from '../../steps/steps.ts';
import type { Polyhedron } from '../form/form.ts';

/** No other triangle has this edge. */
const ALONE = -1;
/** More than one other triangle has it. */
const CROWDED = -2;

/** Side `3·face + k` of a triangle runs from its corner k to the next one. */
export interface MeshEdges {
  /** The one other side that has the same two corners, else ALONE or CROWDED. */
  readonly mates: Int32Array;
  /** Edges that more than two triangles have: their sides. */
  readonly crowded: readonly (readonly number[])[];
}

export const startOf = (faces: Uint32Array, side: number): number => faces[side]!;
export const endOf = (faces: Uint32Array, side: number): number => faces[side % 3 === 2 ? side - 2 : side + 1]!;

/** Sides that are looked at in one step. */
const STEP = 60_000;

/** Who meets whom: sides gathered by their lower corner, then matched by the higher one. */
export function* meshEdgesSteps({ vertices, faces }: Polyhedron): Steps<MeshEdges> {
  const low = (side: number): number => Math.min(startOf(faces, side), endOf(faces, side));
  const high = (side: number): number => Math.max(startOf(faces, side), endOf(faces, side));
  const first = new Uint32Array(vertices.length / 3 + 1);
  for (let side = 0; side < faces.length; side++) first[low(side) + 1]!++;
  for (let i = 1; i < first.length; i++) first[i]! += first[i - 1]!;
  const room = first.slice();
  const sorted = new Uint32Array(faces.length);
  for (let side = 0; side < faces.length; side++) sorted[room[low(side)]!++] = side;

  if (faces.length > 3 * STEP) yield;
  const mates = new Int32Array(faces.length).fill(ALONE);
  const groups = new Map<number, number[]>();
  const seen = new Map<number, number>();
  const match = (side: number): void => {
    const earlier = seen.get(high(side));
    if (earlier === undefined) seen.set(high(side), side);
    else if (mates[earlier] === ALONE) {
      mates[earlier] = side;
      mates[side] = earlier;
    } else {
      const group = groups.get(earlier) ?? [earlier, mates[earlier]!];
      groups.set(earlier, group);
      group.push(side);
    }
  };
  const isDue = pacer(STEP);
  for (let corner = 0; corner < first.length - 1; corner++) {
    seen.clear();
    // All sides of a mesh may begin at one corner.
    for (let i = first[corner]!; i < first[corner + 1]!; i++) {
      match(sorted[i]!);
      if (isDue(1)) yield;
    }
  }
  const crowded = [...groups.values()];
  for (const group of crowded) for (const side of group) mates[side] = CROWDED;
  return { mates, crowded };
}
