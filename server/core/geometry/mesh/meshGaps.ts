import { pacer, type Steps } from '../../steps/steps.ts';
import type { Polyhedron } from '../form/form.ts';
import { dot, subtract, unit, type Vec3 } from '../form/vector.ts';
import { endOf, type MeshEdges, startOf } from './meshEdges.ts';

/** A hole in a surface: the edges round it. */
export interface Gap {
  /** Vertex numbers, in the order in which the surface's own triangles run along them. */
  readonly rim: readonly number[];
  /** Greatest extent along one of the axes. */
  readonly width: number;
  /** Of the hole as seen square on. */
  readonly area: number;
}

/** Open sides at one corner beyond which none is chosen: each would be held against all others, and no drawing has so many. */
const MANY_AT_CORNER = 64;
/** Sides that are looked at in one step. */
const STEP = 20_000;

/**
 * The rims of all holes: sides that no other triangle runs along the other way, joined end to end. On a surface whose
 * neighbours agree as many of them leave a corner as come to it, so each chain closes.
 */
export function* findGaps(form: Polyhedron, edges: MeshEdges): Steps<readonly Gap[]> {
  const isDue = pacer(STEP);
  const leaving = new Map<number, number[]>();
  for (const side of looseSides(form.faces, edges)) {
    const from = startOf(form.faces, side);
    const list = leaving.get(from);
    if (list) list.push(endOf(form.faces, side));
    else leaving.set(from, [endOf(form.faces, side)]);
    if (isDue(1)) yield;
  }
  const gaps: Gap[] = [];
  for (const [start, ends] of leaving) {
    // Ends: each round takes an open side away.
    while (ends.length > 0) {
      const rim = [start];
      // Ends: each round takes an open side away.
      for (let at = ends.pop()!; at !== start; ) {
        const before = rim.at(-1)!;
        rim.push(at);
        const onward = leaving.get(at) ?? [];
        if (isDue(Math.min(onward.length, MANY_AT_CORNER))) yield;
        at = takeSharpest(form, before, at, onward) ?? start;
      }
      gaps.push(gapOf(form, rim));
      if (isDue(rim.length)) yield;
    }
  }
  return gaps;
}

/**
 * Of several rims that touch at a corner, the side that turns back most sharply goes on: so a seam, whose two sides lie
 * on each other, is told from the hole that it ends at.
 */
function takeSharpest(form: Polyhedron, before: number, at: number, ends: number[]): number | undefined {
  if (ends.length <= 1 || ends.length > MANY_AT_CORNER) return ends.pop();
  const here = pointOf(form, at);
  const back = unit(subtract(pointOf(form, before), here));
  const sharpness = ends.map(end => dot(back, unit(subtract(pointOf(form, end), here))));
  return ends.splice(sharpness.indexOf(Math.max(...sharpness)), 1)[0];
}

/** Of an edge that many triangles have: what runs along it one way more often than the other. */
function* looseSides(faces: Uint32Array, { mates, crowded }: MeshEdges): Iterable<number> {
  for (const [side, mate] of mates.entries()) {
    if (mate === -1 || (mate >= 0 && startOf(faces, side) === startOf(faces, mate))) yield side;
  }
  for (const group of crowded) {
    const one = group.filter(side => startOf(faces, side) < endOf(faces, side));
    const other = group.filter(side => startOf(faces, side) > endOf(faces, side));
    const [more, fewer] = one.length > other.length ? [one, other] : [other, one];
    yield* more.slice(fewer.length);
  }
}

const pointOf = ({ vertices }: Polyhedron, vertex: number): Vec3 => [
  vertices[3 * vertex]!,
  vertices[3 * vertex + 1]!,
  vertices[3 * vertex + 2]!,
];

/** A rim may have as many corners as the mesh: numbers alone, and no point made of them, go through it in a moment. */
function gapOf({ vertices }: Polyhedron, rim: readonly number[]): Gap {
  let width = 0;
  const middle = [0, 0, 0];
  for (let axis = 0; axis < 3; axis++) {
    let [least, most, sum] = [Infinity, -Infinity, 0];
    for (const vertex of rim) {
      const value = vertices[3 * vertex + axis]!;
      least = Math.min(least, value);
      most = Math.max(most, value);
      sum += value;
    }
    width = Math.max(width, most - least);
    middle[axis] = sum / rim.length;
  }
  const [mx, my, mz] = middle as [number, number, number];
  let [x, y, z] = [0, 0, 0];
  let before = 3 * rim.at(-1)!;
  for (const vertex of rim) {
    const at = 3 * vertex;
    const [ax, ay, az] = [vertices[before]! - mx, vertices[before + 1]! - my, vertices[before + 2]! - mz];
    const [bx, by, bz] = [vertices[at]! - mx, vertices[at + 1]! - my, vertices[at + 2]! - mz];
    x += (ay * bz - az * by) / 2;
    y += (az * bx - ax * bz) / 2;
    z += (ax * by - ay * bx) / 2;
    before = at;
  }
  return { rim, width, area: Math.hypot(x, y, z) };
}

/** The same surface with each hole closed straight across, by a fan from one point of its rim. */
export function closeGaps(form: Polyhedron, gaps: readonly Gap[]): Polyhedron {
  if (gaps.length === 0) return form;
  const lids = gaps.reduce((sum, { rim }) => sum + Math.max(0, rim.length - 2), 0);
  const faces = new Uint32Array(form.faces.length + 3 * lids);
  faces.set(form.faces);
  let at = form.faces.length;
  for (const { rim } of gaps) {
    for (let i = 2; i < rim.length; i++) {
      faces[at] = rim[0]!;
      faces[at + 1] = rim[i]!;
      faces[at + 2] = rim[i - 1]!;
      at += 3;
    }
  }
  return { ...form, faces };
}

/** The volume between a point and a straight lid over the hole: how much of the whole hangs on how it is closed. */
export function volumeUnder({ vertices }: Polyhedron, { rim }: Gap, [px, py, pz]: Vec3): number {
  const first = 3 * rim[0]!;
  const [fx, fy, fz] = [vertices[first]! - px, vertices[first + 1]! - py, vertices[first + 2]! - pz];
  let six = 0;
  for (let i = 2; i < rim.length; i++) {
    const [a, b] = [3 * rim[i - 1]!, 3 * rim[i]!];
    const [ax, ay, az] = [vertices[a]! - px, vertices[a + 1]! - py, vertices[a + 2]! - pz];
    const [bx, by, bz] = [vertices[b]! - px, vertices[b + 1]! - py, vertices[b + 2]! - pz];
    six += fx * (ay * bz - az * by) + fy * (az * bx - ax * bz) + fz * (ax * by - ay * bx);
  }
  return Math.abs(six) / 6;
}
