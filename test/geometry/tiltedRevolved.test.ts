import { describe, expect, it } from 'vitest';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { bruteFrustum } from './helpers/brute.ts';
import { cutBelow, expectClose, ROUNDING, wetCentroid } from './helpers/close.ts';
import { cylinder, revolved } from './helpers/forms.ts';

const UP: Vec3 = [0, 0, 1];
const OPEN = { endsClosed: false };
const DEGREE = Math.PI / 180;
/** Plane through height `d` on the z axis, tilted about y by `angle`: z·cos + x·sin = d·cos. */
const tilted = (angle: number, d: number): { n: Vec3; h: number } => ({
  n: [Math.sin(angle), 0, Math.cos(angle)],
  h: d * Math.cos(angle),
});
const TILTS = [0, 1e-13, 1e-9, 1e-6, 1e-3, 0.5, 5, 30, 60, 80];

// Closed forms of this file are derived here: the plane z = d - x·tan over a circle or a cone.
describe.each(TILTS)('an upright cylinder under a surface tilted %f degrees', degrees => {
  const tangent = Math.tan(degrees * DEGREE);
  const [radius, depth] = [0.7, 5];
  const { n, h } = tilted(degrees * DEGREE, depth);
  const form = cylinder(radius, 12, [0, 0, 0], UP);

  it('keeps pi·r²·d, with the centroid and waterplane of a slanted end', () => {
    const wet = cutBelow(solidOf(form), n, h);
    const [x, y, z] = wetCentroid(wet);
    expectClose(wet.volume, Math.PI * radius ** 2 * depth, ROUNDING);
    expectClose(x, (-(radius ** 2) * tangent) / (4 * depth), ROUNDING, radius);
    expectClose(y, 0, ROUNDING, radius);
    expectClose(z, depth / 2 + (radius * tangent) ** 2 / (8 * depth), ROUNDING);
    const area = (Math.PI * radius ** 2) / n[2];
    expectClose(wet.area, area, ROUNDING);
    expectClose(wet.az, area * depth, ROUNDING);
    expectClose(wet.xx, (area * radius ** 2) / 4, ROUNDING);
    expectClose(wet.yy, (area * radius ** 2) / 4, ROUNDING);
    expectClose(wet.xz, (-area * radius ** 2 * tangent) / 4, ROUNDING, area * radius ** 2);
    expectClose(wet.zz, area * (depth ** 2 + (radius * tangent) ** 2 / 4), ROUNDING);
  });

  it('wets 2·pi·r·d of its wall', () => {
    const wall = wallOf(form, OPEN);
    const wet = cutBelow(wall.withVolume(wall.area), n, h);
    const [x, , z] = wetCentroid(wet);
    expectClose(wet.volume, 2 * Math.PI * radius * depth, ROUNDING);
    expectClose(x, (-(radius ** 2) * tangent) / (2 * depth), ROUNDING, radius);
    expectClose(z, depth / 2 + (radius * tangent) ** 2 / (4 * depth), ROUNDING);
    expectClose(wet.area, (2 * Math.PI * radius) / n[2], ROUNDING);
    expectClose(wet.yy, (Math.PI * radius ** 3) / n[2], ROUNDING);
  });
});

describe.each([0, 1e-9, 1e-3, 5, 30, 60, 80])('a cone, apex down, under a surface tilted %f degrees', degrees => {
  const angle = degrees * DEGREE;
  const tangent = Math.tan(angle);
  const flare = 0.1;
  const form = revolved(
    [
      [0, 0],
      [40, 40 * flare],
    ],
    [0, 0, 0],
    UP,
  );
  // The section is an ellipse; seen from above, x² + y² = flare²(d - x·tan)².
  const squash = 1 - (flare * tangent) ** 2;

  it.each([1e-6, 1e-3, 1, 10])('cut at %f on its axis, it is a third of ellipse by height', d => {
    const { n, h } = tilted(angle, d);
    const from = (flare * d) ** 2 / squash;
    const ellipse = Math.PI * from * Math.sqrt(1 / squash);
    const middle = (-(flare ** 2) * tangent * d) / squash;
    const wet = cutBelow(solidOf(form), n, h);
    const [x, y, z] = wetCentroid(wet);
    expectClose(wet.volume, (ellipse * d) / 3, ROUNDING);
    expectClose(x, 0.75 * middle, ROUNDING, d * flare);
    expectClose(y, 0, ROUNDING, d * flare);
    expectClose(z, 0.75 * (d - middle * tangent), ROUNDING);
    expectClose(wet.area, ellipse / n[2], ROUNDING);
    expectClose(wet.yy, (ellipse / n[2]) * (from / 4), ROUNDING);
    expectClose(wet.xx, (ellipse / n[2]) * (from / squash / 4 + middle ** 2), ROUNDING);

    // The flank lies at one angle to the view from above: its wet part is the ellipse over the sine of the half angle.
    const wall = wallOf(form, OPEN);
    const skin = cutBelow(wall.withVolume(wall.area), n, h);
    expectClose(skin.volume, (ellipse * Math.hypot(1, flare)) / flare, ROUNDING);
    expectClose(skin.mx / skin.volume, middle, ROUNDING, d * flare);
  });
});

