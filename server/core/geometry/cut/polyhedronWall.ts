import { finish, type Steps } from '../../steps/steps.ts';
import type { Polyhedron } from '../form/form.ts';
import { addScaled, cross, dot, length, subtract, type Vec3 } from '../form/vector.ts';
import { type BoundsTree, nodeSums, splitBelow, sumBelow, treeExtent } from './boundsTree.ts';
import { boundsTree, boundsTreeSteps } from './growTree.ts';
import { ALONE, type NearFaces, nearFaces, nearFacesSteps, SECOND, sortNear, THIRD, TIP } from './nearFaces.ts';
import { addPlaneSums, emptyPlaneSums, type PlaneAxes, type PlaneSums, planeFrame } from './planeFrame.ts';
import { type Wall, wallOfSurface } from './wall.ts';
import { weldSteps } from './weld.ts';

/** A wall of flat faces; every triangle belongs to it, whichever way it faces, and it need not be closed. */
export function polyhedronWall(form: Polyhedron): Wall {
  const tree = boundsTree(form);
  return wallOfMesh(form, wallMesh(tree, areasOf(tree)), {});
}

/** The same in steps, and with it what is else made when it is first cut. */
export function* polyhedronWallSteps(form: Polyhedron): Steps<Wall> {
  const tree = yield* boundsTreeSteps(form);
  yield;
  const areas = areasOf(tree);
  yield;
  const mesh = wallMesh(tree, areas);
  yield;
  const sorted = yield* nearFacesSteps(tree);
  yield;
  return wallOfMesh(form, mesh, { sorted, rough: yield* roughSteps(form, mesh) });
}

/** What is made when it is first asked for. */
interface Later {
  readonly sorted?: NearFaces;
  readonly rough?: Wall | null;
}

function wallOfMesh(form: Polyhedron, mesh: WallMesh, made: Later): Wall {
  const { tree, areas, ofNode } = mesh;
  let { sorted, rough } = made;
  const { centre } = tree;
  const wet = new Float64Array(STRIDE);
  const area = ofNode[0] ?? 0;
  return wallOfSurface({
    area,
    rough() {
      if (rough === undefined) rough = finish(roughSteps(form, mesh));
      return rough;
    },
    moment: addScaled([ofNode[1] ?? 0, ofNode[2] ?? 0, ofNode[3] ?? 0], centre, area),
    extent: treeExtent(tree),
    cut(n, h, thickness, sums) {
      const level = h - dot(n, centre);
      const [x, y] = planeFrame(n);
      const axes = { x, y, n, level };
      const near = sorted ?? nearFaces(tree);
      sorted = near;
      splitBelow(tree, n, level);
      sortNear(tree, near, axes);
      sumBelow(tree, ofNode, wet);
      addWhole(near, areas, axes, wet);
      const strip = emptyPlaneSums();
      addCrossed(near, areas, axes, wet, strip);
      sums.volume += thickness * wet[0]!;
      sums.mx += thickness * (wet[1]! + wet[0]! * centre[0]);
      sums.my += thickness * (wet[2]! + wet[0]! * centre[1]);
      sums.mz += thickness * (wet[3]! + wet[0]! * centre[2]);
      addPlaneSums(sums, strip, addScaled(centre, n, level), x, y, thickness);
    },
  });
}

/** Triangles that make a rougher wall worth its while, and corners that it has then, about. */
const MANY = 20_000;
const ROUGH_CORNERS = 2_000;
/** Of the area, what a rough wall must at least have to be much like the other: fine detail joins to nothing. */
const ALIKE = 0.8;

/** The wall with corners joined that are close together; null where too little would be left of it, or is there already. */
function* roughSteps(form: Polyhedron, { areas, ofNode }: WallMesh): Steps<Wall | null> {
  const area = ofNode[0] ?? 0;
  if (areas.length <= MANY || !(area > 0)) return null;
  const { form: joined } = yield* weldSteps(form, Math.sqrt(area / ROUGH_CORNERS));
  yield;
  const wall = polyhedronWall(joined);
  return wall.area > ALIKE * area ? wall : null;
}

interface WallMesh {
  readonly tree: BoundsTree;
  /** Of each triangle, m2. */
  readonly areas: Float64Array;
  /** `STRIDE` numbers a node: area and its first moment, from the tree's centre. */
  readonly ofNode: Float64Array;
}

const STRIDE = 4;

function areasOf({ corners }: BoundsTree): Float64Array {
  const areas = new Float64Array(corners.length / 9);
  for (let face = 0; face < areas.length; face++) areas[face] = areaOf(corners, 9 * face);
  return areas;
}

