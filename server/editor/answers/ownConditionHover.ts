import type { Analysis } from '../../core/analysis/analysis.ts';
import { titleIn } from '../../core/analysis/withTrials.ts';
import { besideText, figuredIn, isKept, limitWords, mainText } from '../../core/figures/figured.ts';
import { standingOf, verdictWord } from '../../core/judges/standings.ts';
import { capital } from '../../core/wording/capital.ts';
import { plusMinus } from '../../core/wording/withUncertainty.ts';
import { inFull, stateWords } from './conditionWords.ts';
import { escapedMarkdown, table } from './markdown.ts';

/** How the boat lies in a loading condition of the file, with its limits there; null for one that is not figured. */
export function ownConditionHover(analysis: Analysis, index: number): string | null {
  const { boat, conditions, scheme, uncertainties } = analysis;
  const at = conditions.findIndex(({ condition: { path } }) => path?.[1] === index);
  const inCondition = conditions[at];
  if (!inCondition) return null;
  const title = escapedMarkdown(titleIn(analysis, inCondition.condition.title));
  const all = figuredIn(boat, inCondition, scheme.figures);
  if (all.length === 0) return `${title}: ${inFull(stateWords(analysis)[at]!)}.`;
  const rows = all.flatMap(figured => {
    const { figure, units, condition } = figured;
    if (figure.heading === null) return [];
    const sigma = uncertainties?.conditions[condition.id]?.[figure.id]?.sigma;
    const value =
      sigma === undefined ? mainText(figured) : plusMinus(mainText(figured), figure.kind.size(sigma, units));
    const beside = besideText(figured);
    const isOpen = uncertainties !== null && standingOf(figured, uncertainties)?.verdict === 'cannot-tell';
    const verdict = verdictWord({ isKept: isKept(figured), isOpen });
    const limit = limitWords(figured);
    return [
      [
        capital(figure.words),
        beside === null ? value : `${value} (${beside})`,
        limit === null ? '' : [verdict, `limit ${limit}`].filter(Boolean).join(', '),
      ],
    ];
  });
  return table([[title, '', ''], ...rows]);
}
