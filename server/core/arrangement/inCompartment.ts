import type { Tank } from '../boat/boat.ts';
import { TAPE } from '../boat/placed.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { wayOut } from './againstHull.ts';
import { type Conflict, PERHAPS } from './conflict.ts';
import { type Occupant, placesOn } from './occupant.ts';

/** What says that it lies in a compartment, and sticks out of it by its true form; null where it does not. */
export function stickingOut(thing: Occupant, home: Occupant, shapes: Shapes): Conflict | null {
  if (!home.form) return null;
  const depth = shapes.depthIn(home.form);
  let worst: { readonly by: number; readonly at: Vec3 } | null = null;
  // A tank by the jug was given whatever form fits; where none does, that one sticks out.
  const form = thing.kind === 'tank' ? (thing.entry as Tank).form : thing.form;
  for (const at of placesOn({ form, bounds: thing.bounds }, shapes)) {
    const by = -depth(at);
    if (by > (worst?.by ?? TAPE)) worst = { by, at };
  }
  if (!worst) return null;
  const { by, at } = worst;
  const [axis, where] = wayOut(at, by, place => -depth(place), [0, 1, 2]);
  // A rod or a shaft goes out through the end of its compartment.
  if (thing.goesThrough && axis === 0) return null;
  if (by - thing.fitted <= TAPE) return null;
  const ratio = (by - thing.fitted) / Math.max(TAPE, Math.hypot(thing.sigma[axis], home.sigma[axis]));
  if (!(ratio > PERHAPS)) return null;
  return { code: 'sticks-out', of: thing, with: home, by, ratio, axis, where, station: at[0] };
}

/** It lies whole in a compartment. */
export const fitsIn = (thing: Occupant, home: Occupant, shapes: Shapes): boolean =>
  home.form !== null && stickingOut(thing, home, shapes) === null;
