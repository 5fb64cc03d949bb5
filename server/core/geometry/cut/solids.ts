import type { Steps } from '../../steps/steps.ts';
import type { Form, Polyhedron } from '../form/form.ts';
import { slicePolyhedron, sliceRevolved } from '../form/slice.ts';
import type { Vec3 } from '../form/vector.ts';
import { ballSolid } from './ball.ts';
import { ballWall } from './ballWall.ts';
import { compoundSolid, compoundWall } from './compound.ts';
import type { Cuttable } from './immersion.ts';
import { polyhedronSolid, polyhedronSolidSteps } from './polyhedron.ts';
import { polyhedronWall, polyhedronWallSteps } from './polyhedronWall.ts';
import { revolvedSolid } from './revolved.ts';
import { revolvedWall, type WallEnds } from './revolvedWall.ts';
import type { Wall } from './wall.ts';

/** What a watertight thing of this form displaces. */
export function solidOf(form: Form): Cuttable {
  if (form.shape === 'revolved') return revolvedSolid(form);
  if (form.shape === 'ball') return ballSolid(form);
  if (form.shape === 'compound') return compoundSolid(form.parts.map(solidOf));
  return polyhedronSolid(form);
}

/** What a free-flooding thing of this form displaces. `endsClosed` is about bodies of revolution; a mesh is as it is. */
export function wallOf(form: Form, ends: WallEnds): Wall {
  if (form.shape === 'revolved') return revolvedWall(form, ends);
  if (form.shape === 'compound') return compoundWall(form.parts.map(part => wallOf(part, ends)));
  return form.shape === 'ball' ? ballWall(form) : polyhedronWall(form);
}

/** Corners of triangles from which it is worth while to make something of a mesh in steps. */
const MANY_CORNERS = 9000;

export const isFine = (form: Form): form is Polyhedron =>
  form.shape === 'polyhedron' && form.faces.length > MANY_CORNERS;

/** It is one, or has such a part. */
export const hasFine = (form: Form): boolean => (form.shape === 'compound' ? form.parts.some(hasFine) : isFine(form));

/** The same as `solidOf` in steps, where it takes long with what its first cut would make. */
export function* solidSteps(form: Form): Steps<Cuttable> {
  if (form.shape !== 'compound') return isFine(form) ? yield* polyhedronSolidSteps(form) : solidOf(form);
  const parts: Cuttable[] = [];
  for (const part of form.parts) parts.push(yield* solidSteps(part));
  return compoundSolid(parts);
}

/** As `solidSteps`. */
export function* wallSteps(form: Form, ends: WallEnds): Steps<Wall> {
  if (form.shape !== 'compound') return isFine(form) ? yield* polyhedronWallSteps(form) : wallOf(form, ends);
  const parts: Wall[] = [];
  for (const part of form.parts) parts.push(yield* wallSteps(part, ends));
  return compoundWall(parts);
}

/**
 * The part of a form between two stations (m), for the fore-and-aft cells of a tank; null for an empty slice. Only for
 * forms that `canSlice`. A slice is good as a solid only.
 */
export function sliceForeAft(form: Form, fromX: number, toX: number): Form | null {
  if (!(toX > fromX)) return null;
  if (form.shape === 'revolved') return sliceRevolved(form, fromX, toX);
  if (form.shape === 'polyhedron') return slicePolyhedron(form, fromX, toX);
  if (form.shape === 'ball') return null;
  const parts = form.parts.flatMap(part => sliceForeAft(part, fromX, toX) ?? []);
  return parts.length > 0 ? { shape: 'compound', parts } : null;
}

/** Slices of balls and of bodies of revolution about another axis are no forms of ours. */
export function canSlice(form: Form): boolean {
  if (form.shape === 'compound') return form.parts.every(canSlice);
  return form.shape === 'polyhedron' || (form.shape === 'revolved' && Math.abs(form.axis[0]) === 1);
}

export interface Bounds {
  readonly from: Vec3;
  readonly to: Vec3;
}

/** Least and greatest corner of the space that a form takes up along the boat's axes, m; exact. */
export function boundsOf(form: Form): Bounds {
  if (form.shape === 'polyhedron') return boundsOfPoints(form.vertices);
  if (form.shape === 'compound') return form.parts.map(boundsOf).reduce(around);
  if (form.shape === 'ball') {
    const { centre, radius } = form;
    const corner = (away: number): Vec3 => [centre[0] + away, centre[1] + away, centre[2] + away];
    return { from: corner(-radius), to: corner(radius) };
  }
  const { origin, axis: line, profile } = form;
  // A disk of the profile reaches as far along an axis of the boat as it leans against it.
  const disks = profile.map(([s, radius]): Bounds => {
    const reach = (axis: 0 | 1 | 2): number => Math.hypot(line[(axis + 1) % 3]!, line[(axis + 2) % 3]!) * radius;
    const end = (side: 1 | -1): Vec3 => [
      origin[0] + line[0] * s + side * reach(0),
      origin[1] + line[1] * s + side * reach(1),
      origin[2] + line[2] * s + side * reach(2),
    ];
    return { from: end(-1), to: end(1) };
  });
  return disks.reduce(around);
}

const AXES = [0, 1, 2] as const;

function boundsOfPoints(points: Float64Array): Bounds {
  const least: [number, number, number] = [Infinity, Infinity, Infinity];
  const most: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 3) {
    for (const axis of AXES) {
      const value = points[i + axis]!;
      if (value < least[axis]) least[axis] = value;
      if (value > most[axis]) most[axis] = value;
    }
  }
  return { from: least, to: most };
}

const around = (a: Bounds, b: Bounds): Bounds => ({
  from: [Math.min(a.from[0], b.from[0]), Math.min(a.from[1], b.from[1]), Math.min(a.from[2], b.from[2])],
  to: [Math.max(a.to[0], b.to[0]), Math.max(a.to[1], b.to[1]), Math.max(a.to[2], b.to[2])],
});
