import type { Immersion } from '../geometry/cut/immersion.ts';
import type { Vec3 } from '../geometry/form/vector.ts';

/** Second moments as a symmetric tensor, m4 (or kg·m with the density in). */
export interface Tensor {
  readonly xx: number;
  readonly xy: number;
  readonly xz: number;
  readonly yy: number;
  readonly yz: number;
  readonly zz: number;
}

/** a·T·b. */
export const along = (t: Tensor, a: Vec3, b: Vec3): number =>
  a[0] * (t.xx * b[0] + t.xy * b[1] + t.xz * b[2]) +
  a[1] * (t.xy * b[0] + t.yy * b[1] + t.yz * b[2]) +
  a[2] * (t.xz * b[0] + t.yz * b[1] + t.zz * b[2]);

export const NO_TENSOR: Tensor = { xx: 0, xy: 0, xz: 0, yy: 0, yz: 0, zz: 0 };

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

export const addTensors = (a: Tensor, b: Tensor): Tensor => ({
  xx: a.xx + b.xx,
  xy: a.xy + b.xy,
  xz: a.xz + b.xz,
  yy: a.yy + b.yy,
  yz: a.yz + b.yz,
  zz: a.zz + b.zz,
});

export const scaleTensor = (a: Tensor, factor: number): Tensor => ({
  xx: factor * a.xx,
  xy: factor * a.xy,
  xz: factor * a.xz,
  yy: factor * a.yy,
  yz: factor * a.yz,
  zz: factor * a.zz,
});
