import { dot } from '../geometry/form/vector.ts';
import type { Steps } from '../steps/steps.ts';
import { heelingAt, trimmingAt, upHeeled } from './attitude.ts';
import { type Afloat, curvature, type EnergyState, energyAt, turnedLevel } from './energy.ts';
import { energyNoise } from './equilibrium.ts';
import { extrapolate } from './extrapolate.ts';
import { along } from './tensor.ts';

/** The boat held at a heel, free to sink and trim. */
interface LeverPoint {
  /** rad, positive to starboard; beyond 90° on the way to keel up. */
  readonly heel: number;
  /** Trim that it takes up there, rad, positive bow up. */
  readonly trim: number;
  /** Righting lever, m: positive turns it back from starboard. */
  readonly lever: number;
}

/** Heels between which the boat comes back to its rest, rad, the first to port. */
export type StabilityRange = readonly [port: number, starboard: number];

export interface RightingCurve {
  /** From 180° to port to 180° to starboard. */
  readonly points: readonly LeverPoint[];
  /** Null when it does not stay upright at all. */
  readonly range: StabilityRange | null;
}

const STEP = Math.PI / 36;
const STEPS_A_SIDE = 36;
/** Heels held in one step of work. */
const HEELS_A_STEP = 6;
/** A step of trim so short that what it does to the lever is linear, rad; what it leaves is its square. */
const TRIM_SETTLED = 1e-3;
/** Of a volume, what may be left to a flat slice, to its square again: a model's levers are right to 0.001 mm. */
const LEVER_TOLERANCE = 2e-3;
/** The same at the start, which is a guess. */
const NEAR_AT_THE_START = 1e-2;

/** The righting lever over all heels, and the range of stability about the rest nearest to upright. */
export function* rightingSteps(boat: Afloat): Steps<RightingCurve> {
  const level = holdAtHeel(boat, 0, { trim: 0 });
  const starboard = yield* sideFrom(level, boat, 1, []);
  yield;
  const port = yield* sideFrom(level, boat, -1, starboard);
  yield;
  const held = [...port.slice(1).reverse(), ...starboard];
  return { points: held.map(({ heel, trim, lever }) => ({ heel, trim, lever })), range: rangeOf(held, boat) };
}

/** A point with all that is known of the boat there: the next one begins from it. */
interface Held extends LeverPoint {
  readonly state: EnergyState;
  /** Of the surface at this trim, m. */
  readonly level: number;
}

/** From level to keel up; most boats go over to one side much as to the `other`. */
function* sideFrom(level: Held, boat: Afloat, side: 1 | -1, other: readonly Held[]): Steps<readonly Held[]> {
  const points: Held[] = [level];
  for (let i = 1; i <= STEPS_A_SIDE; i++) {
    points.push(holdAtHeel(boat, side * i * STEP, ahead(points, other)));
    if (i % HEELS_A_STEP === 0) yield;
  }
  return points;
}

/** Where the search for a boat's trim and level begins. */
interface Start {
  readonly trim: number;
  readonly before?: EnergyState;
  readonly level?: number;
}

/**
 * The next point if trim and level, or by how much they are other than on the other side, go on as they went, unless the boat
 * has just gone over to another trim.
 */
function ahead(points: readonly Held[], other: readonly Held[]): Start {
  const last = points.at(-1)!;
  const recent = points.slice(-4);
  const jump = recent.findLastIndex((point, i) => Math.abs(point.trim - (recent[i - 1] ?? point).trim) > STEP);
  const steady = recent.slice(Math.max(jump, 0));
  const first = points.length - steady.length;
  const next = (of: (point: Held) => number): number => {
    const beside = (i: number): number => (other[i] ? of(other[i]) : 0);
    return beside(points.length) + extrapolate(steady.map((point, i) => of(point) - beside(first + i)));
  };
  const knowsLevel = other.length > 0 || steady.length > 2;
  return {
    trim: next(point => point.trim),
    before: last.state,
    ...(knowsLevel && { level: next(point => point.level) }),
  };
}

