import { add, addScaled, cross, subtract, unit, type Vec3 } from '../form/vector.ts';
import { addPatch, addSecond, type Immersion } from './immersion.ts';

/** Two unit vectors that span the plane square to the unit vector `n`; with `n` third they are right-handed. */
export function planeFrame(n: Vec3): readonly [Vec3, Vec3] {
  // The boat axis least in line with n keeps the cross product far from zero.
  const [x, y, z] = [Math.abs(n[0]), Math.abs(n[1]), Math.abs(n[2])];
  const aside: Vec3 = x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1];
  const first = unit(cross(aside, n));
  return [first, cross(n, first)];
}

/** The plane n·p = level, with two unit vectors along it. */
export interface PlaneAxes {
  readonly x: Vec3;
  readonly y: Vec3;
  readonly n: Vec3;
  readonly level: number;
}

/** Area and moments of a patch of the waterplane in two axes of its own plane, from `foot`: m2, m3, m4. */
export interface PlaneSums {
  area: number;
  x: number;
  y: number;
  xx: number;
  xy: number;
  yy: number;
}

export const emptyPlaneSums = (): PlaneSums => ({ area: 0, x: 0, y: 0, xx: 0, xy: 0, yy: 0 });

/** Adds `factor` times a patch, given by its moments along the unit vectors `x` and `y` from `foot`, in boat axes. */
export function addPlaneSums(sums: Immersion, plane: PlaneSums, foot: Vec3, x: Vec3, y: Vec3, factor = 1): void {
  const { area } = plane;
  if (area === 0) return;
  const middleX = plane.x / area;
  const middleY = plane.y / area;
  addPatch(sums, factor * area, addScaled(addScaled(foot, x, middleX), y, middleY));
  addSecond(sums, factor * (plane.xx - middleX * plane.x), x);
  addSecond(sums, factor * (plane.yy - middleY * plane.y), y);
  // (x + y)(x + y)ᵀ - (x - y)(x - y)ᵀ = 2(xyᵀ + yxᵀ)
  const mixed = (factor * (plane.xy - middleX * plane.y)) / 2;
  addSecond(sums, mixed, add(x, y));
  addSecond(sums, -mixed, subtract(x, y));
}
