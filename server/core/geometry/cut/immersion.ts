import type { Vec3 } from '../form/vector.ts';

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

/** A box along the boat's axes: its middle and half its length, breadth and height, m. */
export interface Box {
  readonly middle: Vec3;
  readonly half: Vec3;
}

/** Something that a water surface can cut: a solid by volume, or a thin wall by area times thickness. */
export interface Cuttable {
  /** Whole volume, m3. */
  readonly volume: number;
  /** First moment of the whole volume about the origin, m4; divided by `volume` it is the centroid. */
  readonly moment: Vec3;
  /** The box round the body: a first test, cheap at any tilt, of whether a plane comes near it. */
  readonly box: Box;
  /** Least and greatest of `n·p` over the body, m, exact; `n` is a unit vector. */
  extent(n: Vec3): readonly [lowest: number, highest: number];
  /**
   * Adds the part with `n·p <= h`, and the cut, to `sums`. Exact at any tilt, also for a plane that misses the body; for
   * that `addImmersed` is cheaper.
   */
  cut(n: Vec3, h: number, sums: Immersion): void;
  /** A body much like it that is cheaper to cut, where there is one: to find out roughly where a boat comes to rest. */
  readonly rough?: Cuttable | undefined;
}

/** Adds the part of `body` below the plane `n·p = h` to `sums`; a body that the plane misses costs one comparison. */
export function addImmersed(body: Cuttable, n: Vec3, h: number, sums: Immersion): void {
  const [lowest, highest] = body.extent(n);
  if (h <= lowest) return;
  if (h < highest) {
    body.cut(n, h, sums);
    return;
  }
  addWhole(body, sums);
}

/** Adds a body that lies wholly below the plane. */
export function addWhole({ volume, moment }: Pick<Cuttable, 'volume' | 'moment'>, sums: Immersion): void {
  sums.volume += volume;
  sums.mx += moment[0];
  sums.my += moment[1];
  sums.mz += moment[2];
}

/** Adds one immersion less another. */
export function addDifference(more: Immersion, less: Immersion, sums: Immersion): void {
  sums.volume += more.volume - less.volume;
  sums.mx += more.mx - less.mx;
  sums.my += more.my - less.my;
  sums.mz += more.mz - less.mz;
  sums.area += more.area - less.area;
  sums.ax += more.ax - less.ax;
  sums.ay += more.ay - less.ay;
  sums.az += more.az - less.az;
  sums.xx += more.xx - less.xx;
  sums.xy += more.xy - less.xy;
  sums.xz += more.xz - less.xz;
  sums.yy += more.yy - less.yy;
  sums.yz += more.yz - less.yz;
  sums.zz += more.zz - less.zz;
}

/** The box round a body whose extents are known. */
export function boxOf(extent: Cuttable['extent']): Box {
  const ends = AXES.map(extent) as [Span, Span, Span];
  const each = (of: (low: number, high: number) => number): Vec3 => [of(...ends[0]), of(...ends[1]), of(...ends[2])];
  return { middle: each((low, high) => (low + high) / 2), half: each((low, high) => (high - low) / 2) };
}

type Span = readonly [low: number, high: number];
const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

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
