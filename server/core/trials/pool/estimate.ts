import type { Reading } from '../../boat/trial.ts';
import type { Steps } from '../../steps/steps.ts';
import { innerProduct } from '../estimation/leastSquares.ts';
import { spaceOf } from '../estimation/space.ts';
import { itemsOf, loadsOf } from './causes.ts';
import { AS_FILED, type Foretold, foretell, type Supposed, type WaterPlace } from './foretold.ts';
import type { ExtraLoad } from './predict.ts';
import { LOADS, sigmaOf, straightOf } from './straight.ts';
import { supposedBy } from './suppose.ts';
import type { TrialSet } from './trialSet.ts';
import { type Explanation, type Ranked, weigh } from './weigh.ts';

/** What the readings of all trials say of the boat: every explanation that counts. */
export interface Estimate {
  /** Likeliest first; their odds add up to 1. */
  readonly explanations: readonly Explanation[];
  /** The boat about which the straight lines were taken, near that of the likeliest explanation. */
  readonly about: Supposed;
  readonly foretold: Foretold;
}

/** Rounds until the straight lines are taken where the readings have the boat. */
const MOST_ROUNDS = 6;
/** Readings that are foretold as near as this again, in their own uncertainties, are the same. */
const SETTLED = 0.3;

/**
 * All readings in one estimate over what may be wrong. Explanations that the readings bear out have the boat lie in every
 * trial as it was read to lie, whatever they put it down to: so straight lines about one such boat do for all of them, and of
 * those the sum over everything that is open is exact (MacKay, Information Theory, Inference, and Learning Algorithms,
 * ch. 28; Kass & Raftery, J. Am. Stat. Assoc. 90 (1995); from memory). The boat is found by Gauss and Newton's method, the
 * full model asked anew in every round.
 */
export function* estimateBoat(trialSet: TrialSet): Steps<Estimate | null> {
  const first = yield* linesAbout(trialSet, AS_FILED);
  if (!first || first.foretold.readings.length === 0) return null;
  const found = yield* followed(trialSet, first, () => 0);
  if (!found) return null;
  if (found.ranked.named === 0) return yield* estimateOf(yield* likelierElsewhere(trialSet, found));
  // What can be named may have the boat lie where the readings, one of them a slip, do not: far off straight lines mislead.
  const named = yield* followed(trialSet, first, ({ named }) => named);
  return yield* estimateOf(named && named.ranked.named === 0 ? named : found);
}

/** By straight lines a boat that shows another reading by so many of its uncertainties lies where they may not hold. */
const FAR = 5;
/** So many of those are followed to where they have the boat. */
const MOST_FAR = 3;

/**
 * An explanation by which the boat lies elsewhere than by the likeliest (one of them calls a slip what the other believes) is
 * judged by straight lines about its own boat too: where one is likelier there than the likeliest is by its own, that is the one.
 */
function* likelierElsewhere(trialSet: TrialSet, found: Found): Steps<Found> {
  for (const explanation of farFrom(found)) {
    const other = yield* followed(trialSet, found.lines, ranked => ranked.rankOf(explanation) ?? ranked.named);
    if (other && other.ranked.named === 0 && other.ranked.logOdds > found.ranked.logOdds) return other;
  }
  return found;
}

function farFrom({ lines, ranked }: Found): readonly Explanation[] {
  const { foretold, about } = lines;
  const all = Array.from({ length: ranked.count }, (_, rank) => ranked.explanation(rank));
  return all
    .filter(({ load }) => load?.cause.kind !== 'several')
    .filter(explanation => shiftBetween(foretold, about, supposedBy(explanation, foretold.inputs)) > FAR)
    .slice(0, MOST_FAR);
}

interface Found {
  readonly lines: Lines;
  readonly ranked: Ranked;
}

/** Explanations by lines about the boat of the one that is chosen of them, once that no longer changes. */
function* followed(trialSet: TrialSet, start: Lines, choose: (ranked: Ranked) => number): Steps<Found | null> {
  let lines = start;
  // Ends: the last of MOST_ROUNDS returns.
  for (let round = 1; ; round++) {
    const { about, foretold } = lines;
    const ranked = yield* explain(trialSet, about, foretold);
    if (!ranked) return null;
    const explanation = ranked.explanation(choose(ranked));
    const boat = supposedBy(explanation, foretold.inputs);
    yield;
    const isDone = round >= MOST_ROUNDS || isSettled(foretold, about, boat);
    const next: Lines | null = isDone ? null : yield* linesNear(trialSet, lines, boat, slipsIn(explanation));
    if (!next) return { lines, ranked };
    lines = next;
  }
}

