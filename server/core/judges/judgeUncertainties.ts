import { type Counted, countedAt } from '../../../schema/places.ts';
import type { Boat } from '../boat/boat.ts';
import type { InCondition, LoadingCondition } from '../conditions/loadingCondition.ts';
import type { Figure } from '../figures/figure.ts';
import { nameIn } from '../figures/figured.ts';
import type { Finding, Place } from '../findings/finding.ts';
import type { Steps } from '../steps/steps.ts';
import type { Worth } from '../trials/nextReading.ts';
import type { NextStep } from '../trials/readables.ts';
import type { Input } from '../uncertainty/input.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import type { Uncertainties } from '../uncertainty/uncertainties.ts';
import { figureText, plusMinus, sigmaText } from '../wording/withUncertainty.ts';
import { conditionPlace } from './places.ts';
import { readNext } from './readNext.ts';
import { nearestToLimit, type Standing, standingsOf } from './standings.ts';

/**
 * Which figures are inside their limits but not beyond doubt, told once for each condition, and the one thing that is worth
 * weighing, measuring or reading next: `next` tells what takes most of a figure's uncertainty for its trouble.
 */
export function* judgeUncertainties(
  boat: Boat,
  conditions: readonly InCondition[],
  figures: readonly Figure[],
  uncertainties: Uncertainties | null,
  next: (figure: Uncertainty) => Steps<Worth<NextStep> | null>,
): Steps<readonly Finding[]> {
  const standings = standingsOf(boat, conditions, figures, uncertainties);
  const nearest = nearestToLimit(standings);
  return [
    ...conditions.flatMap(({ condition }) =>
      untold(
        condition,
        standings.filter(({ figured }) => figured.condition === condition),
        conditionPlace(boat, condition),
      ),
    ),
    ...(nearest ? doNext(nearest, boat, yield* next(nearest.uncertainty)) : []),
  ];
}

function untold({ title }: LoadingCondition, standings: readonly Standing[], place: Place): readonly Finding[] {
  const open = standings.filter(({ verdict, margin }) => verdict === 'cannot-tell' && margin >= 0);
  if (open.length === 0) return [];
  const listed = open.map(
    ({ figured, limit, sigma, uncertainty }) =>
      `the ${figured.figure.words} to ± ${sigma(uncertainty.sigma)} (limit ${limit})`,
  );
  const isAfloat = open.every(({ figured }) => figured.figure.where === 'afloat');
  return [
    {
      code: 'cannot-tell',
      about: 'uncertainty',
      severity: 'information',
      message: `${title}, the file knows ${listed.join(', ')}: the first ${isAfloat ? 'float' : 'dive'} tells more than any ruler.${roughWords(open)}`,
      place,
    },
  ];
}

function roughWords(open: readonly Standing[]): string {
  if (open.some(({ uncertainty }) => uncertainty.rough === 'may-not-rest')) {
    return ' Within these uncertainties it may not come to rest like this at all: what stands after ± is no more than a rough idea.';
  }
  const curved = open.filter(({ uncertainty }) => uncertainty.rough === 'curved');
  return curved.length > 0
    ? ` What stands after ± is a rough idea only for ${curved.map(({ figured }) => figured.figure.words).join(' and ')}.`
    : '';
}

/** What takes most of the uncertainty for its trouble: something read of the whole boat, or one figure of the file. */
function doNext(standing: Standing, boat: Boat, worth: Worth<NextStep> | null): readonly Finding[] {
  if (!worth) return [];
  const { what, left } = worth;
  if (what.kind === 'figure') return weighNext(standing, boat, what.input, left);
  return [readNext(standing, nameIn(standing.figured.condition, standing.figured.figure), { what, left }, boat)];
}

function weighNext(
  { figured, uncertainty, sigma }: Standing,
  boat: Boat,
  input: Input,
  left: number,
): readonly Finding[] {
  const finer = sigmaText(WITH_CARE * input.sigma, input.dimension, boat.units);
  return [
    {
      code: 'weigh-next',
      about: 'uncertainty',
      severity: 'information',
      message: `${verbFor(input)} next: with the ${input.words}, ${valueWords(input, boat)}, known to ± ${finer} the ${nameIn(figured.condition, figured.figure)} would be known to ± ${sigma(uncertainty.sigma * left)} instead of ± ${sigma(uncertainty.sigma)}. ${howTo(input)}`,
      place: { on: 'value', path: input.path },
    },
  ];
}

/** "430 ± 2 mm". */
export function valueWords({ value, sigma, dimension, noun }: Input, { units }: Boat): string {
  const [counted] = /^(?:station|height)\b/.exec(noun) ?? [];
  const said = counted ? countedAt(value, counted as Counted, units) : value;
  return plusMinus(figureText(said, dimension, units), sigmaText(sigma, dimension, units));
}

export const shareWords = (share: number): string => `${Math.round(share * 100)} %`;

function verbFor({ dimension, origin }: Input): string {
  const verb = dimension === 'mass' ? 'Weigh this' : dimension === 'density' ? 'Find this out' : 'Measure this';
  return origin === 'written' ? `${verb} more finely` : verb;
}

/** As well as it may be known with some care: a quarter of the uncertainty. */
const WITH_CARE = 1 / 4;

function howTo({ origin, entryName }: Input): string {
  if (origin === 'handbook') {
    return `Weigh a piece of your own ${entryName} of known size, and write “density:” into its entry.`;
  }
  if (origin === 'written') return 'Then write the finer tolerance.';
  return 'Then write that “±” after the figure.';
}
