import type { Point2 } from './outline.ts';
import type { Loop } from './silhouette.ts';

/** The part of a loop where `height` is at most 0: `height` is linear in the point. Sutherland and Hodgman, from memory. */
export function clipLoop(loop: Loop, height: (point: Point2) => number): Loop {
  return loop.flatMap((point, i) => {
    const before = loop[(i + loop.length - 1) % loop.length]!;
    const [from, to] = [height(before), height(point)];
    const crossing: readonly Point2[] = from <= 0 !== to <= 0 ? [between(before, point, from / (from - to))] : [];
    return to <= 0 ? [...crossing, point] : crossing;
  });
}

const between = (a: Point2, b: Point2, f: number): Point2 => [a[0] + (b[0] - a[0]) * f, a[1] + (b[1] - a[1]) * f];
