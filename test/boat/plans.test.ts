import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineOfFigures } from '../../schema/sectionFigures.ts';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { boundsOf, solidOf } from '../../server/core/geometry/cut/solids.ts';
import { cutBelow } from '../geometry/helpers/close.ts';
import { afterRadius, bowRadius, capRadius, JOINS, MAX_RADIUS, radius } from '../geometry/helpers/suboff.ts';
import { analysed, fileFindings, marked, service } from '../helpers/analysed.ts';
import { probe } from '../helpers/probe.ts';

const PLACE = `station: 0 to 400 mm
      offset: -50 to 50 mm
      height: 0 to 70 mm`;
const hull = (form: string) => analysed(probe([PLACE, form], ['length: 400 mm', 'length: 900 mm']));
const formOf = (form: string) => {
  const { boat } = hull(form);
  return boat.compartments.find(({ name }) => name === 'hold')!.form;
};
/** What could not be read: the probe’s own things lie where they will. */
const faults = (analysis: Analysis) => fileFindings(analysis).filter(({ code }) => code !== 'sticks-out');
const n = (value: number) => Number(value.toFixed(6));
const rows = (stations: readonly number[], row: (station: number) => string) =>
  `sections: [${stations.map(station => `{ station: ${n(station)}, ${row(station)} }`).join(', ')}]`;
/** Stations that crowd at both ends, 0 to `length`, in mm. */
const crowded = (count: number, length: number) =>
  Array.from({ length: count + 1 }, (_, i) => (length / 2) * (1 - Math.cos((Math.PI * i) / count)));

describe('a section by the figures of a plan', () => {
  const areaOf = (full: number | 'round bilge') => {
    const points = outlineOfFigures({ keel: 2, deck: 42, half: 15, full });
    let area = 0;
    for (const [i, [y, z]] of points.entries())
      area += i > 0 ? ((y + points[i - 1]![0]) * (z - points[i - 1]![1])) / 2 : 0;
    return area / (15 * 40);
  };
  it('fills what it is said to fill, between keel, deck and half-breadth', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 1, noNaN: true }), full => {
        const points = outlineOfFigures({ keel: 2, deck: 42, half: 15, full });
        expect(areaOf(full)).toBeCloseTo(full, 9);
        expect(Math.max(...points.map(([y]) => y))).toBeCloseTo(15, 9);
        expect([points[0]![1], points.at(-1)![1]]).toEqual([expect.closeTo(2, 9), expect.closeTo(42, 9)]);
        for (const [i, [, z]] of points.entries()) expect(z).toBeGreaterThanOrEqual((points[i - 1]?.[1] ?? z) - 1e-9);
      }),
    );
    // Two corners of a quarter of an ellipse, each half of the half-breadth by half of the depth: (1 - π/4)/4 of the whole.
    expect(areaOf('round bilge')).toBeCloseTo(1 - (1 - Math.PI / 4) / 4, 3);
  });
  it.each([
    ['a box', 'half: 20, keel: 0, deck: 50, full: box', 2],
    ['a diamond', 'half: 20, keel: 0, deck: 50, full: 50 %', 1],
    ['an ellipse', 'half: 20, keel: 0, deck: 50', Math.PI / 2],
    ['by breadth, depth and height', 'breadth: 40, depth: 50, height: 25, full: ellipse', Math.PI / 2],
    ['by breadth, depth and keel', 'breadth: 40 mm, depth: 5 cm, keel: 0, full: box', 2],
    ['by half, depth and deck', 'half: 20, depth: 50, deck: 50, full: 1', 2],
  ])('%s makes a prism', (_, figures, share) => {
    const analysis = hull(rows([0, 800], () => figures));
    expect(faults(analysis)).toEqual([]);
    expect(analysis.boat.compartments[0]!.volume * 1e6).toBeCloseTo(share * 20 * 50 * 0.8, 6);
  });
  it('stands beside sections by points', () => {
    const form =
      'sections: [{ station: 0, outline: [[0, 25]] }, { station: 100, half: 20, keel: 0, deck: 50 }, { station: 800, outline: [[0, 0], [20, 25], [0, 50]] }]';
    expect(faults(hull(form))).toEqual([]);
  });
  it.each([
    ['half: 20, keel: 0', 'two figures for how high'],
    ['half: 20, keel: 30, deck: 10', 'below its keel'],
    ['half: 20, breadth: 40, keel: 0, deck: 40', 'Keep one'],
    ['outline: [[0, 0], [20, 30]], half: 3', 'Keep one'],
    ['keel: 0, deck: 40', 'needs an “outline”'],
    ['half: 20, keel: 0, deck: 40, full: 30 %', 'half of its rectangle'],
    ['half: 20, keel: 0, deck: 40, full: fat', 'ellipse, round bilge, box'],
  ])('%s is told', (figures, words) => {
    const analysis = hull(rows([0, 800], () => figures));
    expect(fileFindings(analysis)[0]!.message).toContain(words);
    expect(marked(analysis, fileFindings(analysis)[0]!)).not.toBe('');
  });
});

