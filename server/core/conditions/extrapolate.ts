/** The next of an evenly spaced series, by the polynomial through those given (Newton's backward differences); nothing for none. */
export function extrapolate(series: readonly number[]): number {
  if (series.length === 0) return 0;
  return series.at(-1)! + extrapolate(series.slice(1).map((value, i) => value - series[i]!));
}
