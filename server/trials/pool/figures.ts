import type { BoatSource } from '../../boat/source.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import { type Doubts, doubtsBy, type Lying, type Spreading } from '../../doubt/doubts.ts';
import { type Arrangement, layBoat } from '../../doubt/lie.ts';
import { type Laid, pushesOf } from '../../doubt/pushes.ts';
import type { Reading } from '../../doubt/readings.ts';
import { type Belief, type Doubt, spreadOf } from '../../doubt/spread.ts';
import { sourceWith } from '../../doubt/withInputs.ts';
import { backward, type Triangle } from '../estimation/cholesky.ts';
import type { Lesson } from '../lesson.ts';
import { type Load, laden } from '../predict.ts';
import type { Estimate } from './estimate.ts';
import { changesOf, type Place } from './foretold.ts';
import { supposedBy } from './suppose.ts';
import { beliefOf, type Sum, type View, viewOf } from './view.ts';
import type { Explanation } from './weigh.ts';

/** Explanations that are less likely than this are left out of the figures. */
const LEAST_ODDS = 0.004;

/**
 * Every headline figure with the trials: its mean and standard deviation over all explanations, by the laws of total
 * expectation and total variance. Of the likeliest the full model is asked all over what is open, of each other one in its
 * middle. `lying` is the boat by the likeliest.
 */
export function figuresWithTrials(lesson: Lesson, estimate: Estimate, lying: Lying): Doubts {
  return doubtsBy(lying, lesson.inputs, spreadWith(lesson, estimate));
}

function spreadWith(lesson: Lesson, { explanations, foretold }: Estimate): Spreading {
  const told = explanations.filter(({ odds }, rank) => rank === 0 || odds > LEAST_ODDS);
  return (arrangement, readings) => {
    const place: Place = arrangement.loading.kind === 'neutral' ? 'under' : 'afloat';
    const [first, ...others] = told.map(explanation =>
      middleOf(lesson, explanation, { arrangement, place }, foretold.inputs),
    );
    if (!first?.laid) return null;
    const { laid } = first;
    const view = (explanation: Explanation) => viewOf(explanation, foretold.inputs, lesson.inputs, place);
    const owner = { ...lesson, source: first.source };
    const pushes = pushesOf(owner, lesson.inputs, laid, readings);
    const likeliest = view(first.explanation);
    const belief = beliefOf(likeliest, pushes);
    const doubts = spreadOf(owner, laid, pushes, readings, belief);
    const rivals = others.flatMap(other => (other.laid ? [{ laid: other.laid, view: view(other.explanation) }] : []));
    if (rivals.length === 0) return doubts;
    const slopes = slopesOf(laid, belief, readings);
    return doubts.map((doubt, i) => {
      const byLoad = slopes[i]!;
      const inputs = pushes.map(
        ({ mass, moment, direct }) =>
          direct[i]! + byLoad[0]! * mass + byLoad[1]! * moment[0] + byLoad[2]! * moment[1] + byLoad[3]! * moment[2],
      );
      return mixedDoubt(
        doubt,
        likeliest,
        { inputs, load: byLoad },
        rivals.map(rival => ({ ...rival, value: readings[i]!(rival.laid.lie) })),
      );
    });
  };
}

interface Middle {
  readonly explanation: Explanation;
  readonly source: BoatSource;
  readonly laid: Laid | null;
}

/** The boat as an explanation has it on the mean, laid in the water. */
function middleOf(
  { source: filed, inputs, shelf }: Lesson,
  explanation: Explanation,
  { arrangement, place }: { readonly arrangement: Arrangement; readonly place: Place },
  all: Parameters<typeof supposedBy>[1],
): Middle {
  const supposed = supposedBy(explanation, all);
  const source = sourceWith(filed, changesOf(inputs, supposed));
  const bodies = laden(assembleBodies(source.boat, shelf), supposed.loads[place]);
  const lie = layBoat({ ...arrangement, bodies });
  return { explanation, source, laid: lie && { arrangement: { ...arrangement, bodies }, lie } };
}

/** What one of each load does to each reading. */
function slopesOf(
  { arrangement, lie }: Laid,
  { columns, triangle }: Belief & { readonly triangle: Triangle },
  readings: readonly Reading[],
): readonly (readonly number[])[] {
  const changes = columns.map(column => {
    const at = (share: number) =>
      layBoat(
        { ...arrangement, bodies: laden(arrangement.bodies, column.map(part => share * part) as unknown as Load) },
        lie,
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
function mixedDoubt(doubt: Doubt, likeliest: View, sum: Sum, rivals: readonly Rival[]): Doubt {
  const straight = (view: View) => view.covariance(sum, sum);
  // What the full model finds beyond straight lines is in proportion for all.
  const beyond = doubt.sigma ** 2 / Math.max(straight(likeliest), Number.MIN_VALUE);
  const parts = [
    { odds: likeliest.explanation.odds, value: doubt.value, variance: doubt.sigma ** 2 },
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
  const within = variance > 0 ? Math.min(1, doubt.sigma ** 2 / variance) : 0;
  return {
    ...doubt,
    value: mean,
    sigma: Math.sqrt(variance),
    shares: doubt.shares.map(share => ({ ...share, share: share.share * within })),
  };
}
