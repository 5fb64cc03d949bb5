import type { BalancedFigure } from './row.ts';
import type { LimitKept } from './sureness.ts';

/** What figures err together by: a weight too much or too little, its moment along the boat, and athwart. */
type Error = 'mass' | 'along' | 'across';

/** The same weight that puts a boat deeper leaves its tanks emptier. */
const ERRS: Readonly<Partial<Record<BalancedFigure, readonly [by: Error, way: 1 | -1]>>> = {
  draft: ['mass', 1],
  fill: ['mass', -1],
  trim: ['along', 1],
  heel: ['across', 1],
};

/** Errors that are looked at, in their standard uncertainties, and how likely each is beside the others. */
const LOOKED_AT = [-2.4, -1.6, -0.8, 0, 0.8, 1.6, 2.4].map(z => ({ z, weight: Math.exp((-z * z) / 2) }));

/** Further out than before by this much, in limits, and by this factor is worse: less than that nobody sees. */
const WORSE = { by: 0.5, times: 1.1 } as const;

/** A condition that the boat has no figures in counts as so many limits out. */
const LOST = 20;

/**
 * How likely a boat is further out of its limits after a correction than before it, 0..1: what is left open of its weights
 * stays the same, and is laid on the figures before and after alike.
 */
export function chanceOfHarm(before: readonly LimitKept[], after: readonly LimitKept[]): number {
  // A boat that does not hang, and so has no figures there, is far out.
  const lost = before.length < after.length ? LOST : 0;
  let [harmed, all] = [0, 0];
  for (const mass of LOOKED_AT) {
    for (const along of LOOKED_AT) {
      for (const across of LOOKED_AT) {
        const errors = { mass: mass.z, along: along.z, across: across.z };
        const weight = mass.weight * along.weight * across.weight;
        const [was, is] = [Math.hypot(outBy(before, errors), lost), outBy(after, errors)];
        all += weight;
        if (is > was + WORSE.by && is > WORSE.times * was) harmed += weight;
      }
    }
  }
  return harmed / all;
}

/** How far it is out altogether, in limits; what is within does not count. */
const outBy = (kept: readonly LimitKept[], errors: Readonly<Record<Error, number>>): number =>
  Math.hypot(
    ...kept.map(({ figure, off, limit, isLeast, open }) => {
      const errs = ERRS[figure];
      const really = off + (errs ? errs[1] * errors[errs[0]] * (open ?? 0) : 0);
      return Math.max(0, isLeast ? -really / limit : Math.abs(really) / limit - 1);
    }),
  );
