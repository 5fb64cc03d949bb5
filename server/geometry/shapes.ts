import type { Form } from './form.ts';
import type { Cuttable } from './immersion.ts';
import { overlapOf } from './overlap.ts';
import { type Bounds, boundsOf, solidOf, wallOf } from './solids.ts';
import type { Wall } from './wall.ts';

/**
 * What is made from forms, made once for each: a mesh of many triangles is sorted at its first use and not at every
 * keystroke. Forms never change, so that what was made for one stays right.
 */
export interface Shapes {
  solidOf(form: Form): Cuttable;
  wallOf(form: Form, endsClosed: boolean): Wall;
  boundsOf(form: Form): Bounds;
  /** How far two forms reach into each other, m; 0 when they do not. */
  overlapOf(one: Form, two: Form): number;
}

export function createShapes(): Shapes {
  const solids = new WeakMap<Form, Cuttable>();
  const closedWalls = new WeakMap<Form, Wall>();
  const openWalls = new WeakMap<Form, Wall>();
  const bounds = new WeakMap<Form, Bounds>();
  const overlaps = new WeakMap<Form, WeakMap<Form, number>>();
  const boundsOfForm = (form: Form): Bounds => once(bounds, form, () => boundsOf(form));
  return {
    solidOf: form => once(solids, form, () => solidOf(form)),
    wallOf: (form, endsClosed) => once(endsClosed ? closedWalls : openWalls, form, () => wallOf(form, { endsClosed })),
    boundsOf: boundsOfForm,
    overlapOf: (one, two) => {
      const known = once(overlaps, one, () => new WeakMap<Form, number>());
      const bounded = (form: Form) => ({ form, bounds: boundsOfForm(form) });
      return once(known, two, () => overlapOf(bounded(one), bounded(two)));
    },
  };
}

function once<T>(made: WeakMap<Form, T>, form: Form, make: () => T): T {
  const had = made.get(form);
  if (had !== undefined) return had;
  const fresh = make();
  made.set(form, fresh);
  return fresh;
}
