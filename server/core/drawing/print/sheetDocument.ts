import type { Analysis } from '../../analysis/analysis.ts';
import { boatTitle, waterWords } from '../../report/textReport.ts';
import { htmlElement, type Markup, svgText } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { styleSheet } from '../styleSheet.ts';
import { type PictureId, trimSheet } from '../trimSheet.ts';
import { cutList } from './cutList.ts';
import { figureTables } from './figureTables.ts';
import { htmlSection } from './html.ts';
import { pieceList } from './pieceList.ts';
import { type Paper, printStyle } from './printStyle.ts';
import { trialForm } from './trialForm.ts';

export interface SheetPaper {
  readonly paper: Paper;
}

/**
 * The sheet for the bench: one HTML page with everything in it, that fetches and runs nothing. Figures against their limits,
 * the drawings, what to cut and where it goes, what is aboard, the plots, and a form to fill in at the pool.
 */
export function sheetDocument(analysis: Analysis, { paper }: SheetPaper): string {
  const { boat } = analysis;
  const correction = analysis.corrections.all()[0] ?? null;
  const { pictures } = trimSheet(analysis, { correction });
  const of = (...ids: readonly PictureId[]): readonly Markup[] =>
    pictures.filter(({ id }) => ids.some(wanted => wanted === id)).map(figure);
  const views = (view: 'side' | 'section' | 'plan'): readonly Markup[] =>
    of(...analysis.conditions.map(({ condition }): PictureId => `${condition.id}-${view}`));
  const name = boat.name || 'Boat without a name';
  const page = htmlElement(
    'html',
    { lang: 'en' },
    htmlElement(
      'head',
      {},
      htmlElement('meta', { charset: 'utf-8' }),
      htmlElement('meta', { 'http-equiv': 'Content-Security-Policy', content: POLICY }),
      htmlElement('meta', { name: 'viewport', content: 'width=device-width' }),
      htmlElement('title', {}, svgText(`${name}: trim sheet`)),
      htmlElement('style', {}, `${styleSheet}${printStyle(paper)}` as Markup),
    ),
    htmlElement(
      'body',
      {},
      htmlElement(
        'header',
        {},
        htmlElement('h1', {}, svgText(boatTitle(boat))),
        htmlElement('p', {}, svgText(`Trim sheet. ${waterWords(boat)}.`)),
      ),
      figureTables(analysis),
      htmlSection('wide', ...views('side')),
      htmlSection('pairs', ...views('section')),
      htmlSection('wide', ...views('plan')),
      cutList(analysis, correction),
      pieceList(analysis),
      htmlSection('plots', ...of('transit', 'righting-lever', 'trim-moments', 'reach', 'uncertainty', 'trials')),
      trialForm(analysis),
    ),
  );
  return `<!doctype html>\n${page}\n`;
}

/** Nothing is fetched, nothing runs; the page's own style is all there is. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

const figure = ({ svg }: Picture): Markup => htmlElement('figure', {}, svg);
