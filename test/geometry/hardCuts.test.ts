import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cuttable, Immersion } from '../../server/core/geometry/cut/immersion.ts';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { scale, unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { direction } from './helpers/arbitraries.ts';
import { cutBelow, expectClose, ROUNDING } from './helpers/close.ts';
import { cylinder, revolved } from './helpers/forms.ts';

/** About 1, or anything down to 1e-15. */
const shareOfOne = fc.oneof(
  fc.double({ min: 0.05, max: 1, noNaN: true }),
  fc.double({ min: -15, max: -0.01, noNaN: true }).map(power => 10 ** power),
);
const anySize = fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 2, arbitrary: shareOfOne });
const smallAngle = fc.double({ min: -18, max: -1, noNaN: true }).map(power => 10 ** power);
const plane: fc.Arbitrary<Vec3> = fc.oneof(
  direction,
  smallAngle.map((angle): Vec3 => [Math.cos(angle), 0, Math.sin(angle)]),
  smallAngle.map((angle): Vec3 => [Math.sin(angle), 0, Math.cos(angle)]),
);

describe('tips, slivers, near-square and near-level planes', () => {
  it('are cut in finite time, with figures of the right size', () => {
    let hits = 0;
    fc.assert(
      fc.property(
        anySize,
        fc.array(fc.tuple(fc.double({ min: 0.01, max: 1, noNaN: true }), anySize), { minLength: 1, maxLength: 4 }),
        plane,
        fc.oneof(
          shareOfOne,
          shareOfOne.map(share => 1 - share),
        ),
        fc.boolean(),
        (first, steps, n, share, asWall) => {
          let s = 0;
          const form = revolved([
            [0, first],
            ...steps.map(([step, radius]) => {
              s += step;
              return [s, radius] as const;
            }),
          ]);
          const wall = wallOf(form, { endsClosed: false });
          if (!(wall.area > 0)) return;
          const body: Cuttable = asWall ? wall.withVolume(wall.area) : solidOf(form);
          const [low, high] = body.extent(n);
          const h = low + (high - low) * share;
          if (!(h > low && h < high)) return;
          hits++;
          const [below, above] = [cutBelow(body, n, h), cutBelow(body, scale(n, -1), -h)];
          for (const wet of [below, above]) {
            for (const figure of Object.values(wet) as Immersion[keyof Immersion][])
              expect(figure).toSatisfy(Number.isFinite);
            expect(wet.area).toBeGreaterThanOrEqual(0);
            expect(wet.volume).toBeGreaterThanOrEqual(-ROUNDING * body.volume);
          }
          expectClose(below.volume + above.volume, body.volume, 1e-11);
        },
      ),
      { numRuns: 3000, seed: 20260504 },
    );
    expect(hits).toBeGreaterThan(2000);
  });

  it('a plane along a generator of a cone leaves it whole, or none of it', () => {
    const cone = revolved([
      [0, 0],
      [1, 1],
    ]);
    // x = z touches the cone along one line; the wet side z <= x holds all of it.
    const wet = cutBelow(solidOf(cone), unit([-1, 0, 1]), 0);
    expectClose(wet.volume, Math.PI / 3, ROUNDING);
    const dry = cutBelow(solidOf(cone), unit([1, 0, -1]), 0);
    expectClose(dry.volume, 0, ROUNDING, 1);
    const wall = wallOf(cone, { endsClosed: false });
    const skin = cutBelow(wall.withVolume(wall.area), unit([-1, 0, 1]), 0);
    expectClose(skin.volume, wall.area, 1e-7);
    expect(skin.area).toSatisfy(Number.isFinite);
  });
});

