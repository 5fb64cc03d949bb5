import type { Polyhedron } from '../form/form.ts';
import { add, addScaled, cross, dot, length, scale, subtract, unit, type Vec3 } from '../form/vector.ts';
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

/**
 * The rims of all holes: sides that no other triangle runs along the other way, joined end to end. On a surface whose
 * neighbours agree as many of them leave a corner as come to it, so each chain closes.
 */
export function findGaps(form: Polyhedron, edges: MeshEdges): readonly Gap[] {
  const leaving = new Map<number, number[]>();
  for (const side of looseSides(form.faces, edges)) {
    const from = startOf(form.faces, side);
    const list = leaving.get(from);
    if (list) list.push(endOf(form.faces, side));
    else leaving.set(from, [endOf(form.faces, side)]);
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
        at = takeSharpest(form, before, at, leaving.get(at) ?? []) ?? start;
      }
      gaps.push(gapOf(form, rim));
    }
  }
  return gaps;
}

/**
 * Of several rims that touch at a corner, the side that turns back most sharply goes on: so a seam, whose two sides lie
 * on each other, is told from the hole that it ends at.
 */
function takeSharpest(form: Polyhedron, before: number, at: number, ends: number[]): number | undefined {
  if (ends.length <= 1) return ends.pop();
  const here = pointOf(form, at);
  const back = unit(subtract(pointOf(form, before), here));
  const sharpness = ends.map(end => dot(back, unit(subtract(pointOf(form, end), here))));
  return ends.splice(sharpness.indexOf(Math.max(...sharpness)), 1)[0];
}

function looseSides(faces: Uint32Array, { mates, crowded }: MeshEdges): readonly number[] {
  const loose: number[] = [];
  for (const [side, mate] of mates.entries()) {
    if (mate === -1 || (mate >= 0 && startOf(faces, side) === startOf(faces, mate))) loose.push(side);
  }
  for (const group of crowded) {
    const one = group.filter(side => startOf(faces, side) < endOf(faces, side));
    const other = group.filter(side => startOf(faces, side) > endOf(faces, side));
    const [more, fewer] = one.length > other.length ? [one, other] : [other, one];
    loose.push(...more.slice(fewer.length));
  }
  return loose;
}

const pointOf = ({ vertices }: Polyhedron, vertex: number): Vec3 => [
  vertices[3 * vertex]!,
  vertices[3 * vertex + 1]!,
  vertices[3 * vertex + 2]!,
];

function gapOf(form: Polyhedron, rim: readonly number[]): Gap {
  const points = rim.map(vertex => pointOf(form, vertex));
  const middle = scale(
    points.reduce<Vec3>((sum, point) => add(sum, point), [0, 0, 0]),
    1 / points.length,
  );
  const area = points.reduce<Vec3>(
    (sum, point, i) => {
      const next = points[(i + 1) % points.length]!;
      return addScaled(sum, cross(subtract(point, middle), subtract(next, middle)), 0.5);
    },
    [0, 0, 0],
  );
  const spans = ([0, 1, 2] as const).map(axis => {
    const least = points.reduce((low, point) => Math.min(low, point[axis]), Infinity);
    const most = points.reduce((high, point) => Math.max(high, point[axis]), -Infinity);
    return most - least;
  });
  return { rim, width: Math.max(...spans), area: length(area) };
}

/** The same surface with each hole closed straight across, by a fan from one point of its rim. */
export function closeGaps(form: Polyhedron, gaps: readonly Gap[]): Polyhedron {
  if (gaps.length === 0) return form;
  const lids = gaps.flatMap(({ rim }) => rim.slice(2).flatMap((vertex, i) => [rim[0]!, vertex, rim[i + 1]!]));
  const faces = new Uint32Array(form.faces.length + lids.length);
  faces.set(form.faces);
  faces.set(lids, form.faces.length);
  return { ...form, faces };
}

/** The volume between a point and a straight lid over the hole: how much of the whole hangs on how it is closed. */
export function volumeUnder(form: Polyhedron, { rim }: Gap, point: Vec3): number {
  const [first, ...rest] = rim.map(vertex => subtract(pointOf(form, vertex), point));
  if (!first) return 0;
  const six = rest.slice(1).reduce((sum, corner, i) => sum + dot(first, cross(rest[i]!, corner)), 0);
  return Math.abs(six) / 6;
}
