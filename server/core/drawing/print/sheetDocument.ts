import type { Analysis } from '../../analysis/analysis.ts';
import type { Correction } from '../../corrections/correction.ts';
import { boatTitle, waterWords } from '../../report/textReport.ts';
import { type Glance, glanceAt } from '../gauges/gaugeStrip.ts';
import { htmlElement, type Markup, svgText } from '../markup.ts';
import type { Page } from '../page.ts';
import type { Picture } from '../picture.ts';
import { styleSheet } from '../styleSheet.ts';
import { type PictureId, trimSheet } from '../trimSheet.ts';
import { cutList, mindBox } from './cutList.ts';
import { figureTables } from './figureTables.ts';
import { withFile } from './fileInside.ts';
import { gaugeGrid } from './gaugeGrid.ts';
import { htmlSection, prose } from './html.ts';
import { partsList } from './partsList.ts';
import { poolForm } from './poolForm.ts';
import { type Paper, printStyle } from './printStyle.ts';
import { revisionOf } from './revision.ts';
import { trialForm } from './trialForm.ts';

export interface SheetPaper {
  readonly paper: Paper;
  /** Of the boat file, without its folder; null for one that has no name yet. */
  readonly fileName: string | null;
  /** With all figures, findings, views and plots, and blank forms. */
  readonly appendix: boolean;
}

/** On paper the boat is as long as the page and no taller than leaves room for what is to be done. */
const PRINTED: Page = { wide: 760, narrow: 376, tall: 150, names: 'few' };
const WHOLE: Page = { ...PRINTED, tall: 300, names: 'all' };

/** As many deeds and parts as a page holds at its height; more of them run on to the next. */
const MOST_DEEDS = 6;
const MOST_PARTS = 18;

/**
 * The sheet for the bench, two pages: the verdict, both side views, what to do and what to mind; then a form for the pool with
 * what is expected, and the parts. An appendix has all the rest. One HTML page that fetches and runs nothing, with the boat
 * file in it.
 */
export function sheetDocument(analysis: Analysis, { paper, fileName, appendix }: SheetPaper): string {
  const { boat, syntax } = analysis;
  const correction = analysis.corrections.all()[0] ?? null;
  const name = boat.name || 'Boat without a name';
  const foot = [name, ...(fileName === null ? [] : [fileName]), `revision ${revisionOf(syntax.text)}`].join(' · ');
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
      withFile({ name: fileName ?? `${name}.boat.yaml`, text: syntax.text }),
      htmlElement('style', {}, `${styleSheet}${printStyle(paper, foot)}` as Markup),
    ),
    htmlElement(
      'body',
      {},
      pageOne(analysis, correction, foot),
      pageTwo(analysis, correction),
      appendix ? appendixOf(analysis, correction) : null,
    ),
  );
  return `<!doctype html>\n${page}\n`;
}

/** Nothing is fetched, nothing runs; the page's own style is all there is. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

function pageOne(analysis: Analysis, correction: Correction | null, foot: string): Markup {
  const glance = glanceAt(analysis, correction);
  const deeds = correction ? correction.moves.length + correction.pieces.length : 0;
  // Where there is little to do, the sections fill the page.
  const sections = deeds === 0 ? figuresOf(analysis, correction, PRINTED, viewsOf(analysis, 'section')) : [];
  return htmlSection(
    deeds > MOST_DEEDS ? 'page long' : 'page',
    htmlElement(
      'header',
      {},
      htmlElement('h1', {}, svgText(boatTitle(analysis.boat))),
      htmlElement('p', {}, svgText(`Trim sheet of ${foot}. ${waterWords(analysis.boat)}.`)),
    ),
    verdictLine(glance),
    gaugeGrid(glance.gauges),
    htmlElement('div', { class: 'sides' }, ...figuresOf(analysis, correction, PRINTED, viewsOf(analysis, 'side'))),
    sections.length === 0 ? null : htmlElement('div', { class: 'pairs' }, ...sections),
    cutList(analysis, correction),
    mindBox(correction),
  );
}

const verdictLine = ({ verdict: { state, words } }: Glance): Markup =>
  htmlElement('p', { class: `glance ${state}` }, htmlElement('strong', {}, prose(words)));

function pageTwo(analysis: Analysis, correction: Correction | null): Markup {
  const { shells, compartments, tanks, payload } = analysis.boat;
  const parts = shells.length + compartments.length + tanks.length + payload.length;
  const isLong = parts > MOST_PARTS;
  return htmlSection(
    isLong ? 'page second long' : 'page second',
    poolForm(analysis, correction),
    partsList(analysis),
    isLong ? null : htmlElement('div', { class: 'notes' }, svgText('Notes')),
  );
}

function appendixOf(analysis: Analysis, correction: Correction | null): Markup {
  const of = (...ids: readonly PictureId[]): readonly Markup[] => figuresOf(analysis, correction, WHOLE, ids);
  return htmlSection(
    'appendix',
    figureTables(analysis),
    htmlSection('pairs', ...of(...viewsOf(analysis, 'section'))),
    htmlSection('wide', ...of(...viewsOf(analysis, 'side'), ...viewsOf(analysis, 'plan'))),
    htmlSection('plots', ...of('transit', 'righting-lever', 'polygon', 'uncertainty', 'trials')),
    trialForm(analysis),
  );
}

const viewsOf = ({ conditions }: Analysis, view: 'side' | 'section' | 'plan'): readonly PictureId[] =>
  conditions.map(({ condition }): PictureId => `${condition.id}-${view}`);

function figuresOf(
  analysis: Analysis,
  correction: Correction | null,
  page: Page,
  only: readonly PictureId[],
): readonly Markup[] {
  return trimSheet(analysis, { only, correction, page }).pictures.map(figure);
}

const figure = ({ svg }: Picture): Markup => htmlElement('figure', {}, svg);
