import type { Analysis } from '../../analysis/analysis.ts';
import { waitingWords } from '../../analysis/waitingWords.ts';
import { titleIn } from '../../analysis/withTrials.ts';
import { verdictWord } from '../../judges/standings.ts';
import { conditionRows } from '../../report/conditionRows.ts';
import { rangeRows } from '../../report/rangeRows.ts';
import type { Row } from '../../report/rows.ts';
import { tankRows } from '../../report/tankRows.ts';
import { transitRows } from '../../report/transitRows.ts';
import { UNCERTAINTY_KEY } from '../../report/uncertaintyBlock.ts';
import { htmlElement, type Markup, svgText, together } from '../markup.ts';
import { heading, htmlSection, paragraph, prose } from './html.ts';

/** The figures of both conditions against their limits, and in words what is out of them. */
export function figureTables(analysis: Analysis): Markup {
  const open = analysis.said.openQuestions;
  const said = [...analysis.findings, ...open].filter(({ severity }) => severity !== 'hint');
  const waiting = waitingWords(analysis);
  return htmlSection(
    'figures',
    waiting === null ? null : paragraph(waiting, 'caution'),
    htmlSection(
      'pairs',
      ...analysis.conditions.map(inCondition =>
        figureTable(titleIn(analysis, inCondition.condition.title), conditionRows(analysis, inCondition)),
      ),
      figureTable(titleIn(analysis, 'On the way down'), transitRows(analysis)),
      figureTable(titleIn(analysis, 'Range of stability'), rangeRows(analysis)),
    ),
    figureTable(titleIn(analysis, 'Tanks'), tankRows(analysis)),
    open.length === 0 ? null : paragraph(UNCERTAINTY_KEY.join(' ')),
    waiting !== null && said.length === 0
      ? null
      : heading(said.length === 0 ? 'Within all limits' : 'What needs attention'),
    said.length === 0
      ? waiting !== null
        ? null
        : paragraph('Every figure that has a limit keeps it.')
      : htmlElement('ul', { class: 'findings' }, ...said.map(({ message }) => htmlElement('li', {}, prose(message)))),
  );
}

/** A table of figures under its heading: those with a limit say in words whether they keep it. */
export function figureTable(name: string, rows: readonly Row[]): Markup | null {
  if (rows.length === 0) return null;
  return htmlElement(
    'div',
    {},
    heading(name),
    htmlElement('table', {}, htmlElement('tbody', {}, together(rows.map(rowOf)))),
  );
}

function rowOf(row: Row): Markup {
  const { name, value, limit, isKept } = row;
  const word = verdictWord(row);
  const verdict = word === '' ? '' : `${isKept ? '✓' : '✗'} ${word}`;
  return htmlElement(
    'tr',
    {},
    htmlElement('th', { scope: 'row' }, svgText(name)),
    htmlElement('td', {}, prose(limit === undefined ? value : `${value}; limit ${limit}`)),
    htmlElement(
      'td',
      {},
      limit === undefined ? null : htmlElement('span', { class: isKept ? 'verdict' : 'verdict out' }, svgText(verdict)),
    ),
  );
}
