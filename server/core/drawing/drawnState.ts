import type { Bodies } from '../bodies/assemble.ts';
import { shareFills } from '../bodies/tankWater.ts';
import { UPRIGHT, upFor } from '../conditions/attitude.ts';
import { energyAt } from '../conditions/energy.ts';
import { boatIn, type Loading } from '../conditions/float.ts';
import type { LoadedCondition } from '../conditions/loadingCondition.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import { addScaled, scale, type Vec3 } from '../geometry/form/vector.ts';

/** How the boat is drawn in one condition: its attitude, the surface, its tanks and its centres. SI, boat axes. */
export interface DrawnState {
  /** Up in boat axes. */
  readonly up: Vec3;
  /** The surface is `up·p = level`, m; null where it is not in the picture or not known. */
  readonly level: number | null;
  /** Where water is: up to the surface, everywhere, or not known. */
  readonly water: 'below' | 'everywhere' | 'unknown';
  /** Fill of each tank, 0..1, in the order of the boat's tanks. */
  readonly fills: readonly number[];
  readonly centreOfMass: Vec3 | null;
  readonly centreOfBuoyancy: Vec3 | null;
  /** Where the buoyancy acts through when the boat heels a little; null submerged and where it means nothing. */
  readonly metacentre: Vec3 | null;
  /** Of the waterplane; null submerged, and where it means nothing. */
  readonly centreOfFlotation: Vec3 | null;
}

export const drawnStateOf = ({ condition, bodies, where, state }: LoadedCondition): DrawnState =>
  where === 'afloat' ? stateAfloat(bodies, state, condition.loading) : stateBelow(bodies, state);

function stateAfloat(bodies: Bodies, surfaced: Surfaced, loading: Loading): DrawnState {
  const fills = loading.kind === 'fill' ? shareFills(bodies.tanks, loading.fill) : bodies.tanks.map(ownFill);
  if (surfaced.status === 'afloat') {
    const { up, level, centreOfMass, centreOfBuoyancy, centreOfFlotation, gm } = surfaced;
    const metacentre = addScaled(centreOfMass, up, gm);
    return { up, level, water: 'below', fills, centreOfMass, centreOfBuoyancy, metacentre, centreOfFlotation };
  }
  if (surfaced.status === 'overturns') {
    const up = upFor(surfaced.trim, surfaced.heel);
    const state = energyAt(boatIn(bodies, loading), up);
    const { volume, mx, my, mz } = state.immersed;
    return {
      up,
      level: state.level,
      water: 'below',
      fills,
      centreOfMass: scale(state.totalMoment, 1 / state.totalMass),
      centreOfBuoyancy: scale([mx, my, mz], 1 / volume),
      metacentre: null,
      centreOfFlotation: null,
    };
  }
  return { ...level(bodies, fills), water: surfaced.status === 'sinks' ? 'everywhere' : 'unknown' };
}

const ownFill = ({ tank }: Bodies['tanks'][number]): number => tank.fill;

function stateBelow(bodies: Bodies, submerged: Submerged): DrawnState {
  if (submerged.status !== 'neutral') {
    const fills = shareFills(bodies.tanks, submerged.status === 'light' ? 1 : 0);
    return { ...level(bodies, fills), water: submerged.status === 'empty' ? 'unknown' : 'everywhere' };
  }
  const { up, fill, centreOfMass, centreOfBuoyancy } = submerged;
  return {
    up,
    level: null,
    water: 'everywhere',
    fills: shareFills(bodies.tanks, fill),
    centreOfMass,
    centreOfBuoyancy,
    metacentre: null,
    centreOfFlotation: null,
  };
}

/** A boat that comes to no rest, held level. */
const level = (bodies: Bodies, fills: readonly number[]): Omit<DrawnState, 'water'> => ({
  up: UPRIGHT,
  level: null,
  fills,
  centreOfMass: bodies.mass > 0 ? scale(bodies.massMoment, 1 / bodies.mass) : null,
  centreOfBuoyancy: bodies.volume > 0 ? scale(bodies.volumeMoment, 1 / bodies.volume) : null,
  metacentre: null,
  centreOfFlotation: null,
});
