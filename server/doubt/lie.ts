import type { Bodies } from '../bodies/assemble.ts';
import { joinLoads, loadTank, shareFills, type TankBody, type TankLoad } from '../bodies/tankWater.ts';
import { UPRIGHT } from '../conditions/attitude.ts';
import { type Afloat, type EnergyState, energyAt } from '../conditions/energy.ts';
import { settleFrom } from '../conditions/equilibrium.ts';
import { totalMassOf } from '../conditions/load.ts';
import { add, scale } from '../geometry/vector.ts';

/** What is in the tanks. */
export type Loading =
  /** Each keeps its own fill, on the surface. */
  | { readonly kind: 'own' }
  /** All together this much of their capacity (0..1), each by its share, on the surface. */
  | { readonly kind: 'fill'; readonly fill: number }
  /** As much as makes the boat hang under water. */
  | { readonly kind: 'neutral' };

/** A boat to be laid in the water: for a condition, or for a trial with pieces aboard. */
export interface Arrangement {
  readonly bodies: Bodies;
  readonly loading: Loading;
  /** Held level instead of let go: for what is judged of a boat that does not stay level. */
  readonly isHeld?: boolean;
}

/** How a boat lies, and all that readings are taken from. SI. */
export interface Lie {
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
export function layBoat({ bodies, loading, isHeld }: Arrangement, before?: Lie): Lie | null {
  const water = waterIn(bodies, loading);
  const boat = afloat(bodies, loading, water);
  const excess = totalMassOf(boat) - bodies.density * bodies.volume;
  if (!boat.submerged && excess >= 0) return null;
  const lie = (state: EnergyState): Lie => ({
    density: bodies.density,
    volume: bodies.volume,
    tanks: bodies.tanks,
    water,
    state,
  });
  if (isHeld) return lie(energyAt(boat, UPRIGHT));
  const found = settleFrom(boat, before?.state.up ?? UPRIGHT, { before: before?.state });
  if (found.status === 'unsettled' || found.state.up[2] <= Math.cos(MOST_TILT)) return null;
  return lie(found.state);
}

/** Water in the tanks, m3. */
function waterIn({ density, mass, volume, tanks }: Bodies, loading: Loading): number {
  if (loading.kind === 'neutral') return volume - mass / density;
  if (loading.kind === 'fill') return loading.fill * capacityOf(tanks);
  return tanks.reduce((sum, { tank, capacity }) => sum + tank.fill * capacity, 0);
}

export const capacityOf = (tanks: readonly TankBody[]): number => tanks.reduce((sum, tank) => sum + tank.capacity, 0);

/** Fill of all tanks together, 0..1 where they hold the water. */
export const fillOf = ({ water, tanks }: Pick<Lie, 'water' | 'tanks'>): number => {
  const capacity = capacityOf(tanks);
  return capacity > 0 ? water / capacity : 0;
};

/** The water in the tanks as it lies in each. */
export function tankLoad(tanks: readonly TankBody[], loading: Loading, water: number): TankLoad {
  if (loading.kind === 'own') return joinLoads(tanks.map(body => loadTank(body, body.tank.fill)));
  const fills = shareFills(tanks, Math.min(Math.max(fillOf({ water, tanks }), 0), 1));
  return joinLoads(tanks.map((body, i) => loadTank(body, fills[i] ?? 0)));
}

function afloat(bodies: Bodies, loading: Loading, water: number): Afloat {
  const load = tankLoad(bodies.tanks, loading, water);
  return {
    density: bodies.density,
    mass: bodies.mass + bodies.density * load.stillVolume,
    massMoment: add(bodies.massMoment, scale(load.stillMoment, bodies.density)),
    free: load.free,
    hull: bodies.hull,
    submerged: loading.kind === 'neutral',
  };
}
