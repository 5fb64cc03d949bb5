import { freeName } from '../boat/arrangement.ts';
import type { Reading, Trial } from '../boat/trial.ts';
import type { Change, EntryText } from '../findings/finding.ts';
import type { Steps } from '../steps.ts';
import { lengthText, massText } from '../wording/numbers.ts';
import { toleranced } from '../wording/toleranced.ts';
import { CHANGED } from './changed.ts';
import { fewThatExplain, solveFor } from './few.ts';
import { type HiddenKey, hiddenId } from './hidden.ts';
import type { Lesson } from './lesson.ts';
import { type Reconciled, type ReconciledHidden, reconcileHidden, reconcileInputs } from './reconcile.ts';
import { rewrite } from './rewrite.ts';

/** What a trial’s readings come to in the file, as an edit. */
export interface Offer {
  readonly title: string;
  /** What else the title has no room for, a line each. */
  readonly details: readonly string[];
  readonly changes: readonly Change[];
  /** How well this explains the readings beside other ways: the greater, the better. */
  readonly evidence: number;
}

/**
 * What the trials teach, the better explanation first; readings that are slips are left out. `known` is what they come to
 * with an unlisted weight, where that was found already.
 */
export function* offersOf(
  lesson: Lesson,
  slips: ReadonlySet<Reading>,
  known: ReconciledHidden | null,
): Steps<readonly Offer[]> {
  const hidden = known ?? (yield* reconcileHidden(lesson, slips));
  const inputs = yield* reconcileInputs(lesson, slips);
  const offers = [hidden && insertHidden(lesson, hidden), inputs && (yield* changeFigures(lesson, inputs))];
  return offers.filter(offer => offer !== null).sort((a, b) => b.evidence - a.evidence);
}

/** The trials say from now on what accounts for them, so that they are not used twice. */
const explainedBy = (trials: readonly Trial[], words: string): readonly Change[] =>
  trials.map(({ path }): Change => ({ kind: 'add-key', path, key: 'explained', text: words }));

/** Past this from where the hull ends, in doubts of its own, the entry would lie outside: then it is no forgotten thing. */
const OUTSIDE = 2;

/** The entry that nobody wrote; null where it would weigh less than nothing, or lie outside the boat. */
function insertHidden({ source, trials }: Lesson, { pool, estimated, hidden }: ReconciledHidden): Offer | null {
  const { boat } = source;
  const found = (key: HiddenKey) => {
    const at = pool.inputs.findIndex(({ id }) => id === hiddenId(key));
    const input = pool.inputs[at]!;
    const sigma = input.sigma * Math.sqrt(estimated.covariance[at]![at]!);
    return { input, sigma, value: input.value + estimated.unknowns[at]! * input.sigma };
  };
  const [mass, station] = [found('mass'), found('station')];
  const places = (['station', 'offset', 'height'] as const).map(found);
  const isOutside = places.some(({ input, value }) => Math.abs(value - input.value) > OUTSIDE * 2 * input.sigma);
  if (!estimated.hasSettled || mass.value <= 0 || isOutside) return null;
  const text = (key: HiddenKey, unit: string) => {
    const { input, value, sigma } = found(key);
    return toleranced([value], sigma, input.dimension, unit, boat.units);
  };
  const { length, mass: massUnit } = boat.units;
  const isImperial = length === 'in' || length === 'ft';
  const name = freeName(hidden.entry.name, [
    ...boat.shells,
    ...boat.compartments,
    ...boat.tanks,
    ...boat.payload,
    ...boat.ashore,
  ]);
  const entry: EntryText = {
    fields: [
      ['name', name],
      ['mass', text('mass', massUnit)],
      ['volume', text('volume', isImperial ? 'in3' : 'ml')],
      ['station', text('station', length)],
      ['offset', text('offset', length)],
      ['height', text('height', length)],
    ],
    comment: 'by the trials: look for it, weigh it, and write down what it is',
  };
  const title = `Insert “${name}”: ${massText(mass.value, boat.units)} about ${lengthText(station.value, boat.units)} aft of the bow tip that nobody wrote down`;
  return {
    title,
    details: [],
    changes: [{ kind: 'append', path: ['payload'], entry }, ...explainedBy(trials, name)],
    evidence: estimated.evidence,
  };
}

/** Further than this from what the file says, in doubts of the figure, a change is not believed. */
const BELIEVED = 3.5;

/**
 * The few figures that explain the readings by the least weighted change, one after the other as long as each is worth it.
 * What is left open of each afterwards is by all readings and all other figures. Null where no few explain them.
 */
function* changeFigures({ source, trials }: Lesson, { pool, estimated }: Reconciled): Steps<Offer | null> {
  const { covariance } = estimated;
  const sigmaOf = (k: number) => pool.inputs[k]!.sigma * Math.sqrt(covariance[k]![k]!);
  const rewritten = (k: number, unknown: number) => {
    const input = pool.inputs[k]!;
    return rewrite(source, { input, value: input.value + unknown * input.sigma, sigma: sigmaOf(k) });
  };
  const candidates = pool.inputs.flatMap((_, k) => (rewritten(k, 0) ? [k] : []));
  const chosen = fewThatExplain(pool, candidates);
  const found = chosen && (yield* solveFor(pool, chosen));
  if (!found?.hasSettled || found.unknowns.some(unknown => Math.abs(unknown) > BELIEVED)) return null;
  const changed = chosen!.flatMap((k, i) => {
    const is = rewritten(k, found.unknowns[i]!);
    return is ? [{ input: pool.inputs[k]!, rewritten: is }] : [];
  });
  const said = changed.map(({ input, rewritten: { was, is } }) => `${input.words}: ${was} to ${is}`);
  return {
    title: said.length === 1 ? `Change the ${said[0]}` : `Change ${said.length} figures, first the ${said[0]}`,
    details: said.length === 1 ? [] : said,
    changes: [...changed.map(({ rewritten: { change } }) => change), ...explainedBy(trials, CHANGED)],
    evidence: estimated.evidence,
  };
}