function wallMesh(tree: BoundsTree, areas: Float64Array): WallMesh {
  const { corners } = tree;
  const ofNode = nodeSums(tree, STRIDE, (face, sums, at) => {
    sums[at]! += areas[face]!;
    for (let i = 0; i < 3; i++) {
      const across = corners[9 * face + i]! + corners[9 * face + 3 + i]! + corners[9 * face + 6 + i]!;
      sums[at + 1 + i]! += (areas[face]! * across) / 3;
    }
  });
  return { tree, areas, ofNode };
}

function areaOf(corners: Float64Array, k: number): number {
  const corner = (j: number): Vec3 => [corners[k + j]!, corners[k + j + 1]!, corners[k + j + 2]!];
  return length(cross(subtract(corner(3), corner(0)), subtract(corner(6), corner(0)))) / 2;
}

/** Adds the triangles near the plane that are wet, or of which only a tip is dry. */
function addWhole({ ofFace, sorted }: NearFaces, areas: Float64Array, axes: PlaneAxes, wet: Float64Array): void {
  const { heights, alongX, alongY, whole, wholeCount } = sorted;
  let area = 0;
  let mx = 0;
  let my = 0;
  let mh = 0;
  for (let i = 0; i < wholeCount; i++) {
    const face = whole[2 * i]!;
    const size = areas[face]!;
    const first = whole[2 * i + 1]! >>> 3;
    const a = first + ofFace[3 * face]!;
    const b = first + ofFace[3 * face + 1]!;
    const c = first + ofFace[3 * face + 2]!;
    area += size;
    mx += size * (alongX[a]! + alongX[b]! + alongX[c]!);
    my += size * (alongY[a]! + alongY[b]! + alongY[c]!);
    mh += size * (heights[a]! + heights[b]! + heights[c]!);
  }
  addMoments(wet, axes, area, mx, my, mh);
}

/** Square of the sine of the angle between a face and the plane below which they are parallel: such a face is crossed at once. */
const PARALLEL = 1e-24;

/**
 * Adds the tips of the crossed triangles, or takes them off, and the strip that the plane crosses. With the heights a of
 * the corner alone on its side, b and c of the others, the tip has the share a²/((a - b)(a - c)) of the area, and grows by
 * twice that over a for each metre that the plane moves away.
 */
function addCrossed(
  { ofFace, sorted }: NearFaces,
  areas: Float64Array,
  axes: PlaneAxes,
  wet: Float64Array,
  strip: PlaneSums,
): void {
  const { heights, alongX, alongY, crossed, crossedCount } = sorted;
  // One by one: taken out of a list they would be boxed, and slow.
  let tipArea = 0;
  let mx = 0;
  let my = 0;
  let mh = 0;
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
    const height = heights[a]!;
    // No more divisions than needed.
    const perHeight = 1 / (height - heights[c]!);
    const s = height / (height - heights[b]!);
    const t = height * perHeight;
    const ax = alongX[a]!;
    const ay = alongY[a]!;
    const px = ax + s * (alongX[b]! - ax);
    const py = ay + s * (alongY[b]! - ay);
    const qx = ax + t * (alongX[c]! - ax);
    const qy = ay + t * (alongY[c]! - ay);
    const sumX = px + qx;
    const sumY = py + qy;
    const whole = areas[face]!;
    const tip = TIP[side]! * whole * s * t;
    tipArea += tip;
    mx += tip * (ax + sumX);
    my += tip * (ay + sumY);
    mh += tip * height;
    const gain = Math.abs(2 * whole * s * perHeight);
    const dx = qx - px;
    const dy = qy - py;
    // The crossing is `gain` times the sine long.
    if (!(dx * dx + dy * dy > PARALLEL * gain * gain)) continue;
    area += gain;
    areaX += gain * sumX;
    areaY += gain * sumY;
    xx += gain * (3 * sumX * sumX + dx * dx);
    xy += gain * (3 * sumX * sumY + dx * dy);
    yy += gain * (3 * sumY * sumY + dy * dy);
  }
  addMoments(wet, axes, tipArea, mx, my, mh);
  strip.area += area;
  strip.x += areaX / 2;
  strip.y += areaY / 2;
  strip.xx += xx / 12;
  strip.xy += xy / 12;
  strip.yy += yy / 12;
}

/** Adds to `wet` an area with its moments along the plane's axes from the foot of the centre on it, each three times. */
function addMoments(
  wet: Float64Array,
  { x, y, n, level }: PlaneAxes,
  area: number,
  alongX: number,
  alongY: number,
  up: number,
): void {
  const above = up / 3 + area * level;
  wet[0]! += area;
  for (let i = 0; i < 3; i++) wet[1 + i]! += (x[i]! * alongX + y[i]! * alongY) / 3 + n[i]! * above;
}
