import type { Bodies } from '../bodies/assemble.ts';
import { add, length, subtract, unit, type Vec3 } from '../geometry/vector.ts';
import { type Attitude, attitudeFor, heelOf, heelwards, trimOf, trimwards, UPRIGHT } from './attitude.ts';
import type { EnergyState } from './energy.ts';
import { settleFrom } from './equilibrium.ts';
import { loadedBoat } from './load.ts';
import { gmAlong } from './surfaced.ts';

/** The boat on its way down, at one fill of its tanks. */
export interface TransitStep {
  /** Fill of all tanks together, 0..1. */
  readonly fill: number;
  /** False once nothing stands out of the water any more. */
  readonly afloat: boolean;
  /** Null when submerged, or when the boat lies too far over for a draft to mean anything. */
  readonly draft: number | null;
  /** rad, positive bow up and to starboard. */
  readonly trim: number;
  readonly heel: number;
  /** Metacentric heights there, tank water moving, m. */
  readonly gm: number;
  readonly gmLongitudinal: number;
}

/** Steps between empty and the neutral fill: enough to catch a dip a tenth of the way wide. */
const STEPS = 24;

/**
 * The boat from empty tanks to the neutral fill, each step settled from the attitude of the one before, as the boat
 * itself goes down. The last step hangs neutral. Empty when a step finds no rest.
 */
export function transitOf(bodies: Bodies, neutralFill: number, hullLength: number): readonly TransitStep[] {
  const steps: TransitStep[] = [];
  let before: EnergyState | undefined;
  let start = UPRIGHT;
  for (let i = 0; i <= STEPS; i++) {
    const fill = (neutralFill * i) / STEPS;
    const isLast = i === STEPS;
    const boat = loadedBoat(bodies, fill, isLast ? 'submerged' : 'afloat');
    const found = settleFrom(boat, start, { before });
    if (found.status === 'unsettled') return [];
    start = before ? carryOn(before.up, found.state.up) : found.state.up;
    before = found.state;
    steps.push(stepOf(before, fill, hullLength));
  }
  return steps;
}

/** Turns that go on as far as they went, rad; a boat that moves more is falling over, and falls where it is let go. */
const STEADY = 0.03;

/** Where a boat that has tilted from one attitude to the next is likely to be after as much water again. */
function carryOn(from: Vec3, to: Vec3): Vec3 {
  const turned = subtract(to, from);
  return length(turned) < STEADY ? unit(add(to, turned)) : to;
}

function stepOf(state: EnergyState, fill: number, hullLength: number): TransitStep {
  const afloat = Number.isFinite(state.level);
  const attitude: Attitude | null = afloat && state.up[2] > 0.1 ? attitudeFor(state.up, state.level, hullLength) : null;
  return {
    fill,
    afloat,
    draft: attitude?.draft ?? null,
    trim: attitude?.trim ?? trimOf(state.up),
    heel: attitude?.heel ?? heelOf(state.up),
    gm: gmAlong(state, heelwards(state.up)),
    gmLongitudinal: gmAlong(state, trimwards(state.up)),
  };
}

/** rad or m: less than this between two steps is rounding. */
const NO_DIFFERENCE = 1e-8;

/** The step at which a figure is at its worst; the first of several alike. */
export function worstStep(steps: readonly TransitStep[], badness: (step: TransitStep) => number): TransitStep | null {
  return steps.reduce<TransitStep | null>(
    (worst, step) => (!worst || badness(step) > badness(worst) + NO_DIFFERENCE ? step : worst),
    null,
  );
}
