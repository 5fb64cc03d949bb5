import type { Polyhedron } from './form.ts';
import type { Vec3 } from './vector.ts';

/** A rectangular block between its least and greatest corner, m: 8 vertices, 12 triangles, outward. */
export function boxForm(from: Vec3, to: Vec3): Polyhedron {
  const vertices = new Float64Array(24);
  for (let corner = 0; corner < 8; corner++) {
    vertices[3 * corner] = corner & 1 ? to[0] : from[0];
    vertices[3 * corner + 1] = corner & 2 ? to[1] : from[1];
    vertices[3 * corner + 2] = corner & 4 ? to[2] : from[2];
  }
  return { shape: 'polyhedron', vertices, faces: FACES };
}

/** Of each side its corners by number: +1 aft, +2 to starboard, +4 up. */
const SIDES = [
  [0, 4, 6, 2],
  [1, 3, 7, 5],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 2, 3, 1],
  [4, 5, 7, 6],
] as const;
/** Three to a triangle, outward. */
export const BLOCK_CORNERS: readonly number[] = SIDES.flatMap(([a, b, c, d]) => [a, b, c, a, c, d]);
const FACES = Uint32Array.from(BLOCK_CORNERS);

/** The least and the greatest corner of a block, m. */
export interface Corners {
  readonly from: Vec3;
  readonly to: Vec3;
}

/** The least and greatest corner of a block made here, m, wherever it was moved since; null of any other form. */
export function cornersOf({ vertices, faces }: Polyhedron): Corners | null {
  if (faces !== FACES) return null;
  const ends = [0, 7].map(
    (corner): Vec3 => [vertices[3 * corner]!, vertices[3 * corner + 1]!, vertices[3 * corner + 2]!],
  );
  const [from, to] = ends as [Vec3, Vec3];
  // It may have been turned.
  const stands = vertices.every((value, i) => {
    const axis = (i % 3) as 0 | 1 | 2;
    return value === ((Math.floor(i / 3) >> axis) & 1 ? to : from)[axis];
  });
  return stands && from.every((value, axis) => value <= to[axis]!) ? { from, to } : null;
}
