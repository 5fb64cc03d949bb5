import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { Seeded } from '../helpers/seeded.ts';
import { type Calibration, hold, type Stage } from './calibration.ts';
import { analyse, firstCorrection, firstLesson, knowsBench, type Step, withTrials } from './desk.ts';
import type { FamilyBoat } from './family.ts';
import { type Floated, type Floater, isInTrim, isWorse, type Miss, missesOf, wayOut } from './figures.ts';
import { readInWater, weighOnScales } from './readings.ts';
import { follow, type Truth } from './truth.ts';

/** One time in the water, and what was done at the desk before it. */
interface Try {
  readonly misses: readonly Miss[];
  readonly lesson: string | null;
  readonly correction: string | null;
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
 * first lesson and the first correction as they are offered, and tries again until it is in trim.
 */
export function workByTheBook({ text: filed }: FamilyBoat, drawn: Truth, means: Means): Story {
  const { floater, random } = means;
  let truth = drawn;
  let analysis = analyse(filed);
  const wasWeighed = means.weighs && knowsBench;
  if (wasWeighed) analysis = analyse(withTrials(analysis, [weighOnScales(truth.boat, random)]), analysis);
  const tries: Try[] = [];
  const calibration: Calibration[] = [];
  // Later on only boats would be left that are hard to trim.
  const check = (stage: Stage, floated: Floated) => {
    if (means.calibrates && tries.length === 1) calibration.push(...hold(stage, analysis, floated));
  };
  let floated = floater(truth.boat);
  let out = wayOut(missesOf(floated, analysis.boat));
  let lesson = wasWeighed ? firstLesson(analysis) : null;
  if (lesson) analysis = analyse(lesson.text, analysis);
  while (tries.length < means.mostTries) {
    const correction = firstCorrection(analysis);
    if (correction) [analysis, truth] = done(correction, analysis, truth, random);
    floated = floater(truth.boat);
    const misses = missesOf(floated, analysis.boat);
    const before = out;
    out = wayOut(misses);
    const madeWorse = correction !== null && isWorse(before, out);
    tries.push({ misses, lesson: lesson?.title ?? null, correction: correction?.title ?? null, madeWorse });
    check('before any trial', floated);
    const isDone = isInTrim(misses) || tries.length === means.mostTries;
    if (isDone && !(means.calibrates && tries.length === 1)) break;
    const entries = readInWater(floated, truth.boat, tries.length, random);
    if (entries.length === 0) break;
    analysis = analyse(withTrials(analysis, entries), analysis);
    check('with trials', floated);
    lesson = firstLesson(analysis);
    if (lesson) {
      analysis = analyse(lesson.text, analysis);
      check('after the offer', floated);
    }
    if (isDone) break;
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
