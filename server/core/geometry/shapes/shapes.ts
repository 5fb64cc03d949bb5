import type { Steps } from '../../steps/steps.ts';
import type { Cuttable } from '../cut/immersion.ts';
import { type Bounds, boundsOf, solidOf, solidSteps, wallOf, wallSteps } from '../cut/solids.ts';
import type { Wall } from '../cut/wall.ts';
import { boxForm } from '../form/box.ts';
import type { Form, Polyhedron } from '../form/form.ts';
import type { Vec3 } from '../form/vector.ts';
import { type MeshPlacement, placedMesh, placementKey } from '../mesh/placedMesh.ts';
import { formsIn } from '../outline/formsIn.ts';
import type { Sight } from '../outline/sight.ts';
import { type Loop, silhouetteOf, silhouetteSteps } from '../outline/silhouette.ts';
import { type CrossSection, crossSectionsOf } from './crossSection.ts';
import { type Depth, depthIn } from './depth.ts';
import { type Intrusion, intrusionOf } from './intrusion.ts';
import { partsMeeting } from './meeting.ts';
import { keepLast, once, onceInSteps } from './once.ts';
import { overlapOf } from './overlap.ts';
import { surfacePlaces } from './surfacePlaces.ts';

/**
 * What is made from forms, made once for each: a mesh of many triangles is sorted at its first use and not at every
 * keystroke. Forms never change, so that what was made for one stays right.
 */
export interface Shapes {
  solidOf(form: Form): Cuttable;
  wallOf(form: Form, endsClosed: boolean): Wall;
  /** The same in steps. */
  solidSteps(form: Form): Steps<Cuttable>;
  wallSteps(form: Form, endsClosed: boolean): Steps<Wall>;
  boundsOf(form: Form): Bounds;
  /** What it looks like along an axis of the boat, m. */
  silhouetteOf(form: Form, along: Sight): readonly Loop[];
  /** The same in steps. */
  silhouetteSteps(form: Form, along: Sight): Steps<readonly Loop[]>;
  /** The forms that it is made of. */
  formsIn(form: Form): Steps<readonly Form[]>;
  /** How far two forms reach into each other, m; 0 when they do not. */
  overlapOf(one: Form, two: Form): number;
  /** The block between two corners that do not change, m. */
  blockOf(bounds: Bounds): Polyhedron;
  /** How deep a place lies in a form, m: positive inside, negative outside. */
  depthIn(form: Form): Depth;
  /** How far two forms reach into each other, and where; null where they do not. */
  intrusionOf(one: Form, two: Form): Intrusion | null;
  /** Of how many of their parts the boxes share room, as far as those are looked at. */
  meetingsOf(one: Form, two: Form): number;
  /** What a form is at its stations, one of each of its parts. */
  crossSectionsOf(form: Form): readonly CrossSection[];
  /** Places spread over the surface of a form, m. */
  surfaceOf(form: Form): readonly Vec3[];
  /** What was made of the rows of a table before, by how they were taken; nothing is remembered of null. */
  tabulated(rows: object, as: string, make: () => Steps<Form | null>): Steps<Form | null>;
  /** The mesh in boat axes: the same form for the same placement, so that what was made for it holds. */
  placed(mesh: Polyhedron, placement: MeshPlacement): Polyhedron;
}

/** What was found between two forms, and of how many of their parts. */
interface Met {
  readonly found: Intrusion | null;
  readonly count: number;
}

/** Placements of a mesh that are remembered: where it is now, and was before the last keystrokes. */
export const PLACEMENTS = 4;

export function createShapes(placements = PLACEMENTS): Shapes {
  const solids = new WeakMap<Form, Cuttable>();
  const closedWalls = new WeakMap<Form, Wall>();
  const openWalls = new WeakMap<Form, Wall>();
  const bounds = new WeakMap<Form, Bounds>();
  const silhouettes = [0, 1, 2].map(() => new WeakMap<Form, readonly Loop[]>());
  const pieces = new WeakMap<Form, readonly Form[]>();
  const overlaps = new WeakMap<Form, WeakMap<Form, number>>();
  const depths = new WeakMap<Form, Depth>();
  const intrusions = new WeakMap<Form, WeakMap<Form, Met>>();
  const sections = new WeakMap<Form, readonly CrossSection[]>();
  const surfaces = new WeakMap<Form, readonly Vec3[]>();
  const blocks = new WeakMap<Bounds, Polyhedron>();
  const tables = new WeakMap<object, Map<string, Form>>();
  const placings = new WeakMap<Form, Map<string, Polyhedron>>();
  const wallsOf = (endsClosed: boolean) => (endsClosed ? closedWalls : openWalls);
  const boundsOfForm = (form: Form): Bounds => once(bounds, form, () => boundsOf(form));
  const depthOf = (form: Form): Depth => once(depths, form, () => depthIn(form));
  const meetingOf = (one: Form, two: Form): Met => {
    const known = once(intrusions, one, () => new WeakMap<Form, Met>());
    return once(known, two, () => {
      const whole = (form: Form) => ({ form, bounds: boundsOfForm(form), depth: depthOf(form) });
      const pairs = partsMeeting(one, two, boundsOfForm);
      return { found: intrusionOf(pairs.map(([part, other]) => [whole(part), whole(other)])), count: pairs.length };
    });
  };
  return {
    blockOf: room => once(blocks, room, () => boxForm(room.from, room.to)),
    depthIn: depthOf,
    intrusionOf: (one, two) => meetingOf(one, two).found,
    meetingsOf: (one, two) => meetingOf(one, two).count,
    crossSectionsOf: form => once(sections, form, () => crossSectionsOf(form, boundsOfForm)),
    surfaceOf: form => once(surfaces, form, () => surfacePlaces(form)),
    solidOf: form => once(solids, form, () => solidOf(form)),
    wallOf: (form, endsClosed) => once(wallsOf(endsClosed), form, () => wallOf(form, { endsClosed })),
    solidSteps: form => onceInSteps(solids, form, () => solidSteps(form)),
    wallSteps: (form, endsClosed) => onceInSteps(wallsOf(endsClosed), form, () => wallSteps(form, { endsClosed })),
    boundsOf: boundsOfForm,
    silhouetteSteps: (form, along) => onceInSteps(silhouettes[along]!, form, () => silhouetteSteps(form, along)),
    formsIn: form => onceInSteps(pieces, form, () => formsIn(form)),
    silhouetteOf: (form, along) => once(silhouettes[along]!, form, () => silhouetteOf(form, along)),
    overlapOf: (one, two) => {
      const known = once(overlaps, one, () => new WeakMap<Form, number>());
      const bounded = (form: Form) => ({ form, bounds: boundsOfForm(form) });
      return once(known, two, () => overlapOf(bounded(one), bounded(two)));
    },
    *tabulated(rows, as, make) {
      const known = once(tables, rows, () => new Map<string, Form>());
      const form = known.get(as) ?? (yield* make());
      if (form) known.set(as, form);
      if (known.size > placements) known.delete(known.keys().next().value!);
      return form;
    },
    placed: (mesh, placement) => {
      const known = once(placings, mesh, () => new Map<string, Polyhedron>());
      const key = placementKey(placement);
      const form = known.get(key) ?? placedMesh(mesh, placement);
      keepLast(known, key, form, placements);
      return form;
    },
  };
}
