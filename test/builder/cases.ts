import { seeded } from '../helpers/seeded.ts';
import { type FamilyBoat, familyBoat } from './family.ts';
import { workByFeel } from './feel.ts';
import { floatByCode } from './figures.ts';
import { floatPlainly } from './plainFloater.ts';
import { couldBeHad } from './possible.ts';
import { canBeTrimmed } from './told.ts';
import { drawTruth, type Truth } from './truth.ts';
import { type Story, workByTheBook } from './work.ts';

/** One true boat, and what became of it in the hands of either builder. */
export interface Case {
  readonly boat: FamilyBoat;
  readonly truth: Truth;
  /** The true boat is floated by other means than the code under test. */
  readonly isPlain: boolean;
  readonly story: Story;
  readonly feltAt: number | null;
  /** Somebody who knows the truth could trim it, or somebody did. */
  readonly isTrimmable: boolean;
  /** The chance at each of the first tries to have it in trim, by what was read before; empty where that was not asked. */
  readonly couldBe: readonly number[];
}

export interface Wanted {
  /** Limits twice as wide. */
  readonly isWide: boolean;
  readonly mostTries: number;
  /** Whether figures are held against the truth too. */
  readonly calibrates: boolean;
  /** Whether it is asked what could be had. */
  readonly bounds: boolean;
}

const FEELS = 12;
/** What could be had is asked for so many tries. */
const TRIES_BOUND = 3;

/** The case of a seed: the same boat, the same truth and the same errors, whatever the code under test does. */
export function caseOf(seed: number, wanted: Wanted): Case {
  try {
    return playedCase(seed, wanted);
  } catch (cause) {
    throw new Error(`the builder of boat ${seed} could not go on`, { cause });
  }
}

function playedCase(seed: number, { isWide, mostTries, calibrates, bounds }: Wanted): Case {
  const boat = familyBoat(seed, isWide);
  const truth = drawTruth(boat, stream(seed, 1));
  const isPlain = seed % 2 === 1;
  const floater = isPlain ? floatPlainly : floatByCode;
  const weighs = Math.floor(seed / 2) % 2 === 1;
  const story = workByTheBook(boat, truth, { floater, random: stream(seed, 2), weighs, mostTries, calibrates });
  const feltAt = workByFeel(boat, truth, { floater: floatByCode, random: stream(seed, 3), mostTries: FEELS });
  const isTrimmable = story.inTrimAt !== null || canBeTrimmed(truth.boat, floater);
  const couldBe = bounds ? couldBeHad(boat, story, truth, stream(seed, 4), TRIES_BOUND) : [];
  return { boat, truth, isPlain, story, feltAt, isTrimmable, couldBe };
}

const stream = (seed: number, which: number) => seeded(Math.imul(seed * 8 + which, 0x85ebca6b));
