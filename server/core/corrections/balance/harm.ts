import type { BalancedFigure } from './row.ts';
import { explanationsOf, type LimitKept } from './sureness.ts';

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
const LOOKED_AT = Array.from({ length: 15 }, (_, i) => {
  const z = 0.4 * (i - 7);
  return { z, weight: Math.exp((-z * z) / 2) };
});

/** Further out than before by this much, in limits, and by this factor is worse: less than that nobody sees. */
const WORSE = { by: 0.5, times: 1.1 } as const;

/** A condition that the boat has no figures in counts as so many limits out. */
const LOST = 20;

/**
 * How likely a boat is further out of its limits after a correction than before it, 0..1, over all explanations of the trials:
 * what is left open of its weights stays the same, and is laid on the figures before and after alike.
 */
export function chanceOfHarm(before: readonly LimitKept[], after: readonly LimitKept[]): number {
  const [was, is] = [explanationsOf(before), explanationsOf(after)];
  // A boat that does not hang, and so has no figures there, is far out; there may be no more explanations than there are figures.
  if (was.length !== is.length) return harmBy(before, after);
  return is.reduce((sum, { odds, kept }, i) => sum + odds * harmBy(was[i]!.kept, kept), 0);
}

function harmBy(before: readonly LimitKept[], after: readonly LimitKept[]): number {
  const [was, is] = [squaresOut(before), squaresOut(after)];
  // A boat that does not hang, and so has no figures there, is far out.
  if (before.length < after.length) was.apart += LOST ** 2;
  let [harmed, all] = [0, 0];
  for (const [i, mass] of LOOKED_AT.entries()) {
    for (const [j, along] of LOOKED_AT.entries()) {
      for (const [k, across] of LOOKED_AT.entries()) {
        const weight = mass.weight * along.weight * across.weight;
        const [out, then] = [was, is].map(by => Math.sqrt(by.mass[i]! + by.along[j]! + by.across[k]! + by.apart)) as [
          number,
          number,
        ];
        all += weight;
        if (then > out + WORSE.by && then > WORSE.times * out) harmed += weight;
      }
    }
  }
  return harmed / all;
}

/**
 * How far a boat is out by every error that is looked at, squared and in limits, and by what none of them touches; what is
 * within does not count.
 */
function squaresOut(kept: readonly LimitKept[]): Record<Error, readonly number[]> & { apart: number } {
  const sum = (some: readonly LimitKept[], z: number): number =>
    some.reduce((total, each) => total + outBy(each, z) ** 2, 0);
  const by = (error: Error): readonly number[] => {
    const some = kept.filter(({ figure }) => ERRS[figure]?.[0] === error);
    return LOOKED_AT.map(({ z }) => sum(some, z));
  };
  const apart = kept.filter(({ figure }) => !ERRS[figure]);
  return { mass: by('mass'), along: by('along'), across: by('across'), apart: sum(apart, 0) };
}

/** How far one figure is out with an error of so many uncertainties, in limits. */
function outBy({ figure, off, limit, isLeast, open }: LimitKept, z: number): number {
  const really = off + (ERRS[figure]?.[1] ?? 0) * z * (open ?? 0);
  return Math.max(0, isLeast ? -really / limit : Math.abs(really) / limit - 1);
}
