import { Matrix, QrDecomposition } from 'ml-matrix';

/** The best fit of `rows · x = values`, each row in units of its own standard uncertainty. */
export interface Fit {
  readonly solution: readonly number[];
  /** Covariance of the solution, for rows of uncertainty one. */
  readonly covariance: readonly (readonly number[])[];
  /** `values - rows · solution`. */
  readonly residuals: readonly number[];
  /** Sum of their squares. */
  readonly sum: number;
  /** Natural logarithm of the covariance's determinant. */
  readonly logVolume: number;
}

/**
 * Linear least squares by Householder's orthogonal triangularisation, which keeps the digits that normal equations lose.
 * Null when the rows leave an unknown open (a column that hangs on the others).
 */
export function leastSquares(rows: readonly (readonly number[])[], values: readonly number[]): Fit | null {
  const unknowns = rows[0]?.length ?? 0;
  if (unknowns === 0 || rows.length < unknowns) return null;
  // Columns of like size: what is in metres and what is in grams must not count by their units.
  const sizes = Array.from({ length: unknowns }, (_, j) => Math.hypot(...rows.map(row => row[j]!)));
  if (sizes.some(size => !(size > 0) || !Number.isFinite(size))) return null;
  const scaled = rows.map(row => row.map((entry, j) => entry / sizes[j]!));
  const split = new QrDecomposition(new Matrix(scaled));
  const triangle = split.upperTriangularMatrix.to2DArray();
  if (triangle.some((row, i) => !(Math.abs(row[i]!) > LEAST_PIVOT))) return null;
  const solution = split
    .solve(Matrix.columnVector([...values]))
    .to1DArray()
    .map((x, j) => x / sizes[j]!);
  const residuals = rows.map((row, i) => values[i]! - innerProduct(row, solution));
  return {
    solution,
    covariance: covarianceOf(invertTriangle(triangle), sizes),
    residuals,
    sum: innerProduct(residuals, residuals),
    logVolume: -2 * triangle.reduce((sum, row, i) => sum + Math.log(Math.abs(row[i]!) * sizes[i]!), 0),
  };
}

/** A column that is this nearly a mixture of the others tells nothing of its own. */
const LEAST_PIVOT = 1e-13;

export const innerProduct = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);

/** The inverse of an upper triangle, column by column. */
function invertTriangle(triangle: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const size = triangle.length;
  const inverse = triangle.map(() => new Array<number>(size).fill(0));
  for (let column = 0; column < size; column++) {
    for (let i = column; i >= 0; i--) {
      let rest = i === column ? 1 : 0;
      for (let k = i + 1; k <= column; k++) rest -= triangle[i]![k]! * inverse[k]![column]!;
      inverse[i]![column] = rest / triangle[i]![i]!;
    }
  }
  return inverse;
}

/** (RᵀR)⁻¹ = R⁻¹ R⁻ᵀ, in the unknowns' own units. */
const covarianceOf = (inverse: readonly (readonly number[])[], sizes: readonly number[]) =>
  inverse.map((a, i) => inverse.map((b, j) => innerProduct(a, b) / (sizes[i]! * sizes[j]!)));
