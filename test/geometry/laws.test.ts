import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Immersion } from '../../server/core/geometry/cut/immersion.ts';
import { addImmersed, emptyImmersion } from '../../server/core/geometry/cut/immersion.ts';
import { planeFrame } from '../../server/core/geometry/cut/planeFrame.ts';
import { boundsOf } from '../../server/core/geometry/cut/solids.ts';
import { addScaled, dot, length, scale, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { bodyOf, type Cut, cut, direction, form, map } from './helpers/arbitraries.ts';
import { cutBelow, expectClose, ROUNDING } from './helpers/close.ts';
import { mapForm } from './helpers/forms.ts';

const RUNS = { numRuns: 400, seed: 20260501 };

/** A length (m) no moment arm of a case exceeds: bodies lie within a metre or so of the origin. */
const reach = ({ h, height }: Cut): number => Math.abs(h) + height + 1;
/** How often a law with a precondition was truly put to the test, by kind of body. */
const counter = (): Record<Cut['kind'], number> => ({ solid: 0, 'wall, open': 0, 'wall, closed': 0 });
const momentOf = (sums: Immersion): Vec3 => [sums.mx, sums.my, sums.mz];

describe('a plane parts a body in two', () => {
  it('whose volumes, moments and cuts agree with the whole', () => {
    fc.assert(
      fc.property(cut, c => {
        const below = cutBelow(c.body, c.n, c.h);
        const above = cutBelow(c.body, scale(c.n, -1), -c.h);
        expectClose(below.volume + above.volume, c.body.volume, ROUNDING);
        momentOf(below).forEach((m, i) => {
          expectClose(m + momentOf(above)[i]!, c.body.moment[i]!, ROUNDING, c.body.volume * reach(c));
        });
        // The same strip from both sides; walls have strong ends where a plane just grazes them.
        expectClose(above.area, below.area, 1e-7);
        expectClose(above.zz, below.zz, 1e-7, below.area * reach(c) ** 2);
      }),
      RUNS,
    );
  });

  it('of which there is nothing below the lowest point and all above the highest', () => {
    const hits = counter();
    fc.assert(
      fc.property(cut, c => {
        const [low, high] = c.body.extent(c.n);
        const none = emptyImmersion();
        addImmersed(c.body, c.n, low, none);
        expect(none).toEqual(emptyImmersion());
        const all = emptyImmersion();
        addImmersed(c.body, c.n, high, all);
        expect(all.volume).toBe(c.body.volume);
        // Without the test of its extent, a cut beyond the ends says the same.
        const apart = 0.1 * (high - low);
        expect(cutBelow(c.body, c.n, low - apart)).toEqual(emptyImmersion());
        const beyond = cutBelow(c.body, c.n, high + apart);
        expectClose(beyond.volume, c.body.volume, ROUNDING);
        momentOf(beyond).forEach((m, i) => {
          expectClose(m, c.body.moment[i]!, ROUNDING, c.body.volume * reach(c));
        });
        expect(beyond.area).toBe(0);
        // The box round it holds it in every direction.
        const { middle, half } = c.body.box;
        const height = dot(c.n, middle);
        const spread = Math.abs(c.n[0]) * half[0] + Math.abs(c.n[1]) * half[1] + Math.abs(c.n[2]) * half[2];
        expect(height - spread).toBeLessThanOrEqual(low + ROUNDING * (high - low));
        expect(height + spread).toBeGreaterThanOrEqual(high - ROUNDING * (high - low));
        // Close to the ends the cut itself says the same, but for a wall, of which a flat end can be the greater part.
        if (c.kind !== 'solid') return;
        hits.solid++;
        const hair = (high - low) * 1e-7;
        expect(cutBelow(c.body, c.n, low + hair).volume).toBeLessThan(c.body.volume / 2);
        expect(cutBelow(c.body, c.n, high - hair).volume).toBeGreaterThan(c.body.volume / 2);
      }),
      RUNS,
    );
    expect(hits.solid).toBeGreaterThan(100);
  });
});

describe('derivatives', () => {
  /** Central difference at two steps; null where they disagree, at a corner or shoulder that the plane passes. */
  const slope = (f: (t: number) => number, step: number, size: number): number | null => {
    const coarse = (f(step) - f(-step)) / (2 * step);
    const fine = (f(step / 2) - f(-step / 2)) / step;
    return Math.abs(coarse - fine) <= 1e-6 * size ? (4 * fine - coarse) / 3 : null;
  };

  it('of volume and moment by the level are the area of the cut and its first moment', () => {
    const hits = counter();
    fc.assert(
      fc.property(cut, c => {
        const step = c.height * 1e-4;
        const at = cutBelow(c.body, c.n, c.h);
        const size = Math.max(at.area, c.body.volume / c.height);
        const gain = slope(t => cutBelow(c.body, c.n, c.h + t).volume, step, size);
        if (gain === null) return;
        expectClose(at.area, gain, 3e-7, size);
        const first: Vec3 = [at.ax, at.ay, at.az];
        first.forEach((a, i) => {
          const rise = slope(t => momentOf(cutBelow(c.body, c.n, c.h + t))[i]!, step, size * reach(c));
          if (rise === null) return;
          hits[c.kind]++;
          expectClose(a, rise, 3e-7, size * reach(c));
        });
      }),
      RUNS,
    );
    // Three moments for about 130 bodies of each kind.
    for (const count of Object.values(hits)) expect(count).toBeGreaterThan(300);
  });

  it('of volume and moment by the tilt are the first and second moments of the cut', () => {
    const hits = counter();
    fc.assert(
      fc.property(cut, c => {
        const at = cutBelow(c.body, c.n, c.h);
        const size = Math.max(at.area, c.body.volume / c.height) * reach(c);
        const second: readonly Vec3[] = [
          [at.xx, at.xy, at.xz],
          [at.xy, at.yy, at.yz],
          [at.xz, at.yz, at.zz],
        ];
        for (const turn of planeFrame(c.n)) {
          // n + t·turn, made a unit vector again, with the level of the plane scaled alike.
          const tilt = (t: number): Immersion => {
            const n = addScaled(c.n, turn, t);
            const long = length(n);
            return cutBelow(c.body, scale(n, 1 / long), c.h / long);
          };
          const gain = slope(t => tilt(t).volume, 1e-4, size);
          if (gain === null) continue;
          expectClose(-dot([at.ax, at.ay, at.az], turn), gain, 3e-7, size);
          second.forEach((row, i) => {
            const rise = slope(t => momentOf(tilt(t))[i]!, 1e-4, size * reach(c));
            if (rise === null) return;
            hits[c.kind]++;
            expectClose(-dot(row, turn), rise, 3e-7, size * reach(c));
          });
        }
      }),
      RUNS,
    );
    // And for two directions of tilt.
    for (const count of Object.values(hits)) expect(count).toBeGreaterThan(600);
  });
});

describe('turning, mirroring, moving and scaling', () => {
  it('carry the cut along with the body', () => {
    fc.assert(
      fc.property(cut, map, (c, move) => {
        const turned = (v: Vec3): Vec3 => [dot(move.turn[0], v), dot(move.turn[1], v), dot(move.turn[2], v)];
        const image = bodyOf(mapForm(c.form, move), c.kind);
        const n = turned(c.n);
        const h = move.scale * c.h + dot(n, move.shift);
        // A wall's thickness is the same 2 mm in both.
        const power = c.kind === 'solid' ? 3 : 2;
        const before = cutBelow(c.body, c.n, c.h);
        const after = cutBelow(image, n, h);
        const size = move.scale ** power * c.body.volume;
        const far = move.scale * reach(c) + length(move.shift);
        expectClose(after.volume, move.scale ** power * before.volume, 1e-11, size);
        const moment = addScaled(
          scale(turned(momentOf(before)), move.scale ** (power + 1)),
          move.shift,
          move.scale ** power * before.volume,
        );
        momentOf(after).forEach((m, i) => {
          expectClose(m, moment[i]!, 1e-11, size * far);
        });
        const area = move.scale ** (power - 1) * before.area;
        expectClose(after.area, area, 1e-6);
        // Second moment along x of the image, from the turned tensor and the shift.
        const row = move.turn[0];
        const alongRow =
          row[0] * (row[0] * before.xx + 2 * row[1] * before.xy + 2 * row[2] * before.xz) +
          row[1] * (row[1] * before.yy + 2 * row[2] * before.yz) +
          row[2] * row[2] * before.zz;
        const firstRow = dot(row, [before.ax, before.ay, before.az]);
        const expected =
          move.scale ** (power + 1) * alongRow +
          2 * move.shift[0] * move.scale ** power * firstRow +
          move.shift[0] ** 2 * area;
        expectClose(after.xx, expected, 1e-6, area * far ** 2);
      }),
      RUNS,
    );
  });
});

describe('boxes around forms', () => {
  it('reach exactly as far as the bodies do', () => {
    fc.assert(
      fc.property(form, fc.constantFrom<Cut['kind'][]>('solid', 'wall, open', 'wall, closed'), (shape, kind) => {
        const body = bodyOf(shape, kind);
        const { from, to } = boundsOf(shape);
        const axes: readonly Vec3[] = [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ];
        axes.forEach((axis, i) => {
          const [low, high] = body.extent(axis);
          expectClose(from[i]!, low, ROUNDING, 1);
          expectClose(to[i]!, high, ROUNDING, 1);
        });
      }),
      RUNS,
    );
  });

  it('and no direction sticks out further than the corners of the box', () => {
    fc.assert(
      fc.property(form, direction, (shape, n) => {
        const { from, to } = boundsOf(shape);
        const corner = n.map((c, i) => c * (c > 0 ? to[i]! : from[i]!)).reduce((sum, c) => sum + c, 0);
        const [low, high] = bodyOf(shape, 'solid').extent(n);
        expect(high).toBeLessThanOrEqual(corner + ROUNDING);
        expect(low).toBeLessThan(high);
      }),
      RUNS,
    );
  });
});
