import { describe, expect, it } from 'vitest';
import { emptyImmersion, type Immersion } from '../../server/core/geometry/cut/immersion.ts';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form, Polyhedron } from '../../server/core/geometry/form/form.ts';
import { dot, unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { centroidOf, cutBelow, expectClose, ROUNDING } from './helpers/close.ts';
import { ball, cylinder, polyhedron } from './helpers/forms.ts';
import { ellipsoidMesh, prismMesh, refined, torusMesh } from './helpers/meshes.ts';

// Rows G-nn: "Check values", section 3, closed-form geometry; sources as in closedSolids.test.ts, from memory.
const UP: Vec3 = [0, 0, 1];
/** What Richardson extrapolation leaves of the facets at the finenesses used here. */
const FACETS = 1e-8;

describe('meshes refined towards smooth forms', () => {
  const axes: Vec3 = [3, 2, 1];

  it('G-13: volume of the ellipsoid 3, 2, 1 and the centroid of its half', () => {
    expectClose(
      refined(cells => solidOf(ellipsoidMesh(axes, cells)).volume, 24),
      25.132741228718345,
      FACETS,
    );
    const centroid = refined(cells => {
      const wet = cutBelow(solidOf(ellipsoidMesh(axes, cells)), [-1, 0, 0], 0);
      return wet.mx / wet.volume;
    }, 24);
    expectClose(centroid, 1.125, FACETS);
  });

  it('G-14: end cap of height 1 on the long axis', () => {
    // Stretched by 3, 2 and 1, the cap of height 1/3 of a unit ball.
    const cap = cutBelow(solidOf(ball(1)), [-1, 0, 0], -2 / 3);
    expectClose(6 * cap.volume, 1.8616845354606182, ROUNDING);
    expectClose((3 * cap.mx) / cap.volume, 2.34375, ROUNDING);
    // 200 by 200 facets take (2·pi/200)²/6 off each way. The plane falls between rows, so extrapolation has no hold.
    const facets = cutBelow(solidOf(ellipsoidMesh(axes, 200)), [-1, 0, 0], -2);
    expectClose(facets.volume, 1.8616845354606182, 4e-4);
    expectClose(facets.mx / facets.volume, 2.34375, 4e-5);
  });

  it('G-15: area of the prolate spheroid 2, 1', () => {
    const area = refined(cells => wallOf(ellipsoidMesh([2, 1, 1], cells), { endsClosed: true }).area, 24);
    expectClose(area, 21.478435327883737, 1e-6);
  });

  it('G-21: torus, by Pappus, and its ring-shaped waterplane', () => {
    expectClose(
      refined(cells => solidOf(torusMesh(0.1, 0.02, cells)).volume, 32),
      0.0007895683520871486,
      FACETS,
    );
    expectClose(
      refined(cells => wallOf(torusMesh(0.1, 0.02, cells), { endsClosed: true }).area, 32),
      0.0789568352,
      FACETS,
    );
    const ring = (read: (wet: Immersion) => number): number =>
      refined(cells => read(cutBelow(solidOf(torusMesh(0.1, 0.02, cells)), UP, 0)), 32);
    expectClose(
      ring(wet => wet.volume),
      0.0007895683520871486 / 2,
      FACETS,
    );
    // An annulus between 80 and 120 mm: area pi(R² - r²), second moment pi(R⁴ - r⁴)/4.
    expectClose(
      ring(wet => wet.area),
      Math.PI * (0.12 ** 2 - 0.08 ** 2),
      FACETS,
    );
    expectClose(
      ring(wet => wet.xx),
      (Math.PI / 4) * (0.12 ** 4 - 0.08 ** 4),
      FACETS,
    );
  });

  it.each([0, 10, 45, 80])('a faceted cylinder tends to the round one, tilted %f degrees', degrees => {
    const angle = (degrees * Math.PI) / 180;
    const n: Vec3 = [Math.sin(angle), 0, Math.cos(angle)];
    const h = 0.2 * n[0] - 0.013 * n[2];
    const round = cylinder(0.05, 0.4);
    const figures = (form: Form): readonly number[] => {
      const solid = cutBelow(solidOf(form), n, h);
      const wall = wallOf(form, { endsClosed: true });
      const skin = cutBelow(wall.withVolume(wall.area), n, h);
      return [solid.volume, solid.mx, solid.mz, solid.area, solid.yy, skin.volume, skin.mx, skin.mz, skin.area];
    };
    const exact = figures(round);
    // Inscribed facets fall short by (2·pi/sides)² and less; a wall's strip hangs on the slope of the facets that the
    // plane happens to meet, out by up to pi/sides.
    for (const sides of [250, 500, 1000]) {
      const step = (2 * Math.PI) / sides;
      figures(prismMesh(0.05, 0.4, sides)).forEach((figure, i) => {
        expectClose(figure, exact[i]!, i === exact.length - 1 ? step : step ** 2);
      });
    }
  });
});

describe('corners that lie on the plane', () => {
  const cube = boxForm([0, 0, 0], [1, 1, 1]);

  it.each([
    { name: 'through two opposite edges', n: unit([1, 0, 1]), h: Math.SQRT1_2, volume: 1 / 2, area: Math.SQRT2 },
    { name: 'through three corners', n: unit([1, 1, 1]), h: 1 / Math.sqrt(3), volume: 1 / 6, area: Math.sqrt(3) / 2 },
    {
      name: 'through two other corners',
      n: unit([1, 1, 2]),
      h: 2 / Math.sqrt(6),
      volume: 1 / 2,
      area: Math.sqrt(6) / 2,
    },
    { name: 'through the top, seen from below', n: UP, h: 1, volume: 1, area: 1 },
  ])('$name', ({ n, h, volume, area }) => {
    const wet = cutBelow(solidOf(cube), n, h);
    expectClose(wet.volume, volume, ROUNDING);
    expectClose(wet.area, area, ROUNDING);
  });

  it('a whole ring of them, where a mesh of many leaves is widest', () => {
    // Two cones base to base: 240 triangles with an edge or a corner on the plane, a polygon of 120 sides.
    const sides = 120;
    const ring = Array.from({ length: sides }, (_, i): Vec3 => {
      const angle = (2 * Math.PI * i) / sides;
      return [Math.cos(angle), Math.sin(angle), 0];
    });
    const next = (i: number): number => (i + 1) % sides;
    const body = polyhedron(
      [...ring, [0, 0, 1], [0, 0, -1]],
      ring.flatMap((_, i) => [
        [i, next(i), sides],
        [next(i), i, sides + 1],
      ]),
    );
    const polygon = (sides / 2) * Math.sin((2 * Math.PI) / sides);
    const wet = cutBelow(solidOf(body), UP, 0);
    expectClose(wet.area, polygon, ROUNDING);
    expectClose(wet.volume, polygon / 3, ROUNDING);
    expectClose(wet.mz, -polygon / 12, ROUNDING);
    const wall = wallOf(body, { endsClosed: true });
    const skin = cutBelow(wall.withVolume(wall.area), UP, 0);
    expectClose(skin.volume, wall.area / 2, ROUNDING);
    // Each side of the ring, through a triangle that stands at the cone's slope.
    const slope = Math.atan(1 / Math.cos(Math.PI / sides));
    expectClose(skin.area, (2 * sides * Math.sin(Math.PI / sides)) / Math.sin(slope), ROUNDING);
  });

  it('a tetrahedron standing on its edge, cut through that edge', () => {
    const body = solidOf(
      polyhedron(
        [
          [0, 0, 0],
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ],
        [
          [0, 2, 1],
          [0, 1, 3],
          [0, 3, 2],
          [1, 2, 3],
        ],
      ),
    );
    // The plane x = y holds one edge and halves the opposite one.
    const wet = cutBelow(body, unit([1, -1, 0]), 0);
    expectClose(wet.volume, 1 / 12, ROUNDING);
    expectClose(wet.area, Math.SQRT1_2 / 2, ROUNDING);
  });
});

describe('the tree of bounds', () => {
  /** Every triangle by itself, about the origin, without any tree. */
  function plainCut({ vertices, faces }: Polyhedron, n: Vec3, h: number): { volume: number; x: number; area: number } {
    const corner = (i: number): Vec3 => [vertices[3 * i]!, vertices[3 * i + 1]!, vertices[3 * i + 2]!];
    const sums = { volume: 0, x: 0, area: 0 };
    let flux = 0;
    for (let f = 0; f < faces.length; f += 3) {
      let polygon = [corner(faces[f]!), corner(faces[f + 1]!), corner(faces[f + 2]!)];
      polygon = polygon.flatMap((p, i) => {
        const q = polygon[(i + 1) % 3]!;
        const [a, b] = [dot(n, p) - h, dot(n, q) - h];
        const t = a / (a - b);
        const crossing: Vec3[] =
          a < 0 !== b < 0 ? [[p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t, p[2] + (q[2] - p[2]) * t]] : [];
        return a < 0 ? [p, ...crossing] : crossing;
      });
      const [p] = polygon;
      for (let i = 2; p && i < polygon.length; i++) {
        const [q, r] = [polygon[i - 1]!, polygon[i]!];
        const area: Vec3 = [
          ((q[1] - p[1]) * (r[2] - p[2]) - (q[2] - p[2]) * (r[1] - p[1])) / 2,
          ((q[2] - p[2]) * (r[0] - p[0]) - (q[0] - p[0]) * (r[2] - p[2])) / 2,
          ((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])) / 2,
        ];
        sums.volume += (p[0] * area[0] + p[1] * area[1] + p[2] * area[2]) / 3;
        sums.x += (dot(area, p) * (p[0] + q[0] + r[0])) / 12;
        // A closed surface has no net area: what the wet skin lacks is the cap.
        flux += dot(area, n);
      }
    }
    // The cap over the cut, about the origin: its height times its area.
    sums.area = -flux;
    sums.volume += (h * sums.area) / 3;
    return sums;
  }

  const mesh = ellipsoidMesh([0.45, 0.06, 0.05], 60);
  const body = solidOf(mesh);

  it('gives what all triangles one by one give', () => {
    for (let i = 0; i < 40; i++) {
      const n = unit([Math.sin(i), Math.cos(2.3 * i), Math.sin(1.7 * i + 1)]);
      const [low, high] = body.extent(n);
      const h = low + (high - low) * (0.02 + 0.024 * i);
      const expected = plainCut(mesh, n, h);
      const wet = cutBelow(body, n, h);
      expectClose(wet.volume, expected.volume, ROUNDING, body.volume);
      expectClose(wet.area, expected.area, ROUNDING, body.volume / (high - low));
      // The first moment lacks the cap's share, h/4 times the cut's own first moment.
      expectClose(wet.mx, expected.x + (h * wet.ax) / 4, ROUNDING, body.volume);
    }
  });

  it('finds the furthest corners', () => {
    for (let i = 0; i < 40; i++) {
      const n = unit([Math.sin(i), Math.cos(2.3 * i), Math.sin(1.7 * i + 1)]);
      const heights: number[] = [];
      for (let k = 0; k < mesh.vertices.length; k += 3) {
        heights.push(n[0] * mesh.vertices[k]! + n[1] * mesh.vertices[k + 1]! + n[2] * mesh.vertices[k + 2]!);
      }
      const [low, high] = body.extent(n);
      expectClose(low, Math.min(...heights), ROUNDING);
      expectClose(high, Math.max(...heights), ROUNDING);
    }
  });

  it('stands many triangles in one spot', () => {
    // All centroids alike: the sorting has nothing to go by.
    const form = boxForm([0, 0, 0], [1, 1, 1]);
    const pairs = Array.from({ length: 20 }, () => [...form.faces.slice(0, 3), ...form.faces.slice(0, 3).reverse()]);
    const crowded = solidOf({ ...form, faces: Uint32Array.from([...form.faces, ...pairs.flat()]) });
    expectClose(crowded.volume, 1, ROUNDING);
    expectClose(
      cutBelow(crowded, unit([1, 2, 3]), 0.5).volume,
      cutBelow(solidOf(form), unit([1, 2, 3]), 0.5).volume,
      ROUNDING,
    );
  });

  it('is no poorer far from the origin', () => {
    const far: Vec3 = [1000, -2000, 500];
    const vertices = mesh.vertices.map((c, i) => c + far[i % 3]!);
    const moved = solidOf({ ...mesh, vertices });
    const wet = cutBelow(moved, UP, far[2]);
    // Coordinates themselves keep 1e-13 m there, out of 0.05.
    expectClose(wet.volume, body.volume / 2, 1e-10);
    expectClose(wet.mx / wet.volume, far[0] + centroidOf(body)[0], 1e-12);
  });
});

describe('nothing at all', () => {
  it('a polyhedron without faces displaces nothing', () => {
    const body = solidOf({ shape: 'polyhedron', vertices: new Float64Array(), faces: new Uint32Array() });
    expect(body.volume).toBe(0);
    const sums = emptyImmersion();
    body.cut(UP, 0, sums);
    expect(sums).toEqual(emptyImmersion());
  });
});
