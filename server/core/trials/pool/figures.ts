import type { BoatSource } from '../../boat/source.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import type { Reading } from '../../uncertainty/figures.ts';
import { type Arrangement, floatBoat } from '../../uncertainty/floatBoat.ts';
import { type FloatedBoat, residualLoadsOf } from '../../uncertainty/residualLoads.ts';
import { type Belief, spreadOf, type Uncertainty } from '../../uncertainty/spread.ts';
import { type Lying, type Spreading, type Uncertainties, uncertaintiesBy } from '../../uncertainty/uncertainties.ts';
import { sourceWith } from '../../uncertainty/withInputs.ts';
import { backward, type Triangle } from '../estimation/cholesky.ts';
import type { Estimate } from './estimate.ts';
import { changesOf, type Place } from './foretold.ts';
import { type Load, laden } from './predict.ts';
import { supposedBy } from './suppose.ts';
import type { TrialSet } from './trialSet.ts';
import { beliefOf, type Sum, type View, viewOf } from './view.ts';
import type { Explanation } from './weigh.ts';

/** Explanations that are less likely than this are left out of the figures. */
const LEAST_ODDS = 0.004;

/**
 * Every headline figure with the trials: its mean and standard deviation over all explanations, by the laws of total
 * expectation and total variance. Of the likeliest the full model is asked all over what is open, of each other one in its
 * middle. `lying` is the boat by the likeliest.
 */
export function figuresWithTrials(trialSet: TrialSet, estimate: Estimate, lying: Lying): Uncertainties {
  return uncertaintiesBy(lying, trialSet.inputs, spreadWith(trialSet, estimate));
}

function spreadWith(trialSet: TrialSet, { explanations, foretold }: Estimate): Spreading {
  const told = explanations.filter(({ odds }, rank) => rank === 0 || odds > LEAST_ODDS);
  return (arrangement, readings) => {
    const place: Place = arrangement.loading.kind === 'neutral' ? 'under' : 'afloat';
    const [first, ...others] = told.map(explanation =>
      middleOf(trialSet, explanation, { arrangement, place }, foretold.inputs),
    );
    if (!first?.floated) return null;
    const { floated } = first;
    const view = (explanation: Explanation) => viewOf(explanation, foretold.inputs, trialSet.inputs, place);
    const owner = { ...trialSet, source: first.source };
    const residuals = residualLoadsOf(owner, trialSet.inputs, floated, readings);
    const likeliest = view(first.explanation);
    const belief = beliefOf(likeliest, residuals);
    const uncertainties = spreadOf(owner, floated, residuals, readings, belief);
    const rivals = others.flatMap(other =>
      other.floated ? [{ floated: other.floated, view: view(other.explanation) }] : [],
    );
    if (rivals.length === 0) return uncertainties;
    const slopes = slopesOf(floated, belief, readings);
    return uncertainties.map((uncertainty, i) => {
      const byLoad = slopes[i]!;
      const inputs = residuals.map(
        ({ mass, moment, direct }) =>
          direct[i]! + byLoad[0]! * mass + byLoad[1]! * moment[0] + byLoad[2]! * moment[1] + byLoad[3]! * moment[2],
      );
      return mixedUncertainty(
        uncertainty,
        likeliest,
        { inputs, load: byLoad },
        rivals.map(rival => ({ ...rival, value: readings[i]!(rival.floated.floating) })),
      );
    });
  };
}

interface Middle {
  readonly explanation: Explanation;
  readonly source: BoatSource;
  readonly floated: FloatedBoat | null;
}

/** The boat as an explanation has it on the mean, laid in the water. */
function middleOf(
  { source: filed, inputs, cache }: TrialSet,
  explanation: Explanation,
  { arrangement, place }: { readonly arrangement: Arrangement; readonly place: Place },
  all: Parameters<typeof supposedBy>[1],
): Middle {
  const supposed = supposedBy(explanation, all);
  const source = sourceWith(filed, changesOf(inputs, supposed));
  const bodies = laden(assembleBodies(source.boat, cache), supposed.loads[place]);
  const floating = floatBoat({ ...arrangement, bodies });
  return { explanation, source, floated: floating && { arrangement: { ...arrangement, bodies }, floating } };
}

/** What one of each load does to each reading. */
function slopesOf(
  { arrangement, floating }: FloatedBoat,
  { columns, triangle }: Belief & { readonly triangle: Triangle },
  readings: readonly Reading[],
): readonly (readonly number[])[] {
  const changes = columns.map(column => {
    const at = (share: number) =>
      floatBoat(
        { ...arrangement, bodies: laden(arrangement.bodies, column.map(part => share * part) as unknown as Load) },
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
  readonly value: number;
}

/** One figure over all explanations; what of its variance is between them is no input's. */
function mixedUncertainty(uncertainty: Uncertainty, likeliest: View, sum: Sum, rivals: readonly Rival[]): Uncertainty {
  const straight = (view: View) => view.covariance(sum, sum);
  // What the full model finds beyond straight lines is in proportion for all.
  const beyond = uncertainty.sigma ** 2 / Math.max(straight(likeliest), Number.MIN_VALUE);
  const parts = [
    { odds: likeliest.explanation.odds, value: uncertainty.value, variance: uncertainty.sigma ** 2 },
    ...rivals.map(({ view, value }) => ({
      odds: view.explanation.odds,
      value,
      variance: beyond * straight(view),
    })),
  ];
  const total = parts.reduce((all, { odds }) => all + odds, 0);
  const mean = parts.reduce((all, { odds, value }) => all + (odds / total) * value, 0);
  const variance = parts.reduce(
    (all, part) => all + (part.odds / total) * (part.variance + (part.value - mean) ** 2),
    0,
  );
  const within = variance > 0 ? Math.min(1, uncertainty.sigma ** 2 / variance) : 0;
  return {
    ...uncertainty,
    value: mean,
    sigma: Math.sqrt(variance),
    shares: uncertainty.shares.map(share => ({ ...share, share: share.share * within })),
  };
}
