import { ballSolid } from './ball.ts';
import { ballWall } from './ballWall.ts';
import type { Form } from './form.ts';
import type { Cuttable } from './immersion.ts';
import { polyhedronSolid } from './polyhedron.ts';
import { polyhedronWall } from './polyhedronWall.ts';
import { revolvedSolid } from './revolved.ts';
import { revolvedWall, type WallEnds } from './revolvedWall.ts';
import { slicePolyhedron, sliceRevolved } from './slice.ts';
import type { Vec3 } from './vector.ts';
import type { Wall } from './wall.ts';

/** What a watertight thing of this form displaces. */
export function solidOf(form: Form): Cuttable {
  if (form.shape === 'revolved') return revolvedSolid(form);
  if (form.shape === 'ball') return ballSolid(form);
  return polyhedronSolid(form);
}

/** What a free-flooding thing of this form displaces. `endsClosed` is about bodies of revolution; a mesh is as it is. */
export function wallOf(form: Form, ends: WallEnds): Wall {
  if (form.shape === 'revolved') return revolvedWall(form, ends);
  return form.shape === 'ball' ? ballWall(form) : polyhedronWall(form);
}

/**
 * The part of a form between two stations (m), for the fore-and-aft cells of a tank. Null for what is not sliced here:
 * a ball, a body of revolution about another axis, and an empty slice. A slice is good as a solid only.
 */
export function sliceForeAft(form: Form, fromX: number, toX: number): Form | null {
  if (!(toX > fromX)) return null;
  if (form.shape === 'revolved') return sliceRevolved(form, fromX, toX);
  return form.shape === 'polyhedron' ? slicePolyhedron(form, fromX, toX) : null;
}

/** Least and greatest corner of the space that a form takes up along the boat's axes, m; exact. */
export function boundsOf(form: Form): { readonly from: Vec3; readonly to: Vec3 } {
  const along = (axis: 0 | 1 | 2): readonly [number, number] => {
    if (form.shape === 'ball') return [form.centre[axis] - form.radius, form.centre[axis] + form.radius];
    if (form.shape === 'polyhedron') return leastAndMost(form.vertices.filter((_, i) => i % 3 === axis));
    const { origin, axis: line } = form;
    const across = Math.hypot(line[(axis + 1) % 3]!, line[(axis + 2) % 3]!);
    return leastAndMost(
      form.profile.flatMap(([s, radius]) => {
        const middle = origin[axis] + line[axis] * s;
        return [middle - across * radius, middle + across * radius];
      }),
    );
  };
  const [x, y, z] = [along(0), along(1), along(2)];
  return { from: [x[0], y[0], z[0]], to: [x[1], y[1], z[1]] };
}

function leastAndMost(values: Iterable<number>): readonly [number, number] {
  let least = Infinity;
  let most = -Infinity;
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return [least, most];
}
