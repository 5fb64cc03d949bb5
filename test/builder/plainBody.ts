import type { Form } from '../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';

/*
 * Volumes under a plane by slices across the boat and plain quadrature, for the forms of this folder's boats: fore-and-aft
 * bodies of revolution, boxes, balls, and thin walls of the first two. Nothing of it is shared with the geometry under
 * test. Areas of circle segments: any handbook; Gauss-Legendre nodes: Abramowitz & Stegun, table 25.4 (from memory).
 */

/** One slice square to the boat's length. `weight` makes a volume of its area, or of its outline. */
interface Slice {
  readonly kind: 'disk' | 'ring' | 'block' | 'frame';
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly weight: number;
  /** Radius, or half breadth, and half height, m. */
  readonly a: number;
  readonly b: number;
}

export type PlainBody = readonly Slice[];

/** What lies below a plane, m3, and the sum of its depths below the plane, m4. */
export interface Under {
  volume: number;
  depth: number;
}

const GAUSS3 = [
  [-0.7745966692414834, 5 / 9],
  [0, 8 / 9],
  [0.7745966692414834, 5 / 9],
] as const;
const GAUSS4 = [
  [-0.8611363115940526, 0.3478548451374538],
  [-0.3399810435848563, 0.6521451548625461],
  [0.3399810435848563, 0.6521451548625461],
  [0.8611363115940526, 0.3478548451374538],
] as const;

/** Adds what of a body lies under n·p = h. */
export function addUnder(body: PlainBody, [nx, ny, nz]: Vec3, h: number, sums: Under): void {
  const c = Math.hypot(ny, nz);
  for (const { kind, x, y, z, weight, a, b } of body) {
    if (kind === 'disk' || kind === 'ring') {
      const d = (h - nx * x - ny * y - nz * z) / c;
      if (d <= -a) continue;
      const inside = Math.min(d, a);
      const angle = Math.acos(-inside / a);
      const half = Math.sqrt(a * a - inside * inside);
      const [size, moment] =
        kind === 'disk' ? [a * a * angle + inside * half, (-2 / 3) * half ** 3] : [2 * a * angle, -2 * a * half];
      sums.volume += weight * size;
      sums.depth += weight * c * (d * size - moment);
      continue;
    }
    const [low, high] = [z - b, z + b];
    const add = (at: number, width: number, from: number, to: number) => {
      const surface = (h - nx * x - ny * at) / nz;
      if (surface <= from) return;
      if (to > from) {
        sums.volume += width * (Math.min(surface, to) - from);
        sums.depth += (width * nz * ((surface - from) ** 2 - Math.max(0, surface - to) ** 2)) / 2;
      } else {
        sums.volume += width;
        sums.depth += width * nz * (surface - from);
      }
    };
    for (const [node, share] of GAUSS4) {
      const width = weight * a * share;
      if (kind === 'block') add(y + a * node, width, low, high);
      else {
        add(y + a * node, width, low, low);
        add(y + a * node, width, high, high);
      }
    }
    if (kind === 'frame') {
      add(y - a, weight, low, high);
      add(y + a, weight, low, high);
    }
  }
}

const sizeOf = ({ kind, weight, a, b }: Slice): number =>
  weight * { disk: Math.PI * a * a, ring: 2 * Math.PI * a, block: 4 * a * b, frame: 4 * (a + b) }[kind];

export const volumeOf = (body: PlainBody): number => body.reduce((sum, slice) => sum + sizeOf(slice), 0);

export const momentOf = (body: PlainBody): Vec3 => [
  body.reduce((sum, slice) => sum + sizeOf(slice) * slice.x, 0),
  body.reduce((sum, slice) => sum + sizeOf(slice) * slice.y, 0),
  body.reduce((sum, slice) => sum + sizeOf(slice) * slice.z, 0),
];

/** Lowest and highest n·p, m. */
export function reachOf(body: PlainBody, [nx, ny, nz]: Vec3): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { x, y, z, a, b } of body) {
    const middle = nx * x + ny * y + nz * z;
    const half = Math.abs(ny) * a + Math.abs(nz) * Math.max(a, b);
    low = Math.min(low, middle - half);
    high = Math.max(high, middle + half);
  }
  return [low, high];
}

/** Panels of three slices for each straight piece of a form. */
const PANELS = 4;

interface Piece {
  readonly from: number;
  readonly to: number;
  readonly make: (x: number, dx: number) => Slice;
}

const slicesOf = ({ from, to, make }: Piece, panels = PANELS): PlainBody => {
  const half = (to - from) / panels / 2;
  return Array.from({ length: panels }, (_, i) => from + (2 * i + 1) * half).flatMap(middle =>
    GAUSS3.map(([node, share]) => make(middle + node * half, share * half)),
  );
};

