import type { Bodies } from '../bodies/assemble.ts';
import { capacityOf } from '../bodies/tankWater.ts';
import { scale, type Vec3 } from '../geometry/form/vector.ts';
import { heelOf, heelwards, trimOf, trimwards, UPRIGHT } from './attitude.ts';
import { type EnergyState, energyAt } from './energy.ts';
import { principalCurvatures, settleFrom } from './equilibrium.ts';
import { loadedBoat } from './load.ts';
import { gmAlong, heightOfBOverG } from './surfaced.ts';

/** The boat wholly under water with just so much ballast that it hangs neutral. */
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
  /** Fill of all tanks together, 0..1. */
  readonly fill: number;
  /** Ballast water, kg. */
  readonly ballast: number;
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

/** Hangs the boat under water at its neutral fill. */
export function floatSubmerged(bodies: Bodies): Submerged {
  if (bodies.mass <= 0 || bodies.volume <= 0) return { status: 'empty' };
  const capacity = capacityOf(bodies.tanks);
  const ballast = bodies.density * bodies.volume - bodies.mass;
  const rounding = ROUNDING * bodies.mass;
  if (ballast < -rounding) return { status: 'heavy', excess: -ballast };
  const lack = ballast - bodies.density * capacity;
  if (lack > rounding) return { status: 'light', lack, hasTank: capacity > 0 };
  const fill = capacity > 0 ? Math.min(Math.max(ballast / (bodies.density * capacity), 0), 1) : 0;
  const boat = loadedBoat(bodies, fill, 'submerged');
  const found = settleFrom(boat, UPRIGHT);
  if (found.status === 'unsettled') return { status: 'unsettled', lever: found.lever };
  const level = energyAt(boat, UPRIGHT);
  const stable = principalCurvatures(level)[0].value > 0;
  return describe(found.state, stable ? found.state : level, { fill, ballast, stable });
}

function describe(
  rest: EnergyState,
  judged: EnergyState,
  known: Pick<SubmergedNeutral, 'fill' | 'ballast' | 'stable'>,
): SubmergedNeutral {
  const { immersed } = judged;
  const bgEffectiveLongitudinal = gmAlong(judged, trimwards(judged.up));
  return {
    status: 'neutral',
    ...known,
    up: rest.up,
    trim: trimOf(rest.up),
    heel: heelOf(rest.up),
    centreOfBuoyancy: scale([immersed.mx, immersed.my, immersed.mz], 1 / immersed.volume),
    centreOfMass: scale(judged.totalMoment, 1 / judged.totalMass),
    bg: heightOfBOverG(judged),
    bgEffective: gmAlong(judged, heelwards(judged.up)),
    bgEffectiveLongitudinal,
    momentToTrimOneDegree: judged.totalMass * bgEffectiveLongitudinal * Math.sin(Math.PI / 180),
  };
}
