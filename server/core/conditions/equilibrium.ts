import { addScaled, dot, length, scale, type Vec3 } from '../geometry/form/vector.ts';
import { heelwards, trimwards } from './attitude.ts';
import { type Afloat, curvature, type EnergyState, EXACT, energyAt } from './energy.ts';

/** How the search for an attitude ended. */
export type Equilibrium =
  | {
      readonly status: 'settled';
      readonly state: EnergyState;
      /** The step still to take, rad; none unless the caller said how far is near enough. */
      readonly left: Vec3;
    }
  /** No attitude was reached where G is over B: the lever left, m. */
  | { readonly status: 'unsettled'; readonly state: EnergyState; readonly lever: number };

/** Lever of G beside B at which the boat counts as settled, m: a ten-millionth of a millimetre. */
const SETTLED_LEVER = 1e-10;
/** Rounding in the energy, relative to the moments it is the difference of. */
const ENERGY_NOISE = 1e-14;
const MOST_STEPS = 200;
const FIRST_STEP = 0.2;
const LONGEST_STEP = 0.5;

/**
 * Share of a volume that a flat slice may stand for after a turn by an angle (rad), or before one: figures are right to
 * its square, so that no more is left to the next turn than this turn leaves by being too long. The last turns are so
 * short that nothing is left to slices.
 */
const sliceToleranceAfter = (angle: number): number => Math.max(1e-5, 0.3 * angle * angle);
/** The same at the start, which is mostly a guess; less so beside a known state. */
const AT_THE_START = 3e-2;
const AT_A_KNOWN_START = 1e-3;

const NO_STEP: Vec3 = [0, 0, 0];

export interface Descent {
  /** A state close to the start, perhaps with another load: the levels are looked for from there. */
  readonly before?: EnergyState | undefined;
  /** Where the surface is expected at the start, m. */
  readonly level?: number | undefined;
  /** Ends the descent where the caller knows the way on, before `step` is taken from `state`: the answer, roughly then. */
  readonly isKnown?: (state: EnergyState, step: Vec3) => boolean;
  /** A last step so short, rad, and a slice so thin, of a volume, that they need no other cut: they leave their squares. */
  readonly near?: number;
}

/**
 * The stable attitude that a boat let go at `start` (its up direction) runs down to: Newton on the potential energy over
 * the sphere of attitudes, each step no longer than trusted and kept only if the energy falls. From a start balanced on
 * an edge it falls to starboard, or bow up, so that the answer is always the same.
 */
export function settleFrom(boat: Afloat, start: Vec3, { before, level, isKnown, near = 0 }: Descent = {}): Equilibrium {
  const isKnownStart = before !== undefined || level !== undefined;
  let state = energyAt(boat, start, { before, level, near: isKnownStart ? AT_A_KNOWN_START : AT_THE_START });
  let trust = FIRST_STEP;
  for (let i = 0; i < MOST_STEPS; i++) {
    const curvatures = principalCurvatures(state);
    const step = downhill(state, curvatures, trust);
    if (step === null) {
      if (state.sliceShare <= Math.max(EXACT, near)) return { status: 'settled', state, left: NO_STEP };
      state = inFull(boat, state);
      continue;
    }
    const size = length(step);
    const isNear = size < Math.min(near, trust) && state.sliceShare <= near && curvatures[0].value > 0;
    if (isNear || isKnown?.(state, step)) {
      return { status: 'settled', state, left: step };
    }
    const next = energyAt(boat, turn(state.up, step), {
      before: state,
      near: Math.max(near, sliceToleranceAfter(size)),
    });
    const noise = energyNoise(state, next);
    const falls = next.energy < state.energy - noise;
    const flat = Math.abs(next.energy - state.energy) <= noise;
    if (falls || (flat && lever(next) < lever(state))) {
      trust = Math.min(LONGEST_STEP, falls ? 2 * Math.max(trust, size) : trust);
      state = next;
    } else {
      trust = 0.25 * size;
      if (trust < 1e-13) break;
      // Slices are off where the waterplane ends at a step, as on a deck awash.
      state = inFull(boat, state);
    }
  }
  const left = lever(state);
  const reached = inFull(boat, state);
  // A flat top or a knife edge (a box face exactly awash) stops the search short of the fine aim; 1 µm is still settled.
  return left < 1e-6
    ? { status: 'settled', state: reached, left: NO_STEP }
    : { status: 'unsettled', state: reached, lever: left };
}

