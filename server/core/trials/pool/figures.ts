import type { BoatSource } from '../../boat/source.ts';
import type { Reading } from '../../boat/trial.ts';
import { assembleBodies, type Bodies } from '../../bodies/assemble.ts';
import type { InCondition } from '../../conditions/loadingCondition.ts';
import { whereIn } from '../../conditions/loadingCondition.ts';
import type { StateFigure } from '../../conditions/readings.ts';
import type { Figure } from '../../figures/figure.ts';
import { dot } from '../../geometry/form/vector.ts';
import type { Steps } from '../../steps/steps.ts';
import { type Arrangement, type FloatedBoat, floatBoat } from '../../uncertainty/floatBoat.ts';
import { changesBy, residualLoadSteps } from '../../uncertainty/residualLoads.ts';
import { type Belief, type Explained, spreadSteps, type Uncertainty } from '../../uncertainty/spread.ts';
import { type Spreading, type Uncertainties, uncertaintySteps } from '../../uncertainty/uncertainties.ts';
import { sourceWithSteps } from '../../uncertainty/withInputs.ts';
import { backward, type Triangle } from '../estimation/cholesky.ts';
import { coveringSigma } from '../estimation/coverage.ts';
import type { Estimate } from './estimate.ts';
import { changesOf, loadsIn, type WaterPlace } from './foretold.ts';
import { type ExtraLoad, laden } from './predict.ts';
import { supposedBy } from './suppose.ts';
import type { TrialSet } from './trialSet.ts';
import { beliefOf, type Sum, type View, viewOf } from './view.ts';
import type { Explanation } from './weigh.ts';

/** Explanations that are less likely than this are left out of the figures. */
const LEAST_ODDS = 0.004;

/** What the trials have to be asked about: the boat by the likeliest explanation, in the conditions it is judged in. */
export interface FiguresAsked {
  readonly source: BoatSource;
  readonly bodies: Bodies;
  readonly conditions: readonly InCondition[];
  readonly figures: readonly Figure[];
}

/**
 * What is left open of every figure with the trials, over all explanations. Of the likeliest the full model is asked all over
 * what is open, of each other one in its middle. The figure itself is that of the boat asked about, which is drawn, judged and
 * corrected; the uncertainty is counted about it, so that a rival that would have the figure elsewhere widens it
 * (`coveringSigma`).
 */
export function figuresWithTrials(
  trialSet: TrialSet,
  estimate: Estimate,
  { source, bodies, conditions, figures }: FiguresAsked,
): Steps<Uncertainties> {
  const known = { inputs: trialSet.inputs, spread: spreadWith(trialSet, estimate) };
  return uncertaintySteps({ ...trialSet, source }, bodies, conditions, figures, known);
}

function spreadWith(trialSet: TrialSet, estimate: Estimate): Spreading {
  const mixture = mixtureOf(trialSet, estimate);
  return function* (aboard, inCondition, floated, readings) {
    const uncertainties = yield* mixture(aboard, inCondition, floated, readings);
    return uncertainties.map((uncertainty, i) => countedAbout(uncertainty, readings[i]!(floated.floating)));
  };
}

/** The same uncertainty, counted about the figure that is shown; what that adds is no input's. */
function countedAbout(uncertainty: Uncertainty, value: number): Uncertainty {
  const { explained, sigma: own } = uncertainty;
  const sigma = explained ? coveringSigma(explained, value) : Math.hypot(own, uncertainty.value - value);
  const within = sigma > 0 ? Math.min(1, (own / sigma) ** 2) : 0;
  return revised(uncertainty, { value, sigma }, within);
}

/** With something else in it, its inputs the same, each by a part of its share: they are told apart when first asked for. */
function revised(was: Uncertainty, changes: Omit<Partial<Uncertainty>, 'shares'>, within = 1): Uncertainty {
  let shares: Uncertainty['shares'] | null = null;
  const { value, sigma, rough, explained, hangsOn } = was;
  return {
    ...{ value, sigma, rough, ...(explained && { explained }), ...(hangsOn && { hangsOn }), ...changes },
    get shares() {
      shares ??= was.shares.map(share => ({ ...share, share: share.share * within }));
      return shares;
    },
  };
}

