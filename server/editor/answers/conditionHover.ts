import type { Analysis } from '../../core/analysis/analysis.ts';
import { byFileWords, isWorthSaying, titleIn } from '../../core/analysis/withTrials.ts';
import type { LoadingCondition } from '../../core/conditions/loadingCondition.ts';
import type { SurfacedAfloat } from '../../core/conditions/surfaced.ts';
import { figuredIn, figuresOf, limitIn, offText } from '../../core/figures/figured.ts';
import { limitText } from '../../core/figures/limit.ts';
import { offWaterline } from '../../core/figures/offWaterline.ts';
import { standingsOf } from '../../core/judges/standings.ts';
import { wantedWords } from '../../core/planning/wantedWords.ts';
import { capital } from '../../core/wording/capital.ts';
import { heelWords, lengthText, massText, tapeStep, tapeText, trimWords } from '../../core/wording/numbers.ts';
import { plusMinus } from '../../core/wording/withUncertainty.ts';
import { table } from './markdown.ts';

/** The painted waterline against where the water really stands, in each condition that the boat floats in; null for none. */
export function waterlineHover(analysis: Analysis): string | null {
  const told = analysis.conditions.flatMap(({ condition, state }) =>
    state.status === 'afloat' ? [waterlineIn(analysis, condition, state)] : [],
  );
  const wanted = analysis.wanted && wantedWords(analysis.wanted, analysis.boat);
  return [...told, ...(wanted === null ? [] : [wanted])].join('\n\n') || null;
}

function waterlineIn(analysis: Analysis, { id, title }: LoadingCondition, surfaced: SurfacedAfloat): string {
  const { boat } = analysis;
  const uncertainties = analysis.uncertainties?.conditions[id];
  const { units } = boat;
  const off = offWaterline(boat, surfaced);
  const ends = (up: number | null) => {
    if (up === null) return '';
    const size = lengthText(Math.abs(up), units);
    return Number.parseFloat(size) === 0 ? 'as painted' : `rides ${size} ${up > 0 ? 'high' : 'low'}`;
  };
  const byFile = analysis.filed.conditions.find(({ condition }) => condition.id === id)?.state;
  const filed = analysis.withTrials && byFile?.status === 'afloat' ? byFile : null;
  const water = (figure: 'draftBow' | 'draft' | 'draftStern', height: number, byFile: number | undefined) => {
    const sigma = uncertainties?.[figure]?.sigma ?? 0;
    const beside =
      byFile !== undefined && isWorthSaying(height, byFile, sigma) ? ` (by the file ${lengthText(byFile, units)})` : '';
    return `${plusMinus(lengthText(height, units), lengthText(sigma, units))}${beside}`;
  };
  return [
    `${titleIn(analysis, title)}, the boat floats ${trimWords(off.trim)} and ${heelWords(off.heel)}.`,
    table([
      ['', 'Water above the baseline', 'Against the painted line'],
      ['Bow', water('draftBow', surfaced.draftBow, filed?.draftBow), ends(off.bowUp)],
      [
        'Half length',
        water('draft', surfaced.attitude.draft, filed?.attitude.draft),
        ends(off.draft === null ? null : -off.draft),
      ],
      ['Stern', water('draftStern', surfaced.draftStern, filed?.draftStern), ends(off.sternUp)],
    ]),
    `${massText(surfaced.massPerImmersion * tapeStep(units), units)} sink it by ${tapeText(tapeStep(units), units)}; reserve buoyancy ${massText(surfaced.reserveBuoyancy, units)}.`,
  ].join('\n\n');
}

/** Every limit with the figure that it is about, its uncertainty, and whether the limit can be told for that. */
export function limitsHover(analysis: Analysis): string {
  const { boat, conditions, scheme, uncertainties } = analysis;
  const standings = standingsOf(boat, conditions, scheme.figures, uncertainties);
  const columns = conditions.map(inCondition => ({
    inCondition,
    limited: figuresOf(inCondition.condition, scheme.figures).filter(({ limit }) => limit !== undefined),
    figured: figuredIn(boat, inCondition, scheme.figures),
  }));
  type Column = (typeof columns)[number];
  const cell = ({ inCondition: { condition }, limited, figured }: Column, words: string): string => {
    const figure = limited.find(one => one.words === words);
    const limit = figure && limitIn(figure, condition, boat);
    if (!limit) return '';
    const there = figured.find(one => one.figure === figure);
    const standing = standings.find(one => one.figured.figure === figure && one.figured.condition === condition);
    const plain = there && there.off !== null ? offText(there) : 'not known';
    const byFile = there && byFileWords(analysis, there, offText);
    return `${standing?.figure ?? plain} (${byFile ? `${byFile}; ` : ''}limit ${limitText(limit, figure.kind, boat.units)})`;
  };
  // What several conditions ask stands first, then limits that bind alike together.
  const binds = ['within', 'at least', 'between'];
  const orderOf = (words: string): number => {
    const asking = columns.flatMap(({ inCondition: { condition }, limited }) =>
      limited.filter(one => one.words === words).map(figure => limitIn(figure, condition, boat)?.binds ?? ''),
    );
    return binds.indexOf(asking[0] ?? '') - binds.length * asking.length;
  };
  const names = [...new Set(columns.flatMap(({ limited }) => limited.map(({ words }) => words)))];
  return table([
    ['Limit', ...conditions.map(({ condition }) => titleIn(analysis, condition.title))],
    ...names
      .sort((a, b) => orderOf(a) - orderOf(b))
      .map(words => [capital(words), ...columns.map(column => cell(column, words))])
      // What no condition asks of this boat.
      .filter(([, ...cells]) => cells.some(text => text !== '')),
  ]);
}
