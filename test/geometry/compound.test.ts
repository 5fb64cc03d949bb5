import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addImmersed, emptyImmersion } from '../../server/core/geometry/cut/immersion.ts';
import { boundsOf, canSlice, sliceForeAft, solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import { overlapOf } from '../../server/core/geometry/shapes/overlap.ts';
import { createShapes } from '../../server/core/geometry/shapes/shapes.ts';
import { bodyOf, direction, form } from './helpers/arbitraries.ts';
import { expectClose, ROUNDING } from './helpers/close.ts';
import { ball, cylinder } from './helpers/forms.ts';

const bounded = (shape: Form) => ({ form: shape, bounds: boundsOf(shape) });

describe('several forms as one', () => {
  it('displaces the sum of them at any cut', () => {
    fc.assert(
      fc.property(
        fc.array(form, { minLength: 1, maxLength: 4 }),
        direction,
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        (parts, n, h) => {
          const together = emptyImmersion();
          addImmersed(solidOf({ shape: 'compound', parts }), n, h, together);
          const apart = emptyImmersion();
          for (const part of parts) addImmersed(solidOf(part), n, h, apart);
          const size = parts.reduce((sum, part) => sum + solidOf(part).volume, 0);
          for (const key of ['volume', 'mx', 'my', 'mz', 'area', 'ax', 'xx'] as const) {
            expectClose(together[key], apart[key], ROUNDING, Math.abs(apart[key]) + size);
          }
        },
      ),
      { numRuns: 50 },
    );
  });

  it('shares the material of a wall by area', () => {
    const parts = [cylinder(0.04, 0.3), ball(0.05, [0.5, 0, 0])];
    const wall = wallOf({ shape: 'compound', parts }, { endsClosed: true });
    const areas = parts.map(part => wallOf(part, { endsClosed: true }).area);
    expectClose(wall.area, areas[0]! + areas[1]!, ROUNDING);
    expectClose(wall.centroid[0], (0.15 * areas[0]! + 0.5 * areas[1]!) / wall.area, ROUNDING);
    const thickness = 0.0015;
    const cut = (body: ReturnType<typeof solidOf>) => {
      const sums = emptyImmersion();
      addImmersed(body, [0, 0, 1], 0.01, sums);
      return sums.volume;
    };
    const expected = parts.reduce(
      (sum, part, i) => sum + cut(wallOf(part, { endsClosed: true }).withVolume(thickness * areas[i]!)),
      0,
    );
    expectClose(cut(wall.withVolume(thickness * wall.area)), expected, ROUNDING);
  });

  it('lies in a box that is as large as it is, wherever its parts are', () => {
    fc.assert(
      fc.property(fc.array(form, { minLength: 1, maxLength: 4 }), parts => {
        const { box, extent } = solidOf({ shape: 'compound', parts });
        for (const [axis, n] of (
          [
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1],
          ] as const
        ).entries()) {
          const [low, high] = extent(n);
          const [middle, half] = [box.middle[axis]!, box.half[axis]!];
          expect(middle - half).toBeLessThan(low + 1e-9);
          expect(middle + half).toBeGreaterThan(high - 1e-9);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('reaches as far as its parts', () => {
    fc.assert(
      fc.property(fc.array(form, { minLength: 1, maxLength: 4 }), direction, (parts, n) => {
        const extents = parts.map(part => bodyOf(part, 'solid').extent(n));
        const [low, high] = solidOf({ shape: 'compound', parts }).extent(n);
        expect(low).toBe(Math.min(...extents.map(([least]) => least)));
        expect(high).toBe(Math.max(...extents.map(([, most]) => most)));
      }),
      { numRuns: 30 },
    );
  });

  it('slices as its parts do', () => {
    const shape: Form = {
      shape: 'compound',
      parts: [cylinder(0.04, 0.3), boxForm([0.3, -0.02, 0], [0.4, 0.02, 0.03])],
    };
    expect(canSlice(shape)).toBe(true);
    const cells = [0, 1, 2, 3].map(i => sliceForeAft(shape, 0.1 * i, 0.1 * (i + 1))!);
    expectClose(
      cells.reduce((sum, cell) => sum + solidOf(cell).volume, 0),
      solidOf(shape).volume,
      ROUNDING,
    );
    expect(sliceForeAft(shape, 0.4, 0.5)).toBeNull();
    expect(canSlice({ shape: 'compound', parts: [cylinder(0.04, 0.3), ball(0.1)] })).toBe(false);
    expect(canSlice(cylinder(0.04, 0.3, [0, 0, 0], [0, 0, 1]))).toBe(false);
  });
});

describe('how far forms reach into each other', () => {
  it.each<{ name: string; one: Form; two: Form; by: number; within: number }>([
    {
      name: 'boxes',
      one: boxForm([0, 0, 0], [1, 1, 1]),
      two: boxForm([0.9, 0.2, 0.3], [2, 1, 1]),
      by: 0.1,
      within: 1e-12,
    },
    { name: 'boxes apart', one: boxForm([0, 0, 0], [1, 1, 1]), two: boxForm([1.1, 0, 0], [2, 1, 1]), by: 0, within: 0 },
    {
      name: 'boxes that touch',
      one: boxForm([0, 0, 0], [1, 1, 1]),
      two: boxForm([1, 0, 0], [2, 1, 1]),
      by: 0,
      within: 0,
    },
    {
      name: 'rounds end to end',
      one: cylinder(0.1, 0.5),
      two: cylinder(0.08, 0.5, [0.45, 0, 0]),
      by: 0.05,
      within: 1e-12,
    },
    {
      name: 'rounds side by side',
      one: cylinder(0.1, 0.5),
      two: cylinder(0.1, 0.5, [0, 0.15, 0]),
      by: 0.05,
      within: 1e-12,
    },
    // Their boxes overlap by 59 mm both ways; the circles are 2·100·(√2 - 1) mm apart at the corners of a square.
    {
      name: 'rounds corner to corner',
      one: cylinder(0.1, 0.5),
      two: cylinder(0.1, 0.5, [0, 0.1415, 0.1415]),
      by: 0,
      within: 1e-3,
    },
    // A box in the corner between a ball's box and the ball: corner at 0.9·(1, 1, 1), the ball reaches 0.577.
    { name: 'a box in a ball’s corner', one: ball(1), two: boxForm([0.7, 0.7, 0.7], [2, 2, 2]), by: 0, within: 0 },
    { name: 'a box in a ball', one: ball(1), two: boxForm([0.8, -0.1, -0.1], [2, 0.1, 0.1]), by: 0.2, within: 0.03 },
    {
      name: 'several',
      one: { shape: 'compound', parts: [ball(0.1), ball(0.1, [5, 0, 0])] },
      two: boxForm([2, -1, -1], [3, 1, 1]),
      by: 0,
      within: 0,
    },
  ])('$name', ({ one, two, by, within }) => {
    expect(Math.abs(overlapOf(bounded(one), bounded(two)) - by)).toBeLessThanOrEqual(within);
    expect(Math.abs(overlapOf(bounded(two), bounded(one)) - by)).toBeLessThanOrEqual(within);
  });
});

describe('shapes made once', () => {
  it('gives the same body for the same form, and another for another', () => {
    const shapes = createShapes();
    const [one, twin] = [cylinder(0.1, 0.5), cylinder(0.1, 0.5)];
    expect(shapes.solidOf(one)).toBe(shapes.solidOf(one));
    expect(shapes.solidOf(twin)).not.toBe(shapes.solidOf(one));
    expect(shapes.wallOf(one, true)).toBe(shapes.wallOf(one, true));
    expectClose(shapes.wallOf(one, true).area - shapes.wallOf(one, false).area, 2 * Math.PI * 0.01, ROUNDING);
    expect(shapes.boundsOf(one)).toEqual(boundsOf(one));
    expectClose(shapes.overlapOf(one, twin), 0.2, ROUNDING);
  });
});