/** Mean and standard deviation over all explanations. */
function mixtureOf(trialSet: TrialSet, { explanations, foretold }: Estimate): Spreading {
  const counted = explanations
    .map((explanation, rank) => ({ explanation, rank }))
    .filter(({ explanation: { odds }, rank }) => rank === 0 || odds > LEAST_ODDS);
  return function* ({ inputs }, { condition }, { arrangement, floating }, readings) {
    const place: WaterPlace = whereIn(condition) === 'submerged' ? 'under' : 'afloat';
    const middle = (explanation: Explanation) =>
      middleOf(trialSet, explanation, { arrangement, condition, place, all: foretold.inputs });
    const view = (explanation: Explanation) => viewOf(explanation, foretold.inputs, inputs, place);
    const [first, ...others] = counted;
    if (!first) return [];
    const { source, floated: found } = yield* middle(first.explanation);
    // Where its mean does not come to rest, that of the boat does.
    const floated = found ?? { arrangement, floating };
    yield;
    const owner = { ...trialSet, source };
    const residuals = yield* residualLoadSteps(owner, inputs, floated, readings);
    const likeliest = view(first.explanation);
    const belief = yield* beliefOf(likeliest, residuals);
    const uncertainties = yield* spreadSteps(owner, floated, residuals, {
      readings,
      name: `${condition.id} with trials`,
      belief,
    });
    const wasRead = foretold.readings.some(read => read.place === place && isOfLie(read.reading));
    const rivals: { readonly floated: FloatedBoat; readonly view: View; readonly rank: number }[] = [];
    for (const { explanation, rank } of others) {
      const { floated: there } = yield* middle(explanation);
      if (there && !(wasRead && liesFar(there, floated)))
        rivals.push({ floated: there, view: view(explanation), rank });
      yield;
    }
    const slopes = slopesOf(floated, belief, readings);
    const told: Uncertainty[] = [];
    for (const [i, uncertainty] of uncertainties.entries()) {
      const byLoad = slopes[i]!;
      const changes = changesBy(residuals, i, byLoad);
      const hangsOn = { inputs, changes, loads: loadsIn(place, byLoad) };
      if (rivals.length === 0) {
        told.push(revised(uncertainty, { hangsOn }));
        continue;
      }
      yield;
      const explained = explainedBy(
        uncertainty,
        likeliest,
        { inputs: changes, load: byLoad },
        rivals.map(rival => ({ ...rival, value: readings[i]!(rival.floated.floating) })),
      );
      told.push(revised(uncertainty, { hangsOn, explained }));
    }
    return told;
  };
}

/** It tells how the boat lay. */
const isOfLie = ({ of }: Reading): boolean => of === 'mark' || of === 'freeboard' || of === 'trim' || of === 'heel';

/** Cosine of 20 degrees. */
const FAR = Math.cos(Math.PI / 9);

/**
 * By the straight lines all explanations have the boat lie as it was read to lie. One that by the full model lies far from there
 * does so where the lines no longer hold: it explains nothing.
 */
const liesFar = (there: FloatedBoat, here: FloatedBoat): boolean =>
  dot(there.floating.state.up, here.floating.state.up) < FAR;

interface Where {
  readonly arrangement: Arrangement;
  readonly condition: InCondition['condition'];
  readonly place: WaterPlace;
  readonly all: Parameters<typeof supposedBy>[1];
}

/** The boat as an explanation has it on the mean, laid in the water. */
function* middleOf(
  { source: filed, inputs, cache }: TrialSet,
  explanation: Explanation,
  { arrangement, condition, place, all }: Where,
): Steps<{ readonly source: BoatSource; readonly floated: FloatedBoat | null }> {
  const supposed = supposedBy(explanation, all);
  const whole = yield* sourceWithSteps(filed, changesOf(inputs, supposed));
  yield;
  const source = condition.aboard ? condition.aboard(whole) : whole;
  const bodies = laden(assembleBodies(source.boat, cache), supposed.loads[place]);
  const floating = floatBoat({ ...arrangement, bodies });
  return { source, floated: floating && { arrangement: { ...arrangement, bodies }, floating } };
}

/** What one of each load does to each reading. */
function slopesOf(
  { arrangement, floating }: FloatedBoat,
  { columns, triangle }: Belief & { readonly triangle: Triangle },
  readings: readonly StateFigure[],
): readonly (readonly number[])[] {
  const changes = columns.map(column => {
    const at = (share: number) =>
      floatBoat(
        { ...arrangement, bodies: laden(arrangement.bodies, column.map(part => share * part) as unknown as ExtraLoad) },
        floating,
      );
    const [more, less] = [at(1), at(-1)];
    return readings.map(reading => (more && less ? (reading(more) - reading(less)) / 2 : 0));
  });
  return readings.map((_, i) =>
    backward(
      triangle,
      changes.map(change => change[i]!),
    ),
  );
}

interface Rival {
  readonly view: View;
  readonly rank: number;
  readonly value: number;
}

/** One figure by each explanation, that of the likeliest first. */
function explainedBy(
  { value, sigma }: Uncertainty,
  likeliest: View,
  sum: Sum,
  rivals: readonly Rival[],
): readonly Explained[] {
  const straight = (view: View) => view.covariance(sum, sum);
  // What the full model finds beyond straight lines is in proportion for all.
  const beyond = sigma ** 2 / Math.max(straight(likeliest), Number.MIN_VALUE);
  return [
    { rank: 0, odds: likeliest.explanation.odds, value, sigma },
    ...rivals.map(({ view, rank, value }) => ({
      rank,
      odds: view.explanation.odds,
      value,
      sigma: Math.sqrt(beyond * straight(view)),
    })),
  ];
}