describe('a cone cut through its very tip', () => {
  it('keeps a slice bounded by two generators', () => {
    // Half angle 45 degrees, radius 1, plane through the tip along the axis: exactly half.
    const cone = revolved([
      [0, 0],
      [1, 1],
    ]);
    const wet = cutBelow(solidOf(cone), UP, 0);
    expectClose(wet.volume, Math.PI / 6, ROUNDING);
    expectClose(wet.area, 1, ROUNDING); // triangle of base 2, height 1
    expectClose(wet.yy, 1 / 6, ROUNDING); // about its own height: b³h/48
    // Tilted through the tip towards the base: the volume is a third of the wet base by the height.
    const n = unit([-0.5, 0, 1]);
    const base = Math.acos(-0.5) + 0.5 * Math.sqrt(0.75);
    expectClose(cutBelow(solidOf(cone), n, 0).volume, base / 3, ROUNDING);
  });
});

const FRUSTA: readonly (readonly [number, number, number, number])[] = [
  [0, 1, 3, 1],
  [0, 2, 3, 1],
  [0, 0, 2, 1],
  [0, 1, 0.4, 0.1],
  [0, 0.05, 0.8, 0.03],
  [0, 1e-3, 1, 0.8],
];

describe.each(FRUSTA)('frustum %f, %f to %f, %f against quadrature along its generators', (...frustum) => {
  const [s0, r0, s1, r1] = frustum;
  const form = revolved(
    [
      [s0, r0],
      [s1, r1],
    ],
    [0, 0, 0],
    UP,
  );
  const wall = wallOf(form, OPEN);
  /** Of the whole: the brute sums are worth this. */
  const tolerance = 1e-11;

  it.each([-80, -45, -10, -1, 1, 10, 45, 80])('tilted %f degrees from square to the axis', degrees => {
    let cut = 0;
    for (const turned of [false, true]) {
      const across = Math.abs(Math.sin(degrees * DEGREE));
      const along = Math.cos(degrees * DEGREE) * (turned ? -1 : 1);
      const n: Vec3 = [across * Math.sign(degrees), 0, along];
      const body = solidOf(form);
      const [low, high] = body.extent(n);
      for (const share of [1e-4, 0.03, 0.2, 0.5, 0.77, 0.999]) {
        const h = low + (high - low) * share;
        const expected = bruteFrustum(frustum, along, across, h);
        const size = Math.max(r0, r1, s1);
        const wet = cutBelow(body, n, h);
        expectClose(wet.volume, expected.volume, tolerance, body.volume);
        expectClose(wet.mz, expected.alongAxis, tolerance, body.volume * size);
        expectClose(wet.mx * Math.sign(degrees), expected.towardsU, tolerance, body.volume * size);
        const skin = cutBelow(wall.withVolume(wall.area), n, h);
        expectClose(skin.volume, expected.wall, tolerance, wall.area);
        expectClose(skin.mz, expected.wallAlongAxis, tolerance, wall.area * size);
        expectClose(skin.mx * Math.sign(degrees), expected.wallTowardsU, tolerance, wall.area * size);
        cut++;
      }
    }
    expect(cut).toBe(12);
  });
});

describe('a surface along the axis, not quite level', () => {
  it.each([0, 1e-15, 1e-12, 1e-8, 1e-4])('inclined by %f radians, half a cylinder stays half', angle => {
    // The plane passes through the middle of the axis: by symmetry half the volume is wet, whatever the angle.
    const form = cylinder(0.05, 0.4, [-0.2, 0, 0]);
    const wet = cutBelow(solidOf(form), [Math.sin(angle), 0, Math.cos(angle)], 0);
    expectClose(wet.volume, solidOf(form).volume / 2, ROUNDING);
    expectClose(wet.area, 0.04 / Math.cos(angle), 1e-7 + ROUNDING);
    expectClose(-wet.mz / wet.volume, (4 * 0.05) / (3 * Math.PI), 2e-7);
  });
});
