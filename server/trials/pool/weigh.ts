import type { Steps } from '../../steps.ts';
import { evidenceOf, judgeThings, logSum, mostEvidence, type Narrowed, narrowed, withOpen } from '../estimation/hypothesis.ts';
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

/** Every explanation with its odds, likeliest first; each is worked out when it is asked for. */
export interface Ranked {
  readonly count: number;
  explanation(rank: number): Explanation;
}

/** All explanations that count; null where there is none. `places` are the columns of the loads in the space. */
export function* weigh(
  space: Space,
  items: readonly Item[],
  loads: readonly Load[],
  places: readonly number[],
): Steps<Ranked> {
  const priorOf = (open: readonly number[]) => open.reduce((sum, k) => sum + items[k]!.logOdds, 0);
  const alone = (open: readonly number[]): Candidate => {
    const narrow = narrowed(space, open, places);
    return { open, load: null, narrow, logOdds: priorOf(open) + narrow.logEvidence };
  };
  const laden = ({ open, narrow }: Candidate, load: Load): Candidate => ({
    open,
    load,
    narrow,
    logOdds: priorOf(open) + load.logOdds + evidenceOf(narrow, load.things),
  });
  const none = alone([]);
  const each = items.map((_, k) => alone([k]));
  const candidates: Candidate[] = [none, ...each, ...loads.map(load => laden(none, load))];
  yield;
  for (let a = 0; a < items.length; a++) {
    for (let b = 0; b < a; b++) if (!isSame(items[a]!, items[b]!)) candidates.push(alone([a, b]));
  }
  yield;
  let best = Math.max(...candidates.map(({ logOdds }) => logOdds));
  for (const one of each) {
    const most = priorOf(one.open) + mostEvidence(one.narrow);
    for (const load of loads) {
      if (load.cause.kind === 'several' || most + load.logOdds < best - HOPELESS) continue;
      const both = laden(one, load);
      best = Math.max(best, both.logOdds);
      candidates.push(both);
      yield;
    }
  }
  const told = candidates
    .filter(({ logOdds }) => logOdds > best - HOPELESS)
    .sort((a, b) => b.logOdds - a.logOdds)
    .slice(0, MOST_TOLD);
  const total = logSum(told.map(({ logOdds }) => logOdds));
  const explanation = ({ open, load, logOdds, narrow }: Candidate): Explanation => {
    const judged = load && judgeThings(narrow, load.things);
    const w = judged ? withOpen(space, open, places, judged.w) : withOpen(space, open, [], NOTHING);
    return {
      items: open.map(k => items[k]!),
      load,
      odds: Math.exp(logOdds - total),
      known: knownWith(space, judged ? [...open, ...places] : open, w),
      facts: judged?.facts ?? NOTHING,
    };
  };
  return { count: told.length, explanation: rank => explanation(told[rank]!) };
}

const NOTHING: Normal = { mean: [], covariance: [] };

/** Of one reading or of one figure. */
const isSame = ({ cause: a }: Item, { cause: b }: Item): boolean =>
  a.kind === 'slip' ? b.kind === 'slip' && a.of === b.of : b.kind === 'elsewhere' && a.input === b.input;
