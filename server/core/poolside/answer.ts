import { createDescriber } from '../../../schema/describe.ts';
import { analyse } from '../analysis/analyse.ts';
import type { Analysis } from '../analysis/analysis.ts';
import type { MeshLookup } from '../meshFiles/meshFile.ts';
import { inSteps, through, type Working } from '../steps/steps.ts';
import { type Advice, type Advised, adviseAtPool } from './advice.ts';
import { aboardWhenRead, type PoolDay, trialsOf } from './day.ts';
import { textOfDay } from './textOfDay.ts';
import { type PoolPictures, type PoolView, poolPictures, poolView, viewSteps } from './view.ts';

/** What is known of a day at the pool, the sooner first. */
export interface PoolAnswer {
  /** By the file, at once. */
  readonly view: PoolView;
  /** The same with the trials heard. */
  readonly settled: Working<PoolView>;
  /** What to put aboard; null before the first reading. */
  readonly advice: Working<DrawnAdvice | null>;
}

/** Advice, and the boat with all of it drawn in. */
export type DrawnAdvice = Advice & { readonly pictures: PoolPictures };

/** Answers, one day after the other, about the boat of a text. */
export function createPoolside(text: string, meshes: MeshLookup): (day: PoolDay) => PoolAnswer {
  const describer = createDescriber();
  let previous: Analysis | undefined;
  let advised: { readonly text: string; readonly analysis: Analysis; readonly found: Working<Advised> } | null = null;
  const analysed = (now: string): Analysis => {
    if (previous?.syntax.text !== now) previous = analyse(now, describer, previous, meshes);
    return previous;
  };
  /** What is to be put aboard goes by the boat that was read last: while it is being put aboard it stays the same. */
  const adviceFor = (day: PoolDay) => {
    const now = textOfDay(text, { ...day, aboard: aboardWhenRead(day) });
    if (advised?.text === now) return advised;
    const analysis = analysed(now);
    const found = inSteps(function* () {
      const { boatToTrim } = yield* through(analysis.settled);
      return yield* adviseAtPool(boatToTrim);
    });
    advised = { text: now, analysis, found };
    return advised;
  };
  return day => {
    // Before anything is read there is nothing to mend but the file.
    const advising = trialsOf(day).length === 0 ? null : adviceFor(day);
    const analysis = analysed(textOfDay(text, day));
    return {
      view: poolView(analysis, day),
      settled: inSteps(function* () {
        return yield* viewSteps(yield* through(analysis.settled), day);
      }),
      advice: inSteps(function* () {
        if (!advising) return null;
        const { advice, drawn } = yield* through(advising.found);
        return { ...advice, pictures: yield* poolPictures(advising.analysis.settled.all(), drawn) };
      }),
    };
  };
}
