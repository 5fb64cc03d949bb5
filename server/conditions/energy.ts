import { type FreeWater, settle } from '../bodies/tankWater.ts';
import { type Cuttable, emptyImmersion, type Immersion } from '../geometry/immersion.ts';
import { levelFor } from '../geometry/levelCut.ts';
import { addScaled, dot, type Vec3 } from '../geometry/vector.ts';

/*
 * Potential energy of a floating or hanging boat against its attitude, gravity divided out (kg·m).
 *
 * Let n be "up" in boat axes. At every n the boat settles to the level where weight = buoyancy; what is left is
 *   E(n) = n·(m·G + ρ·ΣMt - ρ·M)
 * with M the first moment of the immersed volume and Mt that of the water in each tank, level under n. Then
 *   dE/dn = m·G + ρ·ΣMt - ρ·M         (its part square to n vanishes at equilibrium: G over B)
 *   E''(e) = e·(ρ·I - ρ·ΣIt)·e - n·dE/dn
 * with I and It the waterplanes' second moments about their own centroids: displacement x GM in direction e, free
 * surface included. That is the metacentric height of the textbooks without small angles or wall sides.
 * (Energy form of the stability of floating bodies: Gilbert, Am. Math. Monthly 98 (1991) 201-216; from memory.)
 */

/** What weighs and what keeps water out, for one condition. */
export interface Afloat {
  /** Density of the water inside and out, kg/m3. */
  readonly density: number;
  /** Mass and moment of everything that does not move: the boat and still tank water; kg, kg·m. */
  readonly mass: number;
  readonly massMoment: Vec3;
  readonly free: readonly FreeWater[];
  readonly hull: Cuttable;
  /** Wholly under water: the surface is far above and there is no waterplane. */
  readonly submerged: boolean;
}

/** Second moments as a symmetric tensor, m4 (or kg·m with the density in). */
export interface Tensor {
  readonly xx: number;
  readonly xy: number;
  readonly xz: number;
  readonly yy: number;
  readonly yz: number;
  readonly zz: number;
}

export interface EnergyState {
  readonly up: Vec3;
  /** The surface is `up·p = level`, m; infinite when submerged. */
  readonly level: number;
  /** kg·m. */
  readonly energy: number;
  /** dE/dn, not projected, kg·m. */
  readonly slope: Vec3;
  /** ρ·I of the waterplane, and ρ·ΣIt of the tanks' free surfaces, kg·m. */
  readonly waterplane: Tensor;
  readonly freeSurface: Tensor;
  /** The immersed hull at this attitude. */
  readonly immersed: Immersion;
  /** Mass of everything with tank water, kg, and its moment, kg·m. */
  readonly totalMass: number;
  readonly totalMoment: Vec3;
}

/** Energy, slope and curvature at one attitude; `guess` is a level to start from. */
export function energyAt(boat: Afloat, up: Vec3, guess?: number): EnergyState {
  let totalMass = boat.mass;
  let totalMoment = boat.massMoment;
  let freeSurface = NO_TENSOR;
  for (const water of boat.free) {
    const sums = settle(water, up);
    totalMass += boat.density * sums.volume;
    totalMoment = addScaled(totalMoment, [sums.mx, sums.my, sums.mz], boat.density);
    freeSurface = plus(freeSurface, centralTensor(sums, boat.density));
  }
  const immersed = emptyImmersion();
  let level = Number.POSITIVE_INFINITY;
  if (boat.submerged) {
    immersed.volume = boat.hull.volume;
    [immersed.mx, immersed.my, immersed.mz] = boat.hull.moment;
  } else {
    level = levelFor(boat.hull, up, totalMass / boat.density, guess);
    boat.hull.cut(up, level, immersed);
  }
  const slope = addScaled(totalMoment, [immersed.mx, immersed.my, immersed.mz], -boat.density);
  return {
    up,
    level,
    energy: dot(up, slope),
    slope,
    waterplane: centralTensor(immersed, boat.density),
    freeSurface,
    immersed,
    totalMass,
    totalMoment,
  };
}

/** E'' along the unit vectors a and b square to up, kg·m; a = b gives displacement x GM in that direction. */
export function curvature(state: EnergyState, a: Vec3, b: Vec3): number {
  const ab = along(state.waterplane, a, b) - along(state.freeSurface, a, b);
  return ab - dot(state.up, state.slope) * dot(a, b);
}

/** a·T·b. */
export const along = (t: Tensor, a: Vec3, b: Vec3): number =>
  a[0] * (t.xx * b[0] + t.xy * b[1] + t.xz * b[2]) +
  a[1] * (t.xy * b[0] + t.yy * b[1] + t.yz * b[2]) +
  a[2] * (t.xz * b[0] + t.yz * b[1] + t.zz * b[2]);

const NO_TENSOR: Tensor = { xx: 0, xy: 0, xz: 0, yy: 0, yz: 0, zz: 0 };

/** Second moments of a waterplane about its own centroid, times a factor. */
export function centralTensor(s: Immersion, factor: number): Tensor {
  if (s.area <= 0) return NO_TENSOR;
  const a = 1 / s.area;
  return {
    xx: factor * (s.xx - s.ax * s.ax * a),
    xy: factor * (s.xy - s.ax * s.ay * a),
    xz: factor * (s.xz - s.ax * s.az * a),
    yy: factor * (s.yy - s.ay * s.ay * a),
    yz: factor * (s.yz - s.ay * s.az * a),
    zz: factor * (s.zz - s.az * s.az * a),
  };
}

const plus = (a: Tensor, b: Tensor): Tensor => ({
  xx: a.xx + b.xx,
  xy: a.xy + b.xy,
  xz: a.xz + b.xz,
  yy: a.yy + b.yy,
  yz: a.yz + b.yz,
  zz: a.zz + b.zz,
});
