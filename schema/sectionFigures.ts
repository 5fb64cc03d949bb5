/** A point of half a cross-section: half-breadth and height, any one unit. */
type Point = readonly [half: number, height: number];

/** A cross-section by the figures of a plan: heights of keel and deck, the half-breadth, and what it fills. */
export interface SectionFigures {
  readonly keel: number;
  readonly deck: number;
  readonly half: number;
  readonly full: Fullness;
}

/** Share of the rectangle round it that a section fills, or a shape that is not the same above as below. */
export type Fullness = number | 'round bilge';

/** An ellipse fills π/4 of its rectangle. */
export const ELLIPSE = Math.PI / 4;

/** Stretches of an outline; a multiple of eight, so that box corners and quarter points are points. */
const STRETCHES = 32;

/** Of the half-breadth and of the depth, what the bilge of a round-bilged section rounds off. */
const BILGE = 0.5;

/**
 * The outline from keel to deck, always of equally many points; a single one where the section is a point. A share is met
 * exactly by the outline as it is drawn, with straight lines between its points: a superellipse |y|^p + |z|^p = 1 in the
 * section's rectangle (Lamé's curve: a diamond for p = 1, an ellipse for 2, the rectangle itself in the end).
 */
export function outlineOfFigures({ keel, deck, half, full }: SectionFigures): readonly Point[] {
  if (deck === keel && half === 0) return [[0, keel]];
  const unit = full === 'round bilge' ? roundBilge() : superellipse(full);
  return unit.map(([y, z]) => [half * y, keel + ((deck - keel) * (1 + z)) / 2]);
}

/** In the rectangle of half-breadth 1 and heights -1 to 1, filling this share of it. */
function superellipse(share: number): readonly Point[] {
  // 1/p: one for the diamond, nothing for the rectangle.
  let [low, high] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (shareOf(curve(middle)) > share) low = middle;
    else high = middle;
  }
  return curve(share >= 1 ? 0 : (low + high) / 2);
}

const HALVINGS = 50;

function curve(inverse: number): readonly Point[] {
  return Array.from({ length: STRETCHES + 1 }, (_, i): Point => {
    const angle = (Math.PI * i) / STRETCHES - Math.PI / 2;
    const isEnd = i === 0 || i === STRETCHES;
    const [c, s] = [isEnd ? 0 : Math.cos(angle), Math.sin(angle)];
    const [most, least] = [Math.max(c, Math.abs(s)), Math.min(c, Math.abs(s))];
    const radius = (inverse > 0 ? (1 + (least / most) ** (1 / inverse)) ** -inverse : 1) / most;
    return [c * radius, s * radius];
  });
}

/** A flat floor, quarter ellipses at the bilges, upright sides, a flat deck. */
function roundBilge(): readonly Point[] {
  const quarter = STRETCHES / 4;
  const line = (from: Point, to: Point, stretches: number): readonly Point[] =>
    Array.from({ length: stretches }, (_, i): Point => {
      const share = i / stretches;
      return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
    });
  const [floor, side] = [1 - BILGE, -1 + 2 * BILGE];
  const arc = Array.from({ length: 2 * quarter }, (_, i): Point => {
    const angle = (Math.PI / 2) * (i / (2 * quarter));
    return [floor + BILGE * Math.sin(angle), side - 2 * BILGE * Math.cos(angle)];
  });
  return [
    ...line([0, -1], [floor, -1], quarter),
    ...arc,
    ...line([1, side], [1, 1], quarter / 2),
    ...line([1, 1], [0, 1], quarter / 2),
    [0, 1],
  ];
}

/** Of the rectangle, by the half between the outline and the centreline. */
function shareOf(points: readonly Point[]): number {
  let area = 0;
  for (const [i, [y, z]] of points.entries()) {
    const [before, below] = points[i - 1] ?? [y, z];
    area += ((y + before) / 2) * (z - below);
  }
  return area / 2;
}
