import Module, { type Manifold } from 'manifold-3d';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import { scale, type Vec3 } from '../../server/core/geometry/form/vector.ts';

/** What a general library for solid modelling says of a solid cut by a plane. */
export interface SolidLibrary {
  /** The part of a solid with `n·p <= h`: its volume, in double precision, and its centroid, of a single precision mesh. */
  below(solid: Polyhedron, n: Vec3, h: number): { readonly volume: number; readonly centroid: Vec3 };
}

export async function loadSolidLibrary(): Promise<SolidLibrary> {
  const library = await Module();
  library.setup();
  return {
    below(solid, n, h) {
      const mesh = new library.Mesh({
        numProp: 3,
        vertProperties: Float32Array.from(solid.vertices),
        triVerts: solid.faces,
      });
      const whole = new library.Manifold(mesh);
      const part = whole.trimByPlane(scale(n, -1) as [number, number, number], -h);
      const answer = { volume: part.volume(), centroid: centroidOf(part) };
      part.delete();
      whole.delete();
      return answer;
    },
  };
}

/** By tetrahedra from the origin over the triangles of the mesh that it gives out. */
function centroidOf(part: Manifold): Vec3 {
  const { vertProperties, triVerts, numProp } = part.getMesh();
  const at = (vertex: number, axis: number): number => vertProperties[numProp * vertex + axis]!;
  const sums = [0, 0, 0];
  let volume = 0;
  for (let k = 0; k < triVerts.length; k += 3) {
    const [a, b, c] = [triVerts[k]!, triVerts[k + 1]!, triVerts[k + 2]!];
    const sixfold =
      at(a, 0) * (at(b, 1) * at(c, 2) - at(b, 2) * at(c, 1)) +
      at(a, 1) * (at(b, 2) * at(c, 0) - at(b, 0) * at(c, 2)) +
      at(a, 2) * (at(b, 0) * at(c, 1) - at(b, 1) * at(c, 0));
    volume += sixfold;
    for (let axis = 0; axis < 3; axis++) sums[axis]! += (sixfold * (at(a, axis) + at(b, axis) + at(c, axis))) / 4;
  }
  return [sums[0]! / volume, sums[1]! / volume, sums[2]! / volume];
}
