import type { Form, Polyhedron, Revolved } from '../form/form.ts';
import type { Point2 } from './outline.ts';
import { thinned } from './thinned.ts';

/** The boat axis along which one looks: 0 from astern (y, z), 1 from the side (x, z), 2 from above (x, y). */
export type Sight = 0 | 1 | 2;

/** A closed line, m. */
export type Loop = readonly Point2[];

/** The two axes that one sees, looking along a third. */
export const SEEN: readonly [readonly [1, 2], readonly [0, 2], readonly [0, 1]] = [
  [1, 2],
  [0, 2],
  [0, 1],
];

/**
 * What a form looks like along one of the boat's axes, as loops that may overlap (m). Balls and bodies of revolution that
 * lie along an axis of the boat are exact but for circles, which are polygons; a body of revolution that lies otherwise is
 * shown by its convex hull. Of a mesh it is the upper and the lower edge, so that holes seen right through are filled.
 */
export function silhouetteOf(form: Form, along: Sight): readonly Loop[] {
  switch (form.shape) {
    case 'ball':
      return [circle([form.centre[SEEN[along][0]], form.centre[SEEN[along][1]]], form.radius)];
    case 'compound':
      return form.parts.flatMap(part => silhouetteOf(part, along));
    case 'revolved':
      return [silhouetteOfRevolved(form, along)];
    case 'polyhedron':
      return silhouetteOfMesh(form, along);
  }
}

/** Corners of the polygons that stand for circles: they miss the round by less than a thousandth of the radius. */
const CORNERS = 72;

export const circle = ([x, y]: Point2, radius: number): Loop =>
  Array.from({ length: CORNERS }, (_, i): Point2 => {
    const angle = (2 * Math.PI * i) / CORNERS;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

function silhouetteOfRevolved({ origin, axis, profile }: Revolved, along: Sight): Loop {
  const [p, q] = SEEN[along];
  const middle = (s: number): Point2 => [origin[p] + s * axis[p], origin[q] + s * axis[q]];
  if (Math.abs(axis[along]) === 1) return circle(middle(0), Math.max(...profile.map(([, radius]) => radius)));
  if (axis[along] !== 0) return hullOf(profile.flatMap(([s, radius]) => disk(middle(s), radius, axis, along)));
  const side = (s: number, away: number): Point2 => {
    const [x, y] = middle(s);
    return [x - axis[q] * away, y + axis[p] * away];
  };
  return [
    ...profile.map(([s, radius]) => side(s, radius)),
    ...[...profile].reverse().map(([s, radius]) => side(s, -radius)),
  ];
}

/** A disk square to `axis` as it is seen: an ellipse. */
function disk([x, y]: Point2, radius: number, axis: Revolved['axis'], along: Sight): Loop {
  const [p, q] = SEEN[along];
  const size = Math.hypot(axis[p], axis[q]);
  const narrow = radius * Math.abs(axis[along]);
  return circle([0, 0], 1).map(([c, s]): Point2 => {
    const [across, inline] = [radius * c, narrow * s];
    return [x + (inline * axis[p] - across * axis[q]) / size, y + (inline * axis[q] + across * axis[p]) / size];
  });
}

/** The convex hull, by Andrew's monotone chain (from memory). */
function hullOf(points: readonly Point2[]): Loop {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (list: readonly Point2[]): Point2[] => {
    const kept: Point2[] = [];
    for (const point of list) {
      // Ends: each round takes a point away.
      while (kept.length > 1 && turnsRight(kept.at(-2)!, kept.at(-1)!, point)) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}

const turnsRight = (a: Point2, b: Point2, c: Point2): boolean =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) <= 0;

/** Stations at which a mesh is looked at, when its vertices stand at more. */
const MOST_STATIONS = 512;
/** Just inside a stretch, as a part of it: where the mesh jumps, each side shows its own edge. */
const INSIDE = 1e-6;

function silhouetteOfMesh({ vertices, faces }: Polyhedron, along: Sight): readonly Loop[] {
  const [p, q] = SEEN[along];
  const stations = stationsOf(vertices, faces, p);
  const places = Float64Array.from(
    stations.slice(1).flatMap((to, i) => {
      const from = stations[i]!;
      return [from + INSIDE * (to - from), to - INSIDE * (to - from)];
    }),
  );
  const least = new Float64Array(places.length).fill(Number.POSITIVE_INFINITY);
  const most = new Float64Array(places.length).fill(Number.NEGATIVE_INFINITY);
  const edge = (one: number, other: number): void => {
    const a = vertices[3 * one + p]!;
    const b = vertices[3 * other + p]!;
    if (a === b) return;
    const high = Math.max(a, b);
    const start = vertices[3 * one + q]!;
    const slope = (vertices[3 * other + q]! - start) / (b - a);
    for (let i = firstFrom(places, Math.min(a, b)); i < places.length && places[i]! <= high; i++) {
      const at = start + slope * (places[i]! - a);
      if (at < least[i]!) least[i] = at;
      if (at > most[i]!) most[i] = at;
    }
  };
  for (let k = 0; k < faces.length; k += 3) {
    edge(faces[k]!, faces[k + 1]!);
    edge(faces[k + 1]!, faces[k + 2]!);
    edge(faces[k + 2]!, faces[k]!);
  }
  return stretches(places, least, most);
}

/** Neighbouring places with something in them, each run as one loop. */
function stretches(places: Float64Array, least: Float64Array, most: Float64Array): readonly Loop[] {
  const loops: Loop[] = [];
  let [lower, upper]: [Point2[], Point2[]] = [[], []];
  const close = (): void => {
    if (lower.length > 1) loops.push([...thinned(lower), ...thinned(upper).reverse()]);
    [lower, upper] = [[], []];
  };
  for (const [i, place] of places.entries()) {
    if (most[i]! < least[i]!) {
      close();
      continue;
    }
    lower.push([place, least[i]!]);
    upper.push([place, most[i]!]);
  }
  close();
  return loops;
}

function stationsOf(vertices: Float64Array, faces: Uint32Array, axis: 0 | 1 | 2): readonly number[] {
  const all = Float64Array.from(faces, vertex => vertices[3 * vertex + axis]!).sort();
  const [first, last] = [all[0] ?? 0, all.at(-1) ?? 0];
  const distinct: number[] = [];
  for (const at of all) if (distinct.length === 0 || at - distinct.at(-1)! > 1e-7 * (last - first)) distinct.push(at);
  if (distinct.length <= MOST_STATIONS) return distinct;
  return Array.from({ length: MOST_STATIONS + 1 }, (_, i) => first + ((last - first) * i) / MOST_STATIONS);
}

/** Number of the first of rising `places` that is not below `at`. */
function firstFrom(places: Float64Array, at: number): number {
  let low = 0;
  let high = places.length;
  // Ends: each round halves a whole number of places.
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}
