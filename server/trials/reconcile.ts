import type { Reading } from '../boat/trial.ts';
import { type Estimated, estimate } from './gaussNewton.ts';
import { type Hidden, hiddenId, withHidden } from './hidden.ts';
import type { Lesson } from './lesson.ts';
import { gather, type Observation, type Pool } from './pool.ts';
import { SLIP_SCORE, type Standing, standings } from './slips.ts';

/** The most likely figures after all trials, and what was gathered for it. */
export interface Reconciled {
  readonly pool: Pool;
  readonly estimated: Estimated;
}

/** The same with a mass, volume and place that nobody wrote down. */
export interface ReconciledHidden extends Reconciled {
  readonly hidden: Hidden;
}

/** A reading that fits nothing, and what the others say that it should have been. */
export interface Slip extends Standing {
  readonly reading: Reading;
}

/** Slips are a few: where more than this share of the readings fits nothing, it is not the tape. */
const MOST_SLIPS = 1 / 3;

/** The least weighted change of the uncertain numbers in the file that explains all trials together. */
export function reconcileInputs(lesson: Lesson, leftOut: ReadonlySet<Reading>): Reconciled | null {
  return solved(gather(lesson, leftOut));
}

/** The same, with what nobody wrote down to take its share. */
export function reconcileHidden(lesson: Lesson, leftOut: ReadonlySet<Reading>): ReconciledHidden | null {
  const hidden = withHidden(lesson.source);
  if (!hidden) return null;
  const inputs = [...lesson.inputs, ...hidden.inputs];
  const pool = gather({ ...lesson, source: hidden.source, inputs }, leftOut);
  const least = pool.inputs.map(({ id, value, sigma }) =>
    id === hiddenId('volume') ? (hidden.leastVolume - value) / sigma : Number.NEGATIVE_INFINITY,
  );
  const found = solved(pool, least);
  return found && { ...found, hidden };
}

function solved(pool: Pool, least = pool.inputs.map(() => Number.NEGATIVE_INFINITY)): Reconciled | null {
  if (pool.observations.length === 0) return null;
  const estimated = estimate({ model: pool.model, observed: pool.observations, least });
  return estimated && { pool, estimated };
}

/**
 * Readings that fit neither the file nor any unlisted weight, the worst taken out first and the rest asked again. What
 * is left open to explain them is as much as can be, so that a boat unlike its file is not taken for a slip.
 */
export function findSlips(lesson: Lesson): readonly Slip[] {
  const slips: Slip[] = [];
  const most = Math.floor(MOST_SLIPS * lesson.trials.reduce((sum, { readings }) => sum + readings.length, 0));
  while (slips.length < most) {
    const found = reconcileHidden(lesson, new Set(slips.map(({ reading }) => reading)));
    const worst = found && worstOf(found.estimated, found.pool.observations);
    if (!worst || Math.abs(worst.score) < SLIP_SCORE) break;
    slips.push(worst);
  }
  return slips;
}

function worstOf(estimated: Estimated, observations: readonly Observation[]): Slip | null {
  return standings(estimated, observations)
    .map((standing, i) => ({ ...standing, reading: observations[i]!.reading }))
    .reduce<Slip | null>(
      (worst, next) => (!worst || Math.abs(next.score) > Math.abs(worst.score) ? next : worst),
      null,
    );
}