/** The boat at a held heel in the trim of least energy that it slides into: Newton, guarded by the energy. */
function holdAtHeel(boat: Afloat, heel: number, start: Start): Held {
  let { trim } = start;
  let state = energyAt(boat, upHeeled(heel, trim), { ...start, near: NEAR_AT_THE_START });
  let longest = 0.3;
  for (let i = 0; i < 40; i++) {
    const towards = trimmingAt(heel, trim);
    const slope = dot(state.slope, towards);
    const stiffness = Math.abs(curvature(state, towards, towards));
    const wanted = stiffness > 0 ? -slope / stiffness : -Math.sign(slope) * longest;
    const step = Math.max(-longest, Math.min(longest, wanted));
    if (Math.abs(step) < TRIM_SETTLED || Math.abs(trim + step) > 1.5) {
      if (state.sliceShare <= LEVER_TOLERANCE)
        return heldAt(state, heel, trim, Math.abs(step) < TRIM_SETTLED ? step : 0);
      state = energyAt(boat, state.up, { before: state, near: LEVER_TOLERANCE });
      continue;
    }
    const next = energyAt(boat, upHeeled(heel, trim + step), { before: state, near: LEVER_TOLERANCE });
    const change = next.energy - state.energy;
    const noise = energyNoise(state, next);
    const lessSlope = Math.abs(dot(next.slope, trimmingAt(heel, trim + step))) < Math.abs(slope);
    if (change < -noise || (change <= noise && lessSlope)) {
      trim += step;
      state = next;
    } else {
      longest = Math.abs(step) / 4;
    }
  }
  return heldAt(state, heel, trim, 0);
}

/** The point at the end of a last short step, of which lever and trim are carried on without another cut. */
function heldAt(state: EnergyState, heel: number, trim: number, step: number): Held {
  const towards = trimmingAt(heel, trim);
  const heeling = heelingAt(heel);
  const turned = along(state.waterplane, towards, heeling) - along(state.freeSurface, towards, heeling);
  const lever = (dot(state.slope, heeling) + step * turned) / state.totalMass;
  return { heel, trim: trim + step, lever, level: turnedLevel(state, upHeeled(heel, trim + step)), state };
}

/** Where the lever changes sign on either side of the upright rest. */
function rangeOf(points: readonly Held[], boat: Afloat): StabilityRange | null {
  const all = crossings(points, boat);
  const rest = all
    .filter(crossing => crossing.isRest)
    .reduce<Crossing | null>(
      (nearest, next) => (!nearest || Math.abs(next.heel) < Math.abs(nearest.heel) ? next : nearest),
      null,
    );
  if (!rest || Math.abs(rest.heel) > Math.PI / 2) return null;
  const edges = all.filter(crossing => !crossing.isRest).map(crossing => crossing.heel);
  const starboard = edges.filter(heel => heel > rest.heel);
  const port = edges.filter(heel => heel < rest.heel);
  return [port.length > 0 ? Math.max(...port) : -Math.PI, starboard.length > 0 ? Math.min(...starboard) : Math.PI];
}

interface Crossing {
  readonly heel: number;
  /** The lever rises through nothing: the boat comes back. */
  readonly isRest: boolean;
}

function crossings(points: readonly Held[], boat: Afloat): readonly Crossing[] {
  return points.slice(1).flatMap((point, i) => {
    const before = points[i]!;
    if (before.lever < 0 === point.lever < 0) return [];
    return [{ heel: zeroBetween(before, point, boat), isRest: point.lever >= 0 }];
  });
}

/** Heels as near to each other, rad, or levers as short, m, as a crossing needs to be told. */
const HEEL_TOLD = 1e-5;
const NO_LEVER = 1e-8;

/**
 * The heel of no lever between two points, by false position. An end that stays put twice counts with half its lever
 * (the Illinois rule: Dahlquist and Björck, Numerical Methods, 6.3, from memory), so that both close in.
 */
function zeroBetween(a: Held, b: Held, boat: Afloat): number {
  let [low, high] = [a, b];
  let [lowLever, highLever] = [a.lever, b.lever];
  let stayed: 'low' | 'high' | null = null;
  for (let i = 0; i < 60 && high.heel - low.heel > HEEL_TOLD; i++) {
    const heel = low.heel - (lowLever * (high.heel - low.heel)) / (highLever - lowLever);
    const nearer = heel - low.heel < high.heel - heel ? low : high;
    const point = holdAtHeel(boat, heel, { trim: nearer.trim, before: nearer.state });
    if (Math.abs(point.lever) < NO_LEVER) return heel;
    if (point.lever < 0 === low.lever < 0) {
      [low, lowLever] = [point, point.lever];
      if (stayed === 'high') highLever /= 2;
      stayed = 'high';
    } else {
      [high, highLever] = [point, point.lever];
      if (stayed === 'low') lowLever /= 2;
      stayed = 'low';
    }
  }
  return (low.heel + high.heel) / 2;
}
