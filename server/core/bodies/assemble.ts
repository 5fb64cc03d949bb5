import type { Boat, Compartment, Entry, Part, Shell, Tank } from '../boat/boat.ts';
import { compoundSolid } from '../geometry/cut/compound.ts';
import type { Cuttable } from '../geometry/cut/immersion.ts';
import { scaledTo } from '../geometry/cut/scaled.ts';
import { hasFine } from '../geometry/cut/solids.ts';
import type { Form } from '../geometry/form/form.ts';
import { add, scale, type Vec3 } from '../geometry/form/vector.ts';
import { createShapes, type Shapes } from '../geometry/shapes/shapes.ts';
import { finish, pacer, type Steps } from '../steps/steps.ts';
import { type TankBody, tankBody } from './tankWater.ts';

/** Everything of the boat that displaces or weighs, ready for the hydrostatics. SI, boat axes. */
export interface Bodies {
  /** Density of the water, kg/m3. */
  readonly density: number;
  readonly displacers: readonly Displacer[];
  readonly weights: readonly Weight[];
  readonly tanks: readonly TankBody[];
  /** Mass of all but ballast water, kg. */
  readonly mass: number;
  /** Moment of that mass about the origin, kg·m; over `mass` it is the centre of mass. */
  readonly massMoment: Vec3;
  /** All that keeps water out, cut as one. */
  readonly hull: Cuttable;
  /** All excluded volume, m3, and its first moment, m4. */
  readonly volume: number;
  readonly volumeMoment: Vec3;
}

/** What keeps water out. */
interface Displacer {
  readonly entry: Entry;
  readonly body: Cuttable;
}

interface Weight {
  readonly entry: Entry;
  /** kg. */
  readonly mass: number;
  /** m. */
  readonly centroid: Vec3;
}

/** Bodies made for entries before, so that a keystroke makes only those of the entry that it changed. */
export interface BodyCache {
  readonly displacers: WeakMap<Entry, Displacer | null>;
  readonly tanks: WeakMap<Entry, TankBody>;
  /** What was made from forms, whichever entries have them. */
  readonly shapes: Shapes;
}

export const emptyCache = (): BodyCache => ({
  displacers: new WeakMap(),
  tanks: new WeakMap(),
  shapes: createShapes(),
});

/** Builds the bodies of a boat; entries found in the cache are taken from it, new ones are put there. */
export const assembleBodies = (boat: Boat, cache: BodyCache): Bodies => finish(bodySteps(boat, cache));

/** The same in steps. */
export function* bodySteps(boat: Boat, cache: BodyCache): Steps<Bodies> {
  const pieces = yield* pieceSteps(boat, cache);
  const { displacers, weights } = pieces;
  const hull = compoundSolid(displacers.map(({ body }) => body));
  return {
    density: boat.water.density,
    ...pieces,
    mass: weights.reduce((sum, weight) => sum + weight.mass, 0),
    massMoment: weights.reduce<Vec3>((sum, weight) => add(sum, scale(weight.centroid, weight.mass)), [0, 0, 0]),
    hull,
    volume: hull.volume,
    volumeMoment: hull.moment,
  };
}

/** The same entries in the same water: they float alike. */
export const sameBodies = (one: Bodies, other: Bodies): boolean =>
  one.density === other.density &&
  one.weights.length === other.weights.length &&
  one.tanks.length === other.tanks.length &&
  one.displacers.length === other.displacers.length &&
  one.weights.every((weight, i) => weight.entry === other.weights[i]?.entry) &&
  one.tanks.every((tank, i) => tank === other.tanks[i]) &&
  one.displacers.every((displacer, i) => displacer === other.displacers[i]);

/** What displaces, weighs and holds water among some entries, one by one. */
export type Pieces = Pick<Bodies, 'displacers' | 'weights' | 'tanks'>;

type Pieced = Pick<Boat, 'shells' | 'compartments' | 'tanks' | 'payload'>;

/** So many things are made into bodies in one step. */
const STEP = 8;

export function* pieceSteps(boat: Pieced, cache: BodyCache): Steps<Pieces> {
  const { shapes } = cache;
  const isDue = pacer(STEP);
  const displacers: Displacer[] = [];
  function* make<E extends Entry & { readonly form: Form | null }>(
    entries: readonly E[],
    body: (entry: E, shapes: Shapes) => Displacer | null,
    ready: (entry: E, form: Form) => Steps<unknown>,
  ) {
    for (const entry of entries) {
      if (!cache.displacers.has(entry)) {
        if (isDue(1)) yield;
        if (entry.form && hasFine(entry.form)) yield* ready(entry, entry.form);
      }
      const displacer = cached(cache.displacers, entry, () => body(entry, shapes));
      if (displacer) displacers.push(displacer);
    }
  }
  const solid = (_: Entry, form: Form) => shapes.solidSteps(form);
  yield* make(boat.shells, shellDisplacer, ({ endsClosed }, form) => shapes.wallSteps(form, endsClosed));
  yield* make(boat.compartments, compartmentDisplacer, solid);
  yield* make(boat.tanks, tankDisplacer, solid);
  yield* make(boat.payload, partDisplacer, solid);
  const weights = [...boat.shells, ...boat.compartments, ...boat.payload].map(entry => ({
    entry,
    mass: entry.mass,
    centroid: entry.centroid,
  }));
  const tanks: TankBody[] = [];
  for (const tank of boat.tanks) {
    if (!cache.tanks.has(tank) && hasFine(tank.form)) yield;
    tanks.push(cached(cache.tanks, tank, () => tankBody(tank, shapes.solidOf(tank.form))));
  }
  return { displacers, weights, tanks };
}

function cached<B>(cache: WeakMap<Entry, B>, entry: Entry, make: () => B): B {
  const kept = cache.get(entry);
  if (kept !== undefined) return kept;
  const made = make();
  cache.set(entry, made);
  return made;
}

const shellDisplacer = (shell: Shell, shapes: Shapes): Displacer => ({
  entry: shell,
  body: shapes.wallOf(shell.form, shell.endsClosed).withVolume(shell.volume),
});

const compartmentDisplacer = (compartment: Compartment, shapes: Shapes): Displacer => ({
  entry: compartment,
  body: scaledTo(shapes.solidOf(compartment.form), compartment.volume),
});

/** A tank inside a compartment displaces nothing of its own: the compartment already does. */
const tankDisplacer = (tank: Tank, shapes: Shapes): Displacer | null =>
  tank.inside === null ? { entry: tank, body: scaledTo(shapes.solidOf(tank.form), tank.capacity) } : null;

const partDisplacer = (part: Part, shapes: Shapes): Displacer | null =>
  part.inside === null && part.form ? { entry: part, body: scaledTo(shapes.solidOf(part.form), part.volume) } : null;
