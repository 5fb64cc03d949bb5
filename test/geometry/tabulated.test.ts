import { describe, expect, it } from 'vitest';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { centroidOf, cutBelow, expectClose, ROUNDING } from './helpers/close.ts';
import { ball, revolved } from './helpers/forms.ts';
import { refined } from './helpers/meshes.ts';
import {
  afterRadius,
  bowRadius,
  capRadius,
  JOINS,
  LENGTH,
  MAX_RADIUS,
  type Profile,
  radius,
  segments,
} from './helpers/suboff.ts';

const FOOT = 0.3048;
const OPEN = { endsClosed: false };
const volumeOf = (profile: Profile): number => solidOf(revolved(profile)).volume;
const areaOf = (profile: Profile): number => wallOf(revolved(profile), OPEN).area;

// Groves, Huang & Chang, DTRC/SHD-1298-01 (March 1989, AD-A210 642), Table 1, for the form; figures as each row says.
describe('a published submarine hull, tabulated', () => {
  const { bow, mid, after, cap } = segments(6000);
  const whole: Profile = [...bow, ...mid.slice(1), ...after.slice(1), ...cap.slice(1)];
  const hull = solidOf(revolved(whole));

  it('H-07, H-08: radii and joins in feet (derived)', () => {
    [
      [0.5, 0.5327271],
      [1, 0.6483557],
      [2, 0.7744021],
      [11, 0.8273968],
      [12, 0.6546672],
      [13, 0.3195508],
      [14.1, 0.0903007],
    ].forEach(([x, r]) => {
      expectClose(radius(x!), r!, 1e-6);
    });
    for (const [one, other, r] of [
      [bowRadius(JOINS[1]), MAX_RADIUS, 0.8333333],
      [MAX_RADIUS, afterRadius(JOINS[2]), 0.8333333],
      [afterRadius(JOINS[3]), capRadius(JOINS[3]), 0.0979167],
    ] as const) {
      expectClose(one, r, 1e-6);
      expectClose(other, r, 1e-6);
    }
  });

  it('H-05: volumes of bow, mid-body, afterbody and cap in cubic feet (derived)', () => {
    expectClose(volumeOf(bow), 5.2254275, 1e-6, 1);
    expectClose(volumeOf(mid), 15.9534002, 1e-6, 1);
    expectClose(volumeOf(after), 3.5072951, 1e-6, 1);
    expectClose(volumeOf(cap), 0.0062751, 1e-6, 1);
  });

  it('H-06: areas of bow, mid-body, afterbody and cap in square feet (derived)', () => {
    expectClose(areaOf(bow), 14.8750108, 1e-6, 1);
    expectClose(areaOf(mid), 38.2881605, 1e-6, 1);
    expectClose(areaOf(after), 11.1371022, 1e-6, 1);
    expectClose(areaOf(cap), 0.156866, 1e-6, 1);
  });

  it('H-02: volume, 0.699 m3 published (seen: arXiv:2503.19674 Table 1), 0.69921 integrated', () => {
    const cubicMetres = hull.volume * FOOT ** 3;
    expectClose(cubicMetres, 0.699, 5e-4, 1);
    expectClose(cubicMetres, 0.6992108413, 1e-7);
    expectClose(hull.volume, 24.6924, 1e-6);
  });

  it('H-03: wetted area, 5.988 m2 published (seen: Liu & Huang, CRDKNSWC/HD-1298-11, 1998, Table 14)', () => {
    const squareMetres = areaOf(whole) * FOOT ** 2;
    expectClose(squareMetres, 5.988, 5e-4, 1);
    expectClose(squareMetres, 5.9882642123, 1e-7);
  });

  it('H-04, H-08: centre of buoyancy from the nose and prismatic coefficient (derived)', () => {
    const [x] = centroidOf(hull);
    expectClose(x * FOOT, 2.0086062, 1e-6, 1);
    expectClose(x / LENGTH, 0.4611019, 1e-6, 1);
    expectClose(hull.volume / (Math.PI * MAX_RADIUS ** 2 * LENGTH), 0.791941, 1e-6, 1);
  });

  it('is halved by any plane through its axis, and by none beside it', () => {
    for (const n of [unit([0, 0, 1]), unit([0, 3, 4])]) {
      expectClose(cutBelow(hull, n, 0).volume, hull.volume / 2, ROUNDING);
      expect(cutBelow(hull, n, 0.1).volume).toBeGreaterThan(hull.volume * 0.55);
    }
  });
});

describe('smooth profiles refined', () => {
  const even = (cells: number, at: (t: number) => readonly [number, number]): Profile =>
    Array.from({ length: cells + 1 }, (_, i) => at(i / cells));

  // Rows G-nn: "Check values", section 3; sources as in closedSolids.test.ts, from memory.
  it('G-15: area of the prolate spheroid 2, 1', () => {
    const spheroid = (cells: number): Profile =>
      even(cells, t => [-2 * Math.cos(Math.PI * t), Math.abs(Math.sin(Math.PI * t))]);
    expectClose(
      refined(cells => areaOf(spheroid(cells)), 60),
      21.478435327883737,
      1e-9,
    );
  });

  it('G-16: paraboloid of radius 2 and height 3', () => {
    // Stations in squares make the radius run evenly.
    const paraboloid = (cells: number): Profile => even(cells, t => [3 * t * t, 2 * t]);
    const figures = (cells: number) => solidOf(revolved(paraboloid(cells)));
    expectClose(
      refined(cells => figures(cells).volume, 40),
      18.84955592153876,
      1e-10,
    );
    expectClose(
      refined(cells => centroidOf(figures(cells))[0], 40),
      2,
      1e-10,
    );
  });

  it('a ball turned on a lathe meets the ball by formula, at any tilt', () => {
    const turned = (cells: number): Profile =>
      even(cells, t => [-0.5 * Math.cos(Math.PI * t), 0.5 * Math.abs(Math.sin(Math.PI * t))]);
    const lathe = revolved(turned(2000), [0.1, 0.2, 0.3], [1, 2, 2]);
    const smooth = ball(0.5, [0.1, 0.2, 0.3]);
    for (const n of [unit([1, 2, 2]), unit([0, 0, 1]), unit([-2, 1, 0.01])] satisfies Vec3[]) {
      for (const h of [-0.3, 0.1, 0.4]) {
        const level = h + 0.1 * n[0] + 0.2 * n[1] + 0.3 * n[2];
        const [wet, exact] = [cutBelow(solidOf(lathe), n, level), cutBelow(solidOf(smooth), n, level)];
        const [wall, exactWall] = [wallOf(lathe, OPEN), wallOf(smooth, OPEN)];
        const skin = cutBelow(wall.withVolume(wall.area), n, level);
        const exactSkin = cutBelow(exactWall.withVolume(exactWall.area), n, level);
        // 2000 chords to the half circle: (pi/2000)²/6 and the like.
        expectClose(wet.volume, exact.volume, 3e-6);
        expectClose(wet.mx, exact.mx, 3e-6, exact.volume);
        expectClose(wet.area, exact.area, 3e-6);
        expectClose(wet.zz, exact.zz, 3e-6, exact.area);
        expectClose(wet.xy, exact.xy, 3e-6, exact.area);
        expectClose(skin.volume, exactSkin.volume, 3e-6);
        expectClose(skin.mz, exactSkin.mz, 3e-6, exactSkin.volume);
        // The strip follows the slope of the chord it meets, out by half of pi/2000.
        expectClose(skin.area, exactSkin.area, 2e-3);
        expectClose(skin.yy, exactSkin.yy, 2e-3, exactSkin.area);
      }
    }
  });
});
