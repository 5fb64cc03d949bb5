import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import { nameIn } from '../figures/figured.ts';
import { shareWords, valueWords } from '../judges/judgeUncertainties.ts';
import { nearestToLimit, type Standing, standingsOf } from '../judges/standings.ts';
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
  const open = analysis.said.openQuestions;
  const nearest = nearestToLimit(standingsOf(boat, conditions, scheme.figures, analysis.uncertainties));
  if (!nearest && open.length === 0) return '';
  return [
    paint.heading('How sure the figures are'),
    ...open.map(({ message }) => `  ${message}`),
    ...(nearest ? accountLines(nearest, boat) : []),
    ...UNCERTAINTY_KEY.map(words => `  ${words}`),
  ].join('\n');
}

/** What accounts for the ± of a figure. */
function accountLines({ figured, figure, limit, uncertainty }: Standing, boat: Boat): readonly string[] {
  const shares = uncertainty.shares.slice(0, MOST_LISTED).filter(({ share }) => share >= LEAST_LISTED);
  if (shares.length === 0) return [];
  const rows = shares.map(({ input, share }) => [input.words, valueWords(input, boat), shareWords(share)] as const);
  const widths = ([0, 1] as const).map(column => Math.max(...rows.map(row => row[column].length)));
  const name = nameIn(figured.condition, figured.figure);
  return [
    `  Nearest to its limit is the ${name}, ${figure}, limit ${limit}. What accounts for its ±:`,
    ...rows.map(([words, value, share]) => `  ${words.padEnd(widths[0]!)}  ${value.padEnd(widths[1]!)}  ${share}`),
  ];
}
