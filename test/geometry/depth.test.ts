import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { depthIn } from '../../server/core/geometry/shapes/depth.ts';
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
