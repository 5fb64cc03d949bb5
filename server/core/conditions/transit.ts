import type { Bodies } from '../bodies/assemble.ts';
import { length, subtract, unit, type Vec3 } from '../geometry/form/vector.ts';
import { finish, type Steps } from '../steps/steps.ts';
import { type Attitude, attitudeFor, heelOf, heelwards, trimOf, trimwards } from './attitude.ts';
import { type EnergyState, turnedLevel } from './energy.ts';
import { settleFrom, turn } from './equilibrium.ts';
import { extrapolate } from './extrapolate.ts';
import { boatIn, type Loading } from './float.ts';
import { loadedBoat } from './load.ts';
import { gmAlong } from './readings.ts';
import type { Submerged, SubmergedNeutral } from './submerged.ts';
import type { Surfaced, SurfacedAfloat } from './surfaced.ts';

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

/** A last turn so short, rad, and a slice of a volume so thin, that what they leave shows in no figure: 0.03 mm of GM. */
const TRANSIT_TOLERANCE = 3e-4;

/** Steps between empty and the neutral fill: enough to catch a dip a tenth of the way wide. */
const STEPS = 24;
/** Fills floated in one step of work. */
const FILLS_A_STEP = 6;

/**
 * The boat from empty tanks to the neutral fill, or to full tanks where it is held under, each step settled from the
 * attitude of the one before, as the boat itself goes down. The last step is wholly under water. Empty when a step finds no rest.
 */
export const transitOf = (...way: Parameters<typeof transitOfSteps>): readonly TransitStep[] =>
  finish(transitOfSteps(...way));

function* transitOfSteps(
  bodies: Bodies,
  surfaced: Pick<SurfacedAfloat, 'up' | 'level'>,
  { fill: neutralFill, heldDown }: Pick<SubmergedNeutral, 'fill' | 'heldDown'>,
  hullLength: number,
): Steps<readonly TransitStep[]> {
  // Without buoyancy to hold down there is no fill at which it would still be afloat.
  if (heldDown !== null && heldDown <= 0) return [];
  const last: Loading = { kind: heldDown === null ? 'neutral' : 'held' };
  const steps: TransitStep[] = [];
  let before: EnergyState | undefined;
  const passed: Vec3[] = [];
  for (let i = 0; i <= STEPS; i++) {
    const fill = (neutralFill * i) / STEPS;
    const isEnd = i === 0 || i === STEPS;
    const boat = i === STEPS ? boatIn(bodies, last) : loadedBoat(bodies, fill, 'afloat');
    const found = settleFrom(boat, aheadOf(passed) ?? surfaced.up, {
      before,
      level: before ? undefined : surfaced.level,
      near: isEnd ? 0 : TRANSIT_TOLERANCE,
    });
    if (found.status === 'unsettled') return [];
    const { state, left } = found;
    const up = turn(state.up, left);
    passed.push(up);
    steps.push(stepOf(state, up, fill, hullLength));
    before = state;
    if (i % FILLS_A_STEP === 0) yield;
  }
  return steps;
}

/** The way from the surface to where the boat hangs; none for one that does not float, cannot hang neutral or has no tank. */
export function* transitSteps(
  bodies: Bodies,
  surfaced: Surfaced,
  submerged: Submerged,
  hullLength: number,
): Steps<readonly TransitStep[]> {
  if (surfaced.status !== 'afloat' || submerged.status !== 'neutral' || bodies.tanks.length === 0) return [];
  return yield* transitOfSteps(bodies, surfaced, submerged, hullLength);
}

/** Turns that go on as far as they went, rad; a boat that moves more is falling over, and falls where it is let go. */
const STEADY = 0.03;

/** Where a boat that has tilted steadily is likely to be after as much water again. */
function aheadOf(passed: readonly Vec3[]): Vec3 | null {
  if (passed.length === 0) return null;
  const recent = passed.slice(-3);
  const lastFall = recent.findLastIndex((up, i) => i > 0 && length(subtract(up, recent[i - 1]!)) > STEADY);
  const steady = recent.slice(Math.max(lastFall, 0));
  const along = (axis: 0 | 1 | 2): number => extrapolate(steady.map(up => up[axis]));
  return unit([along(0), along(1), along(2)]);
}

/** The step at `up`, a last short turn away from `state`. */
function stepOf(state: EnergyState, up: Vec3, fill: number, hullLength: number): TransitStep {
  const level = turnedLevel(state, up);
  const afloat = Number.isFinite(level);
  const attitude: Attitude | null = afloat && up[2] > 0.1 ? attitudeFor(up, level, hullLength) : null;
  return {
    fill,
    afloat,
    draft: attitude?.draft ?? null,
    trim: attitude?.trim ?? trimOf(up),
    heel: attitude?.heel ?? heelOf(up),
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
