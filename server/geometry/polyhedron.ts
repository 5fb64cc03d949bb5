import { type BoundsTree, boundsTree, nodeSums, splitBelow, sumBelow, treeBox, treeExtent } from './boundsTree.ts';
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
  const below = new Float64Array(STRIDE);
  const volume = stored[0] ?? 0;
  const aboutCentre: Vec3 = [(stored[4] ?? 0) / 4, (stored[5] ?? 0) / 4, (stored[6] ?? 0) / 4];
  return {
    volume,
    moment: addScaled(aboutCentre, centre, volume),
    box: treeBox(tree),
    extent: treeExtent(tree),
    cut(n, h, sums) {
      const level = h - dot(n, centre);
      const [x, y] = planeFrame(n);
      splitBelow(tree, n, level);
      const fromCentre = scale(n, level);
      sumBelow(tree, stored, below);
      const whole = seenFrom(fromCentre, below);
      const near = emptyWet();
      addNear(tree, { x, y, n, level }, near);
      const foot = add(centre, fromCentre);
      const wet = whole.volume + near.volume;
      sums.volume += wet;
      sums.mx += whole.moment[0] + x[0] * near.u + y[0] * near.v + n[0] * near.w + wet * foot[0];
      sums.my += whole.moment[1] + x[1] * near.u + y[1] * near.v + n[1] * near.w + wet * foot[1];
      sums.mz += whole.moment[2] + x[2] * near.u + y[2] * near.v + n[2] * near.w + wet * foot[2];
      addPlaneSums(sums, near.waterplane, foot, x, y);
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

/** Triangles wholly below, seen from the foot of the plane. */
function seenFrom([rx, ry, rz]: Vec3, s: Float64Array): { readonly volume: number; readonly moment: Vec3 } {
  const volume = s[0]! - rx * s[1]! - ry * s[2]! - rz * s[3]!;
  const turned = (i: number): number => s[4 + i]! - rx * s[7 + 3 * i]! - ry * s[8 + 3 * i]! - rz * s[9 + 3 * i]!;
  return {
    volume,
    moment: [(turned(0) - 3 * rx * volume) / 4, (turned(1) - 3 * ry * volume) / 4, (turned(2) - 3 * rz * volume) / 4],
  };
}

/** The plane n·p = level, from the tree's centre, with two unit vectors along it. */
export interface CutFrame {
  readonly x: Vec3;
  readonly y: Vec3;
  readonly n: Vec3;
  readonly level: number;
}

/** Sums in progress, in the plane's own axes from its foot: u and v along it, w up. */
interface Wet {
  volume: number;
  u: number;
  v: number;
  w: number;
  readonly waterplane: PlaneSums;
}

const emptyWet = (): Wet => ({ volume: 0, u: 0, v: 0, w: 0, waterplane: emptyPlaneSums() });

/**
 * Adds the wet part of the triangles near the plane. Plain numbers all the way: nothing is allocated for a triangle. A
 * corner exactly on the plane counts as dry. Of a crossed triangle one corner is alone on its side; the plane cuts off
 * its tip at the shares s and t of the two sides, and with them s·t of its tetrahedron.
 */
function addNear({ corners, split, firstFace, endFace }: BoundsTree, frame: CutFrame, wet: Wet): void {
  const { x, y, n, level } = frame;
  const [x0, x1, x2] = x;
  const [y0, y1, y2] = y;
  const [n0, n1, n2] = n;
  const { waterplane } = wet;
  let [volume, mu, mv, mw] = [0, 0, 0, 0];
  for (let leaf = 0; leaf < split.nearCount; leaf++) {
    const node = split.near[leaf]!;
    const end = 9 * endFace[node]!;
    for (let k = 9 * firstFace[node]!; k < end; k += 9) {
      const w1 = n0 * corners[k]! + n1 * corners[k + 1]! + n2 * corners[k + 2]! - level;
      const w2 = n0 * corners[k + 3]! + n1 * corners[k + 4]! + n2 * corners[k + 5]! - level;
      const w3 = n0 * corners[k + 6]! + n1 * corners[k + 7]! + n2 * corners[k + 8]! - level;
      const wetCorners = (w1 < 0 ? 1 : 0) + (w2 < 0 ? 1 : 0) + (w3 < 0 ? 1 : 0);
      if (wetCorners === 0) continue;
      // Turned so that a is the corner alone; turning a triangle keeps its orientation.
      const isTipWet = wetCorners === 1;
      const alone = wetCorners === 3 || w1 < 0 === isTipWet ? 0 : w2 < 0 === isTipWet ? 1 : 2;
      const a = k + 3 * alone;
      const b = alone === 2 ? k : a + 3;
      const c = alone === 0 ? k + 6 : a - 3;
      const wa = alone === 0 ? w1 : alone === 1 ? w2 : w3;
      const wb = alone === 0 ? w2 : alone === 1 ? w3 : w1;
      const wc = alone === 0 ? w3 : alone === 1 ? w1 : w2;
      const ua = x0 * corners[a]! + x1 * corners[a + 1]! + x2 * corners[a + 2]!;
      const va = y0 * corners[a]! + y1 * corners[a + 1]! + y2 * corners[a + 2]!;
      const ub = x0 * corners[b]! + x1 * corners[b + 1]! + x2 * corners[b + 2]!;
      const vb = y0 * corners[b]! + y1 * corners[b + 1]! + y2 * corners[b + 2]!;
      const uc = x0 * corners[c]! + x1 * corners[c + 1]! + x2 * corners[c + 2]!;
      const vc = y0 * corners[c]! + y1 * corners[c + 1]! + y2 * corners[c + 2]!;
      const whole = (ua * (vb * wc - wb * vc) + va * (wb * uc - ub * wc) + wa * (ub * vc - vb * uc)) / 6;
      if (wetCorners > 1) {
        volume += whole;
        mu += (whole * (ua + ub + uc)) / 4;
        mv += (whole * (va + vb + vc)) / 4;
        mw += (whole * (wa + wb + wc)) / 4;
        if (wetCorners === 3) continue;
      }
      const s = wa / (wa - wb);
      const t = wa / (wa - wc);
      const pu = ua + (ub - ua) * s;
      const pv = va + (vb - va) * s;
      const qu = ua + (uc - ua) * t;
      const qv = va + (vc - va) * t;
      const side = isTipWet ? 1 : -1;
      const tip = side * whole * s * t;
      volume += tip;
      mu += (tip * (ua + pu + qu)) / 4;
      mv += (tip * (va + pv + qv)) / 4;
      mw += (tip * wa) / 4;
      // The triangle from the foot over the edge of the cut, which runs against the clipped triangle's own: so it faces n.
      const area = (side * (qu * pv - qv * pu)) / 2;
      waterplane.area += area;
      waterplane.x += (area * (pu + qu)) / 3;
      waterplane.y += (area * (pv + qv)) / 3;
      waterplane.xx += (area * (pu * pu + pu * qu + qu * qu)) / 6;
      waterplane.xy += (area * (2 * pu * pv + pu * qv + qu * pv + 2 * qu * qv)) / 12;
      waterplane.yy += (area * (pv * pv + pv * qv + qv * qv)) / 6;
    }
  }
  wet.volume = volume;
  wet.u = mu;
  wet.v = mv;
  wet.w = mw;
}
