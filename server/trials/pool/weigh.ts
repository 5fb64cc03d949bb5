import type { Steps } from '../../steps.ts';
import { evidenceOf, judgeThings, logSum, type Narrowed, narrowed, withOpen } from '../estimation/hypothesis.ts';
import { type Known, knownWith, type Normal, type Space } from '../estimation/space.ts';
import type { Item, Load } from './causes.ts';

/** One explanation of the readings: none, one, or two causes; what it makes of the boat. */
export interface Explanation {
  readonly items: readonly Item[];
  readonly load: Load | null;
  /** Its part of all explanations, 0..1. */
  readonly odds: number;
  /** Inputs in their own standard uncertainties, then what readings of a day share; beside it the items' own, then the loads. */
  readonly known: Known;
  /** Facts of the weight. */
  readonly facts: Normal;
}

interface Candidate {
  readonly open: readonly number[];
  readonly load: Load | null;
  readonly logOdds: number;
  readonly narrow: Narrowed;
}

/** Beside the best, what is so many times less likely is not looked into (natural logarithm). */
const HOPELESS = 5;
/** So many are told at most. */
const MOST_TOLD = 24;
const PER_STEP = 10;

/** All explanations that count, the likeliest first. */
export function* weigh(
  space: Space,
  items: readonly Item[],
  loads: readonly Load[],
  places: readonly number[],
): Steps<readonly Explanation[]> {
  const single = (open: readonly number[]) => narrowed(space, open, places);
  const priorOf = (open: readonly number[]) => open.reduce((sum, k) => sum + items[k]!.logOdds, 0);
  const alone = (open: readonly number[]): Candidate => {
    const narrow = single(open);
    return { open, load: null, narrow, logOdds: priorOf(open) + narrow.logEvidence };
  };
  const laden = (open: readonly number[], narrow: Narrowed, load: Load): Candidate => ({
    open,
    load,
    narrow,
    logOdds: priorOf(open) + load.logOdds + evidenceOf(narrow, load.things),
  });
  const each = items.map((_, k) => alone([k]));
  const candidates: Candidate[] = [alone([]), ...each];
  for (const load of loads) candidates.push(laden([], candidates[0]!.narrow, load));
  yield;
  for (let a = 0; a < items.length; a++) {
    for (let b = 0; b < a; b++) if (!isSame(items[a]!, items[b]!)) candidates.push(alone([a, b]));
  }
  yield;
  for (const one of each) {
    for (const load of loads) if (load.cause.kind !== 'several') candidates.push(laden(one.open, one.narrow, load));
    if (candidates.length % PER_STEP === 0) yield;
  }
  const best = Math.max(...candidates.map(({ logOdds }) => logOdds));
  const told = candidates
    .filter(({ logOdds }) => logOdds > best - HOPELESS)
    .sort((a, b) => b.logOdds - a.logOdds)
    .slice(0, MOST_TOLD);
  const total = logSum(told.map(({ logOdds }) => logOdds));
  return told.map(({ open, load, logOdds, narrow }): Explanation => {
    const judged = load && judgeThings(narrow, load.things);
    const w = judged ? withOpen(space, open, places, judged.w) : withOpen(space, open, [], NOTHING);
    return {
      items: open.map(k => items[k]!),
      load,
      odds: Math.exp(logOdds - total),
      known: knownWith(space, judged ? [...open, ...places] : open, w),
      facts: judged?.facts ?? NOTHING,
    };
  });
}

const NOTHING: Normal = { mean: [], covariance: [] };

/** Of one reading or of one figure. */
const isSame = ({ cause: a }: Item, { cause: b }: Item): boolean =>
  a.kind === 'slip' ? b.kind === 'slip' && a.of === b.of : b.kind === 'elsewhere' && a.input === b.input;
