import type { Vec3 } from './vector.ts';

/** A cutting plane n·p = level. */
export interface ClipPlane {
  readonly n: Vec3;
  readonly level: number;
}

/** Told of each triangle's wet part. All points are measured from the foot of the plane, `level·n`. */
export interface TriangleVisitor {
  /** Triangle a, b, c wholly below the plane. */
  whole(
    ax: number,
    ay: number,
    az: number,
    bx: number,
    by: number,
    bz: number,
    cx: number,
    cy: number,
    cz: number,
  ): void;
  /**
   * The triangle, turned so that `a` is alone on its side of the plane, below it (`aloneWet`) or above; the plane
   * crosses a-b at p and a-c at q.
   */
  clipped(
    aloneWet: boolean,
    ax: number,
    ay: number,
    az: number,
    bx: number,
    by: number,
    bz: number,
    cx: number,
    cy: number,
    cz: number,
    px: number,
    py: number,
    pz: number,
    qx: number,
    qy: number,
    qz: number,
  ): void;
}

/**
 * Clips triangles (nine numbers each in `corners`) from number `first` up to `end`. Plain numbers all the way: nothing
 * is allocated for a triangle. A corner exactly on the plane counts as dry.
 */
export function clipTriangles(
  corners: Float64Array,
  first: number,
  end: number,
  plane: ClipPlane,
  visitor: TriangleVisitor,
): void {
  const { level } = plane;
  const [nx, ny, nz] = plane.n;
  const rx = level * nx;
  const ry = level * ny;
  const rz = level * nz;
  for (let k = 9 * first; k < 9 * end; k += 9) {
    const a = nx * corners[k]! + ny * corners[k + 1]! + nz * corners[k + 2]! - level;
    const b = nx * corners[k + 3]! + ny * corners[k + 4]! + nz * corners[k + 5]! - level;
    const c = nx * corners[k + 6]! + ny * corners[k + 7]! + nz * corners[k + 8]! - level;
    const wetCorners = (a < 0 ? 1 : 0) + (b < 0 ? 1 : 0) + (c < 0 ? 1 : 0);
    if (wetCorners === 0) continue;
    const ax = corners[k]! - rx;
    const ay = corners[k + 1]! - ry;
    const az = corners[k + 2]! - rz;
    const bx = corners[k + 3]! - rx;
    const by = corners[k + 4]! - ry;
    const bz = corners[k + 5]! - rz;
    const cx = corners[k + 6]! - rx;
    const cy = corners[k + 7]! - ry;
    const cz = corners[k + 8]! - rz;
    if (wetCorners === 3) {
      visitor.whole(ax, ay, az, bx, by, bz, cx, cy, cz);
      continue;
    }
    // Turning a triangle keeps its orientation.
    const alone = wetCorners === 1;
    if (a < 0 === alone) clip(visitor, alone, a, b, c, ax, ay, az, bx, by, bz, cx, cy, cz);
    else if (b < 0 === alone) clip(visitor, alone, b, c, a, bx, by, bz, cx, cy, cz, ax, ay, az);
    else clip(visitor, alone, c, a, b, cx, cy, cz, ax, ay, az, bx, by, bz);
  }
}

function clip(
  visitor: TriangleVisitor,
  aloneWet: boolean,
  a: number,
  b: number,
  c: number,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  cx: number,
  cy: number,
  cz: number,
): void {
  const toB = a / (a - b);
  const toC = a / (a - c);
  visitor.clipped(
    aloneWet,
    ax,
    ay,
    az,
    bx,
    by,
    bz,
    cx,
    cy,
    cz,
    ax + (bx - ax) * toB,
    ay + (by - ay) * toB,
    az + (bz - az) * toB,
    ax + (cx - ax) * toC,
    ay + (cy - ay) * toC,
    az + (cz - az) * toC,
  );
}
