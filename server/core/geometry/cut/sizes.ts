import type { Form, Polyhedron } from '../form/form.ts';
import { cross, dot, length, subtract, type Vec3 } from '../form/vector.ts';
import type { WallEnds } from './revolvedWall.ts';
import { solidOf, wallOf } from './solids.ts';

/** The surface of a wall, m2: as `wallOf` has it, of a mesh without what it is cut by. */
export function areaOf(form: Form, ends: WallEnds): number {
  if (form.shape === 'polyhedron') return ofFaces(form, (a, b, c) => length(cross(subtract(b, a), subtract(c, a))) / 2);
  if (form.shape === 'compound') return form.parts.reduce((sum, part) => sum + areaOf(part, ends), 0);
  return wallOf(form, ends).area;
}

/** The volume of a solid, m3: as `solidOf` has it, of a mesh without what it is cut by. */
export function volumeOf(form: Form): number {
  if (form.shape === 'polyhedron') return ofFaces(form, (a, b, c) => dot(a, cross(b, c)) / 6);
  if (form.shape === 'compound') return form.parts.reduce((sum, part) => sum + volumeOf(part), 0);
  return solidOf(form).volume;
}

/** The sum over the triangles of a mesh, their corners from one of its own. */
function ofFaces({ vertices, faces }: Polyhedron, each: (a: Vec3, b: Vec3, c: Vec3) => number): number {
  const [x, y, z] = [vertices[0] ?? 0, vertices[1] ?? 0, vertices[2] ?? 0];
  const corner = (k: number): Vec3 => {
    const i = 3 * faces[k]!;
    return [vertices[i]! - x, vertices[i + 1]! - y, vertices[i + 2]! - z];
  };
  let sum = 0;
  for (let k = 0; k < faces.length; k += 3) sum += each(corner(k), corner(k + 1), corner(k + 2));
  return sum;
}