describe('hulls whose integrals are known', () => {
  it('an ellipsoid of 800 x 90 x 100 mm by its figures', () => {
    const at = (x: number) => Math.sqrt(Math.max(0, 1 - (x / 400 - 1) ** 2));
    const body = solidOf(
      formOf(
        `${rows(crowded(12, 800), x => `breadth: ${n(90 * at(x))}, depth: ${n(100 * at(x))}, height: 50`)}
      faired: true`,
      ),
    );
    const volume = (Math.PI / 6) * 0.8 * 0.09 * 0.1;
    expect(body.volume / volume).toBeCloseTo(1, 2);
    expect(Math.abs(body.volume / volume - 1)).toBeLessThan(0.004);
    const half = cutBelow(body, [0, 0, 1], 0.05);
    expect(half.volume / volume).toBeCloseTo(0.5, 3);
    // Centre of half an ellipsoid: 3/8 of the half-depth below the middle.
    expect(half.mz / half.volume).toBeCloseTo(0.05 - (3 / 8) * 0.05, 4);
    expect(half.area / (Math.PI * 0.4 * 0.045)).toBeCloseTo(1, 2);
  });
  /*
   * The parabolic hull of Wigley: y = (B/2)(1 - (2x/L)²)(1 - (z/T)²); block coefficient 4/9, midship section 2/3,
   * waterplane 2/3, KB = 5/8 of the draft (closed forms).
   */
  it('Wigley’s parabolic hull by its offsets', () => {
    const [length, breadth, draft] = [800, 80, 50];
    const offset = (x: number, z: number) =>
      (breadth / 2) * (1 - ((2 * x) / length - 1) ** 2) * (1 - (1 - z / draft) ** 2);
    const heights = [0, 10, 20, 30, 40, 50];
    const table = (faired: boolean, count: number) =>
      solidOf(
        formOf(
          `${rows(
            Array.from({ length: count + 1 }, (_, i) => (i * length) / count),
            x => `outline: [${heights.map(z => `[${n(offset(x, z))}, ${z}]`).join(', ')}]`,
          )}${
            faired
              ? `
      faired: true`
              : ''
          }`,
        ),
      );
    const block = (4 / 9) * 0.8 * 0.08 * 0.05;
    const [fair, straight] = [table(true, 10), table(false, 10)];
    expect(Math.abs(fair.volume / block - 1)).toBeLessThan(0.003);
    expect(Math.abs(fair.volume - block)).toBeLessThan(Math.abs(straight.volume - block) / 8);
    expect(fair.moment[2] / fair.volume / 0.05).toBeCloseTo(5 / 8, 2);
    expect(cutBelow(fair, [0, 0, 1], 0.05 - 1e-9).area / (0.8 * 0.08)).toBeCloseTo(2 / 3, 2);
  });
  it('the bare hull of a published submarine model by twenty stations', () => {
    // Groves, Huang & Chang, DTRC/SHD-1298-01: its radius along the hull; 100 mm here are 1.588 ft there.
    const scale = 900 / JOINS[4];
    const [bow, mid, after, end] = [JOINS[1], JOINS[2], JOINS[3], JOINS[4]];
    const stations = [
      0,
      0.02,
      0.1,
      0.25,
      0.5,
      1,
      1.7,
      2.5,
      bow,
      mid,
      11.2,
      11.8,
      12.4,
      13,
      13.5,
      after,
      14.15,
      14.25,
      end,
    ];
    const profile = `profile: [${stations.map(x => `[${n(x * scale)}, ${n(radius(x) * scale)}]`).join(', ')}]
      height: 60 mm`;
    const steps = 20_000;
    let exact = 0;
    for (const [from, to, at] of [
      [0, bow, bowRadius],
      [bow, mid, () => MAX_RADIUS],
      [mid, after, afterRadius],
      [after, end, capRadius],
    ] as const) {
      const step = (to - from) / steps;
      for (let i = 0; i < steps; i++) exact += Math.PI * at(from + (i + 0.5) * step) ** 2 * step;
    }
    exact *= (scale / 1000) ** 3;
    const off = (form: string) => Math.abs(solidOf(formOf(form)).volume / exact - 1);
    expect(
      off(`${profile}
      faired: true`),
    ).toBeLessThan(0.002);
    expect(
      off(`${profile}
      faired: true`),
    ).toBeLessThan(off(profile) / 2);
  });
});

