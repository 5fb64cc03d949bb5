import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { insideOf } from '../../server/core/geometry/mesh/lineCast.ts';
import { depthIn } from '../../server/core/geometry/shapes/depth.ts';
import { intrusionOf } from '../../server/core/geometry/shapes/intrusion.ts';
import { createShapes } from '../../server/core/geometry/shapes/shapes.ts';

const BLOCK = boxForm([0.1, -0.02, 0], [0.3, 0.03, 0.04]);

/** The same block with one triangle divided in three, so that it is looked through triangle by triangle. */
function divided(form: Polyhedron): Polyhedron {
  const [a, b, c, ...rest] = form.faces;
  const corner = (i: number) => Array.from(form.vertices.slice(3 * i, 3 * i + 3));
  const [one, two, three] = [a!, b!, c!].map(corner);
  const middle = one!.map((x, axis) => (x + two![axis]! + three![axis]!) / 3);
  const added = form.vertices.length / 3;
  const faces = [...[a!, b!, added], ...[b!, c!, added], ...[c!, a!, added], ...rest];
  return { ...form, vertices: Float64Array.from([...form.vertices, ...middle]), faces: Uint32Array.from(faces) };
}

describe('depth in a block', () => {
  it.each<readonly [string, Vec3, number]>([
    ['in its middle', [0.2, 0.005, 0.02], 0.02],
    ['near its port side', [0.2, -0.015, 0.02], 0.005],
    ['before a face', [0.07, 0, 0.02], -0.03],
    ['off a corner', [0.06, -0.05, -0.03], -Math.hypot(0.04, 0.03, 0.03)],
  ])('%s', (_, place, depth) => {
    expect(depthIn(BLOCK)(place)).toBeCloseTo(depth, 12);
  });

  it('is what its triangles say', () => {
    const [quick, slow] = [depthIn(BLOCK), depthIn(divided(BLOCK))];
    const along = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(along(0, 0.4), along(-0.1, 0.1), along(-0.1, 0.1)), place => {
        expect(quick(place)).toBeCloseTo(slow(place), 6);
      }),
    );
  });
});

describe('depth in a body of revolution', () => {
  const step = fc.tuple(fc.double({ min: 0, max: 0.05, noNaN: true }), fc.double({ min: 0, max: 0.05, noNaN: true }));
  const profile = fc.array(step, { minLength: 2, maxLength: 30 }).map(steps => {
    let s = 0;
    // Two of the same station make a shoulder.
    return steps.map(([by, radius], i) => {
      if (i % 4 > 0) s += by;
      return [s, radius] as const;
    });
  });
  const place = fc.double({ min: -0.1, max: 1.2, noNaN: true });

  it('is that of the nearest of all its stretches, looked at one by one', () => {
    let inside = 0;
    fc.assert(
      fc.property(profile, place, fc.double({ min: 0, max: 0.08, noNaN: true }), (points, s, away) => {
        fc.pre(points.at(-1)![0] > 1e-6);
        const form = { shape: 'revolved', origin: [0, 0, 0], axis: [1, 0, 0], profile: points } as const;
        const line = [[points[0]![0], 0] as const, ...points, [points.at(-1)![0], 0] as const];
        const stretches = line.slice(1).map(([s1, r1], i) => [line[i]!, [s1, r1]] as const);
        const nearest = Math.min(
          ...stretches.map(([[s0, r0], [s1, r1]]) => {
            const square = (s1 - s0) ** 2 + (r1 - r0) ** 2;
            const f =
              square > 0 ? Math.min(1, Math.max(0, ((s - s0) * (s1 - s0) + (away - r0) * (r1 - r0)) / square)) : 0;
            return Math.hypot(s - s0 - f * (s1 - s0), away - r0 - f * (r1 - r0));
          }),
        );
        const isIn = stretches.some(
          ([[s0, r0], [s1, r1]]) => s1 > s0 && s >= s0 && s <= s1 && away <= r0 + ((r1 - r0) * (s - s0)) / (s1 - s0),
        );
        expect(depthIn(form)([s, 0, away])).toBeCloseTo(isIn ? nearest : -nearest, 12);
        if (nearest > 1e-9) expect(insideOf(form)(0, away)(s)).toBe(isIn);
        inside += Number(isIn);
      }),
      { numRuns: 400 },
    );
    expect(inside).toBeGreaterThan(20);
  });
});

it('of two meshes in each other few places are asked how deep they lie, and the deepest is told', () => {
  const [one, other] = [divided(BLOCK), divided(boxForm([0.25, -0.01, 0.01], [0.4, 0.02, 0.03]))];
  let asked = 0;
  const solid = (form: Polyhedron) => {
    const depth = depthIn(form);
    const counted = (place: Vec3): number => {
      asked += 1;
      return depth(place);
    };
    return { form, bounds: boundsOf(form), depth: counted };
  };
  const found = intrusionOf([[solid(one), solid(other)]]);
  expect(found?.by).toBeCloseTo(intrusionOf([[solid(BLOCK), solid(other)]])!.by, 4);
  expect(asked).toBeLessThan(1200);
});

describe('several forms that are one thing', () => {
  const shapes = createShapes();
  const row = (station: number) => boxForm([station, 0, 0], [station + 0.003, 0.003, 0.003]);
  const rows = { shape: 'compound', parts: Array.from({ length: 40 }, (_, i) => row(0.02 * i)) } as const;

  it('reach into another where one of them does, however small it is', () => {
    const block = boxForm([0.105, -0.01, -0.01], [0.121, 0.01, 0.01]);
    expect(shapes.intrusionOf(rows, block)?.by).toBeCloseTo(0.001, 9);
    expect(shapes.intrusionOf(block, rows)?.at[0]).toBeCloseTo(0.12, 9);
  });
  it('do not where each lies beside it', () => {
    expect(shapes.intrusionOf(rows, boxForm([0.105, -0.01, -0.01], [0.1195, 0.01, 0.01]))).toBe(null);
  });
});

describe('two blocks', () => {
  const side = fc.tuple(fc.double({ min: 0, max: 0.1, noNaN: true }), fc.double({ min: 0.01, max: 0.1, noNaN: true }));
  const block = fc
    .tuple(side, side, side)
    .map(([x, y, z]) => boxForm([x[0], y[0], z[0]], [x[0] + x[1], y[0] + y[1], z[0] + z[1]]));
  const shapes = createShapes();

  it('reach into each other no less than places looked at one by one say, and so deep at the place that is told', () => {
    let met = 0;
    fc.assert(
      fc.property(block, block, (one, two) => {
        const told = shapes.intrusionOf(one, two);
        const seen = shapes.intrusionOf(divided(one), divided(two));
        if (told === null) expect(seen).toBe(null);
        // What no tape shows may fall between the places.
        if (!told || told.by < 1e-5) return;
        met++;
        if (!seen) throw new Error('triangle by triangle they do not meet');
        expect(seen.by).toBeLessThan(told.by + 1e-6);
        expect(seen.by).toBeGreaterThan(0.7 * told.by);
        const depths = [one, two].map(form => depthIn(form)(told.at));
        expect(Math.min(...depths)).toBeGreaterThan(-1e-12);
        expect(Math.max(...depths)).toBeCloseTo(told.by, 12);
      }),
      { numRuns: 40 },
    );
    expect(met).toBeGreaterThan(10);
  });
});
