/** A point of a flat outline, m. */
export type Point2 = readonly [number, number];

/** Twice the signed area of the triangle a, b, c: positive when it turns counter-clockwise. */
const turn = (a: Point2, b: Point2, c: Point2): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Signed area of a closed loop, m2; positive when it runs counter-clockwise. */
export function loopArea(loop: readonly Point2[]): number {
  const [first] = loop;
  if (!first) return 0;
  let twice = 0;
  for (let i = 2; i < loop.length; i++) twice += turn(first, loop[i - 1]!, loop[i]!);
  return twice / 2;
}

/**
 * The first two stretches of an open line of points that cross, touch or run back over each other, by the number of the
 * point they start from; null when there are none. Stretches of no length are passed over.
 */
export function firstCrossing(points: readonly Point2[]): readonly [one: number, other: number] | null {
  const stretches = points.flatMap((point, i) => (i + 1 < points.length && !same(point, points[i + 1]!) ? [i] : []));
  for (const [k, other] of stretches.entries()) {
    for (const [m, one] of stretches.slice(0, k).entries()) {
      const [a, b, c, d] = [points[one]!, points[one + 1]!, points[other]!, points[other + 1]!];
      if (m === k - 1 ? foldsBack(a, b, d) : meet(a, b, c, d)) return [one, other];
    }
  }
  return null;
}

const same = (a: Point2, b: Point2): boolean => a[0] === b[0] && a[1] === b[1];

const foldsBack = (a: Point2, b: Point2, c: Point2): boolean =>
  turn(a, b, c) === 0 && (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0;

/** The stretches a-b and c-d have a point in common. */
function meet(a: Point2, b: Point2, c: Point2, d: Point2): boolean {
  const [abc, abd, cda, cdb] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (abc * abd < 0 && cda * cdb < 0) return true;
  return (
    (abc === 0 && isBetween(a, c, b)) ||
    (abd === 0 && isBetween(a, d, b)) ||
    (cda === 0 && isBetween(c, a, d)) ||
    (cdb === 0 && isBetween(c, b, d))
  );
}

/** A point on the line through two others lies between them. */
const isBetween = (a: Point2, p: Point2, b: Point2): boolean =>
  Math.min(a[0], b[0]) <= p[0] &&
  p[0] <= Math.max(a[0], b[0]) &&
  Math.min(a[1], b[1]) <= p[1] &&
  p[1] <= Math.max(a[1], b[1]);

/**
 * A simple counter-clockwise loop as triangles, by cutting off one ear after the other; numbers of its points, three a
 * triangle. Every simple polygon has two ears (Meisters 1975, from memory), so it always ends.
 */
export function triangulate(loop: readonly Point2[]): readonly (readonly [number, number, number])[] {
  const left = loop.map((_, i) => i);
  const triangles: (readonly [number, number, number])[] = [];
  // Ends: each round takes a corner away.
  while (left.length > 3) {
    const ear = left.findIndex((_, k) => isEar(loop, left, k));
    // Rounding may hide the last ears of a very thin loop: any corner then does no harm worth the name.
    const k = Math.max(0, ear);
    triangles.push(cornerAt(left, k));
    left.splice(k, 1);
  }
  if (left.length === 3) triangles.push([left[0]!, left[1]!, left[2]!]);
  return triangles;
}

const cornerAt = (left: readonly number[], k: number): readonly [number, number, number] => [
  left[(k + left.length - 1) % left.length]!,
  left[k]!,
  left[(k + 1) % left.length]!,
];

/** The corner turns left and no other point of the loop lies in its triangle. */
function isEar(loop: readonly Point2[], left: readonly number[], k: number): boolean {
  const corner = cornerAt(left, k);
  const [a, b, c] = corner.map(i => loop[i]!) as [Point2, Point2, Point2];
  if (!(turn(a, b, c) > 0)) return false;
  return !left.some(i => {
    if (corner.includes(i)) return false;
    const p = loop[i]!;
    return turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0;
  });
}
