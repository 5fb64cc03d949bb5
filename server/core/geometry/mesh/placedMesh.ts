import type { Polyhedron } from '../form/form.ts';
import type { Vec3 } from '../form/vector.ts';

/** How a mesh drawn elsewhere lies in the boat. */
export interface MeshPlacement {
  /** For aft, starboard and up: which axis of the mesh runs so (0 x, 1 y, 2 z), and whether with or against it. */
  readonly axes: readonly [MeshAxis, MeshAxis, MeshAxis];
  /** m in a unit of the mesh. */
  readonly metres: number;
  /** Where its origin lies, m. */
  readonly at: Vec3;
}

interface MeshAxis {
  readonly from: 0 | 1 | 2;
  readonly sign: 1 | -1;
}

/** The mesh in boat axes, m. One that the axes make its own mirror image keeps its outside outward. */
export function placedMesh({ vertices, faces }: Polyhedron, { axes, metres, at }: MeshPlacement): Polyhedron {
  const placed = new Float64Array(vertices.length);
  for (let axis = 0; axis < 3; axis++) {
    const { from, sign } = axes[axis]!;
    const factor = sign * metres;
    for (let i = 0; i < vertices.length; i += 3) placed[i + axis] = factor * vertices[i + from]! + at[axis]!;
  }
  const turned = isMirrored(axes) ? faces.map((_, i) => faces[i % 3 === 0 ? i : i % 3 === 1 ? i + 1 : i - 1]!) : faces;
  return { shape: 'polyhedron', vertices: placed, faces: turned };
}

/** The axes make a right-handed mesh left-handed: port and starboard change places. */
export function isMirrored([aft, starboard, up]: MeshPlacement['axes']): boolean {
  const isRound = (starboard.from - aft.from + 3) % 3 === 1;
  return aft.sign * starboard.sign * up.sign * (isRound ? 1 : -1) < 0;
}

/** As a key to find the same placement by. */
export const placementKey = ({ axes, metres, at }: MeshPlacement): string =>
  [...axes.map(({ from, sign }) => sign * (from + 1)), metres, ...at].join(' ');
