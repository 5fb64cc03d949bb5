import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { Seeded } from '../helpers/seeded.ts';
import type { Shown } from './readings.ts';

/** One draw of what may be: its figures, each in its limit, and what would have been read of it. */
export interface Draw {
  readonly at: readonly number[];
  readonly shown: readonly Shown[];
}

/** A place among the figures and its weight. */
export interface Point {
  readonly at: readonly number[];
  readonly weight: number;
}

/** A draw where the readings have it; how likely they are by the draws that it is one of (natural logarithm). */
interface Moved {
  readonly at: readonly number[];
  readonly logWeight: number;
}

/** Weights beside each other: the likeliest counts 1, however unlikely all of them are. */
export function weighed(moved: readonly Moved[]): readonly Point[] {
  const most = moved.reduce((sum, { logWeight }) => Math.max(sum, logWeight), Number.NEGATIVE_INFINITY);
  return moved.map(({ at, logWeight }) => ({ at, weight: Math.exp(logWeight - most) }));
}

/**
 * The draws moved to where they would lie with what was read: x + C·(y - (h + e)), C the regression of figures on readings
 * over the draws (conditioning by kriging, Matheron's rule: exact where everything is normal and straight; from memory). All of
 * them weigh as many times more as their spread makes the readings likelier.
 */
export function conditioned(draws: readonly Draw[], read: readonly Shown[], { normal }: Seeded): readonly Moved[] {
  if (read.length === 0) return draws.map(({ at }) => ({ at, logWeight: 0 }));
  // In uncertainties of the readings, that the matrix is well scaled.
  const told = draws.map(({ shown }) => shown.map(({ value, sigma }) => value / sigma));
  const target = read.map(({ value, sigma }) => value / sigma);
  const means = meansOf(told);
  const [offFigures, offReadings] = [centred(draws.map(({ at }) => at)), centred(told)];
  const n = draws.length - 1;
  const ofReadings = offReadings.transpose().mmul(offReadings).div(n).add(Matrix.eye(target.length));
  const split = new CholeskyDecomposition(ofReadings);
  const gain = split.solve(offReadings.transpose().mmul(offFigures).div(n)).transpose();
  const off = Matrix.columnVector(target.map((value, i) => value - means[i]!));
  const halfLog = split.lowerTriangularMatrix.diagonal().reduce((sum, value) => sum + Math.log(value), 0);
  const squares = off.transpose().mmul(split.solve(off)).get(0, 0);
  const logWeight = -squares / 2 - halfLog;
  return draws.map(({ at }, k) => {
    const missing = target.map((value, i) => value - (told[k]![i]! + normal()));
    const moved = gain.mmul(Matrix.columnVector(missing)).to1DArray();
    return { at: at.map((value, i) => value + moved[i]!), logWeight };
  });
}

const meansOf = (rows: readonly (readonly number[])[]): readonly number[] =>
  rows[0]!.map((_, i) => rows.reduce((sum, row) => sum + row[i]!, 0) / rows.length);

function centred(rows: readonly (readonly number[])[]): Matrix {
  const means = meansOf(rows);
  return new Matrix(rows.map(row => row.map((value, i) => value - means[i]!)));
}

/** So often every figure in turn is aimed anew. */
const SWEEPS = 4;

/** The shift with which the most of the points, by their weight, come to lie within 1 of nothing in all figures. */
export function bestAim(points: readonly Point[]): readonly number[] {
  const size = points[0]!.at.length;
  let aim: readonly number[] = Array.from({ length: size }, (_, i) => medianOf(points, i));
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (let i = 0; i < size; i++) {
      const others = points.filter(({ at }) => at.every((value, k) => k === i || Math.abs(value - aim[k]!) <= 1));
      if (others.length === 0) continue;
      // The middle of the best window, so that those at its ends are as safe as can be.
      const [from, to] = bestWindow(others.map(({ at, weight }) => ({ at: at[i]!, weight })));
      aim = aim.map((value, k) => (k === i ? (from + to) / 2 : value));
    }
  }
  return aim;
}

type OnLine = { readonly at: number; readonly weight: number };

function bestWindow(points: readonly OnLine[]): readonly [from: number, to: number] {
  const sorted = [...points].sort((a, b) => a.at - b.at);
  let best = { weight: 0, from: 0, to: 0 };
  let [first, weight] = [0, 0];
  for (const { at, weight: own } of sorted) {
    weight += own;
    // Ends: at the point itself at the latest.
    while (at - sorted[first]!.at > 2) weight -= sorted[first++]!.weight;
    if (weight > best.weight) best = { weight, from: sorted[first]!.at, to: at };
  }
  return [best.from, best.to];
}

function medianOf(points: readonly Point[], i: number): number {
  const sorted = points.map(({ at, weight }) => ({ at: at[i]!, weight })).sort((a, b) => a.at - b.at);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let below = 0;
  for (const { at, weight } of sorted) {
    below += weight;
    if (below >= half) return at;
  }
  return 0;
}

/** The share of the points, by their weight, within 1 of an aim in all figures. */
export function shareWithin(points: readonly Point[], aim: readonly number[]): number {
  const sum = (some: readonly Point[]) => some.reduce((total, { weight }) => total + weight, 0);
  return sum(points.filter(({ at }) => at.every((value, i) => Math.abs(value - aim[i]!) <= 1))) / sum(points);
}
