import { htmlElement, type Markup, text, together } from '../markup.ts';

export const heading = (words: string): Markup => htmlElement('h2', {}, text(words));

export const paragraph = (words: string, kind?: string): Markup => htmlElement('p', { class: kind }, text(words));

export const section = (kind: string, ...content: readonly (Markup | null)[]): Markup =>
  htmlElement('section', { class: kind }, ...content);

/** A table of texts with a head. */
export const table = (kind: string, head: readonly string[], rows: readonly (readonly string[])[]): Markup =>
  htmlElement(
    'table',
    { class: kind },
    htmlElement(
      'thead',
      {},
      htmlElement('tr', {}, ...head.map(words => htmlElement('th', { scope: 'col' }, text(words)))),
    ),
    htmlElement(
      'tbody',
      {},
      together(rows.map(row => htmlElement('tr', {}, ...row.map(words => htmlElement('td', {}, text(words)))))),
    ),
  );

/** A box to tick on paper. */
export const tickBox: Markup = htmlElement('span', { class: 'tick-box' });
