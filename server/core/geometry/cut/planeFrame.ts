import { cross, length, scale, type Vec3 } from '../form/vector.ts';
import type { Immersion } from './immersion.ts';

/** Two unit vectors that span the plane square to the unit vector `n`; with `n` third they are right-handed. */
export function planeFrame(n: Vec3): readonly [Vec3, Vec3] {
  const [n0, n1, n2] = n;
  const x = Math.abs(n0);
  const y = Math.abs(n1);
  const z = Math.abs(n2);
  // Square to n and to the boat axis that is least in line with it, so that it is far from zero.
  const first: Vec3 = x <= y && x <= z ? [0, -n2, n1] : y <= z ? [n2, 0, -n0] : [-n1, n0, 0];
  const along = scale(first, 1 / length(first));
  return [along, cross(n, along)];
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
  const xx = factor * (plane.xx - middleX * plane.x);
  const yy = factor * (plane.yy - middleY * plane.y);
  const xy = factor * (plane.xy - middleX * plane.y);
  const [x0, x1, x2] = x;
  const [y0, y1, y2] = y;
  // Number by number, for every body at the surface comes by here: vectors would be made and thrown away.
  const c0 = foot[0] + x0 * middleX + y0 * middleY;
  const c1 = foot[1] + x1 * middleX + y1 * middleY;
  const c2 = foot[2] + x2 * middleX + y2 * middleY;
  const a = factor * area;
  sums.area += a;
  sums.ax += a * c0;
  sums.ay += a * c1;
  sums.az += a * c2;
  sums.xx += a * c0 * c0 + xx * x0 * x0 + yy * y0 * y0 + 2 * xy * x0 * y0;
  sums.xy += a * c0 * c1 + xx * x0 * x1 + yy * y0 * y1 + xy * (x0 * y1 + y0 * x1);
  sums.xz += a * c0 * c2 + xx * x0 * x2 + yy * y0 * y2 + xy * (x0 * y2 + y0 * x2);
  sums.yy += a * c1 * c1 + xx * x1 * x1 + yy * y1 * y1 + 2 * xy * x1 * y1;
  sums.yz += a * c1 * c2 + xx * x1 * x2 + yy * y1 * y2 + xy * (x1 * y2 + y1 * x2);
  sums.zz += a * c2 * c2 + xx * x2 * x2 + yy * y2 * y2 + 2 * xy * x2 * y2;
}
