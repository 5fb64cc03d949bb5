import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { Boat } from '../../server/core/boat/boat.ts';
import type { Seeded } from '../helpers/seeded.ts';
import { type Calibration, hold } from './calibration.ts';
import {
  analyse,
  chanceAsItIs,
  firstCorrection,
  firstLesson,
  type Step,
  type Told,
  toldBy,
  withTrials,
} from './desk.ts';
import type { FamilyBoat } from './family.ts';
import { type Figure, type Floated, type Floater, isInTrim, isWorse, type Miss, missesOf, wayOut } from './figures.ts';
import { readInWater, weighOnScales } from './readings.ts';
import { follow, type Truth } from './truth.ts';

/** One time in the water, and what was done at the desk before it. */
export interface Try {
  /** The boat as it stood in the file then, and how the true one lay. */
  readonly filed: Boat;
  readonly floated: Floated;
  readonly misses: readonly Miss[];
  readonly correction: string | null;
  /** How likely all limits would be kept, as the program had it; null where it could not say. */
  readonly chance: number | null;
  /** The figures as they were told before it went into the water. */
  readonly told: ReadonlyMap<Figure, Told>;
  /** What the readings of it are put down to, as it is offered first. */
  readonly lesson: string | null;
  /** The correction made the true boat worse. */
  readonly madeWorse: boolean;
}

export interface Story {
  readonly tries: readonly Try[];
  /** The try at which it was in trim, from 1; null when it never was. */
  readonly inTrimAt: number | null;
  readonly wasWeighed: boolean;
  readonly calibration: readonly Calibration[];
  /** The file as it stood in the end. */
  readonly text: string;
}

export interface Means {
  readonly floater: Floater;
  readonly random: Seeded;
  readonly weighs: boolean;
  readonly mostTries: number;
  /** Whether figures are held against the truth too. */
  readonly calibrates: boolean;
}

/**
 * The builder by the book: takes the first correction at the desk, tries the boat, writes down what it shows, takes the
 * first correction again, which heeds what was read, and tries again until it is in trim. What the lessons offer to write
 * into the file he leaves: no figure waits for it.
 */
export function workByTheBook({ text: filed }: FamilyBoat, drawn: Truth, means: Means): Story {
  const { floater, random, weighs: wasWeighed } = means;
  let truth = drawn;
  let analysis = analyse(filed);
  if (wasWeighed) analysis = analyse(withTrials(analysis, [weighOnScales(truth.boat, random)]), analysis);
  const tries: Try[] = [];
  const calibration: Calibration[] = [];
  let out = wayOut(missesOf(floater(truth.boat), analysis.boat));
  for (;;) {
    const correction = firstCorrection(analysis);
    const chance = correction ? correction.chance : chanceAsItIs(analysis);
    if (correction) [analysis, truth] = done(correction, analysis, truth, random);
    const floated = floater(truth.boat);
    const filed = analysis.boat;
    const misses = missesOf(floated, filed);
    const before = out;
    out = wayOut(misses);
    const madeWorse = correction !== null && isWorse(before, out);
    const told = toldBy(analysis);
    const isLast = isInTrim(misses) || tries.length + 1 === means.mostTries;
    // Later on only boats would be left that are hard to trim.
    const calibrates = means.calibrates && tries.length === 0;
    if (calibrates) calibration.push(...hold('before any trial', analysis, floated));
    const entries = isLast && !calibrates ? [] : readInWater(floated, truth.boat, tries.length + 1, random);
    if (entries.length > 0) analysis = analyse(withTrials(analysis, entries), analysis);
    const lesson = entries.length > 0 ? firstLesson(analysis) : null;
    const [title, learned] = [correction?.title ?? null, lesson?.title ?? null];
    tries.push({ filed, floated, misses, correction: title, chance, told, lesson: learned, madeWorse });
    if (calibrates && entries.length > 0) {
      calibration.push(...hold('with trials', analysis, floated));
      if (lesson) calibration.push(...hold('after the offer', analyse(lesson.text, analysis), floated));
    }
    if (isLast || entries.length === 0) break;
  }
  const last = tries.at(-1);
  const inTrimAt = last && isInTrim(last.misses) ? tries.length : null;
  return { tries, inTrimAt, wasWeighed, calibration, text: analysis.syntax.text };
}

function done(
  { text }: Step,
  before: Analysis,
  truth: Truth,
  random: Seeded,
): readonly [analysis: Analysis, truth: Truth] {
  const after = analyse(text, before);
  return [after, follow(truth, before.boat, after.boat, random)];
}
