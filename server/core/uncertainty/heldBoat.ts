import type { Entry } from '../boat/boat.ts';
import type { TankBody } from '../bodies/tankWater.ts';
import { type BallastWater, ballastWater } from '../conditions/ballastWater.ts';
import { type FloatingState, tankLoad, waterAfloat } from '../conditions/float.ts';
import type { StateFigure } from '../conditions/readings.ts';
import { centralTensor } from '../conditions/tensor.ts';
import { emptyImmersion, type Immersion } from '../geometry/cut/immersion.ts';
import { addScaled, type Vec3 } from '../geometry/form/vector.ts';
import type { FloatedBoat } from './floatBoat.ts';

/** A boat held in place, with its tank water as it lies there. */
export interface HeldBoat extends FloatedBoat {
  /** By volume: the density may change. */
  readonly water: BallastWater;
  readonly readings: readonly StateFigure[];
  /** What is under water of an entry's own bodies, each found once. */
  readonly immersions: Map<Entry, Immersion>;
}

export function heldBoat({ arrangement, floating }: FloatedBoat, readings: readonly StateFigure[]): HeldBoat {
  const water = ballastWater(tankLoad(floating.tanks, arrangement.loading, floating.water), floating.state.up, 1);
  return { arrangement, floating, water, readings, immersions: new Map() };
}

/** All of it is under water. */
export const isUnder = ({ arrangement: { loading } }: FloatedBoat): boolean =>
  loading.kind !== 'own' && loading.kind !== 'fill';

/** Hanging neutral the ballast is held, whatever the tanks become; else each tank keeps its fill. */
export function waterNow({ arrangement: { loading }, floating }: HeldBoat, tanks: readonly TankBody[]): number {
  return loading.kind === 'neutral' || tanks === floating.tanks ? floating.water : waterAfloat(tanks, loading);
}

/** What so much hull more does to a reading by itself, whatever it does by its buoyancy. */
export interface Drift {
  /** For a cubic metre more of hull, wet or dry. */
  readonly volume: number;
  /** For one more of each sum over what is under water (`IMMERSED`), the dry part of the boat as large as before. */
  readonly immersed: Float64Array;
}

/** The sums over what is under water, in their order. */
export const IMMERSED = Object.keys(emptyImmersion()) as readonly (keyof Immersion)[];

/** Part of the boat's own volume, or of its waterplane, that is tried: enough to be felt, too little to bend. */
const TRIED = 1e-5;

/**
 * Drifts of all readings of a boat held in place, by which a little more hull anywhere is felt along a straight line: how the
 * reading changes beyond what a weight does that is as light as the water pushed aside is heavy.
 */
export function driftsOf({ floating, arrangement, readings }: HeldBoat): readonly Drift[] {
  const { state } = floating;
  const { volume, hull } = arrangement.bodies;
  const long = Math.max(...hull.box.half);
  const slopes = IMMERSED.map(key => {
    const size = SIZES[key];
    const step = TRIED * (size.of === 'volume' ? volume : state.immersed.area) * long ** size.by;
    if (!(step > 0)) return readings.map(() => 0);
    const [more, less] = [step, -step].map(by => beyondWeight(floating, key, by, readings)) as [number[], number[]];
    return readings.map((_, r) => (more[r]! - less[r]!) / (2 * step));
  });
  const step = TRIED * volume;
  const at = (by: number) => readings.map(reading => reading({ ...floating, volume: floating.volume + by }));
  const [more, less] = [at(step), at(-step)];
  return readings.map((_, r) => ({
    volume: (more[r]! - less[r]!) / (2 * step),
    immersed: Float64Array.from(slopes, slope => slope[r]!),
  }));
}

/** What a sum is of, and by how many lengths. */
const SIZES: Readonly<Record<keyof Immersion, { readonly of: 'volume' | 'area'; readonly by: 0 | 1 | 2 }>> = {
  volume: { of: 'volume', by: 0 },
  mx: { of: 'volume', by: 1 },
  my: { of: 'volume', by: 1 },
  mz: { of: 'volume', by: 1 },
  area: { of: 'area', by: 0 },
  ax: { of: 'area', by: 1 },
  ay: { of: 'area', by: 1 },
  az: { of: 'area', by: 1 },
  xx: { of: 'area', by: 2 },
  xy: { of: 'area', by: 2 },
  xz: { of: 'area', by: 2 },
  yy: { of: 'area', by: 2 },
  yz: { of: 'area', by: 2 },
  zz: { of: 'area', by: 2 },
};

function beyondWeight(
  floating: FloatingState,
  key: keyof Immersion,
  by: number,
  readings: readonly StateFigure[],
): readonly number[] {
  const { density, state } = floating;
  const immersed = { ...state.immersed, [key]: state.immersed[key] + by };
  const moment: Vec3 = [
    immersed.mx - state.immersed.mx,
    immersed.my - state.immersed.my,
    immersed.mz - state.immersed.mz,
  ];
  const slope = addScaled(state.slope, moment, -density);
  const waterplane = centralTensor(immersed, density);
  const now: FloatingState = { ...floating, state: { ...state, slope, immersed, waterplane } };
  const lifted: FloatingState = {
    ...floating,
    state: {
      ...state,
      slope,
      totalMass: state.totalMass - density * (immersed.volume - state.immersed.volume),
      totalMoment: addScaled(state.totalMoment, moment, -density),
    },
  };
  return readings.map(reading => reading(now) - reading(lifted));
}
