import type { Polyhedron } from '../../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../../server/core/geometry/form/vector.ts';

/**
 * A closed surface from a grid of `rows` by `columns` cells, `point(u, v)` with u and v from 0 to 1, v round and round.
 * With `wrapU` u runs round as well (a torus); otherwise its two ends are points. Outward when u×v points outward.
 */
function gridMesh(rows: number, columns: number, point: (u: number, v: number) => Vec3, wrapU = false): Polyhedron {
  const vertices: number[] = [];
  const faces: number[] = [];
  const number = (i: number, j: number): number => (wrapU ? i % rows : i) * columns + (j % columns);
  for (let i = 0; i < (wrapU ? rows : rows + 1); i++) {
    for (let j = 0; j < columns; j++) vertices.push(...point(i / rows, j / columns));
  }
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) {
      const [a, b, c, d] = [number(i, j), number(i + 1, j), number(i + 1, j + 1), number(i, j + 1)];
      if (wrapU || i < rows - 1) faces.push(a, b, c);
      if (wrapU || i > 0) faces.push(a, c, d);
    }
  }
  return { shape: 'polyhedron', vertices: Float64Array.from(vertices), faces: Uint32Array.from(faces) };
}

/** Semi-axes along x, y, z, centred on the origin. */
export const ellipsoidMesh = ([a, b, c]: Vec3, cells: number): Polyhedron =>
  gridMesh(cells, cells, (u, v) => {
    const [along, round] = [Math.PI * u, 2 * Math.PI * v];
    const out = Math.sin(along);
    return [-a * Math.cos(along), b * out * Math.cos(round), -c * out * Math.sin(round)];
  });

/** Ring of radius `ring` about z through the origin, of round bar of radius `bar`. */
export const torusMesh = (ring: number, bar: number, cells: number): Polyhedron =>
  gridMesh(
    cells,
    cells,
    (u, v) => {
      const [round, section] = [2 * Math.PI * u, 2 * Math.PI * v];
      const out = ring + bar * Math.cos(section);
      return [out * Math.cos(round), out * Math.sin(round), bar * Math.sin(section)];
    },
    true,
  );

/** Cylinder along x from 0, inscribed, its ends fans about their middles. */
export function prismMesh(radius: number, length: number, sides: number): Polyhedron {
  const vertices: number[] = [0, 0, 0, length, 0, 0];
  const faces: number[] = [];
  for (let i = 0; i < sides; i++) {
    const angle = (2 * Math.PI * i) / sides;
    const [y, z] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    vertices.push(0, y, z, length, y, z);
    const [a, b] = [2 + 2 * i, 2 + 2 * ((i + 1) % sides)];
    faces.push(0, b, a, 1, a + 1, b + 1, a, b, b + 1, a, b + 1, a + 1);
  }
  return { shape: 'polyhedron', vertices: Float64Array.from(vertices), faces: Uint32Array.from(faces) };
}

/**
 * What a figure tends to as the facets get finer, from three sizes that halve: errors in even powers of the facet
 * (Richardson extrapolation, Numerical Recipes, from memory).
 */
export function refined(figure: (cells: number) => number, cells: number): number {
  const [one, two, four] = [figure(cells), figure(2 * cells), figure(4 * cells)];
  return (64 * four - 20 * two + one) / 45;
}
