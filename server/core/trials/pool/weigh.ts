import { pacer, type Steps } from '../../steps/steps.ts';
import {
  evidenceOf,
  evidenceOfPair,
  judgeThings,
  mostEvidence,
  type Narrowed,
  narrowed,
  withOpen,
} from '../estimation/hypothesis.ts';
import { logSum } from '../estimation/mixture.ts';
import { type Known, knownWith, misfit, type Normal, type Space, strayed } from '../estimation/space.ts';
import { causesKey, type Item, type Load } from './causes.ts';

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
/** So many causes by themselves, or pairs, are looked at in one step. */
const STEP = 50;
/** So many are told at most. */
const MOST_TOLD = 24;

/** Every explanation with its odds, likeliest first; each is worked out when it is asked for. */
export interface Ranked {
  readonly count: number;
  /** The rank of the likeliest that says what is wrong; behind all others where it hardly counts. */
  readonly named: number;
  explanation(rank: number): Explanation;
  /** The rank of what says the same as another, by other straight lines; null where it hardly counts. */
  rankOf(other: Pick<Explanation, 'items' | 'load'>): number | null;
  /** Natural logarithm of the odds of the likeliest that says what is wrong, to be held against those by other straight lines. */
  readonly logOdds: number;
}

/** All explanations that count. `places` are the columns of the loads in the space. */
export function* weigh(
  space: Space,
  items: readonly Item[],
  loads: readonly Load[],
  places: readonly number[],
): Steps<Ranked> {
  const ground: Ground = { space, items, places };
  const isDue = pacer(STEP);
  const none = alone(ground, []);
  const each: Candidate[] = [];
  for (const k of items.keys()) {
    each.push(alone(ground, [k]));
    if (isDue(1)) yield;
  }
  const single = [none, ...each];
  for (const load of loads) {
    yield;
    single.push(laden(ground, none, load));
  }
  const best = highest(single);
  let isEnough = false;
  for (const one of single) {
    if (one.logOdds <= best - HOPELESS) continue;
    yield;
    isEnough = explains(ground, one);
    if (isEnough) break;
  }
  const candidates = isEnough ? single : [...single, ...(yield* pairs(ground, each, loads, best))];
  const least = highest(candidates) - HOPELESS;
  const sorted = candidates.sort((a, b) => b.logOdds - a.logOdds);
  const likely = sorted.filter(({ logOdds }) => logOdds > least).slice(0, MOST_TOLD);
  const told = likely.some(isNamed) ? likely : [...likely, ...sorted.filter(isNamed).slice(0, 1)];
  const total = logSum(likely.map(({ logOdds }) => logOdds));
  const named = told.findIndex(isNamed);
  return {
    count: likely.length,
    named,
    logOdds: told[named]?.logOdds ?? Number.NEGATIVE_INFINITY,
    rankOf: other => {
      const key = keyOf(other);
      const rank = told.findIndex(({ open, load }) => keyOf({ items: open.map(k => items[k]!), load }) === key);
      return rank < 0 ? null : rank;
    },
    explanation: rank => {
      const { open, load, logOdds } = told[rank]!;
      const { at, w, facts } = judged(ground, told[rank]!);
      return {
        items: open.map(k => items[k]!),
        load,
        odds: Math.exp(logOdds - total),
        known: knownWith(space, at, w),
        facts,
      };
    },
  };
}

/** What all candidates have in common. */
interface Ground {
  readonly space: Space;
  readonly items: readonly Item[];
  readonly places: readonly number[];
}

const priorOf = ({ items }: Ground, open: readonly number[]): number =>
  open.reduce((sum, k) => sum + items[k]!.logOdds, 0);

function alone(ground: Ground, open: readonly number[]): Candidate {
  const narrow = narrowed(ground.space, open, ground.places);
  return { open, load: null, narrow, logOdds: priorOf(ground, open) + narrow.logEvidence };
}

const laden = (ground: Ground, { open, narrow }: Candidate, load: Load): Candidate => ({
  open,
  load,
  narrow,
  logOdds: priorOf(ground, open) + load.logOdds + evidenceOf(narrow, load.things),
});

/** Two causes together. `best` is the logarithm of the odds of the best single one. */
function* pairs(
  ground: Ground,
  each: readonly Candidate[],
  loads: readonly Load[],
  best: number,
): Steps<readonly Candidate[]> {
  const { items, space } = ground;
  const found: Candidate[] = [];
  let most = best;
  let highestPair = Number.NEGATIVE_INFINITY;
  const isDue = pacer(STEP);
  for (const [a, one] of items.entries()) {
    for (let b = 0; b < a; b++) {
      const logOdds = one.logOdds + items[b]!.logOdds + evidenceOfPair(space, a, b);
      // The likeliest pair is kept, however hopeless.
      if (logOdds < most - HOPELESS && logOdds <= highestPair) continue;
      highestPair = Math.max(highestPair, logOdds);
      most = Math.max(most, logOdds);
      found.push(alone(ground, [a, b]));
      if (isDue(1)) yield;
    }
    yield;
  }
  // What may be likeliest first: the rest is then soon hopeless.
  const reaching = each
    .map(one => ({ one, reach: priorOf(ground, one.open) + mostEvidence(one.narrow) }))
    .sort((a, b) => b.reach - a.reach);
  for (const { one, reach } of reaching) {
    for (const load of loads) {
      if (!isNamed({ load }) || reach + load.logOdds < most - HOPELESS) continue;
      const both = laden(ground, one, load);
      most = Math.max(most, both.logOdds);
      found.push(both);
      yield;
    }
  }
  return found;
}

const isNamed = ({ load }: Pick<Candidate, 'load'>): boolean => load?.cause.kind !== 'several';

const highest = (candidates: readonly Candidate[]): number =>
  candidates.reduce((most, { logOdds }) => Math.max(most, logOdds), Number.NEGATIVE_INFINITY);

/** All that is open of a candidate by the readings: its items, then its loads. */
function judged({ space, places }: Ground, { open, narrow, load }: Candidate) {
  const thing = load && judgeThings(narrow, load.things);
  return {
    at: thing ? [...open, ...places] : open,
    w: thing ? withOpen(space, open, places, thing.w) : withOpen(space, open, [], NOTHING),
    facts: thing?.facts ?? NOTHING,
  };
}

/** With it the readings are no further off than chance often has them, nor is any one of them: nothing more is looked for. */
function explains(ground: Ground, candidate: Candidate): boolean {
  if (!isNamed(candidate)) return false;
  const { at, w } = judged(ground, candidate);
  const count = ground.space.white.rest.length;
  if (misfit(ground.space, at, w.mean) > count + DEVIATIONS * Math.sqrt(2 * count)) return false;
  return ground.items.every(
    ({ cause }, k) => cause.kind !== 'slip' || strayed(ground.space, k, at, w.mean) < MOST_STRAYED,
  );
}

/** So many standard deviations of chi-square above its mean. */
const DEVIATIONS = 2;
/** Of one reading by chance alone once in a thousand. */
const MOST_STRAYED = 3.29;

const NOTHING: Normal = { mean: [], covariance: [] };

/** What is said to be wrong, whatever it comes to. */
const keyOf = ({ items, load }: Pick<Explanation, 'items' | 'load'>): string =>
  causesKey([...items.map(({ cause }) => cause), ...(load ? [load.cause] : [])]);
