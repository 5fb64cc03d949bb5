import type { Polyhedron, Revolved } from './form.ts';

/** The part of a body of revolution between two stations (m); null for an empty one or an axis not fore-and-aft. */
export function sliceRevolved(form: Revolved, fromX: number, toX: number): Revolved | null {
  const [direction, y, z] = form.axis;
  if (y !== 0 || z !== 0) return null;
  const ends = [(fromX - form.origin[0]) / direction, (toX - form.origin[0]) / direction];
  const from = Math.min(...ends);
  const to = Math.max(...ends);
  const profile: (readonly [number, number])[] = [];
  const add = (s: number, radius: number): void => {
    const last = profile.at(-1);
    if (last?.[0] !== s || last[1] !== radius) profile.push([s, radius]);
  };
  form.profile.forEach(([s, radius], i) => {
    const before = form.profile[i - 1];
    for (const end of [from, to]) {
      if (before && before[0] < end && end < s) {
        add(end, before[1] + ((radius - before[1]) * (end - before[0])) / (s - before[0]));
      }
    }
    if (s >= from && s <= to) add(s, radius);
  });
  const first = profile[0];
  const last = profile.at(-1);
  return first && last && last[0] > first[0] ? { ...form, profile } : null;
}

/**
 * The part of a polyhedron between two stations (m); null when it is empty. The cut faces are closed by fans from one
 * of their own corners: sums over volumes, and cuts of them, are exact for any shape, since the parts of a fan outside
 * a hollow outline cancel; as a wall such a fan would count twice.
 */
export const slicePolyhedron = (form: Polyhedron, fromX: number, toX: number): Polyhedron | null =>
  sliceBelow(sliceBelow(form, 1, toX), -1, -fromX);

/** Keeps the part with `direction`·x <= level and closes it there. */
function sliceBelow(form: Polyhedron | null, direction: 1 | -1, level: number): Polyhedron | null {
  if (form === null) return null;
  const { vertices, faces } = form;
  const points = Array.from(vertices);
  const kept: number[] = [];
  const rim: (readonly [number, number])[] = [];
  const above = (vertex: number): number => direction * points[3 * vertex]! - level;
  // One new vertex an edge, whichever triangle comes first: neighbours share it, and the rim stays closed.
  const crossings = new Map<string, number>();
  const crossing = (one: number, other: number): number => {
    const [low, high] = one < other ? [one, other] : [other, one];
    const key = `${low} ${high}`;
    const known = crossings.get(key);
    if (known !== undefined) return known;
    const f = above(low) / (above(low) - above(high));
    const vertex = points.length / 3;
    points.push(direction * level);
    for (const axis of [1, 2]) points.push(points[3 * low + axis]! * (1 - f) + points[3 * high + axis]! * f);
    crossings.set(key, vertex);
    return vertex;
  };
  for (let face = 0; face < faces.length; face += 3) {
    const corners = [faces[face]!, faces[face + 1]!, faces[face + 2]!];
    const inside = corners.filter(vertex => above(vertex) < 0).length;
    if (inside === 0) continue;
    if (inside === 3) {
      kept.push(...corners);
      continue;
    }
    const alone = corners.findIndex(vertex => above(vertex) < 0 === (inside === 1));
    const [a, b, c] = [corners[alone]!, corners[(alone + 1) % 3]!, corners[(alone + 2) % 3]!];
    const p = crossing(a, b);
    const q = crossing(a, c);
    if (inside === 1) kept.push(a, p, q);
    else kept.push(b, c, q, b, q, p);
    rim.push(inside === 1 ? [q, p] : [p, q]);
  }
  const apex = rim[0]?.[0];
  if (apex !== undefined) for (const [p, q] of rim) if (p !== apex && q !== apex) kept.push(apex, p, q);
  if (kept.length === 0) return null;
  return { shape: 'polyhedron', ...compact(points, kept) };
}

/** Drops the vertices that no triangle uses any more. */
function compact(points: readonly number[], faces: readonly number[]): Pick<Polyhedron, 'vertices' | 'faces'> {
  const numbers = new Map<number, number>();
  const vertices: number[] = [];
  const renumbered = faces.map(vertex => {
    const known = numbers.get(vertex);
    if (known !== undefined) return known;
    const fresh = numbers.size;
    numbers.set(vertex, fresh);
    vertices.push(points[3 * vertex]!, points[3 * vertex + 1]!, points[3 * vertex + 2]!);
    return fresh;
  });
  return { vertices: Float64Array.from(vertices), faces: Uint32Array.from(renumbered) };
}
