import type { Bodies } from '../../bodies/assemble.ts';
import { loadTank, type TankBody, type TankLoad } from '../../bodies/tankWater.ts';
import { UPRIGHT } from '../../conditions/attitude.ts';
import { ballastWater } from '../../conditions/ballastWater.ts';
import { sharedLoad } from '../../conditions/load.ts';

/** Weight (kg) and its moment about a station (kg·m, aft positive), the boat level under water. */
export type WeightMoment = readonly [weight: number, moment: number];

/**
 * What filling the tanks does to weight and moment: the equilibrium polygon of the textbooks (common practice in submarine
 * design; from memory). What the boat needs of its tanks to hang neutral and level is a point beside it.
 */
export interface TankPolygon {
  /** Moments are about this station, m: the middle of all tank room. */
  readonly about: number;
  /** What the tanks can bring when each is filled for itself: corners in turn. */
  readonly each: readonly WeightMoment[];
  /** The tanks filled together, each by its share, at fills from 0 to 1 in equal steps. */
  readonly together: readonly WeightMoment[];
  /** What they have to bring for the boat to hang neutral and level. */
  readonly needed: WeightMoment;
}

/** Steps of a fill: a piston's water moves along its tank as it comes in. */
const STEPS = 8;

/** Null for a boat without tanks, or of which nothing floats. */
export function tankPolygon(bodies: Bodies): TankPolygon | null {
  const { tanks, density } = bodies;
  const capacity = tanks.reduce((sum, tank) => sum + tank.capacity, 0);
  if (!(capacity > 0 && bodies.volume > 0 && bodies.mass > 0)) return null;
  const about = tanks.reduce((sum, { whole }) => sum + whole.moment[0], 0) / capacity;
  const weighed = (load: TankLoad): WeightMoment => {
    const { mass, moment } = ballastWater(load, UPRIGHT, density);
    return [mass, moment[0] - about * mass];
  };
  return {
    about,
    each: outlineOf(tanks, weighed),
    together: FILLS.map(fill => weighed(sharedLoad(tanks, fill))),
    needed: neededOf(bodies, about),
  };
}

const FILLS = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);

/** What is missing of weight and moment, tanks empty, for the boat to hang neutral and level. */
export const neededOf = ({ density, volume, volumeMoment, mass, massMoment }: Bodies, about: number): WeightMoment => [
  density * volume - mass,
  density * (volumeMoment[0] - about * volume) - (massMoment[0] - about * mass),
];

/** Filled from the aftmost forwards, then emptied in the same order: round the set of all fillings. */
function outlineOf(tanks: readonly TankBody[], weighed: (load: TankLoad) => WeightMoment): readonly WeightMoment[] {
  const order = [...tanks].sort((a, b) => b.whole.moment[0] / b.whole.volume - a.whole.moment[0] / a.whole.volume);
  const alone = order.map(tank => FILLS.map(fill => weighed(loadTank(tank, fill))));
  const points: WeightMoment[] = [[0, 0]];
  const go = (way: 1 | -1): void => {
    for (const fillings of alone) {
      const [weight, moment] = points.at(-1)!;
      const along = way > 0 ? fillings : [...fillings].reverse();
      const [from] = along;
      points.push(...along.slice(1).map(([w, m]): WeightMoment => [weight + w - from![0], moment + m - from![1]]));
    }
  };
  go(1);
  go(-1);
  return points;
}
