import type { BoatSource } from '../boat/source.ts';
import type { Doubts } from '../doubt/doubts.ts';
import type { Input } from '../doubt/input.ts';
import type { Doubt } from '../doubt/spread.ts';
import { CHANGED } from './changed.ts';
import type { Comparison } from './compare.ts';
import { believedOf, type HiddenKey } from './hidden.ts';
import { dot, leastSquaresFrom } from './leastSquares.ts';
import { SLIP_SCORE } from './slips.ts';

/**
 * Doubts of the figures when the readings count as known of those trials that the file accounts for. Figures that were
 * changed to fit them may each be off as before, but not so that the readings would no longer fit; how they hang together is
 * in no tolerance of the file, so it is put back here. An entry that was made of the readings has the broad doubts again
 * that it had before anything was read: so every reading is used once.
 */
export function conditioned(doubts: Doubts, comparisons: readonly Comparison[], source: BoatSource): Doubts {
  const accountsFor = (name: string | null) => name === CHANGED || source.boat.payload.some(part => part.name === name);
  const told = comparisons.filter(({ trial, answers }) => answers && accountsFor(trial.explained));
  if (told.length === 0) return doubts;
  const entries = new Set(told.map(({ trial }) => trial.explained!));
  const broad = doubts.inputs.map(input => broadening(input, entries, source));
  const rows = told.flatMap(({ day, readings, answers }) => {
    const places = new Map(day.inputs.map(({ id }, k) => [id, k]));
    return readings.flatMap(({ reading, sigma, score }, i) =>
      reading.isSlip || Math.abs(score) > SLIP_SCORE
        ? []
        : [doubts.inputs.map(({ id }, k) => ((answers!.slopes[i]![places.get(id) ?? -1] ?? 0) * broad[k]!) / sigma)],
    );
  });
  const knowing = { rows, broad, places: new Map(doubts.inputs.map(({ id }, k) => [id, k])) };
  const sharpen = (doubt: Doubt): Doubt => sharpened(doubt, knowing);
  const all = <R extends object>(figures: R): R =>
    Object.fromEntries(Object.entries(figures).map(([name, doubt]) => [name, sharpen(doubt as Doubt)])) as R;
  return {
    ...doubts,
    surfaced: doubts.surfaced && all(doubts.surfaced),
    submerged: doubts.submerged && all(doubts.submerged),
    tanks: doubts.tanks.map(sharpen),
  };
}

/** How much broader an input was before the readings were: more than once only for those of the entry made of them. */
function broadening({ entryName, noun, sigma }: Input, entries: ReadonlySet<string>, source: BoatSource): number {
  const before = entries.has(entryName) ? believedOf(source)?.[noun as HiddenKey] : undefined;
  return Math.max(1, (before?.sigma ?? 0) / sigma);
}

interface Knowing {
  /** What each reading does answer to each input, in its own standard uncertainties. */
  readonly rows: readonly (readonly number[])[];
  readonly broad: readonly number[];
  readonly places: ReadonlyMap<string, number>;
}

/** The linear-Gaussian update of one figure; what its line bends is left in proportion. */
function sharpened(doubt: Doubt, { rows, broad, places }: Knowing): Doubt {
  const slope = broad.map(() => 0);
  for (const { input, change } of doubt.shares) {
    const k = places.get(input.id);
    if (k !== undefined) slope[k] = change * broad[k]!;
  }
  const straight = Math.hypot(...doubt.shares.map(({ change }) => change));
  // In the readings' own space: (I + A·Aᵀ)⁻¹·A·c by least squares on [Aᵀ; I].
  const seen = leastSquaresFrom(
    rows.map(() => 0),
    slope.map((_, k) => rows.map(row => row[k]!)),
    slope,
  );
  if (!seen || straight === 0) return doubt;
  const left = slope.map(
    (c, k) =>
      c -
      dot(
        seen.solution,
        rows.map(row => row[k]!),
      ),
  );
  const variance = Math.max(0, dot(slope, left));
  const shares = doubt.shares.map(({ input, change }) => {
    const k = places.get(input.id) ?? -1;
    return { input, change, share: Math.max(0, (slope[k] ?? 0) * (left[k] ?? 0)) };
  });
  const total = shares.reduce((sum, { share }) => sum + share, 0);
  return {
    ...doubt,
    sigma: doubt.sigma * (Math.sqrt(variance) / straight),
    shares: shares
      .map(({ share, ...rest }) => ({ ...rest, share: total > 0 ? share / total : 0 }))
      .sort((a, b) => b.share - a.share),
  };
}
