import type { Analysis } from '../analysis/analysis.ts';
import { nameIn } from '../figures/figured.ts';
import { shareWords, valueWords } from '../judges/judgeUncertainties.ts';
import { nearestToLimit, standingsOf } from '../judges/standings.ts';
import type { Paint } from './rows.ts';

/** What ± and the question marks mean, in lines. */
export const UNCERTAINTY_KEY = [
  'After ± stands one standard uncertainty, by the tolerances in the file or what is usual. With “ok?” and “out?” the',
  'limit lies within two of them: the boat in the water may be on its other side.',
] as const;

/** Inputs that are listed, and the least share of one. */
const MOST_LISTED = 5;
const LEAST_LISTED = 0.02;

/** What to weigh or measure next: whose uncertainty counts most in the figure that is nearest to its limit. */
export function uncertaintyBlock(analysis: Analysis, paint: Paint): string {
  const { boat, conditions, scheme } = analysis;
  const nearest = nearestToLimit(standingsOf(boat, conditions, scheme.figures, analysis.uncertainties));
  if (!nearest) return '';
  const shares = nearest.uncertainty.shares.slice(0, MOST_LISTED).filter(({ share }) => share >= LEAST_LISTED);
  if (shares.length === 0) return '';
  const rows = shares.map(({ input, share }) => [input.words, valueWords(input, boat), shareWords(share)] as const);
  const widths = ([0, 1] as const).map(column => Math.max(...rows.map(row => row[column].length)));
  const lines = rows.map(
    ([words, value, share]) => `  ${words.padEnd(widths[0]!)}  ${value.padEnd(widths[1]!)}  ${share}`,
  );
  const name = nameIn(nearest.figured.condition, nearest.figured.figure);
  const next = analysis.said.openQuestions.filter(({ code }) => code === 'weigh-next');
  return [
    paint.heading('What to weigh, measure or read next'),
    ...next.map(({ message }) => `  ${message}`),
    `  By their share in the uncertainty of the ${name}, which is nearest to its limit: ${nearest.figure}, limit ${nearest.limit}.`,
    ...lines,
    ...UNCERTAINTY_KEY.map(words => `  ${words}`),
  ].join('\n');
}
