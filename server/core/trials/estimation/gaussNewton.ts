import type { Steps } from '../../steps/steps.ts';
import { dot, type Fit, leastSquaresFrom } from './leastSquares.ts';

/** What was read, and how well, in the reading's own unit. */
export interface Observed {
  readonly value: number;
  readonly sigma: number;
}

/** What a model says at one choice of its unknowns. */
export interface Modelled {
  /** One for each reading. */
  readonly values: readonly number[];
  /** For each reading its change with each unknown, per standard uncertainty of the unknown. */
  readonly slopes: readonly (readonly number[])[];
}

/**
 * Unknowns are counted in their own standard uncertainties from what is believed of them beforehand, so that each is zero
 * give or take one before anything is read. Null where the model has no answer. Without `afresh` slopes may be those of
 * an earlier place near by.
 */
export type Model = (unknowns: readonly number[], afresh: boolean) => Modelled | null;

export interface Question {
  readonly model: Model;
  readonly observed: readonly Observed[];
  /** Least values of the unknowns, one for each, and where to begin. */
  readonly least: readonly number[];
  readonly start: readonly number[];
}

/** The most likely unknowns after all readings. */
export interface Estimated {
  readonly unknowns: readonly number[];
  /** Their covariance; the diagonal is below 1 where the readings taught something. */
  readonly covariance: readonly (readonly number[])[];
  readonly modelled: Modelled;
  /** Σ unknowns² + Σ (residual / sigma)²: what is made least. */
  readonly cost: number;
  /**
   * Twice the natural logarithm of how well the model foretold the readings, all that was open averaged over: what makes a
   * model with more unknowns pay for them (Laplace's approximation to the evidence; from memory).
   */
  readonly evidence: number;
  readonly hasSettled: boolean;
}

const MOST_ROUNDS = 40;
/** A step shorter than this, in standard uncertainties, changes nothing that is shown. */
const SETTLED = 0.03;
/** Slopes taken this near, in standard uncertainties, are as good as those of the place itself. */
const NEAR = 0.5;

/**
 * The least weighted change of the unknowns that explains the readings: Gauss and Newton's method on
 * `Σ unknowns² + Σ ((read - modelled) / sigma)²`, the model asked anew in every round, a step halved until the sum falls.
 * For a model of straight lines it is the linear-Gaussian update, weighted least squares with what is believed beforehand
 * as observations (JCGM 102:2011, clause 9 in kind; from memory). One round is one step.
 */
export function* estimate(question: Question): Steps<Estimated | null> {
  const { model, observed, least, start } = question;
  let at: readonly number[] = start.map((x, i) => Math.max(x, least[i]!));
  let modelled = model(at, true);
  if (!modelled) return null;
  let cost = costOf(at, modelled, observed);
  let taken = at;
  // Ends: after `MOST_ROUNDS` at the latest.
  for (let round = 0; ; round++) {
    yield;
    const fit = update(at, modelled, question);
    if (!fit) return null;
    const step = fit.solution.map((x, i) => Math.max(x, least[i]!) - at[i]!);
    const next = Math.hypot(...step) < SETTLED ? null : downhill({ at, step, cost }, question);
    if (next && round < MOST_ROUNDS) {
      ({ at, modelled, cost } = next);
      continue;
    }
    if (distance(at, taken) < NEAR || round >= MOST_ROUNDS) {
      const { covariance, logVolume } = fit;
      return { unknowns: at, covariance, modelled, cost, evidence: logVolume - cost, hasSettled: round < MOST_ROUNDS };
    }
    modelled = model(at, true);
    if (!modelled) return null;
    taken = at;
  }
}

const distance = (a: readonly number[], b: readonly number[]): number => Math.hypot(...a.map((x, i) => x - b[i]!));

interface Place {
  readonly at: readonly number[];
  readonly step: readonly number[];
  readonly cost: number;
}

function downhill({ at, step, cost }: Place, { model, observed }: Question) {
  for (let share = 1; share > 0.05; share /= 2) {
    const tried = at.map((x, i) => x + share * step[i]!);
    const modelled = model(tried, false);
    if (!modelled) continue;
    const now = costOf(tried, modelled, observed);
    if (now < cost - 1e-6) return { at: tried, modelled, cost: now };
  }
  return null;
}

const costOf = (at: readonly number[], { values }: Modelled, observed: readonly Observed[]): number =>
  dot(at, at) + observed.reduce((sum, { value, sigma }, i) => sum + ((value - values[i]!) / sigma) ** 2, 0);

/**
 * One round: what is believed beforehand stands as one row for each unknown below those of the readings. An unknown that
 * would go below its least stays there.
 */
function update(at: readonly number[], modelled: Modelled, question: Question): Fit | null {
  const { least } = question;
  const free = fitWith(at, modelled, question, new Set());
  const stuck = free?.solution.flatMap((x, i) => (x < least[i]! && at[i]! <= least[i]! ? [i] : [])) ?? [];
  return stuck.length === 0 ? free : fitWith(at, modelled, question, new Set(stuck));
}

function fitWith(
  at: readonly number[],
  { values, slopes }: Modelled,
  { observed }: Question,
  held: ReadonlySet<number>,
): Fit | null {
  const rows = observed.map(({ sigma }, i) => slopes[i]!.map((slope, k) => (held.has(k) ? 0 : slope / sigma)));
  const aims = observed.map(({ value, sigma }, i) => (value - values[i]!) / sigma + dot(rows[i]!, at));
  const believed = at.map((x, i) => (held.has(i) ? x : 0));
  return leastSquaresFrom(believed, rows, aims);
}
