import type { Vec3 } from './vector.ts';

/**
 * Running sums over everything on the wet side of a plane `n·p <= h`, and over the cut that the plane makes (the
 * waterplane). Kernels add into it so that a boat of many bodies costs no allocation. SI: m and powers of m.
 *
 * For a thin wall (a shell) "volume" is wetted area times wall thickness and the cut is the strip of wall that the
 * plane crosses: `area` is always d(volume)/dh at fixed n.
 */
export interface Immersion {
  /** Immersed volume, m3. */
  volume: number;
  /** First moment of the immersed volume about the origin, m4. */
  mx: number;
  my: number;
  mz: number;
  /** Waterplane area, m2: the derivative of volume by h. */
  area: number;
  /** First moment of the waterplane about the origin, m3. */
  ax: number;
  ay: number;
  az: number;
  /** Second moments of the waterplane about the origin, m4: integral of p·pᵀ over the cut. */
  xx: number;
  xy: number;
  xz: number;
  yy: number;
  yz: number;
  zz: number;
}

export const emptyImmersion = (): Immersion => ({
  volume: 0,
  mx: 0,
  my: 0,
  mz: 0,
  area: 0,
  ax: 0,
  ay: 0,
  az: 0,
  xx: 0,
  xy: 0,
  xz: 0,
  yy: 0,
  yz: 0,
  zz: 0,
});

/** Something that a water surface can cut: a solid by volume, or a thin wall by area times thickness. */
export interface Cuttable {
  /** Whole volume, m3. */
  readonly volume: number;
  /** First moment of the whole volume about the origin, m4; divided by `volume` it is the centroid. */
  readonly moment: Vec3;
  /** Least and greatest of `n·p` over the body, m; `n` is a unit vector. */
  extent(n: Vec3): readonly [lowest: number, highest: number];
  /**
   * Adds the part with `n·p <= h`, and the cut, to `sums`. Exact at any tilt. Called only for a plane that crosses
   * the body; use `addImmersed`, which spares bodies wholly above or below.
   */
  cut(n: Vec3, h: number, sums: Immersion): void;
}

/** Adds the part of `body` below the plane `n·p = h` to `sums`; a body that the plane misses costs one comparison. */
export function addImmersed(body: Cuttable, n: Vec3, h: number, sums: Immersion): void {
  const [lowest, highest] = body.extent(n);
  if (h <= lowest) return;
  if (h < highest) {
    body.cut(n, h, sums);
    return;
  }
  sums.volume += body.volume;
  sums.mx += body.moment[0];
  sums.my += body.moment[1];
  sums.mz += body.moment[2];
}

/** Adds a disk-like patch of the waterplane: area `a` with its centroid `c` and the in-plane second moments given apart. */
export function addPatch(sums: Immersion, a: number, c: Vec3): void {
  sums.area += a;
  sums.ax += a * c[0];
  sums.ay += a * c[1];
  sums.az += a * c[2];
  addSecond(sums, a, c);
}

/** Adds `weight·v·vᵀ` to the second moments. */
export function addSecond(sums: Immersion, weight: number, v: Vec3): void {
  sums.xx += weight * v[0] * v[0];
  sums.xy += weight * v[0] * v[1];
  sums.xz += weight * v[0] * v[2];
  sums.yy += weight * v[1] * v[1];
  sums.yz += weight * v[1] * v[2];
  sums.zz += weight * v[2] * v[2];
}
