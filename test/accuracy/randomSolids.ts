import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import { cross, unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { between } from './random.ts';

/** Random closed solids of flat faces, some 100 mm across, turned and shifted at random. */
export const SOLID_KINDS = ['box', 'prism', 'frustum', 'ring'] as const;

/** A triangle mesh: points, and three point numbers a face, outward. */
interface Mesh {
  readonly points: readonly Vec3[];
  readonly faces: readonly (readonly [number, number, number])[];
}

export function randomSolid(kind: (typeof SOLID_KINDS)[number], random: () => number): Polyhedron {
  const mesh = makers[kind](random);
  const move = randomMotion(random);
  // In single precision, as the library takes them: both are then given the very same solid.
  const vertices = Float64Array.from(Float32Array.from(mesh.points.flatMap(p => move(p))));
  return { shape: 'polyhedron', vertices, faces: Uint32Array.from(mesh.faces.flat()) };
}

/** Any direction, evenly over the sphere. */
export function randomDirection(random: () => number): Vec3 {
  const z = between(random, -1, 1);
  const round = between(random, 0, 2 * Math.PI);
  const out = Math.sqrt(1 - z * z);
  return [out * Math.cos(round), out * Math.sin(round), z];
}

export function randomMotion(random: () => number): (p: Vec3) => Vec3 {
  const first = randomDirection(random);
  const second = unit(cross(first, randomDirection(random)));
  const third = cross(first, second);
  const shift: Vec3 = [between(random, 0, 0.9), between(random, -0.05, 0.05), between(random, 0, 0.1)];
  return ([x, y, z]) =>
    [0, 1, 2].map(i => shift[i]! + x * first[i]! + y * second[i]! + z * third[i]!) as unknown as Vec3;
}

const makers: Readonly<Record<(typeof SOLID_KINDS)[number], (random: () => number) => Mesh>> = {
  box: random => {
    const [a, b, c] = [0, 1, 2].map(() => between(random, 0.01, 0.1));
    return prismOf(
      [
        [0, 0],
        [a!, 0],
        [a!, b!],
        [0, b!],
      ],
      c!,
    );
  },
  // Star-shaped about the origin, most of them hollow somewhere.
  prism: random => {
    const corners = 3 + Math.floor(between(random, 0, 9));
    const outline = Array.from({ length: corners }, (_, i) => {
      const angle = (2 * Math.PI * i) / corners;
      const radius = between(random, 0.015, 0.06);
      return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
    });
    return prismOf(outline, between(random, 0.02, 0.2));
  },
  frustum: random => {
    const [from, to] = [between(random, 0.01, 0.05), between(random, 0.01, 0.05)];
    return latheOf(
      [
        [0, from],
        [between(random, 0.03, 0.3), to],
      ],
      16 + Math.floor(between(random, 0, 48)),
    );
  },
  ring: random => {
    const [inner, outer] = [between(random, 0.01, 0.03), between(random, 0.04, 0.07)];
    const depth = between(random, 0.01, 0.05);
    return ringOf(inner, outer, depth, 12 + Math.floor(between(random, 0, 30)));
  },
};

/** Upright on its outline, which goes counter-clockwise about the origin; the ends are fans about their middles. */
function prismOf(outline: readonly (readonly [number, number])[], height: number): Mesh {
  const count = outline.length;
  const [midX, midY] = [0, 1].map(k => outline.reduce((sum, p) => sum + p[k]!, 0) / count);
  const isBox = count === 4 && outline[0]![0] === 0 && outline[0]![1] === 0;
  const middle: readonly [number, number] = isBox ? [midX!, midY!] : [0, 0];
  const points: Vec3[] = [
    [...middle, 0],
    [...middle, height],
  ];
  for (const [x, y] of outline) points.push([x, y, 0], [x, y, height]);
  const faces = outline.flatMap((_, i) => {
    const [a, b] = [2 + 2 * i, 2 + 2 * ((i + 1) % count)];
    return [
      [0, b, a],
      [1, a + 1, b + 1],
      [a, b, b + 1],
      [a, b + 1, a + 1],
    ] as const;
  });
  return { points, faces };
}

/** Turned about z, its `profile` (z, radius) in `sides` facets with corners on the true circle; flat ends. */
export function latheOf(profile: readonly (readonly [number, number])[], sides: number): Mesh {
  const points: Vec3[] = [
    [0, 0, profile[0]![0]],
    [0, 0, profile.at(-1)![0]],
  ];
  for (const [z, radius] of profile) {
    for (let i = 0; i < sides; i++) {
      const angle = (2 * Math.PI * i) / sides;
      points.push([radius * Math.cos(angle), radius * Math.sin(angle), z]);
    }
  }
  const number = (row: number, i: number): number => 2 + row * sides + (i % sides);
  const last = profile.length - 1;
  const faces: (readonly [number, number, number])[] = [];
  for (let i = 0; i < sides; i++) {
    faces.push([0, number(0, i + 1), number(0, i)], [1, number(last, i), number(last, i + 1)]);
    for (let row = 0; row < last; row++) {
      const [a, b, c, d] = [number(row, i), number(row, i + 1), number(row + 1, i + 1), number(row + 1, i)];
      faces.push([a, b, c], [a, c, d]);
    }
  }
  return { points, faces };
}

/** A flat ring about z, square in section. */
function ringOf(inner: number, outer: number, depth: number, sides: number): Mesh {
  const section = [
    [inner, 0],
    [outer, 0],
    [outer, depth],
    [inner, depth],
  ] as const;
  const points = section.flatMap(([radius, z]) =>
    Array.from({ length: sides }, (_, i): Vec3 => {
      const angle = (2 * Math.PI * i) / sides;
      return [radius * Math.cos(angle), radius * Math.sin(angle), z];
    }),
  );
  const number = (corner: number, i: number): number => (corner % 4) * sides + (i % sides);
  const faces = Array.from({ length: sides }, (_, i) =>
    [0, 1, 2, 3].flatMap(corner => {
      const [a, b, c, d] = [number(corner, i), number(corner, i + 1), number(corner + 1, i + 1), number(corner + 1, i)];
      return [
        [a, b, c],
        [a, c, d],
      ] as const;
    }),
  ).flat();
  return { points, faces };
}
