/** The lower triangle L of a positive matrix A = L·Lᵀ. */
export type Triangle = readonly (readonly number[])[];
export type Matrix = readonly (readonly number[])[];

/** Cholesky's triangle; null where the matrix is not positive. */
export function cholesky(matrix: Matrix): Triangle | null {
  const size = matrix.length;
  const lower: number[][] = [];
  for (let i = 0; i < size; i++) {
    const row = new Array<number>(i + 1).fill(0);
    for (let k = 0; k <= i; k++) {
      let rest = matrix[i]![k]!;
      const other = k === i ? row : lower[k]!;
      for (let n = 0; n < k; n++) rest -= row[n]! * other[n]!;
      if (k < i) row[k] = rest / other[k]!;
      else if (rest > 0) row[i] = Math.sqrt(rest);
      else return null;
    }
    lower.push(row);
  }
  return lower;
}

/** L⁻¹·b. */
export function forward(lower: Triangle, b: readonly number[]): readonly number[] {
  const x = new Array<number>(b.length).fill(0);
  for (let i = 0; i < b.length; i++) {
    const row = lower[i]!;
    let rest = b[i]!;
    for (let k = 0; k < i; k++) rest -= row[k]! * x[k]!;
    x[i] = rest / row[i]!;
  }
  return x;
}

/** L⁻ᵀ·b. */
export function backward(lower: Triangle, b: readonly number[]): readonly number[] {
  const x = [...b];
  for (let i = b.length - 1; i >= 0; i--) {
    x[i]! /= lower[i]![i]!;
    for (let k = 0; k < i; k++) x[k]! -= lower[i]![k]! * x[i]!;
  }
  return x;
}

/** A⁻¹·b. */
export const solve = (lower: Triangle, b: readonly number[]): readonly number[] => backward(lower, forward(lower, b));

/** Natural logarithm of the determinant of A. */
export const logDeterminant = (lower: Triangle): number =>
  2 * lower.reduce((sum, row, i) => sum + Math.log(row[i]!), 0);

export const inner = (a: readonly number[], b: readonly number[]): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
};

export const times = (matrix: Matrix, b: readonly number[]): readonly number[] => matrix.map(row => inner(row, b));

export const transposed = (matrix: Matrix): Matrix => (matrix[0] ?? []).map((_, k) => matrix.map(row => row[k]!));

export const zeros = (rows: number, columns = rows): number[][] =>
  Array.from({ length: rows }, () => new Array<number>(columns).fill(0));
