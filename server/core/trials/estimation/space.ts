import { pacer, type Steps } from '../../steps/steps.ts';
import { beginning, forward, inner, logDeterminant, type Matrix, nextRow, times, transposed } from './cholesky.ts';

/**
 * Readings of which straight lines foretell what is left: `rest = slopes·x + columns·w + error`, with x independent and
 * standard normal beforehand, and w what a hypothesis makes of it. All in any units; errors are independent.
 */
export interface Straight {
  /** What was read less what is foretold with x and w zero. */
  readonly rest: readonly number[];
  /** For each reading its change with each x. */
  readonly slopes: Matrix;
  /** One standard uncertainty of each reading by itself. */
  readonly errors: readonly number[];
  /** For each w what one of it does to the readings. */
  readonly columns: Matrix;
}

/** The readings with x averaged out: all that a hypothesis about w need know of them. */
export interface Space {
  /** -2·ln of the likelihood is `spread + base - 2·wᵀ·pull + wᵀ·stiffness·w`, but for what is the same with all straight lines. */
  readonly stiffness: Matrix;
  readonly pull: readonly number[];
  readonly base: number;
  /** Natural logarithm of the determinant of what is left open of the readings. */
  readonly spread: number;
  /** What is left of the readings, what each x does to them and each w, so that the open ones count as errors of one each. */
  readonly white: {
    readonly rest: readonly number[];
    readonly slopes: Matrix;
    readonly columns: Matrix;
  };
}

/** So many products of two numbers are summed in one step. */
const STEP = 1e6;

/** Null for no readings, or readings without any error. */
export function* spaceOf({ rest, slopes, errors, columns }: Straight): Steps<Space | null> {
  const count = rest.length;
  if (count === 0) return null;
  const isDue = pacer(STEP);
  const triangle: (readonly number[])[] = [];
  for (const [i, row] of slopes.entries()) {
    const covariance = slopes.slice(0, i + 1).map(other => inner(row, other));
    covariance[i]! += errors[i]! ** 2;
    const next = nextRow(triangle, covariance);
    if (!next) return null;
    triangle.push(next);
    if (isDue((row.length + i) * i)) yield;
  }
  const whitened = function* (some: Matrix): Steps<Matrix> {
    const found: (readonly number[])[] = [];
    for (const column of some) {
      found.push(forward(triangle, column));
      if (isDue((count - beginning(column)) ** 2 / 2)) yield;
    }
    return found;
  };
  const white = {
    rest: forward(triangle, rest),
    slopes: yield* whitened(transposed(slopes)),
    columns: yield* whitened(columns),
  };
  const begins = white.columns.map(beginning);
  const stiffness: number[][] = [];
  for (const [i, a] of white.columns.entries()) {
    stiffness.push(new Array<number>(columns.length).fill(0));
    for (let k = 0; k <= i; k++) {
      const from = Math.max(begins[i]!, begins[k]!);
      stiffness[i]![k] = stiffness[k]![i] = inner(a, white.columns[k]!, from);
    }
    if (isDue(i * (count - begins[i]!))) yield;
  }
  return {
    stiffness,
    pull: white.columns.map(a => inner(a, white.rest)),
    base: inner(white.rest, white.rest),
    spread: logDeterminant(triangle),
    white,
  };
}

/** Normal numbers by their mean and covariance. */
export interface Normal {
  readonly mean: readonly number[];
  readonly covariance: Matrix;
}

/**
 * How far the readings are from what is foretold with some columns at given values, in squares of what is open besides; of
 * readings as they should be it is about their number, give or take the root of twice that (chi-square).
 */
export function misfit({ base, pull, stiffness }: Space, places: readonly number[], values: readonly number[]): number {
  return places.reduce(
    (sum, a, i) =>
      sum + values[i]! * (places.reduce((held, b, k) => held + stiffness[a]![b]! * values[k]!, 0) - 2 * pull[a]!),
    base,
  );
}

/**
 * How far the readings stray along one column from all that is foretold with others at given values, in standard
 * deviations: the test of one suspect at a time (Baarda, A Testing Procedure for Use in Geodetic Networks, 1968; from
 * memory).
 */
export function strayed(
  { pull, stiffness }: Space,
  column: number,
  places: readonly number[],
  values: readonly number[],
): number {
  const left = places.reduce((rest, a, i) => rest - stiffness[column]![a]! * values[i]!, pull[column]!);
  return Math.abs(left) / Math.sqrt(stiffness[column]![column]!);
}

/** What the readings make of x where w is normal: mean and covariance of both, x first. */
export interface Known {
  readonly x: readonly number[];
  readonly w: Normal;
  /** Covariance of the sum of weights·x and of other weights·w. */
  covariance(a: Weights, b: Weights): number;
  /** A sum through the readings, and one x alone by its place: to be held against many others. */
  seen(sum: Weights): SeenSum;
  seenAlone(x: number): SeenSum;
}

/** A sum as the readings see it. */
export interface SeenSum {
  /** What it does to the readings. */
  readonly image: readonly number[];
  /** What is left of its w once x has given way, and that by what is open of w. */
  readonly ofW: readonly number[];
  readonly openOfW: readonly number[];
}

/** By how much the readings, and w, make the covariance of two sums more than that of their x beforehand. */
export const more = (a: SeenSum, b: SeenSum): number => inner(a.ofW, b.openOfW) - inner(a.image, b.image);

/** Weights of a sum over x and w. */
export interface Weights {
  readonly x: readonly number[];
  readonly w: readonly number[];
}

/** x beside a w that a hypothesis has made of the readings; `places` are the columns that its w stand for. */
export function knownWith({ white }: Space, places: readonly number[], w: Normal): Known {
  const columns = places.map(place => white.columns[place]!);
  const left = white.rest.map((value, i) => columns.reduce((sum, column, k) => sum - column[i]! * w.mean[k]!, value));
  const seenAs = (image: readonly number[], weights: readonly number[]): SeenSum => {
    const ofW = columns.map((column, k) => (weights[k] ?? 0) - inner(image, column));
    return { image, ofW, openOfW: times(w.covariance, ofW) };
  };
  const seen = (weights: Weights): SeenSum => {
    const image = new Array<number>(left.length).fill(0);
    for (const [k, weight] of weights.x.entries()) {
      if (weight === 0) continue;
      const column = white.slopes[k]!;
      for (let i = 0; i < image.length; i++) image[i]! += weight * column[i]!;
    }
    return seenAs(image, weights.w);
  };
  return {
    x: white.slopes.map(column => inner(column, left)),
    w,
    covariance: (a, b) => inner(a.x, b.x) + more(seen(a), seen(b)),
    seen,
    seenAlone: k => seenAs(white.slopes[k]!, []),
  };
}
