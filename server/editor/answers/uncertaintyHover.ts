import { isInside, type Path } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { figuresOf, nameIn } from '../../core/figures/figured.ts';
import { shareWords, valueWords } from '../../core/judges/judgeUncertainties.ts';
import type { Input, Origin } from '../../core/uncertainty/input.ts';
import type { Uncertainties } from '../../core/uncertainty/uncertainties.ts';
import { capital } from '../../core/wording/capital.ts';

/** How an uncertainty came about, in words. */
const SOURCES: Readonly<Record<Origin, string>> = {
  written: 'as you wrote',
  weighed: 'as is usual for what was weighed',
  measured: 'as is usual for what was measured',
  dunked: 'as is usual for what was dunked',
  given: 'as is usual for a density that was found out',
  handbook: 'by the handbook’s range',
  assumed: 'as is usual where the file says nothing',
};

/** Figures that are listed, and the least share of one. */
const MOST_LISTED = 4;
const LEAST_LISTED = 0.02;

/** The uncertainty of the value under the cursor, and its share in each figure; null for what is exact. */
export function uncertaintyHover(analysis: Analysis, path: Path): string | null {
  const uncertainties = analysis.uncertainties;
  const here = (uncertainties?.inputs ?? []).filter(({ places }) => places.some(place => isInside(path, place)));
  if (!uncertainties || here.length === 0) return null;
  return here.map(input => inputWords(input, uncertainties, analysis)).join('\n\n');
}

function inputWords(input: Input, uncertainties: Uncertainties, analysis: Analysis): string {
  const value = `${capital(input.noun)} ${valueWords(input, analysis.boat)}, ${SOURCES[input.origin]}.`;
  const shares = sharesOf(input, uncertainties, analysis);
  const listed = shares.slice(0, MOST_LISTED).map(({ share, figure }) => `${shareWords(share)} of that of ${figure}`);
  const makes =
    listed.length === 0
      ? 'Its ± accounts for next to nothing of any figure’s.'
      : `Its ± accounts for ${listed.join(', ')}.`;
  return `${value} ${makes}`;
}

interface FigureShare {
  readonly figure: string;
  readonly share: number;
}

function sharesOf({ id }: Input, { conditions }: Uncertainties, analysis: Analysis): readonly FigureShare[] {
  return analysis.conditions
    .flatMap(({ condition }) =>
      figuresOf(condition, analysis.scheme.figures)
        .filter(({ limit, noun }) => limit !== undefined || noun !== undefined)
        .flatMap(figure => {
          const share = conditions[condition.id]?.[figure.id]?.shares.find(one => one.input.id === id)?.share ?? 0;
          const name = nameIn(condition, { ...figure, words: figure.noun ?? figure.words });
          return share >= LEAST_LISTED ? [{ figure: `the ${name}`, share }] : [];
        }),
    )
    .sort((a, b) => b.share - a.share);
}
