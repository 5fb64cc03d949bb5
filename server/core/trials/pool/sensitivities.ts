import { hullTop } from '../../boat/checkTrials.ts';
import type { FreeboardReading, Trial } from '../../boat/trial.ts';
import { assembleBodies, type Bodies, emptyCache } from '../../bodies/assemble.ts';
import type { StateFigure as Figure } from '../../conditions/readings.ts';
import { addScaled, type Vec3 } from '../../geometry/form/vector.ts';
import type { Steps } from '../../steps/steps.ts';
import type { FloatedBoat } from '../../uncertainty/floatBoat.ts';
import type { Owner } from '../../uncertainty/owner.ts';
import { changesBy, residualLoadSteps } from '../../uncertainty/residualLoads.ts';
import { withInputs } from '../../uncertainty/withInputs.ts';
import type { Day, DayInput } from './day.ts';
import { floatForTrial } from './floatTrial.ts';
import { type FloatedTrial, figureOf } from './predict.ts';

/** For each reading, what each of several causes does to it, SI. */
type Slopes = readonly (readonly number[])[];

/** How the readings of a day answer. */
export interface Answers {
  /** To one standard uncertainty of each input of the day. */
  readonly slopes: Slopes;
  /** To a kilogram at the origin, and to a moment of one kilogram-metre aft, to starboard and up. */
  readonly loads: Slopes;
  /** Those before any shift, and after the reading's own. */
  readonly loadsAtRest: Slopes;
  readonly loadsShifted: readonly (readonly number[] | null)[];
}

interface AnsweredReading {
  readonly slopes: readonly number[];
  readonly loads: readonly number[];
  readonly shifted: readonly number[] | null;
}

/**
 * Slopes of a day's readings by its inputs. What an input does to a boat held in place is a weight too much and its
 * moment; what the boat does under those, four numbers however many inputs there are, is found by laying it again.
 */
export function* answerSteps(day: Day, floatedTrial: FloatedTrial, caches: Caches, known?: Answers): Steps<Answers> {
  const { trial, source } = day;
  const figures = trial.readings.map(reading => figureOf(reading, source.boat) ?? nothing);
  const rest = yield* answersAt(day, floatedTrial.rest, figures, caches, known?.loadsAtRest);
  const rows: AnsweredReading[] = [];
  for (const [i, reading] of trial.readings.entries()) {
    const own = { slopes: rest.slopes[i]!, loads: rest.loads[i]!, shifted: null };
    if (reading.of === 'freeboard') {
      rows.push({ ...own, slopes: plus(own.slopes, topChanges(day, reading)) });
      continue;
    }
    const over = reading.of === 'tilt' ? floatedTrial.shifted[reading.shift] : null;
    if (!over) {
      rows.push(own);
      continue;
    }
    const kept = known?.loadsShifted[i];
    const after = yield* answersAt(day, over, [figures[i]!], caches, kept ? [kept] : undefined);
    const shifted = after.loads[0]!;
    rows.push({ slopes: less(after.slopes[0]!, own.slopes), loads: less(shifted, own.loads), shifted });
  }
  const answers: Answers = {
    slopes: rows.map(({ slopes }) => slopes),
    loads: rows.map(({ loads }) => loads),
    loadsAtRest: rest.loads,
    loadsShifted: rows.map(({ shifted }) => shifted),
  };
  return trial.proud ? withScope(answers, day, floatedTrial.rest, figures, trial.proud.value) : answers;
}

const plus = (a: readonly number[], b: readonly number[]): readonly number[] => a.map((x, i) => x + b[i]!);
const less = (a: readonly number[], b: readonly number[]): readonly number[] => a.map((x, i) => x - b[i]!);

/** What was made of entries before. */
export type Caches = Pick<Owner, 'cache' | 'variations'>;

const nothing: Figure = () => 0;

function* answersAt(
  { source, inputs, trial }: Day,
  floated: FloatedBoat,
  figures: readonly Figure[],
  caches: Caches,
  known?: Slopes,
): Steps<Pick<Answers, 'slopes' | 'loads'>> {
  // What was made for the list before is found by the list itself, and for an input by the input.
  const isPlain = inputs.every(input => stepOf(input) === 1);
  const tried = isPlain
    ? inputs
    : inputs.map(input => (stepOf(input) === 1 ? input : { ...input, sigma: stepOf(input) * input.sigma }));
  const pushed = yield* residualLoadSteps({ source, ...caches }, tried, floated, figures);
  yield;
  const loads = known ?? loadsOf(figures, floated, trial);
  yield;
  const slopes = figures.map((_, i) => {
    const changes = Array.from(changesBy(pushed, i, loads[i]!));
    return isPlain ? changes : changes.map((change, k) => change / stepOf(inputs[k]!));
  });
  return { slopes, loads };
}

