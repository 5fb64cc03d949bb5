import { boundsTree, nodeSums, treeExtent, visitBelow } from './boundsTree.ts';
import type { Polyhedron } from './form.ts';
import type { Cuttable } from './immersion.ts';
import { addPlaneSums, emptyPlaneSums, type PlaneSums, planeFrame } from './planeFrame.ts';
import { add, addScaled, cross, dot, scale, subtract, type Vec3 } from './vector.ts';

/**
 * A solid bounded by triangles, closed and outward. By the divergence theorem its volume is the signed sum of the
 * tetrahedra from any point to its triangles; a point on the cutting plane makes those over the cut vanish, so only
 * the clipped triangles count. The cut is summed as a fan over its edges, oriented, so that holes subtract.
 *
 * A vertex exactly on the plane counts as dry everywhere: the cut is that of a plane a hair lower.
 */
export function polyhedronSolid(form: Polyhedron): Cuttable {
  const tree = boundsTree(form);
  const { corners, centre } = tree;
  const stored = nodeSums(tree, STRIDE, (face, sums, at) => addFaceSums(corners, 9 * face, sums, at));
  const volume = stored[0] ?? 0;
  // From the centre: M = (first moment about it) + V·centre.
  const moment = [0, 1, 2].map(axis => (stored[4 + axis] ?? 0) / 4 + volume * centre[axis]!);
  return {
    volume,
    moment: [moment[0]!, moment[1]!, moment[2]!],
    extent: treeExtent(tree),
    cut(n, h, sums) {
      const level = h - dot(n, centre);
      const [x, y] = planeFrame(n);
      const wet = emptyWet(n, level, x, y);
      visitBelow(tree, n, level, {
        below: node => addStored(stored, STRIDE * node, wet),
        near: (first, end) => {
          for (let face = first; face < end; face++) addFace(corners, 9 * face, wet);
        },
      });
      const foot = addScaled(centre, n, level);
      sums.volume += wet.volume;
      sums.mx += wet.mx + wet.volume * foot[0];
      sums.my += wet.my + wet.volume * foot[1];
      sums.mz += wet.mz + wet.volume * foot[2];
      addPlaneSums(sums, wet.waterplane, foot, x, y);
    },
  };
}

/** Sums in progress for one plane: volume and its first moment from the foot of the plane, and the cut. */
interface Wet {
  readonly n: Vec3;
  readonly level: number;
  readonly x: Vec3;
  readonly y: Vec3;
  volume: number;
  mx: number;
  my: number;
  mz: number;
  readonly waterplane: PlaneSums;
}

const emptyWet = (n: Vec3, level: number, x: Vec3, y: Vec3): Wet => ({
  n,
  level,
  x,
  y,
  volume: 0,
  mx: 0,
  my: 0,
  mz: 0,
  waterplane: emptyPlaneSums(),
});

/**
 * Per triangle a, b, c, with s = a + b + c, v = a·(b×c)/6 and N = (a×b + b×c + c×a)/6: v, N, v·s, s·Nᵀ. From another
 * point r, the tetrahedron has volume v - r·N and first moment (v - r·N)(s - 3r)/4 about r.
 */
const STRIDE = 16;

function addFaceSums(corners: Float64Array, k: number, sums: Float64Array, at: number): void {
  const corner = (j: number): Vec3 => [corners[k + 3 * j]!, corners[k + 3 * j + 1]!, corners[k + 3 * j + 2]!];
  const [a, b, c] = [corner(0), corner(1), corner(2)];
  const v = dot(a, cross(b, c)) / 6;
  const s = add(add(a, b), c);
  const normal = scale(cross(subtract(b, a), subtract(c, a)), 1 / 6);
  sums[at]! += v;
  for (let i = 0; i < 3; i++) {
    sums[at + 1 + i]! += normal[i]!;
    sums[at + 4 + i]! += v * s[i]!;
    for (let j = 0; j < 3; j++) sums[at + 7 + 3 * i + j]! += s[i]! * normal[j]!;
  }
}

/** The stored sums of a node wholly below, seen from the foot r = level·n. */
function addStored(stored: Float64Array, at: number, wet: Wet): void {
  const rx = wet.level * wet.n[0];
  const ry = wet.level * wet.n[1];
  const rz = wet.level * wet.n[2];
  const volume = stored[at]! - rx * stored[at + 1]! - ry * stored[at + 2]! - rz * stored[at + 3]!;
  const turned = (i: number): number =>
    stored[at + 4 + i]! - rx * stored[at + 7 + 3 * i]! - ry * stored[at + 8 + 3 * i]! - rz * stored[at + 9 + 3 * i]!;
  wet.volume += volume;
  wet.mx += (turned(0) - 3 * rx * volume) / 4;
  wet.my += (turned(1) - 3 * ry * volume) / 4;
  wet.mz += (turned(2) - 3 * rz * volume) / 4;
}

