import type { Steps } from '../../steps/steps.ts';
import { type Corners, cornersOf } from '../form/box.ts';
import type { Polyhedron } from '../form/form.ts';
import { add, addScaled, cross, dot, scale, subtract, type Vec3 } from '../form/vector.ts';
import { BLOCK_FACES, blockSorted, sortBlock } from './blockFaces.ts';
import { type BoundsTree, nodeSums, splitBelow, sumBelow, treeBox, treeExtent } from './boundsTree.ts';
import { boundsTree, boundsTreeSteps } from './growTree.ts';
import type { Cuttable, Immersion } from './immersion.ts';
import {
  ALONE,
  type NearFaces,
  nearFaces,
  nearFacesSteps,
  SECOND,
  type SortedFaces,
  sortNear,
  THIRD,
  TIP,
} from './nearFaces.ts';
import { addPlaneSums, emptyPlaneSums, type PlaneAxes, type PlaneSums, planeFrame } from './planeFrame.ts';

/**
 * A solid bounded by triangles, closed and outward. By the divergence theorem its volume is the signed sum of the
 * tetrahedra from any point to its triangles; a point on the cutting plane makes those over the cut vanish, so only
 * the clipped triangles count. The cut is summed as a fan over its edges, oriented, so that holes subtract.
 */
export function polyhedronSolid(form: Polyhedron): Cuttable {
  const block = cornersOf(form);
  return block ? blockSolid(block) : meshSolid(solidMesh(boundsTree(form)), null);
}

/** The same in steps, and with it what is else made when it is first cut. */
export function* polyhedronSolidSteps(form: Polyhedron): Steps<Cuttable> {
  if (cornersOf(form)) return polyhedronSolid(form);
  const tree = yield* boundsTreeSteps(form);
  yield;
  const mesh = solidMesh(tree);
  yield;
  return meshSolid(mesh, yield* nearFacesSteps(tree));
}

interface SolidMesh {
  readonly tree: BoundsTree;
  /** `STRIDE` numbers a node. */
  readonly stored: Float64Array;
}

function solidMesh(tree: BoundsTree): SolidMesh {
  const { corners } = tree;
  return { tree, stored: nodeSums(tree, STRIDE, (face, sums, at) => addFaceSums(corners, 9 * face, sums, at)) };
}

function meshSolid({ tree, stored }: SolidMesh, made: NearFaces | null): Cuttable {
  let sorted = made;
  const { centre } = tree;
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
      // Most bodies that are only tried are never cut.
      const near = sorted ?? nearFaces(tree);
      sorted = near;
      splitBelow(tree, n, level);
      sortNear(tree, near, { x, y, n, level });
      const fromCentre = scale(n, level);
      sumBelow(tree, stored, below);
      addWet(sums, near.ofFace, near.sorted, { x, y, n, foot: add(centre, fromCentre) }, seenFrom(fromCentre, below));
    },
  };
}

/**
 * A rectangular block that stands along the boat's axes: by the same sums, over its eight corners and no tree. Most bodies
 * of most boats are such.
 */
function blockSolid({ from, to }: Corners): Cuttable {
  const middle: Vec3 = scale(add(from, to), 1 / 2);
  const half: Vec3 = scale(subtract(to, from), 1 / 2);
  const volume = 8 * half[0] * half[1] * half[2];
  return {
    volume,
    moment: scale(middle, volume),
    box: { middle, half },
    extent(n) {
      const height = dot(n, middle);
      const reach = Math.abs(n[0]) * half[0] + Math.abs(n[1]) * half[1] + Math.abs(n[2]) * half[2];
      return [height - reach, height + reach];
    },
    cut(n, h, sums) {
      const level = h - dot(n, middle);
      const [x, y] = planeFrame(n);
      sortBlock(half, { x, y, n, level });
      addWet(sums, BLOCK_FACES, blockSorted, { x, y, n, foot: addScaled(middle, n, level) }, NOTHING);
    },
  };
}

interface Foot extends Omit<PlaneAxes, 'level'> {
  /** Of the body's middle on the plane. */
  readonly foot: Vec3;
}

/** Adds the wet part of the faces that were sorted, and `whole`, which is wet without a look. */
function addWet(sums: Immersion, ofFace: Uint8Array, sorted: SortedFaces, { x, y, n, foot }: Foot, whole: Seen): void {
  const cut = emptyWet();
  addWhole(ofFace, sorted, cut);
  addCrossed(ofFace, sorted, cut);
  const wet = whole.volume + cut.volume;
  sums.volume += wet;
  sums.mx += whole.moment[0] + x[0] * cut.u + y[0] * cut.v + n[0] * cut.w + wet * foot[0];
  sums.my += whole.moment[1] + x[1] * cut.u + y[1] * cut.v + n[1] * cut.w + wet * foot[1];
  sums.mz += whole.moment[2] + x[2] * cut.u + y[2] * cut.v + n[2] * cut.w + wet * foot[2];
  addPlaneSums(sums, cut.waterplane, foot, x, y);
}

/**
 * Per triangle a, b, c, with s = a + b + c, v = a·(b×c)/6 and N = (b - a)×(c - a)/6: v, N, v·s, s·Nᵀ. From another
 * point r, the tetrahedron has volume v - r·N and first moment (v - r·N)(s - 3r)/4 about r.
 */
