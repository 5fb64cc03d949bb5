import type { Polyhedron } from '../../server/core/geometry/form/form.ts';

/**
 * A closed hull of about `triangles` triangles, 900 mm long: pointed ends, full middle, a flat deck line, as a printed
 * boat's mesh would be.
 */
export function hullMesh(triangles: number): Polyhedron {
  const columns = Math.max(8, Math.round(Math.sqrt(triangles) / 2));
  const rows = Math.round(triangles / 2 / columns) + 1;
  const vertices: number[] = [0, 0, 0.054, 0.9, 0, 0.054];
  const faces: number[] = [];
  const number = (row: number, column: number): number => 2 + (row - 1) * columns + (column % columns);
  for (let row = 1; row < rows; row++) {
    const t = row / rows;
    const fullness = (4 * t * (1 - t)) ** 0.4;
    for (let column = 0; column < columns; column++) {
      const angle = (2 * Math.PI * column) / columns;
      vertices.push(0.9 * t, 0.054 * fullness * Math.cos(angle), 0.054 - 0.054 * fullness * Math.sin(angle));
    }
  }
  for (let column = 0; column < columns; column++) {
    faces.push(0, number(1, column), number(1, column + 1));
    faces.push(1, number(rows - 1, column + 1), number(rows - 1, column));
    for (let row = 1; row < rows - 1; row++) {
      const [a, b] = [number(row, column), number(row, column + 1)];
      const [c, d] = [number(row + 1, column), number(row + 1, column + 1)];
      faces.push(a, c, d, a, d, b);
    }
  }
  return { shape: 'polyhedron', vertices: Float64Array.from(vertices), faces: Uint32Array.from(faces) };
}