/**
 * How far the slope is taken, in uncertainties of the input. Of a broad one half of it: by a finer step a thing that lies just at
 * the surface would seem known to the millimetre, for there a little higher or lower means much. A volume stays positive.
 */
const stepOf = ({ isBroad, dimension }: DayInput): number => (!isBroad ? 1 : dimension === 'volume' ? STEP : 0.5);
const STEP = 1e-3;

/** Loads that are tried, as shares of the boat's mass and of its length: enough to be felt, too little to bend. */
const TRIED = { mass: 1e-4, fore: 1e-5, athwart: 1e-6, up: 1e-5 } as const;

/** Changes of all figures for a kilogram, and for a moment of a kilogram-metre along each axis. */
function loadsOf(figures: readonly Figure[], floated: FloatedBoat, trial: Trial): Slopes {
  const { bodies } = floated.arrangement;
  const [fore, aft] = bodies.hull.extent([1, 0, 0]);
  const size = bodies.mass * (aft - fore);
  const answer = (mass: number, moment: Vec3, load: number): readonly number[] => {
    const at = (share: 1 | -1): readonly number[] | null => {
      const laden: Bodies = {
        ...bodies,
        mass: bodies.mass + share * mass,
        massMoment: addScaled(bodies.massMoment, moment, share),
      };
      const again = floatForTrial(laden, trial, floated.floating);
      return again && figures.map(figure => figure(again.floating));
    };
    const [more, less] = [at(1), at(-1)];
    return figures.map((_, i) => (more && less ? (more[i]! - less[i]!) / (2 * load) : 0));
  };
  const [mass, x, y, z] = [TRIED.mass * bodies.mass, TRIED.fore * size, TRIED.athwart * size, TRIED.up * size];
  const tried = [
    answer(mass, [0, 0, 0], mass),
    answer(0, [x, 0, 0], x),
    answer(0, [0, y, 0], y),
    answer(0, [0, 0, z], z),
  ];
  return figures.map((_, i) => tried.map(changes => changes[i]!));
}

/** What each input does to the top of the hull that a freeboard was read to, m. */
function topChanges({ source, inputs }: Day, { station, top }: FreeboardReading): readonly number[] {
  return inputs.map(input => {
    const { target, value, sigma } = input;
    if (target.on !== 'entries' || !target.at.some(({ list }) => list === 'shells' || list === 'compartments'))
      return 0;
    const topAt = (to: number) => hullTop(withInputs(source, new Map([[input, to]])), station, top);
    const [high, low] = [topAt(value + sigma), topAt(value - sigma)];
    return high === null || low === null ? 0 : (high - low) / 2;
  });
}

/** How much more of the scope is tried, m. */
const MORE_PROUD = 1e-4;

/**
 * With something proud of the water it counts besides where that ends: a scope that is taller by so much sinks the rest by
 * as much less as if so much less of it had been left out.
 */
function withScope(
  answers: Answers,
  day: Day,
  floated: FloatedBoat,
  figures: readonly Figure[],
  proud: number,
): Answers {
  const { bodies } = floated.arrangement;
  const { up } = floated.floating.state;
  const shown = (by: number) => {
    const measured = { ...day.trial.proud!, value: proud + by };
    const again = floatForTrial(bodies, { ...day.trial, proud: measured }, floated.floating);
    return figures.map(figure => (again ? figure(again.floating) : 0));
  };
  const [more, fewer] = [shown(MORE_PROUD), shown(-MORE_PROUD)];
  const highest = bodies.hull.extent(up)[1];
  const scope = bodies.displacers.find(({ body }) => body.extent(up)[1] >= highest - MORE_PROUD);
  const rises = day.inputs.map(input => {
    const { target, value, sigma } = input;
    const isOfScope =
      target.on === 'entries' && target.at.some(({ list, index }) => day.source.boat[list][index] === scope?.entry);
    if (!isOfScope) return 0;
    const topAt = (to: number) =>
      assembleBodies(withInputs(day.source, new Map([[input, to]])), emptyCache()).hull.extent(up)[1];
    return (topAt(value + STEP * sigma) - topAt(value - STEP * sigma)) / (2 * STEP);
  });
  const slopes = answers.slopes.map((row, i) => {
    const perProud = (more[i]! - fewer[i]!) / (2 * MORE_PROUD);
    return row.map((slope, k) => slope - perProud * rises[k]!);
  });
  return { ...answers, slopes };
}