/** How far the difference of two energies may be off, kg·m: rounding, and the cube of what is left to slices. */
export const energyNoise = (one: EnergyState, other: EnergyState): number =>
  (ENERGY_NOISE + one.sliceShare ** 3 + other.sliceShare ** 3) * (length(one.totalMoment) + Math.abs(one.energy));

/** The state with no more left to slices than figures bear; seldom another cut, for the last steps are short. */
const inFull = (boat: Afloat, state: EnergyState): EnergyState =>
  state.sliceShare > EXACT ? energyAt(boat, state.up, { before: state }) : state;

/** Horizontal distance between G and B, m. */
function lever(state: EnergyState): number {
  const sideways = addScaled(state.slope, state.up, -dot(state.slope, state.up));
  return length(sideways) / state.totalMass;
}

/** The two curvatures of the energy, least first, kg·m, and their directions. */
export function principalCurvatures(state: EnergyState): readonly [Principal, Principal] {
  const a = heelwards(state.up);
  const raw = addScaled(trimwards(state.up), a, -dot(trimwards(state.up), a));
  const b = scale(raw, 1 / length(raw));
  const aa = curvature(state, a, a);
  const ab = curvature(state, a, b);
  const bb = curvature(state, b, b);
  const mean = (aa + bb) / 2;
  const spread = Math.hypot((aa - bb) / 2, ab);
  const angle = Math.atan2(2 * ab, aa - bb) / 2;
  const most: Vec3 = addScaled(scale(a, Math.cos(angle)), b, Math.sin(angle));
  const least: Vec3 = addScaled(scale(b, Math.cos(angle)), a, -Math.sin(angle));
  return [
    { value: mean - spread, direction: towardsPositive(least, a, b) },
    { value: mean + spread, direction: towardsPositive(most, a, b) },
  ];
}

export interface Principal {
  readonly value: number;
  readonly direction: Vec3;
}

/** Of the two ways along a direction, the one to starboard (or bow up when it is all trim). */
function towardsPositive(direction: Vec3, heel: Vec3, trim: Vec3): Vec3 {
  const side = dot(direction, heel);
  const towards = Math.abs(side) > 1e-9 ? side : dot(direction, trim);
  return towards < 0 ? scale(direction, -1) : direction;
}

/** A step down the energy, at most `trust` long; null when settled in a hollow. */
function downhill(state: EnergyState, curvatures: readonly [Principal, Principal], trust: number): Vec3 | null {
  const scaleOf = Math.max(Math.abs(curvatures[0].value), Math.abs(curvatures[1].value), 1e-12 * state.totalMass);
  const settled = lever(state) < SETTLED_LEVER;
  if (settled && curvatures[0].value >= -1e-9 * scaleOf) return null;
  let step: Vec3 = [0, 0, 0];
  for (const { value, direction } of curvatures) {
    const slope = dot(state.slope, direction);
    const stiffness = Math.max(Math.abs(value), 1e-6 * scaleOf);
    // On a crest the slope is nothing and says nothing: leave it by the trusted step.
    const onCrest = value < 0 && Math.abs(slope) < 1e-7 * scaleOf;
    step = addScaled(step, direction, onCrest ? trust : -slope / stiffness);
  }
  const size = length(step);
  if (size < 1e-15) return null;
  return size >= trust ? scale(step, trust / size) : step;
}

/** Turns the unit vector `up` by the angle |step| towards `step`, which is square to it. */
export function turn(up: Vec3, step: Vec3): Vec3 {
  const angle = length(step);
  if (angle === 0) return up;
  const turned = addScaled(scale(up, Math.cos(angle)), step, Math.sin(angle) / angle);
  return scale(turned, 1 / length(turned));
}