/** The wet part of one triangle, with its corners taken from the foot. */
function addFace(corners: Float64Array, k: number, wet: Wet): void {
  const [nx, ny, nz] = wet.n;
  const rx = wet.level * nx;
  const ry = wet.level * ny;
  const rz = wet.level * nz;
  const ax = corners[k]! - rx;
  const ay = corners[k + 1]! - ry;
  const az = corners[k + 2]! - rz;
  const bx = corners[k + 3]! - rx;
  const by = corners[k + 4]! - ry;
  const bz = corners[k + 5]! - rz;
  const cx = corners[k + 6]! - rx;
  const cy = corners[k + 7]! - ry;
  const cz = corners[k + 8]! - rz;
  const a = nx * ax + ny * ay + nz * az;
  const b = nx * bx + ny * by + nz * bz;
  const c = nx * cx + ny * cy + nz * cz;
  const wetCorners = (a < 0 ? 1 : 0) + (b < 0 ? 1 : 0) + (c < 0 ? 1 : 0);
  if (wetCorners === 0) return;
  if (wetCorners === 3) addTetrahedron(wet, ax, ay, az, bx, by, bz, cx, cy, cz);
  else {
    // The corner that differs from the other two goes first; turning the triangle keeps its orientation.
    const alone = wetCorners === 1;
    if (a < 0 === alone) addClipped(wet, alone, a, b, c, ax, ay, az, bx, by, bz, cx, cy, cz);
    else if (b < 0 === alone) addClipped(wet, alone, b, c, a, bx, by, bz, cx, cy, cz, ax, ay, az);
    else addClipped(wet, alone, c, a, b, cx, cy, cz, ax, ay, az, bx, by, bz);
  }
}

/** Triangle with its first corner alone on one side: below the plane (`aloneWet`), or above it. */
function addClipped(
  wet: Wet,
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
  const px = ax + (bx - ax) * toB;
  const py = ay + (by - ay) * toB;
  const pz = az + (bz - az) * toB;
  const qx = ax + (cx - ax) * toC;
  const qy = ay + (cy - ay) * toC;
  const qz = az + (cz - az) * toC;
  // The cap's edge runs against the clipped triangle's own, so that the cap faces n.
  if (aloneWet) {
    addTetrahedron(wet, ax, ay, az, px, py, pz, qx, qy, qz);
    addFan(wet, qx, qy, qz, px, py, pz);
  } else {
    addTetrahedron(wet, bx, by, bz, cx, cy, cz, qx, qy, qz);
    addTetrahedron(wet, bx, by, bz, qx, qy, qz, px, py, pz);
    addFan(wet, px, py, pz, qx, qy, qz);
  }
}

function addTetrahedron(
  wet: Wet,
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
  const volume = (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
  wet.volume += volume;
  wet.mx += (volume * (ax + bx + cx)) / 4;
  wet.my += (volume * (ay + by + cy)) / 4;
  wet.mz += (volume * (az + bz + cz)) / 4;
}

/** The triangle from the foot over one edge p to q of the cut. */
function addFan(wet: Wet, px: number, py: number, pz: number, qx: number, qy: number, qz: number): void {
  const { x, y, waterplane } = wet;
  const p1 = px * x[0] + py * x[1] + pz * x[2];
  const p2 = px * y[0] + py * y[1] + pz * y[2];
  const q1 = qx * x[0] + qy * x[1] + qz * x[2];
  const q2 = qx * y[0] + qy * y[1] + qz * y[2];
  const area = (p1 * q2 - p2 * q1) / 2;
  waterplane.area += area;
  waterplane.x += (area * (p1 + q1)) / 3;
  waterplane.y += (area * (p2 + q2)) / 3;
  waterplane.xx += (area * (p1 * p1 + p1 * q1 + q1 * q1)) / 6;
  waterplane.xy += (area * (2 * p1 * p2 + p1 * q2 + q1 * p2 + 2 * q1 * q2)) / 12;
  waterplane.yy += (area * (p2 * p2 + p2 * q2 + q2 * q2)) / 6;
}
