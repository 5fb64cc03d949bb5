import type { Boat } from '../../server/core/boat/boat.ts';
import type { Seeded } from '../helpers/seeded.ts';
import { readText } from './arrange.ts';
import { bestAim, conditioned, type Point, shareWithin, weighed } from './conditioning.ts';
import type { FamilyBoat } from './family.ts';
import { type Figure, type Floated, floatByCode, missesOf } from './figures.ts';
import { type Shown, shownAfloat, shownHanging, shownOnScales } from './readings.ts';
import { drawTruth, follow, type Truth } from './truth.ts';
import type { Story } from './work.ts';

/*
 * What could be had: how often somebody would have the boat in trim who knows how such boats differ from their files, reads
 * what the builder reads, and can shift every figure as he likes, by lead without an end, laid without an error. He shifts
 * them to where most of the boats lie within their limits that the one before him may be. How stiff it is he has to take as
 * it comes, and that is taken for enough. Boats are drawn about the file, and what was done to the true one is done to them.
 */

/** Boats drawn about each file. */
const DRAWN = 100;

const AIMED: readonly Figure[] = ['draft', 'trim', 'heel', 'underTrim', 'underHeel'];

/** A boat that the one before him may be. */
interface Likely {
  readonly truth: Truth;
  /** What would have been read of it so far. */
  readonly shown: readonly Shown[];
}

/** The chance to be in trim at each of the first tries of a story, whatever was done before it. */
export function couldBeHad(
  family: FamilyBoat,
  { tries, wasWeighed }: Story,
  { boat }: Truth,
  random: Seeded,
  mostTries: number,
): readonly number[] {
  const weighed = (real: Boat): readonly Shown[] => (wasWeighed ? shownOnScales(real) : []);
  let filed = readText(family.text).boat;
  let read: readonly Shown[] = noisy(weighed(boat), random);
  let likely = Array.from({ length: DRAWN }, (): Likely => {
    const truth = drawTruth(family, random);
    return { truth, shown: weighed(truth.boat) };
  });
  return tries.slice(0, mostTries).map(({ filed: after, floated }) => {
    const there = likely.map(({ truth, shown }) => {
      const followed = follow(truth, filed, after, random);
      return { truth: followed, shown, floated: floatByCode(followed.boat) };
    });
    const chance = chanceFor(there, read, after, random);
    filed = after;
    const now = shownIn(floated, after);
    read = [...read, ...noisy(now, random)];
    // Boats that sink or cannot hang where the true one does not are not it.
    likely = there
      .map(one => ({ truth: one.truth, shown: [...one.shown, ...shownIn(one.floated, after)] }))
      .filter(({ shown }) => shown.length === read.length);
    return chance;
  });
}

const shownIn = ({ afloat, hanging }: Floated, { length }: Boat): readonly Shown[] => [
  ...(afloat ? shownAfloat(afloat, length) : []),
  ...(hanging ? shownHanging(hanging) : []),
];

const noisy = (shown: readonly Shown[], { normal }: Seeded): readonly Shown[] =>
  shown.map(({ value, sigma }) => ({ value: value + sigma * normal(), sigma }));

/** Something hidden or not: the two spread differently. */
const isAsFiled = ({ truth }: Likely): boolean => truth.hidden.length === 0;

function chanceFor(
  likely: readonly (Likely & { readonly floated: Floated })[],
  read: readonly Shown[],
  limits: Boat,
  random: Seeded,
): number {
  const moved = [true, false].flatMap(asFiled => {
    const some = likely
      .filter(one => isAsFiled(one) === asFiled)
      .flatMap(({ floated, shown }) => {
        const misses = missesOf(floated, limits);
        const at = AIMED.map(figure => misses.find(miss => miss.figure === figure)?.by ?? Number.NaN);
        return at.some(Number.isNaN) ? [] : [{ at, shown }];
      });
    return some.length < 2 ? [] : conditioned(some, read, random);
  });
  const points: readonly Point[] = weighed(moved);
  // What is aimed by some is counted over others.
  const [aimedBy, counted] = [0, 1].map(half => points.filter((_, i) => i % 2 === half)) as [Point[], Point[]];
  if (aimedBy.length === 0 || counted.length === 0) return 0;
  return shareWithin(counted, bestAim(aimedBy));
}
