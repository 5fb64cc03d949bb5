import { describe, expect, it } from 'vitest';
import { tankPolygon } from '../../server/core/corrections/balance/tankPolygon.ts';
import { heard } from '../helpers/analysed.ts';
import { textLines } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

/** Twice the area that a loop goes round, positive against the clock (shoelace formula). */
const twiceArea = (loop: readonly (readonly [number, number])[]): number =>
  loop.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = loop[(i + 1) % loop.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);

const tank = (name: string, from: number, to: number): string =>
  `    - { name: ${name}, in: hold, station: ${from} to ${to} mm, offset: -20 to 20 mm, height: 5 to 55 mm, kind: bladder }`;

/** The probe with these tanks in the place of its own, each with a section of 40 x 50 mm. */
const withTanks = (...tanks: readonly string[]): string =>
  probe([/ {4}- name: main tank[\s\S]*?(?=payload:)/.exec(probe())![0], textLines(tanks)]);

describe('weight and moment that the tanks can bring', () => {
  it('go round the sum of what each brings (area of a Minkowski sum of segments: the sum over pairs)', () => {
    const stations = [
      [20, 80],
      [320, 390],
      [150, 200],
    ] as const;
    const { bodies } = heard(withTanks(...stations.map(([from, to], i) => tank(`tank ${i}`, from, to))));
    const found = tankPolygon(bodies)!;
    const each = stations.map(([from, to]) => ({
      mass: 1000 * 0.04 * 0.05 * 1e-3 * (to - from),
      at: (from + to) / 2e3,
    }));
    const total = each.reduce((sum, { mass }) => sum + mass, 0);
    const about = each.reduce((sum, { mass, at }) => sum + mass * at, 0) / total;
    expect(found.about).toBeCloseTo(about, 9);
    const pairs = each.flatMap((one, i) =>
      each.slice(i + 1).map(other => one.mass * other.mass * Math.abs(one.at - other.at)),
    );
    expect(Math.abs(twiceArea(found.each)) / 2).toBeCloseTo(
      pairs.reduce((sum, pair) => sum + pair, 0),
      9,
    );
    expect(Math.max(...found.each.map(([mass]) => mass))).toBeCloseTo(total, 9);
    for (const [i, [mass, moment]] of found.together.entries()) {
      expect(mass).toBeCloseTo((total * i) / (found.together.length - 1), 9);
      expect(moment).toBeCloseTo(0, 9);
    }
    // Under water the hull of 400 x 100 x 70 mm pushes 2800 g aside, and the boat weighs 2000 g.
    expect(found.needed[0]).toBeCloseTo(0.8, 6);
    expect(found.needed[1]).toBeCloseTo(0.8 * (0.2 - about), 6);
  });

  it('are nothing without a tank', () => {
    const { bodies } = heard(probe([/ {2}tanks:[\s\S]*?(?=payload:)/.exec(probe())![0], '']));
    expect(tankPolygon(bodies)).toBeNull();
  });
});
