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

/** The direction "up" in boat axes for a trim and heel, each short of 90°. */
export function upFor(trim: number, heel: number): Vec3 {
  const raw: Vec3 = [-Math.tan(trim), -Math.tan(heel), 1];
  return scale(raw, 1 / length(raw));
}

/** Trim of the boat whose up direction is `up`, rad; beyond 90° of tilt it is measured to the nearer end. */
export const trimOf = (up: Vec3): number => Math.atan2(-up[0], Math.abs(up[2]));

/** Heel, rad; beyond 90° the boat lies keel up and the angle runs on to 180°. */
export const heelOf = (up: Vec3): number => Math.atan2(-up[1], up[2]);

/** The attitude for the surface `up·p = level` of a boat of length `hullLength`; only for a boat not on its side. */
export function attitudeFor(up: Vec3, level: number, hullLength: number): Attitude {
  return {
    draft: surfaceHeight(up, level, hullLength / 2),
    trim: Math.atan(-up[0] / up[2]),
    heel: Math.atan(-up[1] / up[2]),
  };
}

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
