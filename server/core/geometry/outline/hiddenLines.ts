import type { Point2 } from './outline.ts';
import type { Loop } from './silhouette.ts';

/** An open line, m. */
export type Line = readonly Point2[];

/** Something opaque, as it is seen, m. */
export interface Seen {
  readonly loops: readonly Loop[];
  /** How far it reaches towards who looks, and where in depth its outline lies: more is nearer. */
  readonly nearest: number;
  readonly outline: number;
}

/** The stretches of outlines that are seen, and those behind something nearer. */
export interface Lines {
  readonly seen: readonly Line[];
  readonly hidden: readonly Line[];
}

/** The outline of one thing among others: hidden is what lies within the outline of something that reaches nearer. */
export function linesAmong(one: Seen, others: readonly Seen[]): Lines {
  const before = others.filter(({ nearest }) => nearest > one.outline);
  const [seen, hidden]: [Line[], Line[]] = [[], []];
  for (const loop of one.loops) {
    let [line, wasHidden]: [Point2[], boolean] = [[], false];
    const close = (): void => {
      if (line.length > 1) (wasHidden ? hidden : seen).push(line);
    };
    loop.forEach((from, i) => {
      const to = loop[(i + 1) % loop.length]!;
      for (const [a, b, isHidden] of stretches(from, to, before)) {
        if (line.length === 0 || isHidden !== wasHidden) {
          close();
          line = [a];
          wasHidden = isHidden;
        }
        line.push(b);
      }
    });
    close();
  }
  return { seen, hidden };
}

type Stretch = readonly [from: Point2, to: Point2, isHidden: boolean];

/** A straight line between the places where it goes behind something and comes out again. */
function stretches(from: Point2, to: Point2, before: readonly Seen[]): readonly Stretch[] {
  if (before.length === 0) return [[from, to, false]];
  const at = (t: number): Point2 => [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
  const cuts = before.flatMap(({ loops }) => loops.flatMap(loop => crossings(from, to, loop)));
  const aside = ASIDE / Math.max(Math.hypot(to[0] - from[0], to[1] - from[1]), SHORT);
  const places = [0, ...cuts.sort((a, b) => a - b), 1];
  return places.slice(1).flatMap((end, i): readonly Stretch[] => {
    const start = places[i]!;
    if (end - start < SHORT) return [];
    const [x, y] = at((start + end) / 2);
    // Where two outlines run along each other, the one side of them is free.
    const isHidden = [aside, -aside].every(by =>
      before.some(({ loops }) => isWithin([x - by * (to[1] - from[1]), y + by * (to[0] - from[0])], loops)),
    );
    return [[at(start), at(end), isHidden]];
  });
}

/** Of a stretch, and m: nothing to see. */
const SHORT = 1e-9;
/** Just beside a line, m. */
const ASIDE = 2e-5;

/** Where along a straight line, 0..1, it crosses a loop. */
function crossings([x0, y0]: Point2, [x1, y1]: Point2, loop: Loop): readonly number[] {
  const [dx, dy] = [x1 - x0, y1 - y0];
  return loop.flatMap(([ax, ay], i) => {
    const [bx, by] = loop[(i + 1) % loop.length]!;
    const [ex, ey] = [bx - ax, by - ay];
    const across = dx * ey - dy * ex;
    if (across === 0) return [];
    const t = ((ax - x0) * ey - (ay - y0) * ex) / across;
    const s = ((ax - x0) * dy - (ay - y0) * dx) / across;
    return t > 0 && t < 1 && s >= 0 && s <= 1 ? [t] : [];
  });
}

/** Loops run round the point, holes taken off: by its winding number. */
function isWithin([x, y]: Point2, loops: readonly Loop[]): boolean {
  let turns = 0;
  for (const loop of loops) {
    loop.forEach(([ax, ay], i) => {
      const [bx, by] = loop[(i + 1) % loop.length]!;
      if (ay <= y === by <= y) return;
      if (ax + ((bx - ax) * (y - ay)) / (by - ay) > x) turns += by > ay ? 1 : -1;
    });
  }
  return turns !== 0;
}
