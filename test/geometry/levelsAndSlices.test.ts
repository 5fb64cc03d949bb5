import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cuttable, emptyImmersion } from '../../server/core/geometry/cut/immersion.ts';
import { levelFor } from '../../server/core/geometry/cut/levelCut.ts';
import { boundsOf, sliceForeAft, solidOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import { unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { cut, direction } from './helpers/arbitraries.ts';
import { centroidOf, cutBelow, expectClose, ROUNDING } from './helpers/close.ts';
import { ball, cylinder, polyhedron, revolved } from './helpers/forms.ts';
import { ellipsoidMesh, torusMesh } from './helpers/meshes.ts';

const UP: Vec3 = [0, 0, 1];

describe('the level of a given volume', () => {
  const fill = fc.oneof(
    fc.double({ min: 0.001, max: 0.999, noNaN: true }),
    fc.double({ min: -9, max: -3, noNaN: true }).map(power => 10 ** power),
    fc.double({ min: -9, max: -3, noNaN: true }).map(power => 1 - 10 ** power),
  );

  it('holds that volume to 1e-13, and what rounding leaves of the whole', () => {
    fc.assert(
      fc.property(
        cut.filter(c => c.kind === 'solid'),
        fill,
        fc.option(fc.double({ min: -2, max: 2, noNaN: true }), { nil: undefined }),
        (c, share, guess) => {
          const volume = c.body.volume * share;
          const level = levelFor(c.body, c.n, volume, guess);
          const got = emptyImmersion();
          c.body.cut(c.n, level, got);
          // A hair of level (its last digit) times the area is as near as any level can come.
          const hair = (Math.abs(level) + c.height) * 2.3e-16 * got.area;
          expectClose(got.volume, volume, 1, 1e-13 * volume + 1e-15 * c.body.volume + 4 * hair);
        },
      ),
      { numRuns: 400, seed: 20260502 },
    );
  });

  it('takes few cuts, fewer from a good guess', () => {
    const tank = solidOf(cylinder(0.05, 0.4));
    const counted = (guess?: number): number => {
      let cuts = 0;
      const spy: Cuttable = {
        ...tank,
        cut: (n, h, sums) => {
          cuts++;
          tank.cut(n, h, sums);
        },
      };
      levelFor(spy, unit([0.02, 0, 1]), tank.volume * 0.3, guess);
      return cuts;
    };
    const level = levelFor(tank, unit([0.02, 0, 1]), tank.volume * 0.3);
    expect(counted()).toBeLessThanOrEqual(8);
    expect(counted(level + 1e-6)).toBeLessThanOrEqual(3);
  });

  it('is the lowest point for nothing, the highest for all or more', () => {
    const body = solidOf(ball(0.1, [0, 0, 1]));
    expect(levelFor(body, UP, 0)).toBe(0.9);
    expect(levelFor(body, UP, -1)).toBe(0.9);
    expect(levelFor(body, UP, body.volume)).toBe(1.1);
    expect(levelFor(body, UP, 1)).toBe(1.1);
  });

  it('stops at the flat face where the volume jumps', () => {
    // Two plates joined by a thin rod: at the shoulder the area jumps, and levels just below it hold less.
    const body = solidOf(
      revolved(
        [
          [0, 1e-6],
          [1, 1e-6],
          [1, 0.5],
          [1.5, 0.5],
        ],
        [0, 0, 0],
        UP,
      ),
    );
    const rod = Math.PI * 1e-12;
    expectClose(levelFor(body, UP, rod), 1, 1e-9);
    expectClose(levelFor(body, UP, rod + Math.PI * 0.25 * 0.1), 1.1, ROUNDING);
  });
});

describe('slices for the cells of a tank', () => {
  const whole = solidOf(cylinder(0.03, 0.3, [0.1, 0, 0]));

  it('cut a cylinder, a cone and a turned axis at the stations asked for', () => {
    const cell = sliceForeAft(cylinder(0.03, 0.3, [0.1, 0, 0]), 0.2, 0.3);
    expectClose(solidOf(cell!).volume, whole.volume / 3, ROUNDING);
    expectClose(centroidOf(solidOf(cell!))[0], 0.25, ROUNDING);

    const backwards = sliceForeAft(cylinder(0.03, 0.3, [0.4, 0, 0], [-1, 0, 0]), 0.1, 0.2);
    expectClose(centroidOf(solidOf(backwards!))[0], 0.15, ROUNDING);

    const cone = revolved([
      [0, 0],
      [1, 1],
    ]);
    expectClose(solidOf(sliceForeAft(cone, 0.5, 2)!).volume, ((Math.PI / 3) * 7) / 8, ROUNDING);
  });

  it('are null where there is nothing exact to give', () => {
    expect(sliceForeAft(ball(1), 0, 1)).toBeNull();
    expect(sliceForeAft(cylinder(1, 1, [0, 0, 0], UP), 0, 1)).toBeNull();
    expect(sliceForeAft(cylinder(1, 1), 2, 3)).toBeNull();
    expect(sliceForeAft(cylinder(1, 1), 0.6, 0.4)).toBeNull();
    expect(sliceForeAft(boxForm([0, 0, 0], [1, 1, 1]), 1, 2)).toBeNull();
    expect(sliceForeAft(boxForm([0, 0, 0], [1, 1, 1]), 0.6, 0.4)).toBeNull();
  });

  it('keep their shoulders', () => {
    const stepped = revolved([
      [0, 1],
      [1, 1],
      [1, 2],
      [2, 2],
    ]);
    expect(sliceForeAft(stepped, 0.5, 1.5)).toEqual({
      ...stepped,
      profile: [
        [0.5, 1],
        [1, 1],
        [1, 2],
        [1.5, 2],
      ],
    });
  });

  const channel = polyhedron(
    // A trough of U-shaped section along x, open at the top: hollow, so that a fan over its end runs outside it.
    [0, 2].flatMap((x): Vec3[] => [
      [x, 0, 0],
      [x, 3, 0],
      [x, 3, 2],
      [x, 2, 2],
      [x, 2, 1],
      [x, 1, 1],
      [x, 1, 2],
      [x, 0, 2],
    ]),
    [
      ...Array.from({ length: 8 }, (_, i) => [i, ((i + 1) % 8) + 8, i + 8, i, (i + 1) % 8, ((i + 1) % 8) + 8]),
      ...[
        [0, 1, 4],
        [0, 4, 5],
        [1, 2, 3],
        [1, 3, 4],
        [0, 5, 6],
        [0, 6, 7],
      ].flatMap(([a, b, c]) => [
        [a!, c!, b!],
        [a! + 8, b! + 8, c! + 8],
      ]),
    ],
  );

  it.each([
    { name: 'a hollow trough', form: channel, stations: [0, 0.3, 0.5, 1.7, 2] },
    { name: 'a box, cut along its own end', form: boxForm([0, 0, 0], [2, 1, 1]), stations: [0, 0.5, 2] },
    { name: 'an egg of 800 facets', form: ellipsoidMesh([0.4, 0.2, 0.1], 20), stations: [-0.4, -0.1, 0, 0.25, 0.4] },
    { name: 'a ring lying flat', form: torusMesh(0.1, 0.02, 20), stations: [-0.12, -0.05, 0.01, 0.12] },
  ])('of $name add up, whole and cut', ({ form, stations }) => {
    const body = solidOf(form);
    const cells = stations.slice(1).map((to, i) => sliceForeAft(form, stations[i]!, to));
    expect(cells.every(cell => cell !== null)).toBe(true);
    const solids = cells.map(cell => solidOf(cell!));
    const volume = solids.reduce((sum, cell) => sum + cell.volume, 0);
    expectClose(volume, body.volume, ROUNDING);
    cells.forEach((cell, i) => {
      expectClose(boundsOf(cell!).from[0], stations[i]!, ROUNDING, 1);
      expectClose(boundsOf(cell!).to[0], stations[i + 1]!, ROUNDING, 1);
      // The slab by the whole body's own cuts.
      const upTo = (x: number): number => {
        const sums = emptyImmersion();
        const [low, high] = body.extent([1, 0, 0]);
        if (x >= high) return body.volume;
        if (x > low) body.cut([1, 0, 0], x, sums);
        return sums.volume;
      };
      expectClose(solids[i]!.volume, upTo(stations[i + 1]!) - upTo(stations[i]!), ROUNDING, body.volume);
    });
    fc.assert(
      fc.property(direction, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (n, share) => {
        const [low, high] = body.extent(n);
        const h = low + (high - low) * share;
        const sums = emptyImmersion();
        for (const cell of solids) {
          const [least, most] = cell.extent(n);
          if (h >= most) sums.volume += cell.volume;
          else if (h > least) cell.cut(n, h, sums);
        }
        const wet = cutBelow(body, n, h);
        expectClose(sums.volume, wet.volume, ROUNDING, body.volume);
        expectClose(sums.area, wet.area, 1e-11, body.volume / (high - low));
      }),
      { numRuns: 60, seed: 20260503 },
    );
  });
});
