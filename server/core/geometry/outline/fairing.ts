/**
 * Fair curves through points: piecewise cubics whose slopes at the points keep each coordinate rising or falling as the
 * points do (F. N. Fritsch & J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; from memory). They touch every
 * point, bulge past none, stay straight where three points are in line, and keep square corners.
 */
export type Coordinates = readonly number[];

/** So many points, the first and the last among them, on the curve through `points`; `at` is each one's place along it, rising. */
export function fairedThrough(
  points: readonly Coordinates[],
  at: readonly number[],
  wanted: readonly number[],
): readonly Coordinates[] {
  const [first] = points;
  if (!first || points.length < 2) return wanted.map(() => first ?? []);
  const coordinates = first.map((_, axis) => points.map(point => point[axis]!));
  const slopes = coordinates.map(values => slopesOf(values, at));
  let stretch = 0;
  return wanted.map(t => {
    if (t < at[stretch]!) stretch = 0;
    // Ends: the last stretch takes what is left.
    while (stretch < at.length - 2 && t > at[stretch + 1]!) stretch++;
    return coordinates.map((values, axis) => cubic(values, slopes[axis]!, at, stretch, t));
  });
}

/** Places along the curve at equal shares of each stretch between the points, `each` to a stretch, all points among them. */
export const finer = (at: readonly number[], each: number): readonly number[] => [
  ...at.slice(1).flatMap((to, i) => Array.from({ length: each }, (_, k) => at[i]! + ((to - at[i]!) * k) / each)),
  at.at(-1)!,
];

/** How far along the straight lines between them each point lies; those in one spot count as a hair apart. */
export function chordLengths(points: readonly Coordinates[]): readonly number[] {
  let along = 0;
  return points.map((point, i) => {
    const before = points[i - 1];
    if (before) along += Math.max(Math.hypot(...point.map((c, axis) => c - before[axis]!)), HAIR);
    return along;
  });
}

const HAIR = 1e-9;

function slopesOf(values: readonly number[], at: readonly number[]): readonly number[] {
  const steps = at.slice(1).map((to, i) => to - at[i]!);
  const rises = values.slice(1).map((to, i) => (to - values[i]!) / steps[i]!);
  const last = rises.length - 1;
  if (last === 0) return [rises[0]!, rises[0]!];
  const inner = steps.slice(1).map((after, i) => between(rises[i]!, rises[i + 1]!, steps[i]!, after));
  return [
    end(rises[0]!, rises[1]!, steps[0]!, steps[1]!),
    ...inner,
    end(rises[last]!, rises[last - 1]!, steps[last]!, steps[last - 1]!),
  ];
}

/** A weighted harmonic mean of the rises before and after; level at a peak. */
function between(one: number, two: number, before: number, after: number): number {
  if (one * two <= 0) return 0;
  const [w1, w2] = [2 * after + before, after + 2 * before];
  return (w1 + w2) / (w1 / one + w2 / two);
}

/** A parabola through the last three points, kept from turning back. */
function end(rise: number, next: number, step: number, nextStep: number): number {
  const slope = ((2 * step + nextStep) * rise - step * next) / (step + nextStep);
  if (slope * rise <= 0) return 0;
  return rise * next <= 0 && Math.abs(slope) > 3 * Math.abs(rise) ? 3 * rise : slope;
}

function cubic(
  values: readonly number[],
  slopes: readonly number[],
  at: readonly number[],
  i: number,
  t: number,
): number {
  const step = at[i + 1]! - at[i]!;
  const s = (t - at[i]!) / step;
  const [from, to] = [values[i]!, values[i + 1]!];
  if (s <= 0) return from;
  if (s >= 1) return to;
  const [a, b] = [slopes[i]! * step, slopes[i + 1]! * step];
  return from + s * (a + s * (3 * (to - from) - 2 * a - b + s * (a + b - 2 * (to - from))));
}
