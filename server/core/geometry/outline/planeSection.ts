import { planeFrame } from '../cut/planeFrame.ts';
import type { Ball, Form, Polyhedron, Revolved } from '../form/form.ts';
import { addScaled, cross, dot, length, scale, type Vec3 } from '../form/vector.ts';
import { circle } from './silhouette.ts';

/** A closed line in the boat, m. */
export type Loop3 = readonly Vec3[];

/** Steps across a stretch of a profile's straight line: its cut is a piece of a conic. */
const STEPS = 16;
const SQUARE = 1e-9;

/** Where the plane `n·p = h` cuts the surface of a form: closed lines; an open mesh's are closed straight across. */
export function planeSection(form: Form, n: Vec3, h: number): readonly Loop3[] {
  switch (form.shape) {
    case 'ball':
      return ballSection(form, n, h);
    case 'compound':
      return form.parts.flatMap(part => planeSection(part, n, h));
    case 'revolved':
      return revolvedSection(form, n, h);
    case 'polyhedron':
      return meshSection(form, n, h);
  }
}

function ballSection({ centre, radius }: Ball, n: Vec3, h: number): readonly Loop3[] {
  const away = h - dot(n, centre);
  if (Math.abs(away) >= radius) return [];
  return [diskAt(addScaled(centre, n, away), Math.sqrt(radius * radius - away * away), n)];
}

function diskAt(middle: Vec3, radius: number, n: Vec3): Loop3 {
  const [first, second] = planeFrame(n);
  return circle([0, 0], radius).map(([a, b]) => addScaled(addScaled(middle, first, a), second, b));
}

function revolvedSection({ origin, axis, profile }: Revolved, n: Vec3, h: number): readonly Loop3[] {
  const along = dot(n, axis);
  const inPlane = addScaled(n, axis, -along);
  const across = length(inPlane);
  const level = h - dot(n, origin);
  if (across < SQUARE) return squareSection({ origin, axis, profile } as Revolved, level / along);
  const toDry = scale(inPlane, 1 / across);
  const aside = cross(axis, toDry);
  const chordAt = (s: number, radius: number): readonly [Vec3, Vec3] => {
    const tau = (level - along * s) / across;
    const half = Math.sqrt(Math.max(0, radius * radius - tau * tau));
    const middle = addScaled(addScaled(origin, axis, s), toDry, tau);
    return [addScaled(middle, aside, half), addScaled(middle, aside, -half)];
  };
  const loops: Loop3[] = [];
  let open: (readonly [Vec3, Vec3])[] = [];
  const close = (): void => {
    if (open.length > 1) loops.push([...open.map(([one]) => one), ...open.map(([, other]) => other).reverse()]);
    open = [];
  };
  for (const [i, [s1, r1]] of profile.entries()) {
    const before = profile[i - 1];
    if (!before) continue;
    const [s0, r0] = before;
    const tau = (s: number): number => (level - along * s) / across;
    const [from, to] = crossed([r0 - tau(s0), r1 - tau(s1)], [r0 + tau(s0), r1 + tau(s1)]);
    if (from >= to) {
      close();
      continue;
    }
    if (from > 0) close();
    for (let k = 0; k <= STEPS; k++) {
      // Closer steps towards both ends, where the chord opens and closes like a root.
      const f = from + ((to - from) * (1 - Math.cos((Math.PI * k) / STEPS))) / 2;
      open.push(chordAt(s0 + f * (s1 - s0), r0 + f * (r1 - r0)));
    }
    if (to < 1) close();
  }
  close();
  return loops;
}

/** The part 0..1 of a stretch in which two linear functions, given at its ends, are both at least 0. */
function crossed(
  [p0, p1]: readonly [number, number],
  [q0, q1]: readonly [number, number],
): readonly [from: number, to: number] {
  let [from, to] = [0, 1];
  for (const [a, b] of [
    [p0, p1],
    [q0, q1],
  ] as const) {
    if (a < 0 && b < 0) return [1, 0];
    if (a < 0) from = Math.max(from, a / (a - b));
    else if (b < 0) to = Math.min(to, a / (a - b));
  }
  return [from, to];
}

function squareSection({ origin, axis, profile }: Revolved, station: number): readonly Loop3[] {
  const radii = profile.flatMap(([s, radius], i) => {
    const before = profile[i - 1];
    if (!before || station < before[0] || station > s) return [];
    const f = s > before[0] ? (station - before[0]) / (s - before[0]) : 1;
    return [before[1] + f * (radius - before[1])];
  });
  const radius = Math.max(0, ...radii);
  return radius > 0 ? [diskAt(addScaled(origin, axis, station), radius, axis)] : [];
}

/** Triangles on both sides of the plane each give a stretch from one of their edges to another; these are joined. */
function meshSection({ vertices, faces }: Polyhedron, n: Vec3, h: number): readonly Loop3[] {
  const count = vertices.length / 3;
  const heights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    heights[i] = n[0] * vertices[3 * i]! + n[1] * vertices[3 * i + 1]! + n[2] * vertices[3 * i + 2]! - h;
  }
  const next = new Map<number, number[]>();
  const ends = new Set<number>();
  const edgeOf = (one: number, other: number): number => Math.min(one, other) * count + Math.max(one, other);
  for (let k = 0; k < faces.length; k += 3) {
    const i = faces[k]!;
    const j = faces[k + 1]!;
    const m = faces[k + 2]!;
    const one = heights[i]! >= 0;
    const two = heights[j]! >= 0;
    const three = heights[m]! >= 0;
    if (one === two && two === three) continue;
    // The corner that is alone on its side comes first.
    const [a, b, c] = one === two ? [m, i, j] : one === three ? [j, m, i] : [i, j, m];
    const [from, to] = heights[a]! >= 0 ? [edgeOf(a, b), edgeOf(c, a)] : [edgeOf(c, a), edgeOf(a, b)];
    const known = next.get(from);
    if (known) known.push(to);
    else next.set(from, [to]);
    ends.add(to);
  }
  const pointOn = (edge: number): Vec3 => {
    const [low, high] = [Math.floor(edge / count), edge % count];
    const f = heights[low]! / (heights[low]! - heights[high]!);
    const at = (axis: 0 | 1 | 2): number => vertices[3 * low + axis]! * (1 - f) + vertices[3 * high + axis]! * f;
    return [at(0), at(1), at(2)];
  };
  // Open lines first, from where they begin; what is left then runs round.
  const starts = [...[...next.keys()].filter(edge => !ends.has(edge)), ...next.keys()];
  return starts.flatMap(start => {
    const line: Vec3[] = [];
    // Ends: each round takes an edge away.
    for (let edge: number | undefined = start; edge !== undefined; edge = next.get(edge)?.pop()) {
      line.push(pointOn(edge));
      if (edge === start && line.length > 1) break;
    }
    return line.length > 2 ? [line] : [];
  });
}
