import type { Vec3 } from '../geometry/form/vector.ts';
import type { Point2 } from '../geometry/outline/outline.ts';
import { SEEN, type Sight } from '../geometry/outline/sight.ts';

/** How the two axes that one sees lie on the paper, whose up is up in the water. */
export interface Turn {
  /** Directions to the right and up on the paper, in the seen axes; unit vectors. */
  readonly right: Point2;
  readonly up: Point2;
  /** Height on the paper (m) at which the plane `up·p = level` meets the plane at `depth` along the line of sight. */
  height(level: number, depth: number): number;
}

/** The boat as built, with no water about it. */
export const unturned: Turn = { right: [1, 0], up: [0, 1], height: level => level };

/** A boat that is seen this nearly along its vertical has no up on the paper. */
const LEAST = 0.15;

/**
 * The boat seen from the side (its bow always to the left, so that stations run to the right) or from astern (starboard
 * to the right), turned so that the water is level; null when it lies so far over that it is seen from above or below.
 */
export function turnFor(up: Vec3, along: 0 | 1): Turn | null {
  const [p, q] = SEEN[along];
  const size = Math.hypot(up[p], up[q]);
  if (size < LEAST) return null;
  const [x, y] = [up[p] / size, up[q] / size];
  const isMirrored = along === 1 && y < 0;
  return {
    right: isMirrored ? [-y, x] : [y, -x],
    up: [x, y],
    height: (level, depth) => (level - up[along] * depth) / size,
  };
}

/** A point of the boat on the paper, m: to the right and up. */
export const turned = ({ right, up }: Pick<Turn, 'right' | 'up'>, [x, y]: Point2): Point2 => [
  right[0] * x + right[1] * y,
  up[0] * x + up[1] * y,
];

export const seen = (point: Vec3, along: Sight): Point2 => [point[SEEN[along][0]], point[SEEN[along][1]]];
