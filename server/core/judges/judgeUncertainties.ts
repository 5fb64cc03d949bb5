import type { Boat } from '../boat/boat.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import type { Finding, Place } from '../findings/finding.ts';
import type { Input } from '../uncertainty/input.ts';
import type { Uncertainties } from '../uncertainty/uncertainties.ts';
import { figureText, plusMinus, sigmaText } from '../wording/withUncertainty.ts';
import { limitPlace, tankPlace } from './places.ts';
import { nearestToLimit, type Standing, standingsOf } from './standings.ts';

/**
 * Which figures are inside their limits but not beyond doubt, told once for each condition, and the one value that is worth
 * weighing or measuring next.
 */
export function judgeUncertainties(
  boat: Boat,
  surfaced: Surfaced,
  submerged: Submerged,
  uncertainties: Uncertainties | null,
): readonly Finding[] {
  if (boat.leftOut.length > 0) return [];
  const standings = standingsOf(boat, surfaced, submerged, uncertainties);
  const nearest = nearestToLimit(standings);
  return [
    ...untold('surfaced', standings, limitPlace(boat, 'draft')),
    ...untold('submerged', standings, tankPlace(boat)),
    ...(nearest ? weighNext(nearest, boat) : []),
  ];
}

function untold(condition: Standing['condition'], standings: readonly Standing[], place: Place): readonly Finding[] {
  const open = standings.filter(
    standing => standing.condition === condition && standing.verdict === 'cannot-tell' && standing.margin >= 0,
  );
  if (open.length === 0) return [];
  const listed = open.map(({ name, figure, limit }) => `${name} ${figure} (limit ${limit})`).join(', ');
  const where = condition === 'surfaced' ? 'Surfaced' : 'Submerged';
  return [
    {
      code: 'cannot-tell',
      severity: 'information',
      message: `${where}, it cannot be told yet whether the boat is within all limits. Inside, but not beyond doubt: ${listed}.${roughWords(open)} Weigh and measure what makes the most of the uncertainty, or see what she does in the pool.`,
      place,
    },
  ];
}

function roughWords(open: readonly Standing[]): string {
  if (open.some(({ uncertainty }) => uncertainty.rough === 'may-not-rest')) {
    return ' Within these uncertainties she may not come to rest like this at all: what stands after ± is no more than a rough idea.';
  }
  const curved = open.filter(({ uncertainty }) => uncertainty.rough === 'curved');
  return curved.length > 0
    ? ` What stands after ± is a rough idea only for ${curved.map(({ name }) => name).join(' and ')}.`
    : '';
}

/** Less of an uncertainty than this is not worth the walk to the scale. */
const WORTH_KNOWING = 0.05;

function weighNext({ condition, name, figure, limit, uncertainty, sigma }: Standing, boat: Boat): readonly Finding[] {
  const [most] = uncertainty.shares;
  if (!most || most.share < WORTH_KNOWING) return [];
  const { input, share } = most;
  const left = sigma(uncertainty.sigma * Math.sqrt(Math.max(0, 1 - share)));
  return [
    {
      code: 'weigh-next',
      severity: 'information',
      message: `${verbFor(input)} next: the ${input.words}, ${valueWords(input, boat)}, makes ${shareWords(share)} of the uncertainty in the ${conditionName(condition, name)} (${figure}, limit ${limit}). Known exactly, it would leave ± ${left}. ${howTo(input, boat)}`,
      place: { on: 'value', path: input.path },
    },
  ];
}

/** "submerged trim"; what is only in one condition needs no other name. */
export const conditionName = (condition: Standing['condition'], name: Standing['name']): string =>
  name === 'trim' || name === 'heel' || name === 'draft' ? `${condition} ${name}` : name;

/** "430 ± 2 mm". */
export const valueWords = ({ value, sigma, dimension }: Input, { units }: Boat): string =>
  plusMinus(figureText(value, dimension, units), sigmaText(sigma, dimension, units));

export const shareWords = (share: number): string => `${Math.round(share * 100)} %`;

function verbFor({ dimension, origin }: Input): string {
  const verb = dimension === 'mass' ? 'Weigh this' : dimension === 'density' ? 'Find this out' : 'Measure this';
  return origin === 'written' ? `${verb} more finely` : verb;
}

/** As well as it may be known with some care: a quarter of the uncertainty. */
const WITH_CARE = 1 / 4;

function howTo({ dimension, origin, entryName, sigma }: Input, { units }: Boat): string {
  if (origin === 'handbook') {
    return `Weigh a piece of your own ${entryName} of known size, and write “density:” into its entry.`;
  }
  if (origin === 'written') return 'Then write the finer tolerance.';
  return `Then write how well you know it, such as “± ${sigmaText(WITH_CARE * sigma, dimension, units)}” after the figure.`;
}
