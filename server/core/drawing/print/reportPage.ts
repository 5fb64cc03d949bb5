import type { Analysis } from '../../analysis/analysis.ts';
import type { FigureSection } from '../../report/sections.ts';
import { boatTitle, massWords, saidBlocks, waterWords } from '../../report/textReport.ts';
import { htmlElement, type Markup, svgText } from '../markup.ts';
import { figureTable } from './figureTables.ts';
import { heading, htmlSection, paragraph } from './html.ts';

/** The report as the content of a page that fits any width: the same figures and words as the text has. */
export function reportPage(analysis: Analysis, sections: readonly FigureSection[]): string {
  return htmlSection(
    'report',
    htmlElement('h1', {}, svgText(boatTitle(analysis.boat))),
    paragraph(waterWords(analysis.boat)),
    paragraph(massWords(analysis)),
    htmlSection('pairs', ...sections.map(({ title, rows }) => figureTable(title, rows))),
    ...saidBlocks(analysis).map(saidBlock),
  );
}

/** A block of text: its heading, and its lines, which keep their columns where there is room. */
function saidBlock(text: string): Markup {
  const [title = '', ...lines] = text.split('\n');
  if (lines.length === 0) return paragraph(title);
  return htmlSection(
    'said',
    heading(title),
    htmlElement('pre', {}, svgText(lines.map(line => line.slice(2)).join('\n'))),
  );
}
