import { shareFills } from '../bodies/tankWater.ts';
import { attitudeFor, heelOf, heelwards, surfaceHeight, trimOf, trimwards } from '../conditions/attitude.ts';
import { gmAlong, heightOfBOverG } from '../conditions/surfaced.ts';
import { GOOD_FILL } from '../conditions/tankSizing.ts';
import { type FloatingState, fillOf } from './floatBoat.ts';

/** A figure read off a boat as it lies, SI. */
export type Reading = (floating: FloatingState) => number;

/** Height of the water above the baseline on the centreline at a station, m. */
export const waterAt =
  (station: number): Reading =>
  ({ state }) =>
    surfaceHeight(state.up, state.level, station);

/** The headline figures on the surface, by their names in the report for machines. */
export const surfacedFigures = (length: number) =>
  ({
    draft: waterAt(length / 2),
    draftBow: waterAt(0),
    draftStern: waterAt(length),
    trim: ({ state }) => attitudeFor(state.up, state.level, length).trim,
    heel: ({ state }) => attitudeFor(state.up, state.level, length).heel,
    gm: ({ state }) => gmAlong(state, heelwards(state.up)),
    gmLongitudinal: ({ state }) => gmAlong(state, trimwards(state.up)),
    reserveBuoyancy: ({ density, volume, state }) => density * (volume - state.immersed.volume),
  }) as const satisfies Readonly<Record<string, Reading>>;

export type SurfacedFigure = keyof ReturnType<typeof surfacedFigures>;

/** The headline figures under water. */
export const submergedFigures = {
  fill: fillOf,
  trim: ({ state }) => trimOf(state.up),
  heel: ({ state }) => heelOf(state.up),
  bg: ({ state }) => heightOfBOverG(state),
  bgEffective: ({ state }) => gmAlong(state, heelwards(state.up)),
  bgEffectiveLongitudinal: ({ state }) => gmAlong(state, trimwards(state.up)),
} as const satisfies Readonly<Record<string, Reading>>;

export type SubmergedFigure = keyof typeof submergedFigures;

/** What the tank at a place in the list should hold, m3, for the neutral fill to be a good one. */
export const recommendedCapacity =
  (index: number): Reading =>
  floating => {
    const body = floating.tanks[index];
    if (!body) return 0;
    return ((shareFills(floating.tanks, fillOf(floating))[index] ?? 0) * body.capacity) / GOOD_FILL;
  };
