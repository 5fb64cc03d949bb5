import type { Bounds } from '../cut/solids.ts';
import { cornersOf } from '../form/box.ts';
import type { Form, Revolved } from '../form/form.ts';
import { insideOf } from '../mesh/lineCast.ts';

/** A form and the space that it takes up. */
export interface Bounded {
  readonly form: Form;
  readonly bounds: Bounds;
}

/**
 * How far two forms reach into each other, m; 0 when they do not. By their circles where both are fore-and-aft rounds,
 * else by their boxes, where places in both boxes are found that lie in both forms.
 */
export function overlapOf(one: Bounded, two: Bounded): number {
  const from = ([0, 1, 2] as const).map(axis => Math.max(one.bounds.from[axis], two.bounds.from[axis]));
  const size = ([0, 1, 2] as const).map(axis => Math.min(one.bounds.to[axis], two.bounds.to[axis]) - from[axis]!);
  const least = Math.min(...size);
  if (!(least > 0)) return 0;
  if (isForeAft(one.form) && isForeAft(two.form)) {
    const apart = Math.hypot(one.form.origin[1] - two.form.origin[1], one.form.origin[2] - two.form.origin[2]);
    return Math.max(0, Math.min(size[0]!, radiusOf(one.form) + radiusOf(two.form) - apart));
  }
  // Two blocks fill the room that they share.
  if (isBlock(one.form) && isBlock(two.form)) return least;
  return Math.min(least, ...sharedSizes(one.form, two.form, from, size));
}

const isBlock = (form: Form): boolean => form.shape === 'polyhedron' && cornersOf(form) !== null;

const isForeAft = (form: Form): form is Revolved => form.shape === 'revolved' && Math.abs(form.axis[0]) === 1;

const radiusOf = (form: Revolved): number => form.profile.reduce((most, [, radius]) => Math.max(most, radius), 0);

/** Places a side of the grid that is laid through both boxes. */
const PLACES = 14;

/** Length, breadth and depth of what lies in both forms, to a step of the grid; noughts when no place does. */
function sharedSizes(one: Form, two: Form, from: readonly number[], size: readonly number[]): readonly number[] {
  const [insideFirst, insideSecond] = [insideOf(one), insideOf(two)];
  const least = [PLACES, PLACES, PLACES];
  const most = [-1, -1, -1];
  const place = (axis: number, step: number): number => from[axis]! + (size[axis]! * (step + 0.5)) / PLACES;
  for (let j = 0; j < PLACES; j++) {
    for (let k = 0; k < PLACES; k++) {
      const inOne = insideFirst(place(1, j), place(2, k));
      const inTwo = insideSecond(place(1, j), place(2, k));
      for (let i = 0; i < PLACES; i++) {
        if (!inOne(place(0, i)) || !inTwo(place(0, i))) continue;
        [i, j, k].forEach((step, axis) => {
          least[axis] = Math.min(least[axis]!, step);
          most[axis] = Math.max(most[axis]!, step);
        });
      }
    }
  }
  return size.map((whole, axis) => (whole * Math.max(0, most[axis]! - least[axis]! + 1)) / PLACES);
}
