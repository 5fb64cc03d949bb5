/** The lower triangle L of a positive matrix A = L·Lᵀ. */
export type Triangle = readonly (readonly number[])[];
export type Matrix = readonly (readonly number[])[];

/** Cholesky's triangle; null where the matrix is not positive. */
export function cholesky(matrix: Matrix): Triangle | null {
  const lower: (readonly number[])[] = [];
  for (const values of matrix) {
    const row = nextRow(lower, values);
    if (!row) return null;
    lower.push(row);
  }
  return lower;
}

/** The row below those that are known, from that of the matrix as far as its diagonal. */
export function nextRow(lower: Triangle, values: readonly number[]): readonly number[] | null {
  const size = lower.length;
  const row = new Array<number>(size + 1).fill(0);
  for (let k = 0; k <= size; k++) {
    let rest = values[k]!;
    const other = k === size ? row : lower[k]!;
    for (let n = 0; n < k; n++) rest -= row[n]! * other[n]!;
    if (k < size) row[k] = rest / other[k]!;
    else if (rest > 0) row[k] = Math.sqrt(rest);
    else return null;
  }
  return row;
}

/** L⁻¹·b, which begins where b does: of much that is read each has to do with a part. */
export function forward(lower: Triangle, b: readonly number[]): readonly number[] {
  const x = new Array<number>(b.length).fill(0);
  const first = beginning(b);
  for (let i = first; i < b.length; i++) {
    const row = lower[i]!;
    let rest = b[i]!;
    for (let k = first; k < i; k++) rest -= row[k]! * x[k]!;
    x[i] = rest / row[i]!;
  }
  return x;
}

/** Where a vector is first not nothing; its length where it is nothing all along. */
export function beginning(b: readonly number[]): number {
  for (let i = 0; i < b.length; i++) if (b[i] !== 0) return i;
  return b.length;
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

/** Of two that are nothing before `from`, what stands there is passed over. */
export const inner = (a: readonly number[], b: readonly number[], from = 0): number => {
  let sum = 0;
  for (let i = from; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
};

export const times = (matrix: Matrix, b: readonly number[]): readonly number[] => matrix.map(row => inner(row, b));

export const transposed = (matrix: Matrix): Matrix => (matrix[0] ?? []).map((_, k) => matrix.map(row => row[k]!));

export const zeros = (size: number): number[][] => Array.from({ length: size }, () => new Array<number>(size).fill(0));
