import type { Analysis } from '../../analysis/analysis.ts';
import { SUBMERGED, SURFACED } from '../../conditions/loadingCondition.ts';
import { leversReady } from '../../conditions/withLevers.ts';
import { allPieces, type Correction } from '../../corrections/correction.ts';
import { boatTitle, waterWords } from '../../report/textReport.ts';
import { type Steps, through } from '../../steps/steps.ts';
import { type Glance, glanceAt } from '../gauges/gaugeStrip.ts';
import { htmlElement, type Markup, svgText } from '../markup.ts';
import type { Page } from '../page.ts';
import type { Picture } from '../picture.ts';
import { styleSheet } from '../styleSheet.ts';
import { type PictureId, pictureSteps } from '../trimSheet.ts';
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

/** Of both side views: abreast, to leave room for what is to be done; with nothing to do one over the other, and large. */
const ABREAST: Page = { wide: 480, narrow: 376, tall: 200, names: 'few' };
const LARGE: Page = { ...ABREAST, wide: 760, tall: 300 };
const WHOLE: Page = { ...ABREAST, wide: 760, tall: 300, names: 'all' };

/** As many deeds and parts as a page holds at its height; more of them run on to the next. */
const MOST_DEEDS = 6;
const MOST_PARTS = 18;

/**
 * The sheet for the bench, two pages: the verdict, both side views, what to do and what to mind; then a form for the pool with
 * what is expected, and the parts. An appendix has all the rest. One HTML page that fetches and runs nothing, with the boat
 * file in it.
 */
export function* sheetDocument(analysis: Analysis, { paper, fileName, appendix }: SheetPaper): Steps<string> {
  const { boat, syntax } = analysis;
  const correction = (yield* through(analysis.corrections))[0] ?? null;
  const name = boat.name || 'Boat without a name';
  const foot = [name, ...(fileName === null ? [] : [fileName]), `revision ${revisionOf(syntax.text)}`].join(' · ');
  const first = yield* pageOne(analysis, correction, foot);
  yield;
  const second = yield* pageTwo(analysis, correction);
  const more = appendix ? yield* appendixOf(analysis, correction) : null;
  yield;
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
    htmlElement('body', {}, first, second, more),
  );
  return `<!doctype html>\n${page}\n`;
}

/** Nothing is fetched, nothing runs; the page's own style is all there is. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

function* pageOne(analysis: Analysis, correction: Correction | null, foot: string): Steps<Markup> {
  const glance = glanceAt(analysis, correction);
  const deeds = correction ? correction.moves.length + allPieces(correction).length : 0;
  const sides = [SURFACED, SUBMERGED].map(({ id }): PictureId => `${id}-side`);
  const views = yield* figuresOf(analysis, correction, deeds === 0 ? LARGE : ABREAST, sides);
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
    glance.legend === '' ? null : htmlElement('p', { class: 'legend' }, svgText(glance.legend)),
    htmlElement('div', { class: deeds === 0 ? 'sides' : 'sides abreast' }, ...views),
    cutList(analysis, correction),
    mindBox(correction),
    deeds === 0 ? null : ruled,
  );
}

/** To write on, as far as the page goes. */
const ruled = htmlElement(
  'div',
  { class: 'ruled' },
  ...Array.from({ length: 12 }, (_, i) => htmlElement('p', {}, svgText(i === 0 ? 'Notes' : ''))),
);

const verdictLine = ({ verdict: { state, words } }: Glance): Markup =>
  htmlElement('p', { class: `glance ${state}` }, htmlElement('strong', {}, prose(words)));

function* pageTwo(analysis: Analysis, correction: Correction | null): Steps<Markup> {
  const { shells, compartments, tanks, payload } = analysis.boat;
  const parts = shells.length + compartments.length + tanks.length + payload.length;
  const isLong = parts > MOST_PARTS;
  const form = poolForm(analysis, correction);
  yield;
  return htmlSection(
    isLong ? 'page second long' : 'page second',
    form,
    yield* partsList(analysis),
    isLong ? null : htmlElement('div', { class: 'notes' }, svgText('Notes')),
  );
}

function* appendixOf(analysis: Analysis, correction: Correction | null): Steps<Markup> {
  const of = (...ids: readonly PictureId[]) => figuresOf(analysis, correction, WHOLE, ids);
  const sections = yield* of(...viewsOf(analysis, 'section'));
  const wide = yield* of(...viewsOf(analysis, 'side'), ...viewsOf(analysis, 'plan'));
  const plots = yield* of('transit', 'righting-lever', 'polygon', 'uncertainty', 'trials');
  yield* leversReady(analysis.conditions);
  yield;
  return htmlSection(
    'appendix',
    figureTables(analysis),
    htmlSection('pairs', ...sections),
    htmlSection('wide', ...wide),
    htmlSection('plots', ...plots),
    trialForm(analysis),
  );
}

const viewsOf = ({ conditions }: Analysis, view: 'side' | 'section' | 'plan'): readonly PictureId[] =>
  conditions.map(({ condition }): PictureId => `${condition.id}-${view}`);

function* figuresOf(
  analysis: Analysis,
  correction: Correction | null,
  page: Page,
  only: readonly PictureId[],
): Steps<readonly Markup[]> {
  return (yield* pictureSteps(analysis, { only, correction, page })).map(figure);
}

const figure = ({ svg }: Picture): Markup => htmlElement('figure', {}, svg);
