/**
 * Normal distributions of a few dimensions, for uncertainties that are not small: a figure is looked at on points spread as far as
 * the uncertainties go, not only by its slope at the middle.
 */

/** Sources of uncertainty as columns: what each does, at one standard uncertainty, to a few loads. */
export type Loadings = readonly (readonly number[])[];

/** The same loads by independent standard normal numbers z: load = A·z. */
export interface Whitened {
  /** Columns of A: what one standard deviation of each z does to the loads. */
  readonly columns: readonly (readonly number[])[];
  /** For each source its share in every z: sources and z are standard normal, z = Σ weights·source. */
  readonly weights: readonly (readonly number[])[];
}

/** Directions in which less than this is uncertain, of the largest (variance), are left out. */
const NEGLIGIBLE = 1e-12;

/** Variances as near as this to each other, of 1, are alike. */
const ALIKE = 1e-9;

/**
 * By Cholesky's method, the most uncertain load first, or the first of those alike, so that rounding does not choose the
 * axes; loads are scaled by their own uncertainty, so that units do not count.
 */
export function whiten(sources: Loadings, size: number): Whitened {
  const scales = range(size).map(i => Math.hypot(...sources.map(source => source[i]!)));
  const scaled = sources.map(source => source.map((load, i) => (scales[i]! > 0 ? load / scales[i]! : 0)));
  const rest = scaled.map(source => [...source]);
  const weights: number[][] = sources.map(() => []);
  const columns: number[][] = [];
  for (let step = 0; step < size; step++) {
    const variances = range(size).map(i => rest.reduce((sum, source) => sum + source[i]! ** 2, 0));
    const largest = Math.max(...variances);
    const most = variances.findIndex(variance => variance >= largest - ALIKE);
    if (!(variances[most]! > NEGLIGIBLE)) break;
    const deviation = Math.sqrt(variances[most]!);
    const unit = rest.map(source => source[most]! / deviation);
    const column = range(size).map(i => unit.reduce((sum, share, k) => sum + share * scaled[k]![i]!, 0));
    columns.push(column.map((load, i) => load * scales[i]!));
    for (const [k, source] of rest.entries()) {
      weights[k]!.push(unit[k]!);
      for (let i = 0; i < size; i++) source[i]! -= unit[k]! * column[i]!;
    }
  }
  return { columns, weights };
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
