import type { BoundsTree } from '../cut/boundsTree.ts';
import { boundsTree } from '../cut/growTree.ts';
import { cornersOf } from '../form/box.ts';
import type { Form, Revolved } from '../form/form.ts';
import { addScaled, dot, length, subtract, type Vec3 } from '../form/vector.ts';

/** Where a line parallel to the boat's length goes through a surface. */
export interface Hit {
  /** m. */
  readonly x: number;
  /** +1 where the line goes in on its way aft, -1 where it comes out. */
  readonly step: 1 | -1;
}

/** All crossings of the line at `y`, `z`, from forward to aft. A line through an edge may count for both sides or none. */
export const castAft = (tree: BoundsTree, y: number, z: number): readonly Hit[] =>
  hitsAft(tree, y, z).sort((a, b) => a.x - b.x);

/** Triangles that may still be looked at. */
export interface Looks {
  left: number;
}

/** The same in no order; not all of them where `looks` run out. */
export function hitsAft(tree: BoundsTree, y: number, z: number, looks: Looks = { left: Infinity }): Hit[] {
  const { boxes, corners, next, centre } = tree;
  const [py, pz] = [y - centre[1], z - centre[2]];
  const hits: Hit[] = [];
  let node = 0;
  // Ends: the next node always has a greater number.
  while (node < next.length && looks.left > 0) {
    const at = 6 * node;
    const isNear = Math.abs(py - boxes[at + 1]!) <= boxes[at + 4]! && Math.abs(pz - boxes[at + 2]!) <= boxes[at + 5]!;
    const after = next[node]!;
    if (isNear && after !== node + 1) {
      node++;
      continue;
    }
    for (let face = isNear ? tree.firstFace[node]! : Infinity; face < tree.endFace[node]!; face++) {
      looks.left--;
      const hit = hitOf(corners, 9 * face, py, pz);
      if (hit) hits.push({ x: hit.x + centre[0], step: hit.step });
    }
    node = after;
  }
  return hits;
}

/** Barycentric coordinates of the line's foot in the triangle's shadow on the plane x = 0. */
function hitOf(corners: Float64Array, k: number, py: number, pz: number): Hit | null {
  const shadow = (i: number, j: number): number =>
    (corners[k + 3 * i + 1]! - py) * (corners[k + 3 * j + 2]! - pz) -
    (corners[k + 3 * j + 1]! - py) * (corners[k + 3 * i + 2]! - pz);
  const [a, b, c] = [shadow(1, 2), shadow(2, 0), shadow(0, 1)];
  if (!((a > 0 && b > 0 && c > 0) || (a < 0 && b < 0 && c < 0))) return null;
  const area = a + b + c;
  const x = (a * corners[k]! + b * corners[k + 3]! + c * corners[k + 6]!) / area;
  return { x, step: area < 0 ? 1 : -1 };
}

/** Whether a place lies inside a form, asked line by line: first the line's y and z, then places along it by their x. */
export function insideOf(form: Form): (y: number, z: number) => (x: number) => boolean {
  if (form.shape === 'ball') return (y, z) => x => length(subtract([x, y, z], form.centre)) <= form.radius;
  if (form.shape === 'revolved') return (y, z) => x => isInRevolved(form, [x, y, z]);
  if (form.shape === 'compound') {
    const parts = form.parts.map(insideOf);
    return (y, z) => {
      const lines = parts.map(part => part(y, z));
      return x => lines.some(isInside => isInside(x));
    };
  }
  const box = cornersOf(form);
  if (box) {
    const isBetween = (value: number, axis: 0 | 1 | 2) => value >= box.from[axis] && value <= box.to[axis];
    return (y, z) => {
      const isBeside = !isBetween(y, 1) || !isBetween(z, 2);
      return x => !isBeside && isBetween(x, 0);
    };
  }
  const tree = boundsTree(form);
  return (y, z) => {
    const hits = castAft(tree, y, z);
    return x => depthAt(hits, x) !== 0;
  };
}

/** How often a closed surface wraps round a place on its line: 0 outside, 1 inside. */
export const depthAt = (hits: readonly Hit[], x: number): number =>
  hits.reduce((depth, hit) => (hit.x < x ? depth + hit.step : depth), 0);

function isInRevolved({ origin, axis, profile }: Revolved, p: Vec3): boolean {
  const from = subtract(p, origin);
  const s = dot(from, axis);
  const away = length(addScaled(from, axis, -s));
  for (let i = stretchAt(profile, s); i < profile.length; i++) {
    const [[from0, radius0], [to, radius]] = [profile[i - 1]!, profile[i]!];
    if (from0 > s) return false;
    const there =
      to === from0 ? Math.max(radius0, radius) : radius0 + ((radius - radius0) * (s - from0)) / (to - from0);
    if (away <= there) return true;
  }
  return false;
}

/** The first stretch of a profile that reaches a station, by the number of its end: stations never fall. */
export function stretchAt(profile: Revolved['profile'], s: number): number {
  let [least, most] = [1, profile.length];
  // Ends: each round halves what is left.
  while (least < most) {
    const middle = (least + most) >> 1;
    if (profile[middle]![0] >= s) most = middle;
    else least = middle + 1;
  }
  return least;
}
