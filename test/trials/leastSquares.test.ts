import { describe, expect, it } from 'vitest';
import { type Fit, leastSquares } from '../../server/core/trials/estimation/leastSquares.ts';
import { longley, norris } from './certified.ts';

function fitted(rows: readonly (readonly number[])[], values: readonly number[]): Fit {
  const fit = leastSquares(rows, values);
  if (!fit) throw new Error('the rows leave an unknown open');
  return fit;
}

const relative = (value: number, certified: number): number => Math.abs(value / certified - 1);

/** Standard deviations of the solution where the scatter itself tells the uncertainty of a row. */
function deviations({ covariance, sum }: Fit, rows: number): readonly number[] {
  const scatter = sum / (rows - covariance.length);
  return covariance.map((row, i) => Math.sqrt(row[i]! * scatter));
}

describe('certified data', () => {
  it('Norris (NIST StRD, certified, seen)', () => {
    const fit = fitted(
      norris.map(([, x]) => [1, x]),
      norris.map(([y]) => y),
    );
    expect(relative(fit.solution[0]!, -0.262323073774029)).toBeLessThan(1e-11);
    expect(relative(fit.solution[1]!, 1.00211681802045)).toBeLessThan(1e-13);
    const [s0, s1] = deviations(fit, norris.length);
    expect(relative(s0!, 0.232818234301152)).toBeLessThan(1e-12);
    expect(relative(s1!, 0.429796848199937e-3)).toBeLessThan(1e-12);
    expect(relative(fit.sum, 26.6173985294224)).toBeLessThan(1e-12);
  });
  it('Longley, ill-conditioned (NIST StRD, certified, seen)', () => {
    const fit = fitted(
      longley.map(([, ...x]) => [1, ...x]),
      longley.map(([y]) => y),
    );
    const certified = [
      -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
      -0.0511041056535807, 1829.15146461355,
    ];
    for (const [i, value] of certified.entries()) expect(relative(fit.solution[i]!, value)).toBeLessThan(1e-9);
    expect(relative(Math.sqrt(fit.sum / (16 - 7)), 304.854073561965)).toBeLessThan(1e-11);
  });
  it('NoInt1, a line through the origin (NIST StRD; from memory)', () => {
    const x = Array.from({ length: 11 }, (_, i) => 60 + i);
    const fit = fitted(
      x.map(each => [each]),
      x.map(each => each + 70),
    );
    expect(relative(fit.solution[0]!, 2.07438016528926)).toBeLessThan(1e-13);
    expect(relative(deviations(fit, 11)[0]!, 0.0165289256198347)).toBeLessThan(1e-12);
    expect(relative(fit.sum, 127.272727272727)).toBeLessThan(1e-12);
  });
  it('Wampler1, a polynomial without scatter (NIST StRD, by construction)', () => {
    const x = Array.from({ length: 21 }, (_, i) => i);
    const powers = (each: number) => [0, 1, 2, 3, 4, 5].map(k => each ** k);
    const fit = fitted(
      x.map(powers),
      x.map(each => powers(each).reduce((sum, term) => sum + term)),
    );
    for (const coefficient of fit.solution) expect(Math.abs(coefficient - 1)).toBeLessThan(1e-8);
  });
});

describe('published uncertainty', () => {
  it('the calibration line of a thermometer (JCGM 100:2008 H.3; data seen, printed results from memory)', () => {
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
    const fit = fitted(
      t.map(each => [1, each - 20]),
      b,
    );
    const [u1, u2] = deviations(fit, 11);
    expect(fit.solution[0]).toBeCloseTo(-0.1712, 4);
    expect(fit.solution[1]).toBeCloseTo(0.00218, 5);
    expect(u1).toBeCloseTo(0.0029, 4);
    expect(u2).toBeCloseTo(0.00067, 5);
    const scatter = fit.sum / 9;
    const covariance = fit.covariance[0]![1]! * scatter;
    expect(covariance / (u1! * u2!)).toBeCloseTo(-0.93, 3);
    // At 30 °C: -0.1494 with 0.0041.
    expect(fit.solution[0]! + 10 * fit.solution[1]!).toBeCloseTo(-0.1494, 4);
    expect(Math.sqrt(u1! ** 2 + 100 * u2! ** 2 + 20 * covariance)).toBeCloseTo(0.0041, 4);
  });
  it('a weighted straight line (Bevington and Robinson, ch. 6 formulae; the instance is ours, by fractions)', () => {
    const sigma = [1, 1, 1, 2];
    const fit = fitted(
      [0, 1, 2, 3].map((x, i) => [1 / sigma[i]!, x / sigma[i]!]),
      [1, 3, 5, 8].map((y, i) => y / sigma[i]!),
    );
    expect(fit.solution[0]).toBeCloseTo(17 / 19, 12);
    expect(fit.solution[1]).toBeCloseTo(41 / 19, 12);
    const [u1, u2] = [Math.sqrt(fit.covariance[0]![0]!), Math.sqrt(fit.covariance[1]![1]!)];
    expect([u1, u2].map(u => u.toFixed(7))).toEqual(['0.8735891', '0.5848977']);
    expect((fit.covariance[0]![1]! / (u1 * u2)).toFixed(7)).toBe('-0.7725393');
  });
  it('a weighted mean: 10.1 ± 0.1 and 10.4 ± 0.2 (inverse-variance weights)', () => {
    const fit = fitted([[10], [5]], [101, 52]);
    expect(fit.solution[0]).toBeCloseTo(10.16, 12);
    expect(Math.sqrt(fit.covariance[0]![0]!)).toBeCloseTo(0.0894427, 7);
  });
});

it('says when an unknown is left open', () => {
  expect(leastSquares([[1, 2]], [1])).toBeNull();
  expect(
    leastSquares(
      [
        [1, 2],
        [2, 4],
        [3, 6],
      ],
      [1, 2, 3],
    ),
  ).toBeNull();
  expect(
    leastSquares(
      [
        [1, 0],
        [2, 0],
      ],
      [1, 2],
    ),
  ).toBeNull();
  expect(leastSquares([], [])).toBeNull();
});

describe('an unknown is left open', () => {
  it.each<[string, readonly (readonly number[])[]]>([
    ['by no rows', []],
    ['by fewer rows than unknowns', [[1, 2]]],
    ['by rows of nothing', [[], []]],
    [
      'by a column that hangs on another',
      [
        [1, 2],
        [2, 4],
        [3, 6],
      ],
    ],
  ])('%s', (_, rows) => {
    expect(
      leastSquares(
        rows,
        rows.map(() => 1),
      ),
    ).toBeNull();
  });
});
