import type { Bodies } from '../bodies/assemble.ts';
import { capacityOf, type TankBody, type TankLoad } from '../bodies/tankWater.ts';
import { UPRIGHT } from '../conditions/attitude.ts';
import { type Afloat, type EnergyState, energyAt } from '../conditions/energy.ts';
import { settleFrom } from '../conditions/equilibrium.ts';
import { loadedBoat, ownLoad, sharedLoad, sunkBoat, surfacedBoat, totalMassOf } from '../conditions/load.ts';

/** What is in the tanks. */
export type Loading =
  /** Each keeps its own fill, on the surface. */
  | { readonly kind: 'own' }
  /** All together this much of their capacity (0..1), each by its share, on the surface. */
  | { readonly kind: 'fill'; readonly fill: number }
  /** As much as makes the boat hang under water. */
  | { readonly kind: 'neutral' }
  /** Each keeps its own fill, all of the boat under water and held level there: what it weighs more than water is held up. */
  | { readonly kind: 'hung' };

/** A boat to be laid in the water: for a condition, or for a trial with pieces aboard. */
export interface Arrangement {
  readonly bodies: Bodies;
  readonly loading: Loading;
  /** Held level instead of let go: for what is judged of a boat that does not stay level. */
  readonly isHeld?: boolean;
}

/** How a boat lies, and all that readings are taken from. SI. */
export interface FloatingState {
  readonly density: number;
  /** All that keeps water out, m3. */
  readonly volume: number;
  readonly tanks: readonly TankBody[];
  /** Water in all tanks together, m3; under water it is what neutral asks, even where the tanks do not hold it. */
  readonly water: number;
  readonly state: EnergyState;
}

/** Tilt past which the boat lies on its side or end, rad: readings say nothing there. */
const MOST_TILT = (85 / 180) * Math.PI;

/**
 * Lays the boat in the water: lets it go upright, or where it lay before it changed a little, and takes what it comes to
 * rest in. Null where it sinks, turns over, or finds no rest.
 */
export function floatBoat({ bodies, loading, isHeld }: Arrangement, before?: FloatingState): FloatingState | null {
  const water = waterIn(bodies, loading);
  const boat = boatWith(bodies, loading, water);
  const excess = totalMassOf(boat) - bodies.density * bodies.volume;
  if (!boat.submerged && excess >= 0) return null;
  const floating = (state: EnergyState): FloatingState => ({
    density: bodies.density,
    volume: bodies.volume,
    tanks: bodies.tanks,
    water,
    state,
  });
  if (isHeld || loading.kind === 'hung') return floating(energyAt(boat, UPRIGHT));
  const found = settleFrom(boat, before?.state.up ?? UPRIGHT, { before: before?.state });
  if (found.status === 'unsettled' || found.state.up[2] <= Math.cos(MOST_TILT)) return null;
  return floating(found.state);
}

/** Water in the tanks, m3. */
const waterIn = ({ density, mass, volume, tanks }: Bodies, loading: Loading): number =>
  loading.kind === 'neutral' ? volume - mass / density : waterAfloat(tanks, loading);

/** Water in tanks that do not fill until the boat is neutral, m3. */
export const waterAfloat = (tanks: readonly TankBody[], loading: Exclude<Loading, { kind: 'neutral' }>): number =>
  loading.kind === 'fill'
    ? loading.fill * capacityOf(tanks)
    : tanks.reduce((sum, { tank, capacity }) => sum + tank.fill * capacity, 0);

/** Fill of all tanks together, 0..1 where they hold the water. */
export const fillOf = ({ water, tanks }: Pick<FloatingState, 'water' | 'tanks'>): number => {
  const capacity = capacityOf(tanks);
  return capacity > 0 ? water / capacity : 0;
};

/** The water in the tanks as it lies in each. */
export const tankLoad = (tanks: readonly TankBody[], loading: Loading, water: number): TankLoad =>
  loading.kind === 'own' || loading.kind === 'hung' ? ownLoad(tanks) : sharedLoad(tanks, fillOf({ water, tanks }));

function boatWith(bodies: Bodies, loading: Loading, water: number): Afloat {
  if (loading.kind === 'own') return surfacedBoat(bodies);
  if (loading.kind === 'hung') return sunkBoat(bodies);
  const fill = fillOf({ water, tanks: bodies.tanks });
  return loadedBoat(bodies, fill, loading.kind === 'neutral' ? 'submerged' : 'afloat');
}
