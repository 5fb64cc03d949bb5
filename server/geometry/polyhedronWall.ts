import { type BoundsTree, boundsTree, nodeSums, splitBelow, sumBelow, treeExtent } from './boundsTree.ts';
import type { Polyhedron } from './form.ts';
import { addPlaneSums, emptyPlaneSums, type PlaneSums, planeFrame } from './planeFrame.ts';
import type { CutFrame } from './polyhedron.ts';
import { addScaled, cross, dot, length, subtract, type Vec3 } from './vector.ts';
import { type Wall, wallOfSurface } from './wall.ts';

/** A wall of flat faces; every triangle belongs to it, whichever way it faces, and it need not be closed. */
export function polyhedronWall(form: Polyhedron): Wall {
  const tree = boundsTree(form);
  const { corners, centre } = tree;
  const areas = Float64Array.from({ length: corners.length / 9 }, (_, face) => areaOf(corners, 9 * face));
  const stored = nodeSums(tree, STRIDE, (face, sums, at) => addFaceSums(corners, 9 * face, areas[face]!, sums, at));
  const wet = new Float64Array(STRIDE);
  const area = stored[0] ?? 0;
  return wallOfSurface({
    area,
    moment: addScaled([stored[1] ?? 0, stored[2] ?? 0, stored[3] ?? 0], centre, area),
    extent: treeExtent(tree),
    cut(n, h, thickness, sums) {
      const level = h - dot(n, centre);
      const [x, y] = planeFrame(n);
      splitBelow(tree, n, level);
      sumBelow(tree, stored, wet);
      const strip = emptyPlaneSums();
      addNear(tree, areas, { x, y, n, level }, wet, strip);
      sums.volume += thickness * wet[0]!;
      sums.mx += thickness * (wet[1]! + wet[0]! * centre[0]);
      sums.my += thickness * (wet[2]! + wet[0]! * centre[1]);
      sums.mz += thickness * (wet[3]! + wet[0]! * centre[2]);
      addPlaneSums(sums, strip, addScaled(centre, n, level), x, y, thickness);
    },
  });
}

/** Per triangle: area and its first moment, from the tree's centre. */
const STRIDE = 4;

function areaOf(corners: Float64Array, k: number): number {
  const corner = (j: number): Vec3 => [corners[k + j]!, corners[k + j + 1]!, corners[k + j + 2]!];
  return length(cross(subtract(corner(3), corner(0)), subtract(corner(6), corner(0)))) / 2;
}

function addFaceSums(corners: Float64Array, k: number, area: number, sums: Float64Array, at: number): void {
  sums[at]! += area;
  for (let i = 0; i < 3; i++) {
    sums[at + 1 + i]! += (area * (corners[k + i]! + corners[k + 3 + i]! + corners[k + 6 + i]!)) / 3;
  }
}

/** Square of the sine of the angle between a face and the plane below which they are parallel: such a face is crossed at once. */
const PARALLEL = 1e-24;

/**
 * Adds the wet area of the triangles near the plane with its first moment to `wet`, and the strip that the plane crosses.
 * Plain numbers all the way: nothing is allocated for a triangle. A corner exactly on the plane counts as dry. Of a
 * crossed triangle one corner is alone on its side, at the height a over the plane; with b and c the others', its tip
 * has the share a²/((a - b)(a - c)) of the area, and grows by twice that over a for each metre that the plane moves away.
 */
function addNear(
  { corners, split, firstFace, endFace }: BoundsTree,
  areas: Float64Array,
  { x, y, n, level }: CutFrame,
  wet: Float64Array,
  strip: PlaneSums,
): void {
  const [x0, x1, x2] = x;
  const [y0, y1, y2] = y;
  const [n0, n1, n2] = n;
  let [sum, mx, my, mz] = [0, 0, 0, 0];
  for (let leaf = 0; leaf < split.nearCount; leaf++) {
    const node = split.near[leaf]!;
    const end = endFace[node]!;
    for (let face = firstFace[node]!; face < end; face++) {
      const k = 9 * face;
      const h1 = n0 * corners[k]! + n1 * corners[k + 1]! + n2 * corners[k + 2]! - level;
      const h2 = n0 * corners[k + 3]! + n1 * corners[k + 4]! + n2 * corners[k + 5]! - level;
      const h3 = n0 * corners[k + 6]! + n1 * corners[k + 7]! + n2 * corners[k + 8]! - level;
      const wetCorners = (h1 < 0 ? 1 : 0) + (h2 < 0 ? 1 : 0) + (h3 < 0 ? 1 : 0);
      if (wetCorners === 0) continue;
      const area = areas[face]!;
      if (wetCorners > 1) {
        sum += area;
        mx += (area * (corners[k]! + corners[k + 3]! + corners[k + 6]!)) / 3;
        my += (area * (corners[k + 1]! + corners[k + 4]! + corners[k + 7]!)) / 3;
        mz += (area * (corners[k + 2]! + corners[k + 5]! + corners[k + 8]!)) / 3;
        if (wetCorners === 3) continue;
      }
      // Turned so that a is the corner alone.
      const isTipWet = wetCorners === 1;
      const alone = h1 < 0 === isTipWet ? 0 : h2 < 0 === isTipWet ? 1 : 2;
      const a = k + 3 * alone;
      const b = alone === 2 ? k : a + 3;
      const c = alone === 0 ? k + 6 : a - 3;
      const ha = alone === 0 ? h1 : alone === 1 ? h2 : h3;
      const hb = alone === 0 ? h2 : alone === 1 ? h3 : h1;
      const hc = alone === 0 ? h3 : alone === 1 ? h1 : h2;
      const s = ha / (ha - hb);
      const t = ha / (ha - hc);
      const px = corners[a]! + (corners[b]! - corners[a]!) * s;
      const py = corners[a + 1]! + (corners[b + 1]! - corners[a + 1]!) * s;
      const pz = corners[a + 2]! + (corners[b + 2]! - corners[a + 2]!) * s;
      const qx = corners[a]! + (corners[c]! - corners[a]!) * t;
      const qy = corners[a + 1]! + (corners[c + 1]! - corners[a + 1]!) * t;
      const qz = corners[a + 2]! + (corners[c + 2]! - corners[a + 2]!) * t;
      const tip = (isTipWet ? area : -area) * s * t;
      sum += tip;
      mx += (tip * (corners[a]! + px + qx)) / 3;
      my += (tip * (corners[a + 1]! + py + qy)) / 3;
      mz += (tip * (corners[a + 2]! + pz + qz)) / 3;
      const gain = Math.abs((2 * area * s) / (ha - hc));
      const dx = qx - px;
      const dy = qy - py;
      const dz = qz - pz;
      // The crossing is `gain` times the sine long.
      if (!(dx * dx + dy * dy + dz * dz > PARALLEL * gain * gain)) continue;
      const pu = x0 * px + x1 * py + x2 * pz;
      const pv = y0 * px + y1 * py + y2 * pz;
      const qu = x0 * qx + x1 * qy + x2 * qz;
      const qv = y0 * qx + y1 * qy + y2 * qz;
      strip.area += gain;
      strip.x += (gain * (pu + qu)) / 2;
      strip.y += (gain * (pv + qv)) / 2;
      strip.xx += (gain * (pu * pu + pu * qu + qu * qu)) / 3;
      strip.xy += (gain * (2 * pu * pv + pu * qv + qu * pv + 2 * qu * qv)) / 6;
      strip.yy += (gain * (pv * pv + pv * qv + qv * qv)) / 3;
    }
  }
  wet[0]! += sum;
  wet[1]! += mx;
  wet[2]! += my;
  wet[3]! += mz;
}
