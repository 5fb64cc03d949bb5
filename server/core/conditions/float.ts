import type { Bodies } from '../bodies/assemble.ts';
import { capacityOf, type TankBody, type TankLoad } from '../bodies/tankWater.ts';
import { addScaled } from '../geometry/form/vector.ts';
import { UPRIGHT } from './attitude.ts';
import { type Afloat, type EnergyState, energyAt } from './energy.ts';
import { settleFrom } from './equilibrium.ts';
import { loadedBoat, ownLoad, sharedLoad, sunkBoat, surfacedBoat, totalMassOf } from './load.ts';

/** What is in the tanks. */
export type Loading =
  /** Each keeps its own fill, on the surface. */
  | { readonly kind: 'own' }
  /** All together this much of their capacity (0..1), each by its share, on the surface. */
  | { readonly kind: 'fill'; readonly fill: number }
  /** As much as makes the boat hang under water. */
  | { readonly kind: 'neutral' }
  /** All full, the boat held under where it would rise a little: as if its planes pressed down where the water lifts it. */
  | { readonly kind: 'held' }
  /** Each keeps its own fill, all of the boat under water and held level there: what it weighs more than water is held up. */
  | { readonly kind: 'hung' };

/** How a boat lies, and all that figures are taken from. SI. */
export interface FloatingState {
  readonly density: number;
  /** All that keeps water out, m3. */
  readonly volume: number;
  readonly tanks: readonly TankBody[];
  /** Water in all tanks together, m3; under water it is what neutral asks, even where the tanks do not hold it. */
  readonly water: number;
  /** What holds it under, kg; null for a boat that is not held. */
  readonly heldDown: number | null;
  readonly state: EnergyState;
}

/** What becomes of a boat that is laid in the water and let go. */
export type Flotation =
  | { readonly status: 'rests'; readonly floating: FloatingState }
  /** It comes to rest on its side, on an end or keel up. */
  | { readonly status: 'overturns'; readonly floating: FloatingState }
  /** Heavier than all the water it can push aside, by `excess` kg. */
  | { readonly status: 'sinks'; readonly excess: number }
  /** The search found no rest; G stays `lever` m beside B. */
  | { readonly status: 'unsettled'; readonly lever: number };

/** Tilt past which draft, trim and heel say nothing any more, rad. */
const MOST_TILT = (85 / 180) * Math.PI;

/** Lays the boat in the water: lets it go upright, or where it lay before it changed a little. */
export function float(bodies: Bodies, loading: Loading, before?: FloatingState): Flotation {
  const boat = boatIn(bodies, loading);
  const excess = totalMassOf(boat) - bodies.density * bodies.volume;
  if (!boat.submerged && excess >= 0) return { status: 'sinks', excess };
  const found = settleFrom(boat, before?.state.up ?? UPRIGHT, { before: before?.state });
  if (found.status === 'unsettled') return { status: 'unsettled', lever: found.lever };
  const floating = floatingState(bodies, loading, found.state);
  return { status: found.state.up[2] <= Math.cos(MOST_TILT) ? 'overturns' : 'rests', floating };
}

/** The boat held level instead of let go: for what is judged of one that does not stay level. */
export const heldLevel = (bodies: Bodies, loading: Loading): FloatingState =>
  floatingState(bodies, loading, energyAt(boatIn(bodies, loading), UPRIGHT));

const floatingState = (bodies: Bodies, loading: Loading, state: EnergyState): FloatingState => ({
  density: bodies.density,
  volume: bodies.volume,
  tanks: bodies.tanks,
  water: waterIn(bodies, loading),
  heldDown: loading.kind === 'held' ? buoyancyLeft(bodies) : null,
  state,
});

/** Buoyancy left with full tanks, kg; negative where it goes down. */
export const buoyancyLeft = ({ density, volume, mass, tanks }: Bodies): number =>
  density * (volume - capacityOf(tanks)) - mass;

/** Water in the tanks, m3. */
const waterIn = ({ density, mass, volume, tanks }: Bodies, loading: Loading): number =>
  loading.kind === 'neutral' ? volume - mass / density : waterAfloat(tanks, loading);

/** Water in tanks that do not fill until the boat is neutral, m3. */
export const waterAfloat = (tanks: readonly TankBody[], loading: Exclude<Loading, { kind: 'neutral' }>): number =>
  loading.kind === 'fill' || loading.kind === 'held'
    ? (loading.kind === 'fill' ? loading.fill : 1) * capacityOf(tanks)
    : tanks.reduce((sum, { tank, capacity }) => sum + tank.fill * capacity, 0);

/** Fill of all tanks together, 0..1 where they hold the water. */
export const fillOf = ({ water, tanks }: Pick<FloatingState, 'water' | 'tanks'>): number => {
  const capacity = capacityOf(tanks);
  return capacity > 0 ? water / capacity : 0;
};

/** The water in the tanks as it lies in each. */
export const tankLoad = (tanks: readonly TankBody[], loading: Loading, water: number): TankLoad =>
  loading.kind === 'own' || loading.kind === 'hung' ? ownLoad(tanks) : sharedLoad(tanks, fillOf({ water, tanks }));

/** The water that a boat's tanks hold as it is loaded. */
export const loadIn = (bodies: Bodies, loading: Loading): TankLoad =>
  tankLoad(bodies.tanks, loading, waterIn(bodies, loading));

/** With what holds it under as a weight where the water lifts it: there it turns the boat no way. */
function pressedDown(bodies: Bodies): Bodies {
  const press = buoyancyLeft(bodies);
  const massMoment = addScaled(bodies.massMoment, bodies.volumeMoment, press / bodies.volume);
  return { ...bodies, mass: bodies.mass + press, massMoment };
}

/** The boat loaded, ready for the hydrostatics. */
export function boatIn(bodies: Bodies, loading: Loading): Afloat {
  if (loading.kind === 'own') return surfacedBoat(bodies);
  if (loading.kind === 'hung') return sunkBoat(bodies);
  if (loading.kind === 'held') return loadedBoat(pressedDown(bodies), 1, 'submerged');
  const fill = fillOf({ water: waterIn(bodies, loading), tanks: bodies.tanks });
  return loadedBoat(bodies, fill, loading.kind === 'neutral' ? 'submerged' : 'afloat');
}
