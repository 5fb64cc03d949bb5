import type { Analysis } from '../../analysis/analysis.ts';
import { conditionsOf } from '../../conditions/loadingCondition.ts';
import type { Correction } from '../../corrections/correction.ts';
import { cautions, cutLines, moveLines } from '../../report/bench.ts';
import { conditionFigures } from '../../report/correctionReport.ts';
import { htmlElement, type Markup } from '../markup.ts';
import { heading, htmlSection, htmlTable, paragraph, tickBox } from './html.ts';

/** What the preferred correction does, and its pieces to tick off at the bench; null where there is none. */
export function cutList(analysis: Analysis, correction: Correction | null): Markup | null {
  if (!correction) return null;
  const { boat, scheme } = analysis;
  const before = conditionFigures(boat, conditionsOf(analysis), scheme.figures);
  const after = conditionFigures(correction.boat, conditionsOf(correction), scheme.figures);
  return htmlSection(
    'correction',
    heading('What to do'),
    paragraph(`${correction.title}.`),
    htmlTable(
      'before',
      ['', 'as it is', 'then'],
      before.map(([name, value], i) => [name, value, after[i]![1]]),
    ),
    ...correction.moves.map(move =>
      htmlElement('div', { class: 'cut' }, tickBox, ...moveLines(move, boat).map(line => paragraph(line.trim()))),
    ),
    correction.pieces.length === 0 ? null : heading('Cut list'),
    ...correction.pieces.map((piece, i) =>
      htmlElement(
        'div',
        { class: 'cut' },
        tickBox,
        ...cutLines(piece, correction.parts[i]!.name, boat).map(line => paragraph(line.trim())),
      ),
    ),
    htmlElement(
      'div',
      { class: 'caution' },
      paragraph('Mind'),
      ...cautions(correction.pieces).map(line => paragraph(line.trim())),
    ),
  );
}