const STRIDE = 16;

/** What lies below, for one cut at a time. */
const below = new Float64Array(STRIDE);

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

interface Seen {
  readonly volume: number;
  readonly moment: Vec3;
}

const NOTHING: Seen = { volume: 0, moment: [0, 0, 0] };

/** Triangles wholly below, seen from the foot of the plane. */
function seenFrom([rx, ry, rz]: Vec3, s: Float64Array): Seen {
  const volume = s[0]! - rx * s[1]! - ry * s[2]! - rz * s[3]!;
  const turned = (i: number): number => s[4 + i]! - rx * s[7 + 3 * i]! - ry * s[8 + 3 * i]! - rz * s[9 + 3 * i]!;
  return {
    volume,
    moment: [(turned(0) - 3 * rx * volume) / 4, (turned(1) - 3 * ry * volume) / 4, (turned(2) - 3 * rz * volume) / 4],
  };
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

/** Adds the tetrahedra from the foot to the triangles near the plane that are wet, or of which only a tip is dry. */
function addWhole(ofFace: Uint8Array, sorted: SortedFaces, wet: Wet): void {
  const { heights, alongX, alongY, whole, wholeCount } = sorted;
  // One by one: taken out of a list they would be boxed, and slow.
  let volume = 0;
  let mu = 0;
  let mv = 0;
  let mw = 0;
  for (let i = 0; i < wholeCount; i++) {
    const face = whole[2 * i]!;
    const first = whole[2 * i + 1]! >>> 3;
    const a = first + ofFace[3 * face]!;
    const b = first + ofFace[3 * face + 1]!;
    const c = first + ofFace[3 * face + 2]!;
    const ua = alongX[a]!;
    const va = alongY[a]!;
    const wa = heights[a]!;
    const ub = alongX[b]!;
    const vb = alongY[b]!;
    const wb = heights[b]!;
    const uc = alongX[c]!;
    const vc = alongY[c]!;
    const wc = heights[c]!;
    const tetrahedron = (ua * (vb * wc - wb * vc) + va * (wb * uc - ub * wc) + wa * (ub * vc - vb * uc)) / 6;
    volume += tetrahedron;
    mu += tetrahedron * (ua + ub + uc);
    mv += tetrahedron * (va + vb + vc);
    mw += tetrahedron * (wa + wb + wc);
  }
  wet.volume += volume;
  wet.u += mu / 4;
  wet.v += mv / 4;
  wet.w += mw / 4;
}

/**
 * Adds the tips of the crossed triangles, or takes them off, and the cut. The plane cuts off a tip at the shares s and t of
 * its two sides, and with them s·t of the tetrahedron.
 */
function addCrossed(ofFace: Uint8Array, sorted: SortedFaces, wet: Wet): void {
  const { heights, alongX, alongY, crossed, crossedCount } = sorted;
  const { waterplane } = wet;
  let volume = 0;
  let mu = 0;
  let mv = 0;
  let mw = 0;
  let area = 0;
  let areaX = 0;
  let areaY = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = 0; i < crossedCount; i++) {
    const face = crossed[2 * i]!;
    const first = crossed[2 * i + 1]! >>> 3;
    const side = crossed[2 * i + 1]! & 7;
    const a = first + ofFace[3 * face + ALONE[side]!]!;
    const b = first + ofFace[3 * face + SECOND[side]!]!;
    const c = first + ofFace[3 * face + THIRD[side]!]!;
    const ua = alongX[a]!;
    const va = alongY[a]!;
    const wa = heights[a]!;
    const ub = alongX[b]!;
    const vb = alongY[b]!;
    const wb = heights[b]!;
    const uc = alongX[c]!;
    const vc = alongY[c]!;
    const wc = heights[c]!;
    const tetrahedron = (ua * (vb * wc - wb * vc) + va * (wb * uc - ub * wc) + wa * (ub * vc - vb * uc)) / 6;
    const s = wa / (wa - wb);
    const t = wa / (wa - wc);
    const pu = ua + (ub - ua) * s;
    const pv = va + (vb - va) * s;
    const qu = ua + (uc - ua) * t;
    const qv = va + (vc - va) * t;
    const tip = TIP[side]! * tetrahedron * s * t;
    volume += tip;
    mu += tip * (ua + pu + qu);
    mv += tip * (va + pv + qv);
    mw += tip * wa;
    // The triangle from the foot over the edge of the cut, which runs against the clipped triangle's own: so it faces n.
    const fan = TIP[side]! * (qu * pv - qv * pu);
    area += fan;
    areaX += fan * (pu + qu);
    areaY += fan * (pv + qv);
    xx += fan * (pu * pu + pu * qu + qu * qu);
    xy += fan * (2 * pu * pv + pu * qv + qu * pv + 2 * qu * qv);
    yy += fan * (pv * pv + pv * qv + qv * qv);
  }
  wet.volume += volume;
  wet.u += mu / 4;
  wet.v += mv / 4;
  wet.w += mw / 4;
  waterplane.area += area / 2;
  waterplane.x += areaX / 6;
  waterplane.y += areaY / 6;
  waterplane.xx += xx / 12;
  waterplane.xy += xy / 24;
  waterplane.yy += yy / 12;
}
