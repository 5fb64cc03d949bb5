import { boundsTree, nodeSums, treeExtent, visitBelow } from './boundsTree.ts';
import { clipTriangles, type TriangleVisitor } from './clipTriangles.ts';
import type { Polyhedron } from './form.ts';
import { addPlaneSums, emptyPlaneSums, type PlaneSums, planeFrame } from './planeFrame.ts';
import { addScaled, dot, type Vec3 } from './vector.ts';
import { type Wall, wallOfSurface } from './wall.ts';

/** A wall of flat faces; every triangle belongs to it, whichever way it faces, and it need not be closed. */
export function polyhedronWall(form: Polyhedron): Wall {
  const tree = boundsTree(form);
  const { corners, centre } = tree;
  const stored = nodeSums(tree, STRIDE, (face, sums, at) => addFaceSums(corners, 9 * face, sums, at));
  const area = stored[0] ?? 0;
  return wallOfSurface({
    area,
    moment: addScaled([stored[1] ?? 0, stored[2] ?? 0, stored[3] ?? 0], centre, area),
    extent: treeExtent(tree),
    cut(n, h, thickness, sums) {
      const level = h - dot(n, centre);
      const plane = { n, level };
      const [x, y] = planeFrame(n);
      const foot = addScaled(centre, n, level);
      const wet = emptyWet(n, x, y);
      let [volume, mx, my, mz] = [0, 0, 0, 0];
      visitBelow(tree, n, level, {
        below: node => {
          volume += stored[STRIDE * node]!;
          mx += stored[STRIDE * node + 1]!;
          my += stored[STRIDE * node + 2]!;
          mz += stored[STRIDE * node + 3]!;
        },
        near: (first, end) => clipTriangles(corners, first, end, plane, wet),
      });
      sums.volume += thickness * (volume + wet.area);
      sums.mx += thickness * (mx + volume * centre[0] + wet.mx + wet.area * foot[0]);
      sums.my += thickness * (my + volume * centre[1] + wet.my + wet.area * foot[1]);
      sums.mz += thickness * (mz + volume * centre[2] + wet.mz + wet.area * foot[2]);
      addPlaneSums(sums, wet.strip, foot, x, y, thickness);
    },
  });
}

/** Per triangle: area and its first moment, from the tree's centre. */
const STRIDE = 4;

function addFaceSums(corners: Float64Array, k: number, sums: Float64Array, at: number): void {
  const at3 = (j: number): Vec3 => [corners[k + 3 * j]!, corners[k + 3 * j + 1]!, corners[k + 3 * j + 2]!];
  const [a, b, c] = [at3(0), at3(1), at3(2)];
  const area = triangleArea(...a, ...b, ...c);
  sums[at]! += area;
  for (let i = 0; i < 3; i++) sums[at + 1 + i]! += (area * (a[i]! + b[i]! + c[i]!)) / 3;
}

function triangleArea(
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  cx: number,
  cy: number,
  cz: number,
): number {
  const x = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
  const y = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
  const z = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  return Math.sqrt(x * x + y * y + z * z) / 2;
}

/** Sine of the angle between a face and the plane below which they count as parallel: such a face is crossed at once. */
const PARALLEL = 1e-12;

/** Sums in progress: wet area and its first moment from the foot of the plane, and the strip that the plane crosses. */
interface Wet extends TriangleVisitor {
  area: number;
  mx: number;
  my: number;
  mz: number;
  readonly strip: PlaneSums;
}

function emptyWet(n: Vec3, x: Vec3, y: Vec3): Wet {
  const strip = emptyPlaneSums();
  const add = (wet: Wet, area: number, sx: number, sy: number, sz: number): void => {
    wet.area += area;
    wet.mx += (area * sx) / 3;
    wet.my += (area * sy) / 3;
    wet.mz += (area * sz) / 3;
  };
  return {
    area: 0,
    mx: 0,
    my: 0,
    mz: 0,
    strip,
    whole(ax, ay, az, bx, by, bz, cx, cy, cz) {
      add(this, triangleArea(ax, ay, az, bx, by, bz, cx, cy, cz), ax + bx + cx, ay + by + cy, az + bz + cz);
    },
    clipped(aloneWet, ax, ay, az, bx, by, bz, cx, cy, cz, px, py, pz, qx, qy, qz) {
      if (aloneWet) this.whole(ax, ay, az, px, py, pz, qx, qy, qz);
      else {
        this.whole(bx, by, bz, cx, cy, cz, qx, qy, qz);
        this.whole(bx, by, bz, qx, qy, qz, px, py, pz);
      }
      // A face at the angle t to the plane gains 1/sin t of area by each step of h, along its crossing from p to q.
      const normalX = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
      const normalY = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
      const normalZ = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
      const turnX = n[1] * normalZ - n[2] * normalY;
      const turnY = n[2] * normalX - n[0] * normalZ;
      const turnZ = n[0] * normalY - n[1] * normalX;
      const normal = Math.sqrt(normalX * normalX + normalY * normalY + normalZ * normalZ);
      const sine = Math.sqrt(turnX * turnX + turnY * turnY + turnZ * turnZ) / normal;
      if (!(sine > PARALLEL)) return;
      const p1 = px * x[0] + py * x[1] + pz * x[2];
      const p2 = px * y[0] + py * y[1] + pz * y[2];
      const q1 = qx * x[0] + qy * x[1] + qz * x[2];
      const q2 = qx * y[0] + qy * y[1] + qz * y[2];
      const gain = Math.hypot(q1 - p1, q2 - p2) / sine;
      strip.area += gain;
      strip.x += (gain * (p1 + q1)) / 2;
      strip.y += (gain * (p2 + q2)) / 2;
      strip.xx += (gain * (p1 * p1 + p1 * q1 + q1 * q1)) / 3;
      strip.xy += (gain * (2 * p1 * p2 + p1 * q2 + q1 * p2 + 2 * q1 * q2)) / 6;
      strip.yy += (gain * (p2 * p2 + p2 * q2 + q2 * q2)) / 3;
    },
  };
}
