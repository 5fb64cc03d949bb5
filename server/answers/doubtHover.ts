import { isInside, type Path } from '../../schema/path.ts';
import type { Analysis } from '../analysis.ts';
import type { Doubts } from '../doubt/doubts.ts';
import type { Input, Origin } from '../doubt/input.ts';
import type { Doubt } from '../doubt/spread.ts';
import { shareWords, valueWords } from '../findings/judgeDoubts.ts';
import { capital } from '../wording/capital.ts';

/** How a doubt came about, in words. */
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

/** The doubt of the value under the cursor, and its share in each figure; null for what is exact. */
export function doubtHover(analysis: Analysis, path: Path): string | null {
  const doubts = analysis.doubts();
  const here = (doubts?.inputs ?? []).filter(({ places }) => places.some(place => isInside(path, place)));
  if (!doubts || here.length === 0) return null;
  return here.map(input => inputWords(input, doubts, analysis)).join('\n\n');
}

function inputWords(input: Input, doubts: Doubts, { boat }: Analysis): string {
  const value = `${capital(input.noun)} ${valueWords(input, boat)}, ${SOURCES[input.origin]}.`;
  const shares = sharesOf(input, doubts);
  const listed = shares.slice(0, MOST_LISTED).map(({ share, figure }) => `${shareWords(share)} in ${figure}`);
  const makes =
    listed.length === 0
      ? 'It makes next to nothing of the doubt in any figure.'
      : `Of the doubt, this ${input.noun} makes ${listed.join(', ')}.`;
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

function sharesOf({ id }: Input, { surfaced, submerged }: Doubts): readonly FigureShare[] {
  const of = (
    doubts: Readonly<Record<string, Doubt | undefined>> | null,
    names: Readonly<Record<string, string>>,
  ): readonly FigureShare[] =>
    Object.entries(names).flatMap(([name, figure]) => {
      const share = doubts?.[name]?.shares.find(one => one.input.id === id)?.share ?? 0;
      return share >= LEAST_LISTED ? [{ figure, share }] : [];
    });
  return [...of(surfaced, FIGURES.surfaced), ...of(submerged, FIGURES.submerged)].sort((a, b) => b.share - a.share);
}