describe('planes square to the axis', () => {
  const stepped = revolved([
    [0, 1],
    [1, 1],
    [1, 2],
    [3, 1],
  ]);

  it.each([1, -1])('cut whole disks (normal along the axis times %f)', side => {
    const body = solidOf(stepped);
    const n: Vec3 = [side, 0, 0];
    for (const [station, radius, front] of [
      [0.5, 1, 0.5],
      [2, 1.5, 1 + (4 + 3 + 2.25) / 3],
    ] as const) {
      const wet = cutBelow(body, n, side * station);
      const before = Math.PI * front;
      expectClose(wet.volume, side > 0 ? before : body.volume - before, ROUNDING);
      expectClose(wet.area, Math.PI * radius ** 2, ROUNDING);
      expectClose(wet.ax, Math.PI * radius ** 2 * station, ROUNDING);
      expectClose(wet.yy, (Math.PI * radius ** 4) / 4, ROUNDING);
      expectClose(wet.zz, (Math.PI * radius ** 4) / 4, ROUNDING);
      expectClose(wet.yz, 0, ROUNDING, 1);
    }
  });

  it('cut a wall in a whole ring, and take in a shoulder at once', () => {
    const wall = wallOf(stepped, { endsClosed: true });
    const body = wall.withVolume(wall.area);
    const ahead = Math.PI + 2 * Math.PI * 0.9999;
    expectClose(cutBelow(body, [1, 0, 0], 0.9999).volume, ahead, ROUNDING);
    // The shoulder between radius 1 and 2, and a hair of either flank.
    const shoulder = cutBelow(body, [1, 0, 0], 1 + 1e-9).volume - cutBelow(body, [1, 0, 0], 1 - 1e-9).volume;
    expectClose(shoulder, 3 * Math.PI, 1e-8);
    const ring = cutBelow(body, [1, 0, 0], 2);
    const gain = 2 * Math.PI * 1.5 * Math.hypot(1, 0.5);
    expectClose(ring.area, gain, ROUNDING);
    expectClose(ring.yy, (gain * 1.5 ** 2) / 2, ROUNDING);
    expectClose(cutBelow(body, [-1, 0, 0], -2).volume + ring.volume, wall.area, ROUNDING);
  });
});

describe('stations that differ in their last digit', () => {
  it('half an inch and 12.7 mm make one shoulder', () => {
    const profileWith = (s: number) =>
      revolved([
        [0, 0.01],
        [0.0127, 0.01],
        [s, 0.02],
        [0.05, 0.02],
      ]);
    const exact = wallOf(profileWith(0.0127), { endsClosed: true });
    const spoilt = wallOf(profileWith(0.0127 + 4e-18), { endsClosed: true });
    const n = unit([0.3, 0, 1]);
    expect(spoilt.area).toBe(exact.area);
    expect(cutBelow(spoilt.withVolume(1), n, 0.003)).toEqual(cutBelow(exact.withVolume(1), n, 0.003));
  });
});

describe('flat ends of a tilted tube', () => {
  it('belong when closed: the wet segment of each', () => {
    const tube = cylinder(1, 3);
    const n = unit([0.1, 0, 1]);
    const [open, closed] = [wallOf(tube, { endsClosed: false }), wallOf(tube, { endsClosed: true })];
    const [bare, lidded] = [cutBelow(open.withVolume(open.area), n, 0), cutBelow(closed.withVolume(closed.area), n, 0)];
    // At the near end the surface passes through the middle, at the far end 0.3 below it (segment area, G-01).
    const segment = Math.acos(0.3) - 0.3 * Math.sqrt(1 - 0.09);
    expectClose(lidded.volume - bare.volume, Math.PI / 2 + segment, ROUNDING);
    expectClose(lidded.mx - bare.mx, 3 * segment, ROUNDING);
    expectClose(lidded.mz - bare.mz, -2 / 3 - (2 / 3) * 0.91 ** 1.5, ROUNDING);
    // Each end's chord, by the sine between end and surface.
    expectClose(lidded.area - bare.area, (2 + 2 * Math.sqrt(0.91)) / n[2], ROUNDING);
  });
});
