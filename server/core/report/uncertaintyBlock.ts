import type { Analysis } from '../analysis/analysis.ts';
import { nameIn } from '../figures/figured.ts';
import { shareWords, valueWords } from '../judges/judgeUncertainties.ts';
import { nearestToLimit, standingsOf } from '../judges/standings.ts';
import type { Paint } from './rows.ts';

/** What ± and the question marks mean, in lines. */
export const UNCERTAINTY_KEY = [
  'After ± stands one standard uncertainty, by the tolerances in the file or what is usual. “ok” stands where the limit',
  'lies more than two of them away, “out” where the figure itself is beyond it.',
] as const;

/** Inputs that are listed, and the least share of one. */
const MOST_LISTED = 5;
const LEAST_LISTED = 0.02;

/** How well the figures are known, what to weigh or read next, and what accounts for the ± of the figure nearest to its limit. */
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
  return [
    paint.heading('How sure the figures are'),
    ...analysis.said.openQuestions.map(({ message }) => `  ${message}`),
    `  Nearest to its limit is the ${name}, ${nearest.figure}, limit ${nearest.limit}. What accounts for its ±:`,
    ...lines,
    ...UNCERTAINTY_KEY.map(words => `  ${words}`),
  ].join('\n');
}
