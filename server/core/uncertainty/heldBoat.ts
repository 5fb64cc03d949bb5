import type { Entry } from '../boat/boat.ts';
import type { TankBody } from '../bodies/tankWater.ts';
import { type BallastWater, ballastWater } from '../conditions/ballastWater.ts';
import { type FloatingState, tankLoad, waterAfloat } from '../conditions/float.ts';
import type { StateFigure } from '../conditions/readings.ts';
import { emptyImmersion, type Immersion } from '../geometry/cut/immersion.ts';
import { addScaled, subtract, type Vec3 } from '../geometry/form/vector.ts';
import type { FloatedBoat } from './floatBoat.ts';

/** A boat held in place, with its tank water as it lies there. */
export interface Held extends FloatedBoat {
  /** By volume: the density may change. */
  readonly water: BallastWater;
  readonly readings: readonly StateFigure[];
  /** What is under water of an entry's own bodies, each found once. */
  readonly immersions: Map<Entry, Immersion>;
}

export function heldBoat({ arrangement, floating }: FloatedBoat, readings: readonly StateFigure[]): Held {
  const water = ballastWater(tankLoad(floating.tanks, arrangement.loading, floating.water), floating.state.up, 1);
  return { arrangement, floating, water, readings, immersions: new Map() };
}

/** All of it is under water. */
export const isUnder = ({ arrangement: { loading } }: FloatedBoat): boolean =>
  loading.kind !== 'own' && loading.kind !== 'fill';

/** Hanging neutral the ballast is held, whatever the tanks become; else each tank keeps its fill. */
export function waterNow({ arrangement: { loading }, floating }: Held, tanks: readonly TankBody[]): number {
  return loading.kind === 'neutral' || tanks === floating.tanks ? floating.water : waterAfloat(tanks, loading);
}

/** What a cubic metre more of hull, and its moment along each axis, do to a reading by themselves. */
export interface Drift {
  readonly under: readonly [volume: number, x: number, y: number, z: number];
  readonly above: number;
}

/** Part of the boat's own volume (and of that by its length) that is tried: enough to be felt, too little to bend. */
const TRIED = 1e-5;

/**
 * The drifts of all readings of a boat: whatever lies wholly under or above the surface, hull more or less there does the same to
 * them. As by a weight that is as heavy as the water pushed aside, so that the boat weighs more and feels nothing.
 */
export function driftsOf({ floating, arrangement, readings }: Held): readonly Drift[] {
  const { volume } = arrangement.bodies;
  const long = Math.max(...arrangement.bodies.hull.box.half);
  const tried = [TRIED * volume, TRIED * volume * long, TRIED * volume * long, TRIED * volume * long];
  const steps = tried.map((step, k) => {
    const [more, less] = [step, -step].map(by =>
      byDisplacing(
        floating,
        tried.map((_, n) => (n === k ? by : 0)),
        readings,
      ),
    );
    return readings.map((_, r) => (more![r]! - less![r]!) / (2 * step));
  });
  const dry = [tried[0]!, -tried[0]!].map(by =>
    readings.map(reading => reading({ ...floating, volume: floating.volume + by })),
  );
  return readings.map((_, r) => ({
    under: [steps[0]![r]!, steps[1]![r]!, steps[2]![r]!, steps[3]![r]!],
    above: (dry[0]![r]! - dry[1]![r]!) / (2 * tried[0]!),
  }));
}

/** What more hull under water does to readings beside what it does by its buoyancy. */
function byDisplacing(
  floating: FloatingState,
  displaced: readonly number[],
  readings: readonly StateFigure[],
): readonly number[] {
  const { density, state } = floating;
  const [volume, ...parts] = displaced as [number, number, number, number];
  const moment: Vec3 = parts;
  const slope = addScaled(state.slope, moment, -density);
  const immersed: Immersion = { ...emptyImmersion(), ...state.immersed };
  immersed.volume += volume;
  immersed.mx += moment[0];
  immersed.my += moment[1];
  immersed.mz += moment[2];
  const now: FloatingState = { ...floating, volume: floating.volume + volume, state: { ...state, slope, immersed } };
  const lifted: FloatingState = {
    ...floating,
    state: {
      ...state,
      slope,
      totalMass: state.totalMass - density * volume,
      totalMoment: subtract(state.totalMoment, [density * moment[0], density * moment[1], density * moment[2]]),
    },
  };
  return readings.map(reading => reading(now) - reading(lifted));
}
