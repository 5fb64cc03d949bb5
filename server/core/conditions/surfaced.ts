import type { Bodies } from '../bodies/assemble.ts';
import { scale, type Vec3 } from '../geometry/form/vector.ts';
import { type Attitude, attitudeFor, heelwards, trimwards } from './attitude.ts';
import { boatIn, type FloatingState, float, heldLevel, type Loading } from './float.ts';
import { totalMassOf } from './load.ts';
import { gmInHeel, gmInTrim, heelAngle, momentToTrim, reserve, trimAngle, waterAt } from './readings.ts';
import { along } from './tensor.ts';

/** The boat on the surface. Figures exist only where they mean something. */
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
  /** What its figures are read from. */
  readonly floating: FloatingState;
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

/** On the surface each tank keeps its own fill. */
const OWN: Loading = { kind: 'own' };

/** Floats the boat on the surface: draft, trim and heel by the actual, tilted surface. */
export function floatSurfaced(bodies: Bodies, hullLength: number, loading: Loading = OWN): Surfaced {
  if (totalMassOf(boatIn(bodies, loading)) <= 0 || bodies.volume <= 0) return { status: 'empty' };
  const found = float(bodies, loading);
  if (found.status === 'overturns') {
    return {
      status: 'overturns',
      trim: trimAngle(found.floating),
      heel: heelAngle(found.floating),
      gmUpright: gmInHeel(heldLevel(bodies, loading)),
    };
  }
  return found.status === 'rests' ? describe(found.floating, hullLength) : found;
}

function describe(floating: FloatingState, hullLength: number): SurfacedAfloat {
  const { state, density } = floating;
  const { up, level, immersed } = state;
  const heel = heelwards(up);
  const trim = trimwards(up);
  const displacement = state.totalMass;
  const area = immersed.area;
  return {
    status: 'afloat',
    floating,
    attitude: attitudeFor(up, level, hullLength),
    up,
    level,
    draftBow: waterAt(0)(floating),
    draftStern: waterAt(hullLength)(floating),
    displacement,
    centreOfBuoyancy: scale([immersed.mx, immersed.my, immersed.mz], 1 / immersed.volume),
    centreOfMass: scale(state.totalMoment, 1 / displacement),
    waterplaneArea: area,
    centreOfFlotation: area > 0 ? [immersed.ax / area, immersed.ay / area, immersed.az / area] : null,
    massPerImmersion: density * area * up[2],
    gm: gmInHeel(floating),
    gmLongitudinal: gmInTrim(floating),
    freeSurfaceLoss: along(state.freeSurface, heel, heel) / displacement,
    freeSurfaceLossLongitudinal: along(state.freeSurface, trim, trim) / displacement,
    momentToTrimOneDegree: momentToTrim(floating),
    reserveBuoyancy: reserve(floating),
  };
}
