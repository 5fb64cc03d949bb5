import type { Cuttable } from '../cut/immersion.ts';
import { type Bounds, boundsOf, solidOf, wallOf } from '../cut/solids.ts';
import type { Wall } from '../cut/wall.ts';
import type { Form, Polyhedron } from '../form/form.ts';
import { type MeshPlacement, placedMesh, placementKey } from '../mesh/placedMesh.ts';
import { type Loop, type Sight, silhouetteOf } from '../outline/silhouette.ts';
import { overlapOf } from './overlap.ts';

/**
 * What is made from forms, made once for each: a mesh of many triangles is sorted at its first use and not at every
 * keystroke. Forms never change, so that what was made for one stays right.
 */
export interface Shapes {
  solidOf(form: Form): Cuttable;
  wallOf(form: Form, endsClosed: boolean): Wall;
  boundsOf(form: Form): Bounds;
  /** What it looks like along an axis of the boat, m. */
  silhouetteOf(form: Form, along: Sight): readonly Loop[];
  /** How far two forms reach into each other, m; 0 when they do not. */
  overlapOf(one: Form, two: Form): number;
  /** The mesh in boat axes: the same form for the same placement, so that what was made for it holds. */
  placed(mesh: Polyhedron, placement: MeshPlacement): Polyhedron;
}

/** Placements of a mesh that are remembered: where it is now, and was before the last keystrokes. */
const PLACEMENTS = 4;

export function createShapes(placements = PLACEMENTS): Shapes {
  const solids = new WeakMap<Form, Cuttable>();
  const closedWalls = new WeakMap<Form, Wall>();
  const openWalls = new WeakMap<Form, Wall>();
  const bounds = new WeakMap<Form, Bounds>();
  const silhouettes = [0, 1, 2].map(() => new WeakMap<Form, readonly Loop[]>());
  const overlaps = new WeakMap<Form, WeakMap<Form, number>>();
  const placings = new WeakMap<Form, Map<string, Polyhedron>>();
  const boundsOfForm = (form: Form): Bounds => once(bounds, form, () => boundsOf(form));
  return {
    solidOf: form => once(solids, form, () => solidOf(form)),
    wallOf: (form, endsClosed) => once(endsClosed ? closedWalls : openWalls, form, () => wallOf(form, { endsClosed })),
    boundsOf: boundsOfForm,
    silhouetteOf: (form, along) => once(silhouettes[along]!, form, () => silhouetteOf(form, along)),
    overlapOf: (one, two) => {
      const known = once(overlaps, one, () => new WeakMap<Form, number>());
      const bounded = (form: Form) => ({ form, bounds: boundsOfForm(form) });
      return once(known, two, () => overlapOf(bounded(one), bounded(two)));
    },
    placed: (mesh, placement) => {
      const known = once(placings, mesh, () => new Map<string, Polyhedron>());
      const key = placementKey(placement);
      const form = known.get(key) ?? placedMesh(mesh, placement);
      known.delete(key);
      known.set(key, form);
      if (known.size > placements) known.delete(known.keys().next().value!);
      return form;
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
