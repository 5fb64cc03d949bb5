import type { Point2 } from './outline.ts';

/** Of a line's greatest extent: what no eye sees in a drawing. */
const UNSEEN = 2e-4;

/**
 * An open line without the points that it would not miss: each one dropped lies nearer to what is left than a small part
 * of the line's extent (Ramer 1972, Douglas and Peucker 1973; from memory).
 */
export function thinned(line: readonly Point2[]): Point2[] {
  if (line.length < 3) return [...line];
  const spans = ([0, 1] as const).map(axis => {
    let [low, high] = [Infinity, -Infinity];
    for (const point of line) {
      if (point[axis] < low) low = point[axis];
      if (point[axis] > high) high = point[axis];
    }
    return high - low;
  });
  const within = UNSEEN * Math.max(...spans);
  const kept = new Uint8Array(line.length);
  kept[0] = 1;
  kept[line.length - 1] = 1;
  const waiting: [number, number][] = [[0, line.length - 1]];
  // Ends: each stretch is split at a point within it.
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const [from, to] = next;
    let [furthest, worst] = [-1, within];
    for (let i = from + 1; i < to; i++) {
      const away = distance(line[i]!, line[from]!, line[to]!);
      if (away > worst) [furthest, worst] = [i, away];
    }
    if (furthest < 0) continue;
    kept[furthest] = 1;
    waiting.push([from, furthest], [furthest, to]);
  }
  return line.filter((_, i) => kept[i] === 1);
}

/** From a point to the stretch a-b. */
function distance(p: Point2, a: Point2, b: Point2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = dx * dx + dy * dy;
  const along = size === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / size));
  return Math.hypot(p[0] - a[0] - along * dx, p[1] - a[1] - along * dy);
}
