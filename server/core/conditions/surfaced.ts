import type { Bodies } from '../bodies/assemble.ts';
import { dot, scale, type Vec3 } from '../geometry/form/vector.ts';
import {
  type Attitude,
  attitudeFor,
  heelOf,
  heelwards,
  surfaceHeight,
  trimOf,
  trimwards,
  UPRIGHT,
} from './attitude.ts';
import { along, curvature, type EnergyState, energyAt } from './energy.ts';
import { settleFrom } from './equilibrium.ts';
import { surfacedBoat, totalMassOf } from './load.ts';

/** The boat on the surface, each tank at the fill it keeps there. Figures exist only where they mean something. */
export type Surfaced =
  | SurfacedAfloat
  /** Heavier than all the water it can push aside, by `excess` kg. */
  | { readonly status: 'sinks'; readonly excess: number }
  /** Let go upright it rolls or pitches over and settles there (rad); `gmUpright` in m. */
  | { readonly status: 'overturns'; readonly trim: number; readonly heel: number; readonly gmUpright: number }
  /** The search found no rest; G stays `lever` m beside B. */
  | { readonly status: 'unsettled'; readonly lever: number }
  /** Nothing in the file weighs, or nothing displaces, yet. */
  | { readonly status: 'empty' };

export interface SurfacedAfloat {
  readonly status: 'afloat';
  readonly attitude: Attitude;
  /** Up in boat axes; the surface is `up·p = level`. */
  readonly up: Vec3;
  readonly level: number;
  /** Height of the surface at the bow tip and at the hull's length, m. */
  readonly draftBow: number;
  readonly draftStern: number;
  /** Mass of the boat with the water left in its tanks, kg: it displaces as much. */
  readonly displacement: number;
  readonly centreOfBuoyancy: Vec3;
  readonly centreOfMass: Vec3;
  /** m2, and its centroid. */
  readonly waterplaneArea: number;
  readonly centreOfFlotation: Vec3 | null;
  /** Mass that sinks the boat by one metre of draft, kg/m. */
  readonly massPerImmersion: number;
  /** Metacentric heights at this attitude, tank water moving, m. */
  readonly gm: number;
  readonly gmLongitudinal: number;
  /** What the tanks' free surfaces take off `gm` and `gmLongitudinal`, m. */
  readonly freeSurfaceLoss: number;
  readonly freeSurfaceLossLongitudinal: number;
  /** Moment that trims the boat by one degree, kg·m. */
  readonly momentToTrimOneDegree: number;
  /** Density x volume still above water, kg. */
  readonly reserveBuoyancy: number;
}

/** Floats the boat on the surface: draft, trim and heel by the actual, tilted surface. */
export function floatSurfaced(bodies: Bodies, hullLength: number): Surfaced {
  const boat = surfacedBoat(bodies);
  const mass = totalMassOf(boat);
  if (mass <= 0 || bodies.volume <= 0) return { status: 'empty' };
  const excess = mass - boat.density * bodies.volume;
  if (excess >= 0) return { status: 'sinks', excess };
  const found = settleFrom(boat, UPRIGHT);
  if (found.status === 'unsettled') return { status: 'unsettled', lever: found.lever };
  const { state } = found;
  if (state.up[2] <= Math.cos(MOST_TILT)) {
    const upright = energyAt(boat, UPRIGHT);
    return {
      status: 'overturns',
      trim: trimOf(state.up),
      heel: heelOf(state.up),
      gmUpright: gmAlong(upright, heelwards(UPRIGHT)),
    };
  }
  return describe(bodies, state, hullLength);
}

/** Tilt past which draft, trim and heel say nothing any more, rad. */
const MOST_TILT = (85 / 180) * Math.PI;

function describe(bodies: Bodies, state: EnergyState, hullLength: number): SurfacedAfloat {
  const { up, level, immersed } = state;
  const heel = heelwards(up);
  const trim = trimwards(up);
  const displacement = state.totalMass;
  const gmLongitudinal = gmAlong(state, trim);
  const area = immersed.area;
  return {
    status: 'afloat',
    attitude: attitudeFor(up, level, hullLength),
    up,
    level,
    draftBow: surfaceHeight(up, level, 0),
    draftStern: surfaceHeight(up, level, hullLength),
    displacement,
    centreOfBuoyancy: scale([immersed.mx, immersed.my, immersed.mz], 1 / immersed.volume),
    centreOfMass: scale(state.totalMoment, 1 / displacement),
    waterplaneArea: area,
    centreOfFlotation: area > 0 ? [immersed.ax / area, immersed.ay / area, immersed.az / area] : null,
    massPerImmersion: bodies.density * area * up[2],
    gm: gmAlong(state, heel),
    gmLongitudinal,
    freeSurfaceLoss: along(state.freeSurface, heel, heel) / displacement,
    freeSurfaceLossLongitudinal: along(state.freeSurface, trim, trim) / displacement,
    momentToTrimOneDegree: displacement * gmLongitudinal * Math.sin(Math.PI / 180),
    reserveBuoyancy: bodies.density * (bodies.volume - immersed.volume),
  };
}

/** Metacentric height in one direction of tilt, m. */
export const gmAlong = (state: EnergyState, direction: Vec3): number =>
  curvature(state, direction, direction) / state.totalMass;

/** G above or below B along the vertical, B above G positive, m. */
export const heightOfBOverG = (state: EnergyState): number => -dot(state.up, state.slope) / state.totalMass;
