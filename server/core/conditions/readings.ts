import { shareFills } from '../bodies/tankWater.ts';
import { dot, type Vec3 } from '../geometry/form/vector.ts';
import { heelOf, heelwards, surfaceHeight, trimOf, trimwards } from './attitude.ts';
import { curvature, type EnergyState } from './energy.ts';
import { type FloatingState, fillOf } from './float.ts';
import { GOOD_FILL } from './tankSizing.ts';

/** A number read off a boat as it lies, SI: the one formula for what is shown and for its uncertainty. */
export type StateFigure = (floating: FloatingState) => number;

/** Height of the water above the baseline on the centreline at a station, m. */
export const waterAt =
  (station: number): StateFigure =>
  ({ state }) =>
    surfaceHeight(state.up, state.level, station);

/** rad, positive bow up. */
export const trimAngle: StateFigure = ({ state }) => trimOf(state.up);

/** rad, positive to starboard. */
export const heelAngle: StateFigure = ({ state }) => heelOf(state.up);

/** Metacentric height in one direction of tilt, m; under water what is left of B above G once the tank water may move. */
export const gmAlong = (state: EnergyState, direction: Vec3): number =>
  curvature(state, direction, direction) / state.totalMass;

export const gmInHeel: StateFigure = ({ state }) => gmAlong(state, heelwards(state.up));
export const gmInTrim: StateFigure = ({ state }) => gmAlong(state, trimwards(state.up));

/** B above G along the vertical, tank water held still, m. */
export const bAboveG: StateFigure = ({ state }) => -dot(state.up, state.slope) / state.totalMass;

/** Moment that trims the boat by one degree, kg·m; not positive when unstable. */
export const momentToTrim: StateFigure = floating =>
  floating.state.totalMass * gmInTrim(floating) * Math.sin(Math.PI / 180);

/** Density x volume still above water, kg. */
export const reserve: StateFigure = ({ density, volume, state }) => density * (volume - state.immersed.volume);

/** What the tank at a place in the list should hold, m3, for the neutral fill to be a good one. */
export const recommendedCapacity =
  (index: number): StateFigure =>
  floating => {
    const body = floating.tanks[index];
    if (!body) return 0;
    return ((shareFills(floating.tanks, fillOf(floating))[index] ?? 0) * body.capacity) / GOOD_FILL;
  };
