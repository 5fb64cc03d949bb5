import { BLOCK_CORNERS } from '../geometry/form/box.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { pacer } from '../steps/steps.ts';
import type { Occupant } from './occupant.ts';

/*
 * How long it takes to hold things against the hull and each other: a pair or a row is one thing, and as much work as it has
 * members. Two plain blocks held against each other are one.
 */

/** So much is held against each other of one boat: none has as much. */
const MOST_HELD = 80_000;
/** So much of that is done in one step. */
const STEP = 200;
/** Any other form than a block takes so many times as long, and a mesh longer with its triangles. */
const NOT_PLAIN = 50;
const TRIANGLES = 20;
/** So many forms that meet are looked at as closely as two alone; of more each is looked at less closely. */
const CLOSELY = 27;
/** Boxes of so many forms are passed by in the time of two blocks. */
const PASSED_BY = 20;
/** Places over a single form, and over each of many that are one thing, held against what is round it. */
const SINGLE = 15;
const OF_MANY = 5;

/** What of all that is held against each other was done so far. */
export interface Held {
  /** No more is looked at. */
  isOver(): boolean;
  /** Counts it; true where a step is full. */
  add(effort: number): boolean;
}

export function heldSoFar(): Held {
  const isDue = pacer(STEP);
  let held = 0;
  return {
    isOver: () => held > MOST_HELD,
    add: effort => {
      held += effort;
      return isDue(effort);
    },
  };
}

/** How long it takes to hold the places on a thing against what is round it. */
export const effortWithin = ({ form }: Occupant): number => Math.max(SINGLE, OF_MANY * formsOf(form));

/** How long it took to hold two things against each other, by as many of their forms as had their boxes meet. */
export function effortBetween(one: Occupant, two: Occupant, shapes: Shapes): number {
  const each = Math.max(effortOf(one.form), effortOf(two.form));
  if (!one.form || !two.form) return each * formsOf(one.form) * formsOf(two.form);
  const meetings = shapes.meetingsOf(one.form, two.form);
  const swept = (formsOf(one.form) + formsOf(two.form)) / PASSED_BY;
  return swept + (each === 1 ? meetings : each * Math.max(Math.min(1, meetings), meetings / CLOSELY));
}

/** How many single forms it is of. */
const formsOf = (form: Form | null): number =>
  form?.shape === 'compound' ? form.parts.reduce((sum, part) => sum + formsOf(part), 0) : 1;

/** How long a form takes to be held against another, the dearest of several; a room without a form is as a block. */
function effortOf(form: Form | null): number {
  if (form === null) return 1;
  if (form.shape === 'compound') return form.parts.reduce((most, part) => Math.max(most, effortOf(part)), 1);
  if (form.shape !== 'polyhedron') return NOT_PLAIN;
  const { length } = form.faces;
  return length === BLOCK_CORNERS.length ? 1 : NOT_PLAIN + length / 3 / TRIANGLES;
}
