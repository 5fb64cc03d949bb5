import { inStretches, type Steps } from '../../steps/steps.ts';
import type { Polyhedron } from '../form/form.ts';
import type { Point2 } from './outline.ts';
import { SEEN, type Sight } from './sight.ts';
import { thinned } from './thinned.ts';

/**
 * What a mesh looks like along one of the boat's axes, m: loops with what is seen to their left, so that a hole seen right
 * through runs the other way. The mesh is cut at many places across the line of sight; at each it covers some spans, and
 * where spans of two neighbouring places differ there is an edge across.
 */
export function* outlineOfMesh(mesh: Polyhedron, along: Sight): Steps<readonly (readonly Point2[])[]> {
  const isLarge = mesh.faces.length > 3 * STEP;
  const places = yield* placesOf(mesh, SEEN[along][0], isLarge);
  if (isLarge) yield;
  const covered = yield* coveredAt(mesh, along, places);
  if (isLarge) yield;
  return joined(edgesOf(places, covered)).map(closedThinned).filter(isSeen);
}

/** Triangles that are looked at in one step. */
const STEP = 2500;

/** What is covered at a place, from where to where, rising; two spans do not touch. */
type Spans = readonly (readonly [from: number, to: number])[];

/** Stations at which a mesh is looked at, when its vertices stand at more. */
const MOST_STATIONS = 512;
/** Just inside a stretch, as a part of it: where the mesh jumps, each side shows its own edge. */
const INSIDE = 1e-6;
/** Gaps narrower than this part of the whole are none to the eye. */
const BINS = 512;

function* placesOf({ vertices, faces }: Polyhedron, axis: 0 | 1 | 2, isLarge: boolean): Steps<Float64Array> {
  // Each corner once, though six triangles have it.
  const isUsed = new Uint8Array(vertices.length / 3);
  for (const vertex of faces) isUsed[vertex] = 1;
  const all = new Float64Array(isUsed.reduce((sum, used) => sum + used, 0));
  let count = 0;
  for (let vertex = 0; vertex < isUsed.length; vertex++)
    if (isUsed[vertex]) all[count++] = vertices[3 * vertex + axis]!;
  if (isLarge) yield;
  all.sort();
  if (isLarge) yield;
  const [first, last] = [all[0] ?? 0, all.at(-1) ?? 0];
  const distinct: number[] = [];
  for (const at of all) if (distinct.length === 0 || at - distinct.at(-1)! > 1e-7 * (last - first)) distinct.push(at);
  const stations =
    distinct.length <= MOST_STATIONS
      ? distinct
      : Array.from({ length: MOST_STATIONS + 1 }, (_, i) => first + ((last - first) * i) / MOST_STATIONS);
  return Float64Array.from(
    stations.slice(1).flatMap((to, i) => {
      const from = stations[i]!;
      return [from + INSIDE * (to - from), to - INSIDE * (to - from)];
    }),
  );
}

function* coveredAt({ vertices, faces }: Polyhedron, along: Sight, places: Float64Array): Steps<readonly Spans[]> {
  const [p, q] = SEEN[along];
  let [low, high] = [Infinity, -Infinity];
  for (const vertex of faces) {
    low = Math.min(low, vertices[3 * vertex + q]!);
    high = Math.max(high, vertices[3 * vertex + q]!);
  }
  if (faces.length > 3 * STEP) yield;
  const bin = Math.max((high - low) / BINS, Number.MIN_VALUE);
  // By the bin in which they begin: the lowest beginning and the highest end of all spans that begin there.
  const begins = new Float64Array(places.length * (BINS + 1)).fill(Infinity);
  const ends = new Float64Array(places.length * (BINS + 1)).fill(-Infinity);
  const cover = (k: number): void => {
    let [a, b, c] = [3 * faces[k]!, 3 * faces[k + 1]!, 3 * faces[k + 2]!];
    if (vertices[a + p]! > vertices[b + p]!) [a, b] = [b, a];
    if (vertices[b + p]! > vertices[c + p]!) [b, c] = [c, b];
    if (vertices[a + p]! > vertices[b + p]!) [a, b] = [b, a];
    const [x0, x1, x2] = [vertices[a + p]!, vertices[b + p]!, vertices[c + p]!];
    const [y0, y1, y2] = [vertices[a + q]!, vertices[b + q]!, vertices[c + q]!];
    for (let i = firstFrom(places, x0); i < places.length && places[i]! <= x2; i++) {
      const x = places[i]!;
      const one = y0 + ((y2 - y0) * (x - x0)) / (x2 - x0);
      const other =
        x < x1 ? y0 + ((y1 - y0) * (x - x0)) / (x1 - x0) : x2 > x1 ? y1 + ((y2 - y1) * (x - x1)) / (x2 - x1) : y1;
      const at = i * (BINS + 1) + Math.floor((Math.min(one, other) - low) / bin);
      begins[at] = Math.min(begins[at]!, one, other);
      ends[at] = Math.max(ends[at]!, one, other);
    }
  };
  yield* inStretches(faces.length / 3, STEP, (from, to) => {
    for (let face = from; face < to; face++) cover(3 * face);
  });
  if (faces.length > 3 * STEP) yield;
  return Array.from(places, (_, i): Spans => {
    const spans: [number, number][] = [];
    for (let at = i * (BINS + 1); at < (i + 1) * (BINS + 1); at++) {
      if (begins[at]! > ends[at]!) continue;
      const last = spans.at(-1);
      if (last && begins[at]! - last[1] <= bin) last[1] = Math.max(last[1], ends[at]!);
      else spans.push([begins[at]!, ends[at]!]);
    }
    return spans;
  });
}