describe('a faired curve', () => {
  it('touches every point and bulges past none, whatever the profile', () => {
    const radii = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 3, maxLength: 12 });
    fc.assert(
      fc.property(radii, list => {
        fc.pre(list.some(r => r > 0));
        const points = list.map((r, i) => [i * 70, r] as const);
        const form = formOf(
          `profile: [${points.map(([s, r]) => `[${s}, ${r}]`).join(', ')}]
      height: 60 mm
      faired: true`,
        );
        if (form.shape !== 'revolved') throw new Error('it is turned');
        const { profile } = form;
        for (const [s, r] of points) {
          expect(profile.some(([x, y]) => Math.abs(x - s / 1000) < 1e-9 && Math.abs(y - r / 1000) < 1e-9)).toBe(true);
        }
        for (const [i, [x, y]] of profile.entries()) {
          expect(x).toBeGreaterThanOrEqual(profile[i - 1]?.[0] ?? 0);
          const k = Math.min(Math.floor(x / 0.07 + 1e-9), points.length - 2);
          const [low, high] = [points[k]![1], points[k + 1]![1]].sort((a, b) => a - b) as [number, number];
          expect(y).toBeGreaterThanOrEqual(low / 1000 - 1e-9);
          expect(y).toBeLessThanOrEqual(high / 1000 + 1e-9);
        }
      }),
      { numRuns: 25 },
    );
  });
  it('leaves a cylinder, a cone and a box as they are', () => {
    const same = (form: string) => {
      const [fair, straight] = [
        solidOf(
          formOf(`${form}
      faired: true`),
        ),
        solidOf(formOf(form)),
      ];
      expect(fair.volume / straight.volume).toBeCloseTo(1, 9);
    };
    same(`profile: [[0, 30], [300, 30], [800, 30]]
      height: 60 mm`);
    same(`profile: [[0, 10], [200, 20], [400, 30]]
      height: 60 mm`);
    same(rows([0, 200, 800], () => 'outline: [[0, 0], [20, 0], [20, 50], [0, 50]]'));
  });
  it('is told with what it makes of the volume', () => {
    const analysis = hull(
      `profile: [[0, 0], [100, 30], [300, 40], [600, 40], [900, 4]]
      height: 60 mm
      faired: true`,
    );
    const hover = service.hover(analysis, analysis.syntax.text.indexOf('faired') + 1)!.contents as { value: string };
    expect(hover.value).toContain('as a batten lies');
    expect(hover.value).toMatch(/faired through its points: \d+\\\.\d % more volume than by straight lines, \d+ ml/);
  });
  it('has nothing to do in other forms', () => {
    expect(
      fileFindings(
        hull(`${PLACE}
      faired: true`),
      ).map(({ code }) => code),
    ).toEqual(['key-without-use']);
  });
  it('of sections fits the bounds of its points', () => {
    const form = formOf(
      `${rows([0, 200, 500, 800], x => `half: ${10 + x / 40}, keel: ${x / 100}, deck: 50, full: 90 %`)}
      faired: true`,
    );
    const { from, to } = boundsOf(form);
    expect([from[0], to[0], from[2], to[2]]).toEqual([0, 0.8, 0, 0.05].map(value => expect.closeTo(value, 9)));
  });
});
