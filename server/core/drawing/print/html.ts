import { dimensionOf } from '../../../../schema/units.ts';
import { htmlElement, type Markup, svgText, together } from '../markup.ts';

export const heading = (words: string): Markup => htmlElement('h2', {}, svgText(words));

/** Words in which no line ends between a figure and its unit, within a figure such as 1 3/16, or after a ±. */
export const prose = (words: string): Markup =>
  svgText(
    words
      .replaceAll('± ', `±${UNBROKEN}`)
      .replace(/(?<=\d) (?=([^\s,;:.)”]+))/g, (space, word: string) =>
        word === '%' || word.startsWith('±') || FRACTION.test(word) || dimensionOf(word.split('·')[0]!)
          ? UNBROKEN
          : space,
      ),
  );

const UNBROKEN = '\u00a0';
const FRACTION = /^\d+\/\d+$/;

export const paragraph = (words: string, kind?: string): Markup => htmlElement('p', { class: kind }, prose(words));

export const htmlSection = (kind: string, ...content: readonly (Markup | null)[]): Markup =>
  htmlElement('section', { class: kind }, ...content);

/** A table of texts with a head. */
export const htmlTable = (kind: string, head: readonly string[], rows: readonly (readonly string[])[]): Markup =>
  htmlElement(
    'table',
    { class: kind },
    htmlElement(
      'thead',
      {},
      htmlElement('tr', {}, ...head.map(words => htmlElement('th', { scope: 'col' }, svgText(words)))),
    ),
    htmlElement(
      'tbody',
      {},
      together(rows.map(row => htmlElement('tr', {}, ...row.map(words => htmlElement('td', {}, prose(words)))))),
    ),
  );

/** A box to tick on paper. */
export const tickBox: Markup = htmlElement('span', { class: 'tick-box' });