type Edge = readonly [from: Point2, to: Point2];

/** Along each stretch, and across where stretches meet, with what is covered to their left. */
function edgesOf(places: Float64Array, covered: readonly Spans[]): readonly Edge[] {
  const edges: Edge[] = [];
  const run = (x0: number, before: Spans, x1: number, after: Spans): void => {
    for (const [i, [from, to]] of before.entries()) {
      const [nextFrom, nextTo] = after[i]!;
      edges.push(
        [
          [x0, from],
          [x1, nextFrom],
        ],
        [
          [x1, nextTo],
          [x0, to],
        ],
      );
    }
  };
  for (let i = 0; i < places.length; i += 2) {
    const [start, end] = [covered[i]!, covered[i + 1]!];
    // The station between two stretches is one place for both.
    const [x0, x1] = [i === 0 ? places[0]! : (places[i - 1]! + places[i]!) / 2, stationAfter(places, i + 1)];
    edges.push(...across(x0, covered[i - 1] ?? [], start));
    if (start.length === end.length) run(x0, start, x1, end);
    else {
      const middle = (x0 + x1) / 2;
      run(x0, start, middle, start);
      edges.push(...across(middle, start, end));
      run(middle, end, x1, end);
    }
  }
  edges.push(...across(places.at(-1) ?? 0, covered.at(-1) ?? [], []));
  return edges;
}

const stationAfter = (places: Float64Array, i: number): number =>
  i + 1 < places.length ? (places[i]! + places[i + 1]!) / 2 : places[i]!;

/** Upwards where only the side before is covered, downwards where only the side after is. */
function across(x: number, before: Spans, after: Spans): readonly Edge[] {
  const heights = [...new Set([...before.flat(), ...after.flat()])].sort((a, b) => a - b);
  const covers = (spans: Spans, y: number): boolean => spans.some(([from, to]) => from < y && y < to);
  return heights.slice(1).flatMap((high, i): readonly Edge[] => {
    const low = heights[i]!;
    const [was, is] = [covers(before, (low + high) / 2), covers(after, (low + high) / 2)];
    if (was === is) return [];
    return was
      ? [
          [
            [x, low],
            [x, high],
          ],
        ]
      : [
          [
            [x, high],
            [x, low],
          ],
        ];
  });
}

/** Edges end to end, round to where each loop began. */
function joined(edges: readonly Edge[]): readonly (readonly Point2[])[] {
  const key = ([x, y]: Point2): string => `${x} ${y}`;
  const from = new Map<string, Edge[]>();
  for (const edge of edges) {
    const begins = key(edge[0]);
    const known = from.get(begins);
    if (known) known.push(edge);
    else from.set(begins, [edge]);
  }
  return edges.flatMap(([begin]) => {
    const loop: Point2[] = [];
    // Ends: each round takes an edge away.
    for (let edge = from.get(key(begin))?.pop(); edge; edge = from.get(key(edge[1]))?.pop()) loop.push(edge[0]);
    return loop.length > 2 ? [loop] : [];
  });
}

const closedThinned = (loop: readonly Point2[]): readonly Point2[] => thinned([...loop, loop[0]!]).slice(0, -1);

const isSeen = (loop: readonly Point2[]): boolean => loop.length > 2;

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
