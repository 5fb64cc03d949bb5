import { boundsTree, nodeSums, treeBox, treeExtent, visitBelow } from './boundsTree.ts';
import { clipTriangles, type TriangleVisitor } from './clipTriangles.ts';
import type { Polyhedron } from './form.ts';
import type { Cuttable } from './immersion.ts';
import { addPlaneSums, emptyPlaneSums, type PlaneSums, planeFrame } from './planeFrame.ts';
import { add, addScaled, cross, dot, scale, subtract, type Vec3 } from './vector.ts';

/**
 * A solid bounded by triangles, closed and outward. By the divergence theorem its volume is the signed sum of the
 * tetrahedra from any point to its triangles; a point on the cutting plane makes those over the cut vanish, so only
 * the clipped triangles count. The cut is summed as a fan over its edges, oriented, so that holes subtract.
 */
export function polyhedronSolid(form: Polyhedron): Cuttable {
  const tree = boundsTree(form);
  const { corners, centre } = tree;
  const stored = nodeSums(tree, STRIDE, (face, sums, at) => addFaceSums(corners, 9 * face, sums, at));
  const volume = stored[0] ?? 0;
  const aboutCentre: Vec3 = [(stored[4] ?? 0) / 4, (stored[5] ?? 0) / 4, (stored[6] ?? 0) / 4];
  return {
    volume,
    moment: addScaled(aboutCentre, centre, volume),
    box: treeBox(tree),
    extent: treeExtent(tree),
    cut(n, h, sums) {
      const level = h - dot(n, centre);
      const plane = { n, level };
      const [x, y] = planeFrame(n);
      const wet = emptyWet(x, y);
      const fromCentre = scale(n, level);
      visitBelow(tree, n, level, {
        below: node => addStored(stored, STRIDE * node, fromCentre, wet),
        near: (first, end) => clipTriangles(corners, first, end, plane, wet),
      });
      const foot = add(centre, fromCentre);
      sums.volume += wet.volume;
      sums.mx += wet.mx + wet.volume * foot[0];
      sums.my += wet.my + wet.volume * foot[1];
      sums.mz += wet.mz + wet.volume * foot[2];
      addPlaneSums(sums, wet.waterplane, foot, x, y);
    },
  };
}

/**
 * Per triangle a, b, c, with s = a + b + c, v = a·(b×c)/6 and N = (b - a)×(c - a)/6: v, N, v·s, s·Nᵀ. From another
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

/** The stored sums of a node wholly below, seen from the foot of the plane. */
function addStored(stored: Float64Array, at: number, foot: Vec3, wet: Wet): void {
  const [rx, ry, rz] = foot;
  const volume = stored[at]! - rx * stored[at + 1]! - ry * stored[at + 2]! - rz * stored[at + 3]!;
  const turned = (i: number): number =>
    stored[at + 4 + i]! - rx * stored[at + 7 + 3 * i]! - ry * stored[at + 8 + 3 * i]! - rz * stored[at + 9 + 3 * i]!;
  wet.volume += volume;
  wet.mx += (turned(0) - 3 * rx * volume) / 4;
  wet.my += (turned(1) - 3 * ry * volume) / 4;
  wet.mz += (turned(2) - 3 * rz * volume) / 4;
}

/** Sums in progress: the wet volume and its first moment from the foot of the plane, and the cut. */
interface Wet extends TriangleVisitor {
  volume: number;
  mx: number;
  my: number;
  mz: number;
  readonly waterplane: PlaneSums;
}

function emptyWet(x: Vec3, y: Vec3): Wet {
  const waterplane = emptyPlaneSums();
  return {
    volume: 0,
    mx: 0,
    my: 0,
    mz: 0,
    waterplane,
    whole(ax, ay, az, bx, by, bz, cx, cy, cz) {
      const volume = (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
      this.volume += volume;
      this.mx += (volume * (ax + bx + cx)) / 4;
      this.my += (volume * (ay + by + cy)) / 4;
      this.mz += (volume * (az + bz + cz)) / 4;
    },
    clipped(aloneWet, ax, ay, az, bx, by, bz, cx, cy, cz, px, py, pz, qx, qy, qz) {
      // The cap's edge runs against the clipped triangle's own, so that the cap faces n.
      if (aloneWet) {
        this.whole(ax, ay, az, px, py, pz, qx, qy, qz);
        addFan(waterplane, x, y, qx, qy, qz, px, py, pz);
      } else {
        this.whole(bx, by, bz, cx, cy, cz, qx, qy, qz);
        this.whole(bx, by, bz, qx, qy, qz, px, py, pz);
        addFan(waterplane, x, y, px, py, pz, qx, qy, qz);
      }
    },
  };
}

/** The triangle from the foot over one edge p to q of the cut, along the axes x and y of the plane. */
function addFan(
  sums: PlaneSums,
  x: Vec3,
  y: Vec3,
  px: number,
  py: number,
  pz: number,
  qx: number,
  qy: number,
  qz: number,
): void {
  const p1 = px * x[0] + py * x[1] + pz * x[2];
  const p2 = px * y[0] + py * y[1] + pz * y[2];
  const q1 = qx * x[0] + qy * x[1] + qz * x[2];
  const q2 = qx * y[0] + qy * y[1] + qz * y[2];
  const area = (p1 * q2 - p2 * q1) / 2;
  sums.area += area;
  sums.x += (area * (p1 + q1)) / 3;
  sums.y += (area * (p2 + q2)) / 3;
  sums.xx += (area * (p1 * p1 + p1 * q1 + q1 * q1)) / 6;
  sums.xy += (area * (2 * p1 * p2 + p1 * q2 + q1 * p2 + 2 * q1 * q2)) / 12;
  sums.yy += (area * (p2 * p2 + p2 * q2 + q2 * q2)) / 6;
}
