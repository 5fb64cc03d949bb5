import type { Boat } from '../../boat/boat.ts';
import type { Trial } from '../../boat/trial.ts';
import type { BodyCache } from '../../bodies/assemble.ts';
import { heelwards, UPRIGHT } from '../../conditions/attitude.ts';
import { energyAt } from '../../conditions/energy.ts';
import { surfacedBoat } from '../../conditions/load.ts';
import { gmAlong } from '../../conditions/readings.ts';
import { leastSquares } from '../estimation/leastSquares.ts';
import { dayBodies } from './dayBoat.ts';

/** A figure and its standard uncertainty, SI. */
export interface InclinedFigure {
  readonly value: number;
  readonly sigma: number;
}

/** A moment that was made, kg·m, and the change of heel that followed, rad; both to starboard. */
export interface Inclination {
  readonly moment: InclinedFigure;
  readonly heel: InclinedFigure;
}

/** What an inclining trial tells: the metacentric height of the boat as it was, and from it the height of G. */
export interface Inclined {
  /** m. */
  readonly gm: InclinedFigure;
  /** Height of the centre of mass of everything on board, tank water included, above the baseline, m. */
  readonly heightOfG: InclinedFigure;
  /** The same by the file. */
  readonly gmOfFile: number;
  readonly heightOfGOfFile: number;
}

/**
 * Metacentric height by GM = w·d / (Δ·tan θ), m, for a displacement in kg. Of several shifts the straight line through
 * the origin of tangent against moment, each weighted by its own uncertainty (the experiment of ASTM F1321 and of the
 * IS Code 2008, part B; from memory). Good for a few degrees. Null when no shift tells anything.
 */
export function metacentricHeight(shifts: readonly Inclination[], displacement: InclinedFigure): InclinedFigure | null {
  const told = shifts.filter(({ moment }) => moment.value !== 0);
  const [first] = told;
  if (!first) return null;
  const tangent = ({ heel }: Inclination) => Math.tan(heel.value);
  // What a moment's own uncertainty does to the tangent needs a first idea of the slope.
  const near = Math.abs(tangent(first) / first.moment.value);
  const weight = ({ moment, heel }: Inclination): number =>
    1 / Math.hypot(heel.sigma / Math.cos(heel.value) ** 2, near * moment.sigma);
  const fit = leastSquares(
    told.map(shift => [shift.moment.value * weight(shift)]),
    told.map(shift => tangent(shift) * weight(shift)),
  );
  const slope = fit?.solution[0] ?? 0;
  if (!fit || !(slope > 0)) return null;
  const value = 1 / (slope * displacement.value);
  const share = Math.hypot(Math.sqrt(fit.covariance[0]![0]!) / slope, displacement.sigma / displacement.value);
  return { value, sigma: value * share };
}

/** Moments and heels of a trial, uncertainties by first-order propagation. */
const inclinationsOf = ({ shifts, readings }: Trial): readonly Inclination[] =>
  readings.flatMap(reading => {
    const shift = reading.of === 'tilt' && !reading.isSlip ? shifts[reading.shift] : undefined;
    if (!shift) return [];
    const { mass, moved } = shift;
    const moment = {
      value: mass.value * moved.value,
      sigma: Math.hypot(mass.sigma * moved.value, mass.value * moved.sigma),
    };
    return [{ moment, heel: reading }];
  });

/** An inclining trial worked out; `displacementSigma` is how well the boat's whole mass is known, kg. */
export function incline(boat: Boat, trial: Trial, cache: BodyCache, displacementSigma: number): Inclined | null {
  const afloat = surfacedBoat(dayBodies(boat, trial, cache));
  const state = energyAt(afloat, UPRIGHT);
  const gm = metacentricHeight(inclinationsOf(trial), { value: state.totalMass, sigma: displacementSigma });
  if (gm === null || !Number.isFinite(state.level)) return null;
  const gmOfFile = gmAlong(state, heelwards(UPRIGHT));
  const heightOfGOfFile = state.totalMoment[2] / state.totalMass;
  // The height of the metacentre hangs on the hull alone, and the file and the boat have that in common.
  const heightOfG = { value: heightOfGOfFile + gmOfFile - gm.value, sigma: gm.sigma };
  return { gm, heightOfG, gmOfFile, heightOfGOfFile };
}
