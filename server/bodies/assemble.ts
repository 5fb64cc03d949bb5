import type { Boat, Compartment, Entry, Part, Shell, Tank } from '../boat/boat.ts';
import type { Cuttable } from '../geometry/immersion.ts';
import { solidOf, wallOf } from '../geometry/solids.ts';
import { add, scale, type Vec3 } from '../geometry/vector.ts';
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
  /** All excluded volume, m3, and its first moment, m4. */
  readonly volume: number;
  readonly volumeMoment: Vec3;
}

/** What keeps water out. */
export interface Displacer {
  readonly entry: Entry;
  readonly body: Cuttable;
}

export interface Weight {
  readonly entry: Entry;
  /** kg. */
  readonly mass: number;
  /** m. */
  readonly centroid: Vec3;
}

/** Bodies made for entries before, so that a keystroke makes only those of the entry that it changed. */
export interface BodyShelf {
  readonly displacers: WeakMap<Entry, Displacer | null>;
  readonly tanks: WeakMap<Entry, TankBody>;
}

export const emptyShelf = (): BodyShelf => ({ displacers: new WeakMap(), tanks: new WeakMap() });

/** Builds the bodies of a boat; entries found on the shelf are taken from it, new ones are put there. */
export function assembleBodies(boat: Boat, shelf: BodyShelf): Bodies {
  const displacers = [
    ...boat.shells.map(shell => shelved(shelf.displacers, shell, shellDisplacer)),
    ...boat.compartments.map(compartment => shelved(shelf.displacers, compartment, compartmentDisplacer)),
    ...boat.tanks.map(tank => shelved(shelf.displacers, tank, tankDisplacer)),
    ...boat.payload.map(part => shelved(shelf.displacers, part, partDisplacer)),
  ].filter(displacer => displacer !== null);
  const weights = [...boat.shells, ...boat.compartments, ...boat.payload].map(entry => ({
    entry,
    mass: entry.mass,
    centroid: entry.centroid,
  }));
  return {
    density: boat.water.density,
    displacers,
    weights,
    tanks: boat.tanks.map(tank => shelved(shelf.tanks, tank, tankBody)),
    mass: weights.reduce((sum, weight) => sum + weight.mass, 0),
    massMoment: weights.reduce<Vec3>((sum, weight) => add(sum, scale(weight.centroid, weight.mass)), [0, 0, 0]),
    volume: displacers.reduce((sum, { body }) => sum + body.volume, 0),
    volumeMoment: displacers.reduce<Vec3>((sum, { body }) => add(sum, body.moment), [0, 0, 0]),
  };
}

function shelved<E extends Entry, B>(shelf: WeakMap<Entry, B>, entry: E, make: (entry: E) => B): B {
  const kept = shelf.get(entry);
  if (kept !== undefined) return kept;
  const made = make(entry);
  shelf.set(entry, made);
  return made;
}

const shellDisplacer = (shell: Shell): Displacer => ({
  entry: shell,
  body: wallOf(shell.form, { endsClosed: shell.endsClosed }).withVolume(shell.volume),
});

const compartmentDisplacer = (compartment: Compartment): Displacer => ({
  entry: compartment,
  body: solidOf(compartment.form),
});

/** A tank inside a compartment displaces nothing of its own: the compartment already does. */
const tankDisplacer = (tank: Tank): Displacer | null =>
  tank.inside === null ? { entry: tank, body: solidOf(tank.form) } : null;

const partDisplacer = (part: Part): Displacer | null =>
  part.inside === null && part.form ? { entry: part, body: solidOf(part.form) } : null;