function* estimateOf({ lines: { about, foretold }, ranked: { count, explanation } }: Found): Steps<Estimate> {
  const explanations: Explanation[] = [];
  for (let rank = 0; rank < count; rank++) {
    explanations.push(explanation(rank));
    yield;
  }
  return { explanations, about, foretold };
}

interface Lines {
  readonly about: Supposed;
  readonly foretold: Foretold;
}

function* explain(trialSet: TrialSet, about: Supposed, foretold: Foretold): Steps<Ranked | null> {
  const { source } = trialSet;
  const items = yield* itemsOf(trialSet, foretold);
  const places = Array.from({ length: LOADS }, (_, k) => items.length + k);
  yield;
  const straight = straightOf(
    foretold,
    about,
    items.map(({ column }) => column),
  );
  yield;
  const space = yield* spaceOf(straight);
  return space && (yield* weigh(space, items, loadsOf(source, foretold), places));
}

/** By the straight lines the boat shows the same as the one that they were taken about. */
const isSettled = (foretold: Foretold, about: Supposed, boat: Supposed): boolean =>
  shiftBetween(foretold, about, boat) < SETTLED;

/** By how much a boat shows any reading otherwise than the one that straight lines were taken about, in uncertainties of it. */
function shiftBetween({ readings, inputs, slopes, loads }: Foretold, about: Supposed, boat: Supposed): number {
  const by = inputs.map(({ id }) => (boat.off.get(id) ?? 0) - (about.off.get(id) ?? 0));
  return readings.reduce((most, { reading, trial, place }, i) => {
    const push = boat.loads[place].map((part, k) => part - about.loads[place][k]!);
    const shift = innerProduct(slopes[i]!, by) + innerProduct(loads[i]!, push);
    return Math.max(most, Math.abs(shift) / sigmaOf(reading, trial));
  }, 0);
}

function* linesAbout(trialSet: TrialSet, about: Supposed): Steps<Lines | null> {
  const foretold = yield* foretell(trialSet, about);
  return foretold && { about, foretold };
}

/**
 * Straight lines about a boat; where it would not lie so, or by the full model is further from the readings than the one before,
 * about one half the way to it, and so on.
 */
function* linesNear(trialSet: TrialSet, from: Lines, to: Supposed, slips: Slips): Steps<Lines | null> {
  const most = Math.max(missed(from, slips), NEAR * from.foretold.readings.length);
  let about = to;
  let nearest: Lines | null = null;
  for (let tries = 0; tries < MOST_HALVINGS; tries++) {
    const lines = yield* linesAbout(trialSet, about);
    if (lines && missed(lines, slips) <= most) return lines;
    if (lines && (!nearest || missed(lines, slips) < missed(nearest, slips))) nearest = lines;
    about = halfway(from.about, about);
  }
  return nearest;
}

/** By how much readings are slips, SI. */
type Slips = ReadonlyMap<Reading, number>;

const slipsIn = ({ items, known }: Explanation): Slips =>
  new Map(
    items.flatMap(({ cause, size }, n) =>
      cause.kind === 'slip' ? [[cause.of.reading, size * known.w.mean[n]!] as const] : [],
    ),
  );

/** Of each reading so far, in squares of its own uncertainty, is near enough. */
const NEAR = 4;

/** How far the readings are from what is foretold, in those squares. */
const missed = ({ foretold: { readings, values } }: Lines, slips: Slips): number =>
  readings.reduce(
    (sum, { reading, trial }, i) =>
      sum + ((reading.value - (slips.get(reading) ?? 0) - values[i]!) / sigmaOf(reading, trial)) ** 2,
    0,
  );

const MOST_HALVINGS = 4;

function halfway(from: Supposed, to: Supposed): Supposed {
  const mean = (place: WaterPlace): ExtraLoad => {
    const [a, b] = [from.loads[place], to.loads[place]];
    return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2, (a[3] + b[3]) / 2];
  };
  return {
    off: new Map([...to.off].map(([id, by]) => [id, (by + (from.off.get(id) ?? 0)) / 2])),
    loads: { afloat: mean('afloat'), under: mean('under'), ashore: mean('ashore') },
  };
}
