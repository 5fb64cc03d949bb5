import { isInside, type Path } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { shareWords, valueWords } from '../../core/judges/judgeUncertainties.ts';
import type { Input, Origin } from '../../core/uncertainty/input.ts';
import type { Uncertainty } from '../../core/uncertainty/spread.ts';
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
  const uncertainties = analysis.uncertainties();
  const here = (uncertainties?.inputs ?? []).filter(({ places }) => places.some(place => isInside(path, place)));
  if (!uncertainties || here.length === 0) return null;
  return here.map(input => inputWords(input, uncertainties, analysis)).join('\n\n');
}

function inputWords(input: Input, uncertainties: Uncertainties, { boat }: Analysis): string {
  const value = `${capital(input.noun)} ${valueWords(input, boat)}, ${SOURCES[input.origin]}.`;
  const shares = sharesOf(input, uncertainties);
  const listed = shares.slice(0, MOST_LISTED).map(({ share, figure }) => `${shareWords(share)} in ${figure}`);
  const makes =
    listed.length === 0
      ? 'It makes next to nothing of the uncertainty in any figure.'
      : `Of the uncertainty, this ${input.noun} makes ${listed.join(', ')}.`;
  return `${value} ${makes}`;
}

const FIGURES = {
  surfaced: {
    draft: 'the surfaced draft',
    trim: 'the surfaced trim',
    heel: 'the surfaced heel',
    gm: 'the metacentric height',
    reserveBuoyancy: 'the reserve buoyancy',
  },
  submerged: {
    fill: 'the neutral fill',
    trim: 'the submerged trim',
    heel: 'the submerged heel',
    bgEffective: 'the height of B above G',
  },
} as const;

interface FigureShare {
  readonly figure: string;
  readonly share: number;
}

function sharesOf({ id }: Input, { surfaced, submerged }: Uncertainties): readonly FigureShare[] {
  const of = (
    uncertainties: Readonly<Record<string, Uncertainty | undefined>> | null,
    names: Readonly<Record<string, string>>,
  ): readonly FigureShare[] =>
    Object.entries(names).flatMap(([name, figure]) => {
      const share = uncertainties?.[name]?.shares.find(one => one.input.id === id)?.share ?? 0;
      return share >= LEAST_LISTED ? [{ figure, share }] : [];
    });
  return [...of(surfaced, FIGURES.surfaced), ...of(submerged, FIGURES.submerged)].sort((a, b) => b.share - a.share);
}
