import { cross, dot, length, scale, type Vec3 } from '../geometry/form/vector.ts';

/**
 * How the boat lies in the water. The surface in boat axes is the plane
 * `z = draft + (x - L/2)·tan(trim) + y·tan(heel)`.
 */
export interface Attitude {
  /** Height of the surface above the baseline on the centreline at half length, m, square to the baseline. */
  readonly draft: number;
  /** rad, positive bow up. */
  readonly trim: number;
  /** rad, positive to starboard (starboard side down). */
  readonly heel: number;
}

/** Up, in boat axes, for a boat on an even keel. */
export const UPRIGHT: Vec3 = [0, 0, 1];

/** The direction "up" in boat axes that has this trim and heel, as `trimOf` and `heelOf` measure them. */
export function upFor(trim: number, heel: number): Vec3 {
  const raw: Vec3 = [-Math.tan(trim) * Math.abs(Math.cos(heel)), -Math.sin(heel), Math.cos(heel)];
  return scale(raw, 1 / length(raw));
}

/** Up for a heel about the boat's own axis and a trim after it. */
export const upHeeled = (heel: number, trim: number): Vec3 => [
  -Math.sin(trim),
  -Math.cos(trim) * Math.sin(heel),
  Math.cos(trim) * Math.cos(heel),
];

/** The change of up with trim at a held heel. */
export const trimmingAt = (heel: number, trim: number): Vec3 => [
  -Math.cos(trim),
  Math.sin(trim) * Math.sin(heel),
  -Math.sin(trim) * Math.cos(heel),
];

/** The change of up with heel, of length 1: dE/d(heel) over the displacement is the righting lever, m. */
export const heelingAt = (heel: number): Vec3 => [0, -Math.cos(heel), -Math.sin(heel)];

/** Trim of the boat whose up direction is `up`, rad; beyond 90° of tilt it is measured to the nearer end. */
export const trimOf = (up: Vec3): number => Math.atan2(-up[0], Math.abs(up[2]));

/** Heel, rad; beyond 90° the boat lies keel up and the angle runs on to 180°. */
export const heelOf = (up: Vec3): number => Math.atan2(-up[1], up[2]);

/** The attitude for the surface `up·p = level` of a boat of length `hullLength`; only for a boat not on its side. */
export function attitudeFor(up: Vec3, level: number, hullLength: number): Attitude {
  return {
    draft: surfaceHeight(up, level, hullLength / 2),
    trim: trimOf(up),
    heel: heelOf(up),
  };
}

/** Trim of a surface that stands at these heights above the baseline at the bow tip and at the hull's length, rad. */
export const trimBetween = (bow: number, stern: number, hullLength: number): number =>
  hullLength > 0 ? Math.atan((stern - bow) / hullLength) : 0;

/** Height of the surface above the baseline on the centreline at `station`, m. */
export const surfaceHeight = (up: Vec3, level: number, station: number): number => (level - up[0] * station) / up[2];

/** The change of "up" for a small trim by the bow rising: a unit vector square to `up`. */
export function trimwards(up: Vec3): Vec3 {
  return squareTo(up, cross(up, [0, 1, 0]), [-1, 0, 0]);
}

/** The change of "up" for a small heel to starboard: a unit vector square to `up`. */
export function heelwards(up: Vec3): Vec3 {
  return squareTo(up, cross([1, 0, 0], up), [0, -1, 0]);
}

/** Normalises `wanted`; where it vanishes (a boat on end or on its side) projects `other` instead. */
function squareTo(up: Vec3, wanted: Vec3, other: Vec3): Vec3 {
  const size = length(wanted);
  if (size > 1e-6) return scale(wanted, 1 / size);
  const along = dot(other, up);
  const flat: Vec3 = [other[0] - along * up[0], other[1] - along * up[1], other[2] - along * up[2]];
  return scale(flat, 1 / length(flat));
}
