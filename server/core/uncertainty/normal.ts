/**
 * Normal distributions of a few dimensions, for uncertainties that are not small: a figure is looked at on points spread as far as
 * the uncertainties go, not only by its slope at the middle.
 */

/** The same loads by independent standard normal numbers z: load = A·z. */
export interface Whitened {
  /** Columns of A: what one standard deviation of each z does to the loads. */
  readonly columns: readonly (readonly number[])[];
  /** For each z the share that every source has in it: sources and z are standard normal, z = Σ weights·source. */
  readonly weights: readonly Float64Array[];
}

/** Directions in which less than this is uncertain, of the largest (variance), are left out. */
const NEGLIGIBLE = 1e-12;

/** Variances as near as this to each other, of 1, are alike. */
const ALIKE = 1e-9;

/**
 * By Cholesky's method, the most uncertain load first, or the first of those alike, so that rounding does not choose the
 * axes; loads are scaled by their own uncertainty, so that units do not count. `loads`: of each load what every source does to
 * it, at one standard uncertainty.
 */
export function whiten(loads: readonly Float64Array[]): Whitened {
  const scales = loads.map(load => Math.sqrt(product(load, load)));
  const scaled = loads.map((load, i) => load.map(value => (scales[i]! > 0 ? value / scales[i]! : 0)));
  const rest = scaled.map(load => load.slice());
  const weights: Float64Array[] = [];
  const columns: number[][] = [];
  for (let step = 0; step < loads.length; step++) {
    const variances = rest.map(load => product(load, load));
    const largest = Math.max(...variances);
    const most = variances.findIndex(variance => variance >= largest - ALIKE);
    if (!(variances[most]! > NEGLIGIBLE)) break;
    const deviation = Math.sqrt(variances[most]!);
    const unit = rest[most]!.map(value => value / deviation);
    const column = scaled.map(load => product(unit, load));
    columns.push(column.map((value, i) => value * scales[i]!));
    weights.push(unit);
    for (const [i, load] of rest.entries()) addTo(load, unit, -column[i]!);
  }
  return { columns, weights };
}

/** Sum of the products of two rows. */
export function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** Adds so many times another row. */
export function addTo(sum: Float64Array, more: Float64Array, times: number): void {
  for (let i = 0; i < sum.length; i++) sum[i]! += times * more[i]!;
}

/** A point of a rule for means over a standard normal distribution. */
export interface RulePoint {
  readonly z: readonly number[];
  readonly weight: number;
}

/**
 * Points and weights whose weighted sum is the mean of every polynomial up to the fifth degree over standard normal z
 * (McNamee & Stenger, Numerische Mathematik 10 (1967) 327-344, fully symmetric rule of degree 5; from memory, held to the
 * moments of the normal distribution in the tests). The middle comes first.
 */
export function fifthDegreeRule(size: number): readonly RulePoint[] {
  const reach = Math.sqrt(3);
  const at = (entries: readonly (readonly [number, number])[]) => {
    const z = range(size).map(() => 0);
    for (const [i, value] of entries) z[i] = value;
    return z;
  };
  const signs = [reach, -reach];
  const single = (4 - size) / 18;
  const axes = single === 0 ? [] : range(size).flatMap(i => signs.map(s => ({ z: at([[i, s]]), weight: single })));
  const pairs = range(size).flatMap(i =>
    range(i).flatMap(k =>
      signs.flatMap(s =>
        signs.map(t => ({
          z: at([
            [i, s],
            [k, t],
          ]),
          weight: 1 / 36,
        })),
      ),
    ),
  );
  return [{ z: at([]), weight: 1 + (size * size - 7 * size) / 18 }, ...axes, ...pairs];
}

const range = (size: number): readonly number[] => Array.from({ length: size }, (_, i) => i);
