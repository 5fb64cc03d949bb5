import { describe, expect, it } from 'vitest';
import { fifthDegreeRule, product, whiten } from '../../server/core/uncertainty/normal.ts';

/** Means over independent standard normal numbers: 1, 0, 1, 0, 3, 0 for the powers 0 to 5 (closed form). */
const MOMENTS = [1, 0, 1, 0, 3, 0];

describe('the rule of the fifth degree', () => {
  it.each([1, 2, 3, 4, 5, 6])('gives every normal moment up to the fifth degree in %i dimensions', size => {
    const rule = fifthDegreeRule(size);
    for (const powers of powersUpTo(5, size)) {
      const known = powers.reduce((product, power) => product * MOMENTS[power]!, 1);
      const got = rule.reduce(
        (sum, { z, weight }) => sum + weight * z.reduce((product, value, i) => product * value ** powers[i]!, 1),
        0,
      );
      expect(got).toBeCloseTo(known, 10);
    }
  });

  it('has 25 points for the four loads of a boat, none of negative weight', () => {
    const rule = fifthDegreeRule(4);
    expect(rule).toHaveLength(25);
    expect(rule.every(({ weight }) => weight > 0)).toBe(true);
  });

  it('gives the end gauge its first-order and its second-order uncertainty', () => {
    // JCGM 100:2008, H.1: l = ls + d - ls·(δα·θ + αs·δθ); first order 31.71 nm (seen), with the second order 34 nm (from memory).
    const inputs = [
      [50.000623e-3, 25e-9],
      [215e-9, 9.7e-9],
      [11.5e-6, 1.2e-6],
      [-0.1, 0.41],
      [0, 0.58e-6],
      [0, 0.029],
    ] as const;
    const gauge = (z: readonly number[]) => {
      const [ls, d, alpha, theta, deltaAlpha, deltaTheta] = inputs.map(([value, u], i) => value + u * z[i]!) as [
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      return (ls + d - ls * (deltaAlpha * theta + alpha * deltaTheta)) * 1e9;
    };
    const middle = gauge([0, 0, 0, 0, 0, 0]);
    const at = fifthDegreeRule(6).map(({ z, weight }) => ({ z, weight, value: gauge(z) - middle }));
    const mean = at.reduce((sum, { weight, value }) => sum + weight * value, 0);
    const variance = at.reduce((sum, { weight, value }) => sum + weight * (value - mean) ** 2, 0);
    expect(Math.sqrt(variance)).toBeCloseTo(34, 0);
    const slopes = inputs.map((_, i) => at.reduce((sum, { z, weight, value }) => sum + weight * value * z[i]!, 0));
    expect(Math.hypot(...slopes)).toBeCloseTo(31.71, 1);
    expect(middle * 1e-6).toBeCloseTo(50.000838, 6);
  });
});

describe('loads by independent numbers', () => {
  const sources = [
    [1e-3, 2e-6, 0, 0],
    [2e-3, -1e-6, 3e-6, 0],
    [0, 5e-6, 3e-6, 0],
    [1e-3, 0, 1e-6, 0],
  ];
  const { columns, weights } = whiten(byLoad(sources));

  it('have the variances and covariances of the sources', () => {
    for (const i of [0, 1, 2, 3]) {
      for (const k of [0, 1, 2, 3]) {
        const known = sources.reduce((sum, source) => sum + source[i]! * source[k]!, 0);
        expect(columns.reduce((sum, column) => sum + column[i]! * column[k]!, 0)).toBeCloseTo(known, 18);
      }
    }
  });

  it('are as many as there are directions in uncertainty, each of variance 1', () => {
    expect(columns).toHaveLength(3);
    for (const k of [0, 1, 2]) {
      for (const l of [0, 1, 2]) {
        const got = product(weights[k]!, weights[l]!);
        expect(got).toBeCloseTo(k === l ? 1 : 0, 12);
      }
    }
  });

  it('bring back what each source does', () => {
    for (const [s, source] of sources.entries()) {
      for (const [i, load] of source.entries()) {
        expect(columns.reduce((sum, column, k) => sum + column[i]! * weights[k]![s]!, 0)).toBeCloseTo(load, 15);
      }
    }
  });

  it('are none where nothing is in uncertainty', () => {
    expect(whiten(byLoad([[0, 0, 0, 0]]))).toEqual({ columns: [], weights: [] });
  });

  it('takes the axes of loads as uncertain as each other in one order, whatever rounding makes of them', () => {
    const columnsOf = (hair: number) =>
      whiten(
        byLoad([
          [3, 0.1, 0.2, 0.1],
          [0.2, 2 * (1 + hair), 0.1, 0.3],
          [0.1, 0.3, 1 - hair, 0.2],
          [0.3, 0.2, 0.1, 4 + hair],
        ]),
      ).columns.flat();
    for (const hair of [1e-15, -1e-15, 1e-13, -1e-13]) {
      const [ours, plain] = [columnsOf(hair), columnsOf(0)];
      expect(ours.map((load, i) => Math.abs(load - plain[i]!) < 1e-9)).toEqual(ours.map(() => true));
    }
  });
});

/** Of sources with what each does to four loads, a row for each load. */
const byLoad = (sources: readonly (readonly number[])[]): readonly Float64Array[] =>
  [0, 1, 2, 3].map(load => Float64Array.from(sources, source => source[load]!));

function powersUpTo(degree: number, size: number): readonly (readonly number[])[] {
  if (size === 0) return [[]];
  return Array.from({ length: degree + 1 }, (_, power) => power).flatMap(power =>
    powersUpTo(degree - power, size - 1).map(rest => [power, ...rest]),
  );
}
