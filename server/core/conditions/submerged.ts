import type { Bodies } from '../bodies/assemble.ts';
import { capacityOf } from '../bodies/tankWater.ts';
import { scale, type Vec3 } from '../geometry/form/vector.ts';
import { principalCurvatures } from './equilibrium.ts';
import { buoyancyLeft, type FloatingState, float, heldLevel, type Loading } from './float.ts';
import { bAboveG, gmInHeel, gmInTrim, heelAngle, momentToTrim, trimAngle } from './readings.ts';

/** The boat wholly under water: hanging neutral with just so much ballast, or held under with its tanks full. */
export type Submerged =
  | SubmergedNeutral
  /** Even with empty tanks it is heavier than its buoyancy, by `excess` kg. */
  | { readonly status: 'heavy'; readonly excess: number }
  /** Even with full tanks it is lighter than its buoyancy, by `lack` kg. */
  | { readonly status: 'light'; readonly lack: number; readonly hasTank: boolean }
  | { readonly status: 'unsettled'; readonly lever: number }
  | { readonly status: 'empty' };

export interface SubmergedNeutral {
  readonly status: 'neutral';
  /** Where it comes to rest, which trim and heel are read from. */
  readonly floating: FloatingState;
  /** What it is judged by besides: the same, but of a boat that does not stay level the level one. */
  readonly judged: FloatingState;
  /** Fill of all tanks together, 0..1. */
  readonly fill: number;
  /** What holds it under, kg: the buoyancy left with full tanks; null for a boat that hangs neutral by itself. */
  readonly heldDown: number | null;
  /** Ballast water, kg. */
  readonly ballast: number;
  /** Mass of everything with its ballast, kg: it displaces as much. */
  readonly displacement: number;
  readonly up: Vec3;
  /** rad, positive bow up and to starboard. */
  readonly trim: number;
  readonly heel: number;
  /**
   * It stays level when set level: the energy's curvature there is positive in trim and in heel, tank water moving.
   * When false, trim and heel are where it runs to, and bg and what is left of it are those of the level boat.
   */
  readonly stable: boolean;
  readonly centreOfBuoyancy: Vec3;
  readonly centreOfMass: Vec3;
  /** B above G along the vertical, tank water held still, m. */
  readonly bg: number;
  /** What is left of it in heel and in trim once the tank water may move, m. */
  readonly bgEffective: number;
  readonly bgEffectiveLongitudinal: number;
  /** Moment that trims the boat by one degree, kg·m; not positive when unstable. */
  readonly momentToTrimOneDegree: number;
}

/** Sums of masses agree no better than this (relative). */
const ROUNDING = 1e-12;

/** The boat under water as it is loaded there: hanging at its neutral fill, or held under with its tanks full. */
export function floatSubmerged(bodies: Bodies, loading = NEUTRAL): Submerged {
  if (bodies.mass <= 0 || bodies.volume <= 0) return { status: 'empty' };
  return loading.kind === 'held' ? heldUnder(bodies) : hungNeutral(bodies);
}

function heldUnder(bodies: Bodies): Submerged {
  const ballast = bodies.density * capacityOf(bodies.tanks);
  return atRest(bodies, HELD_UNDER, { fill: ballast > 0 ? 1 : 0, ballast, heldDown: buoyancyLeft(bodies) });
}

function hungNeutral(bodies: Bodies): Submerged {
  const capacity = capacityOf(bodies.tanks);
  const ballast = bodies.density * bodies.volume - bodies.mass;
  const rounding = ROUNDING * bodies.mass;
  if (ballast < -rounding) return { status: 'heavy', excess: -ballast };
  const lack = ballast - bodies.density * capacity;
  if (lack > rounding) return { status: 'light', lack, hasTank: capacity > 0 };
  const fill = capacity > 0 ? Math.min(Math.max(ballast / (bodies.density * capacity), 0), 1) : 0;
  return atRest(bodies, NEUTRAL, { fill, ballast, heldDown: null });
}

type Known = Pick<SubmergedNeutral, 'fill' | 'ballast' | 'heldDown'>;

function atRest(bodies: Bodies, loading: Loading, known: Known): Submerged {
  const found = float(bodies, loading);
  // Wholly under water nothing sinks for want of volume: the ballast is what makes it neutral.
  if (found.status === 'sinks') return { status: 'heavy', excess: found.excess };
  if (found.status === 'unsettled') return found;
  const level = heldLevel(bodies, loading);
  const stable = principalCurvatures(level.state)[0].value > 0;
  return describe(found.floating, stable ? found.floating : level, { ...known, stable });
}

const NEUTRAL: Loading = { kind: 'neutral' };
const HELD_UNDER: Loading = { kind: 'held' };

function describe(
  floating: FloatingState,
  judged: FloatingState,
  known: Known & Pick<SubmergedNeutral, 'stable'>,
): SubmergedNeutral {
  const { immersed, totalMass, totalMoment } = judged.state;
  return {
    status: 'neutral',
    ...known,
    floating,
    judged,
    displacement: totalMass,
    up: floating.state.up,
    trim: trimAngle(floating),
    heel: heelAngle(floating),
    centreOfBuoyancy: scale([immersed.mx, immersed.my, immersed.mz], 1 / immersed.volume),
    centreOfMass: scale(totalMoment, 1 / totalMass),
    bg: bAboveG(judged),
    bgEffective: gmInHeel(judged),
    bgEffectiveLongitudinal: gmInTrim(judged),
    momentToTrimOneDegree: momentToTrim(judged),
  };
}
