import type { Reading } from '../../boat/trial.ts';
import type { Steps } from '../../steps/steps.ts';
import { type Estimated, estimate } from '../estimation/gaussNewton.ts';
import { dot } from '../estimation/leastSquares.ts';
import { gather, type Observation, type Pool } from './pool.ts';
import { SLIP_SCORE, type Standing, standings } from './slips.ts';
import type { TrialSet } from './trialSet.ts';
import { type UnlistedWeight, unlistedId, withUnlisted } from './unlistedWeight.ts';

/** The most likely figures after all trials, and what was gathered for it. */
export interface Reconciled {
  readonly pool: Pool;
  readonly estimated: Estimated;
}

/** The same with a mass, volume and place that nobody wrote down. */
export interface ReconciledUnlisted extends Reconciled {
  readonly unlisted: UnlistedWeight;
}

/** A reading that fits nothing, and what the others say that it should have been. */
export interface Slip extends Standing {
  readonly reading: Reading;
}

/** Slips are a few: where more than this share of the readings fits nothing, it is not the tape. */
const MOST_SLIPS = 1 / 3;

/** The least weighted change of the uncertain numbers in the file that explains all trials together. */
export function reconcileInputs(trialSet: TrialSet, leftOut: ReadonlySet<Reading>): Steps<Reconciled | null> {
  return solved(gather(trialSet, leftOut));
}

/** The same, with what nobody wrote down to take its share. */
export function* reconcileUnlisted(
  trialSet: TrialSet,
  leftOut: ReadonlySet<Reading>,
): Steps<ReconciledUnlisted | null> {
  const unlisted = withUnlisted(trialSet.source);
  if (!unlisted) return null;
  const inputs = [...trialSet.inputs, ...unlisted.inputs];
  const pool = gather({ ...trialSet, source: unlisted.source, inputs }, leftOut);
  const least = pool.inputs.map(({ id, value, sigma }) =>
    id === unlistedId('volume') ? (unlisted.leastVolume - value) / sigma : Number.NEGATIVE_INFINITY,
  );
  const first = yield* solved(pool, least);
  if (first && isGood(first)) return { ...first, unlisted };
  // From no weight at all, or from the wrong side of the water's surface, the way to the right place may lead uphill.
  let best = first;
  for (const start of STARTS) {
    const found = yield* solved(
      pool,
      least,
      pool.inputs.map(({ id }) => start[id] ?? 0),
    );
    if (found && (!best || found.estimated.cost < best.estimated.cost)) best = found;
  }
  return best && { ...best, unlisted };
}

/** Where else the weight is looked for, in uncertainties from the middle of the hull. */
const STARTS: readonly Readonly<Record<string, number>>[] = [
  { [unlistedId('mass')]: 0.3, [unlistedId('station')]: 1 },
  { [unlistedId('mass')]: 0.3, [unlistedId('station')]: -1 },
  { [unlistedId('mass')]: 0.3, [unlistedId('height')]: -1 },
  { [unlistedId('mass')]: 0.3, [unlistedId('height')]: 1 },
];

/** The sum is no larger than chance often makes it (the mean and one deviation of chi-square with as many readings). */
function isGood({ estimated, pool: { observations } }: Reconciled): boolean {
  const count = observations.length;
  return estimated.hasSettled && estimated.cost < count + Math.sqrt(2 * count);
}

function* solved(
  pool: Pool,
  least = pool.inputs.map(() => Number.NEGATIVE_INFINITY),
  start = pool.inputs.map(() => 0),
): Steps<Reconciled | null> {
  if (pool.observations.length === 0) return null;
  const estimated = yield* estimate({ model: pool.model, observed: pool.observations, least, start });
  return estimated && { pool, estimated };
}

/** Slips, and what all other readings come to with an unlisted weight. */
export interface Sifted {
  readonly slips: readonly Slip[];
  readonly rest: ReconciledUnlisted | null;
}

/**
 * Readings that fit neither the file nor any unlisted weight. Suspects are taken out first: where the others then agree,
 * and foretell something else than the suspects, that is all. Else the worst is taken out and the rest asked again. What is
 * left open to explain them is as much as can be, so that a boat unlike its file is not taken for a slip.
 */
export function* findSlips(trialSet: TrialSet, suspects: readonly Reading[] = []): Steps<Sifted> {
  const rest = suspects.length > 0 ? yield* reconcileUnlisted(trialSet, new Set(suspects)) : null;
  if (rest && isGood(rest) && !isSlip(worstOf(rest.estimated, rest.pool.observations))) {
    const confirmed = foretold(trialSet, rest, suspects);
    if (confirmed.every(isSlip)) return { slips: confirmed, rest };
  }
  const slips: Slip[] = [];
  const most = Math.floor(MOST_SLIPS * trialSet.trials.reduce((sum, { readings }) => sum + readings.length, 0));
  // Ends: each round finds a slip, `most` of them at the most.
  for (;;) {
    const found = yield* reconcileUnlisted(trialSet, new Set(slips.map(({ reading }) => reading)));
    const worst = found && worstOf(found.estimated, found.pool.observations);
    if (!isSlip(worst) || slips.length >= most) return { slips, rest: found };
    slips.push(worst);
  }
}

const isSlip = (slip: Slip | null): slip is Slip => slip !== null && Math.abs(slip.score) > SLIP_SCORE;

/** What readings that were left out should have been. */
function foretold(
  trialSet: TrialSet,
  { unlisted, estimated }: ReconciledUnlisted,
  left: readonly Reading[],
): readonly Slip[] {
  const inputs = [...trialSet.inputs, ...unlisted.inputs];
  const { model, observations } = gather({ ...trialSet, source: unlisted.source, inputs }, new Set());
  const modelled = model(estimated.unknowns, true);
  if (!modelled) return [];
  return observations.flatMap(({ reading, value, sigma }, i) => {
    if (!left.includes(reading)) return [];
    const slope = modelled.slopes[i]!;
    const open = Math.sqrt(
      dot(
        slope,
        estimated.covariance.map(row => dot(row, slope)),
      ),
    );
    const expected = modelled.values[i]!;
    return [{ reading, expected, sigma: open, score: (value - expected) / Math.hypot(sigma, open) }];
  });
}

function worstOf(estimated: Estimated, observations: readonly Observation[]): Slip | null {
  return standings(estimated, observations)
    .map((standing, i) => ({ ...standing, reading: observations[i]!.reading }))
    .reduce<Slip | null>(
      (worst, next) => (!worst || Math.abs(next.score) > Math.abs(worst.score) ? next : worst),
      null,
    );
}
