import type { BoundsTree } from '../cut/boundsTree.ts';
import { boundsTree } from '../cut/growTree.ts';
import type { Bounds } from '../cut/solids.ts';
import { cornersOf } from '../form/box.ts';
import type { Form, Revolved } from '../form/form.ts';
import { addScaled, dot, length, subtract, type Vec3 } from '../form/vector.ts';
import { castAft, depthAt, stretchAt } from '../mesh/lineCast.ts';

/** How deep a place lies in a form, m: its distance from the surface, positive inside and negative outside. */
export type Depth = (place: Vec3) => number;

/** Of several forms that are one thing the deepest counts: inside where two overlap that is less than the whole truth. */
export function depthIn(form: Form): Depth {
  if (form.shape === 'ball') return place => form.radius - length(subtract(place, form.centre));
  if (form.shape === 'revolved') return revolvedDepth(form);
  if (form.shape === 'compound') {
    const parts = form.parts.map(depthIn);
    return place => parts.reduce((most, part) => Math.max(most, part(place)), -Infinity);
  }
  const box = cornersOf(form);
  if (box) return boxDepth(box);
  const tree = boundsTree(form);
  return place => {
    const away = distanceTo(tree, place);
    const hits = castAft(tree, place[1] + ASIDE[0], place[2] + ASIDE[1]);
    return depthAt(hits, place[0]) === 0 ? -away : away;
  };
}

/** A line through an edge may miss both its sides, so lines are cast this much beside the place, m: no tape shows it. */
const ASIDE = [1.3e-7, 0.7e-7] as const;

/** Inside the nearest side counts, outside the nearest place of the block. */
function boxDepth({ from, to }: Bounds): Depth {
  return place => {
    const [x, y, z] = ([0, 1, 2] as const).map(axis => Math.min(place[axis] - from[axis], to[axis] - place[axis]));
    const least = Math.min(x!, y!, z!);
    return least >= 0 ? least : -length([Math.min(x!, 0), Math.min(y!, 0), Math.min(z!, 0)]);
  };
}

/** In the half plane through the axis: the profile, closed by its flat ends, as straight stretches. */
function revolvedDepth({ origin, axis, profile }: Revolved): Depth {
  const [first, last] = [profile[0]!, profile.at(-1)!];
  const line = [[first[0], 0] as const, ...profile, [last[0], 0] as const];
  return place => {
    const from = subtract(place, origin);
    const s = dot(from, axis);
    const away = length(addScaled(from, axis, -s));
    const next = stretchAt(line, s);
    let square = Infinity;
    let radius = -1;
    // Ahead and astern until the stations alone are further away than what was found.
    for (let i = next; i < line.length; i++) {
      const ahead = line[i - 1]![0] - s;
      if (ahead > 0 && ahead * ahead >= square) break;
      square = Math.min(square, squareToStretch(line, i, s, away));
      if (ahead <= 0) radius = Math.max(radius, radiusAt(line, i, s));
    }
    for (let i = next - 1; i > 0; i--) {
      const astern = s - line[i]![0];
      if (astern * astern >= square) break;
      square = Math.min(square, squareToStretch(line, i, s, away));
    }
    const nearest = Math.sqrt(square);
    return away <= radius ? nearest : -nearest;
  };
}

/** Squared distance of a place at station `s`, `away` from the axis, from the stretch that ends at a point of the line. */
function squareToStretch(line: Revolved['profile'], i: number, s: number, away: number): number {
  const [[s0, r0], [s1, r1]] = [line[i - 1]!, line[i]!];
  const [ds, dr] = [s1 - s0, r1 - r0];
  const square = ds * ds + dr * dr;
  if (square === 0) return Infinity;
  const f = Math.min(1, Math.max(0, ((s - s0) * ds + (away - r0) * dr) / square));
  const [along, across] = [s - s0 - f * ds, away - r0 - f * dr];
  return along * along + across * across;
}

/** The radius of a stretch at a station on it; less than none on a flat shoulder. */
function radiusAt(line: Revolved['profile'], i: number, s: number): number {
  const [[s0, r0], [s1, r1]] = [line[i - 1]!, line[i]!];
  return s1 > s0 ? r0 + ((r1 - r0) * (s - s0)) / (s1 - s0) : -1;
}

/** Distance of the nearest triangle, m: boxes further off than one already found are passed over. */
function distanceTo(tree: BoundsTree, place: Vec3): number {
  const { boxes, corners, next, firstFace, endFace } = tree;
  const p = subtract(place, tree.centre);
  let square = Infinity;
  let node = 0;
  // Ends: the next node always has a greater number.
  while (node < next.length) {
    let apart = 0;
    for (let axis = 0; axis < 3; axis++) {
      const beyond = Math.abs(p[axis]! - boxes[6 * node + axis]!) - boxes[6 * node + 3 + axis]!;
      if (beyond > 0) apart += beyond * beyond;
    }
    const after = next[node]!;
    if (apart >= square) node = after;
    else if (after !== node + 1) node++;
    else {
      for (let face = firstFace[node]!; face < endFace[node]!; face++) {
        square = Math.min(square, squareToTriangle(p, corners, 9 * face));
      }
      node = after;
    }
  }
  return Math.sqrt(square);
}

/** Squared distance of a triangle: of its plane where the foot lies on it, else of the nearest of its three sides. */
function squareToTriangle([px, py, pz]: Vec3, corners: Float64Array, at: number): number {
  // Numbers by themselves: a mesh is asked for millions of them.
  const [ax, ay, az] = [corners[at]! - px, corners[at + 1]! - py, corners[at + 2]! - pz];
  const [bx, by, bz] = [corners[at + 3]! - px, corners[at + 4]! - py, corners[at + 5]! - pz];
  const [cx, cy, cz] = [corners[at + 6]! - px, corners[at + 7]! - py, corners[at + 8]! - pz];
  const [ux, uy, uz] = [bx - ax, by - ay, bz - az];
  const [vx, vy, vz] = [cx - ax, cy - ay, cz - az];
  const uu = ux * ux + uy * uy + uz * uz;
  const uv = ux * vx + uy * vy + uz * vz;
  const vv = vx * vx + vy * vy + vz * vz;
  const pu = -(ax * ux + ay * uy + az * uz);
  const pv = -(ax * vx + ay * vy + az * vz);
  const area = uu * vv - uv * uv;
  if (area > 0) {
    const [f, g] = [(vv * pu - uv * pv) / area, (uu * pv - uv * pu) / area];
    if (f >= 0 && g >= 0 && f + g <= 1) {
      const [x, y, z] = [ax + f * ux + g * vx, ay + f * uy + g * vy, az + f * uz + g * vz];
      return x * x + y * y + z * z;
    }
  }
  const one = squareToSide(ax, ay, az, ux, uy, uz);
  const two = squareToSide(bx, by, bz, cx - bx, cy - by, cz - bz);
  return Math.min(one, two, squareToSide(cx, cy, cz, -vx, -vy, -vz));
}

/** Squared distance from nought of a side that begins at a place and goes so far. */
function squareToSide(x: number, y: number, z: number, ux: number, uy: number, uz: number): number {
  const square = ux * ux + uy * uy + uz * uz;
  const f = square > 0 ? Math.min(1, Math.max(0, -(x * ux + y * uy + z * uz) / square)) : 0;
  const [dx, dy, dz] = [x + f * ux, y + f * uy, z + f * uz];
  return dx * dx + dy * dy + dz * dz;
}