/** The solid of a form, or the part of it between two stations. */
export function plainSolid(form: Form, between: readonly [number, number] = [-10, 10]): PlainBody {
  return piecesOf(form).flatMap(({ from, to, make }) => {
    const [start, end] = [Math.max(from, between[0]), Math.min(to, between[1])];
    return end > start ? slicesOf({ from: start, to: end, make }) : [];
  });
}

export const lengthsOf = (form: Form): readonly [number, number] => {
  const pieces = piecesOf(form);
  return [Math.min(...pieces.map(({ from }) => from)), Math.max(...pieces.map(({ to }) => to))];
};

function piecesOf(form: Form): readonly Piece[] {
  switch (form.shape) {
    case 'revolved': {
      const [, y, z] = form.origin;
      return segmentsOf(form).map(({ from, to, radius }) => ({
        from,
        to,
        make: (x, dx) => ({ kind: 'disk', x, y, z, weight: dx, a: radius(x), b: 0 }),
      }));
    }
    case 'ball': {
      const { centre, radius } = form;
      const [x0, y, z] = centre;
      const make = (x: number, dx: number): Slice => {
        return { kind: 'disk', x, y, z, weight: dx, a: Math.sqrt(radius ** 2 - (x - x0) ** 2), b: 0 };
      };
      return [{ from: x0 - radius, to: x0 + radius, make }];
    }
    case 'polyhedron': {
      const { from, to } = boxOf(form.vertices);
      const [y, z] = [(from[1] + to[1]) / 2, (from[2] + to[2]) / 2];
      const [a, b] = [(to[1] - from[1]) / 2, (to[2] - from[2]) / 2];
      return [{ from: from[0], to: to[0], make: (x, dx) => ({ kind: 'block', x, y, z, weight: dx, a, b }) }];
    }
    case 'compound':
      return form.parts.flatMap(piecesOf);
  }
}

/** A thin wall of so much material (m3) spread evenly over the whole surface of a form, its flat ends too. */
export function plainWall(form: Form, volume: number): PlainBody {
  const surface = surfaceOf(form);
  const thickness = volume / volumeOf(surface);
  return surface.map(slice => ({ ...slice, weight: thickness * slice.weight }));
}

function surfaceOf(form: Form): PlainBody {
  if (form.shape === 'revolved') {
    const [, y, z] = form.origin;
    const segments = segmentsOf(form);
    const sides = segments.flatMap(({ from, to, radius, slope }) =>
      slicesOf({
        from,
        to,
        make: (x, dx) => ({ kind: 'ring', x, y, z, weight: dx * Math.hypot(1, slope), a: radius(x), b: 0 }),
      }),
    );
    const [first, last] = [segments[0]!, segments.at(-1)!];
    const ends = [[first.from, first.radius(first.from)] as const, [last.to, last.radius(last.to)] as const]
      .filter(([, a]) => a > 0)
      .map(([x, a]): Slice => ({ kind: 'disk', x, y, z, weight: 1, a, b: 0 }));
    return [...sides, ...ends];
  }
  if (form.shape !== 'polyhedron') throw new Error('only walls of revolution and boxes');
  const [piece] = piecesOf(form);
  const { from, to, make } = piece!;
  const sides = slicesOf(piece!).map((slice): Slice => ({ ...slice, kind: 'frame' }));
  return [...sides, make(from, 1), make(to, 1)];
}

function segmentsOf({ axis, origin, profile }: Extract<Form, { shape: 'revolved' }>) {
  if (Math.abs(Math.abs(axis[0]) - 1) > 1e-9) throw new Error('only bodies of revolution that lie fore and aft');
  const points = profile.map(([s, radius]) => [origin[0] + axis[0] * s, radius] as const).sort((p, q) => p[0] - q[0]);
  return points.slice(1).flatMap(([to, last], i) => {
    const [from, first] = points[i]!;
    if (to <= from) return [];
    const slope = (last - first) / (to - from);
    return [{ from, to, slope, radius: (x: number) => Math.max(1e-9, first + slope * (x - from)) }];
  });
}

/** Of a box that lies square to the boat. */
function boxOf(vertices: Float64Array) {
  const along = (axis: number) => vertices.filter((_, i) => i % 3 === axis);
  const from = [0, 1, 2].map(axis => Math.min(...along(axis))) as unknown as Vec3;
  const to = [0, 1, 2].map(axis => Math.max(...along(axis))) as unknown as Vec3;
  const isBox = vertices.every((value, i) => Math.min(value - from[i % 3]!, to[i % 3]! - value) < 1e-9);
  if (!isBox) throw new Error('only boxes that lie square to the boat');
  return { from, to };
}
