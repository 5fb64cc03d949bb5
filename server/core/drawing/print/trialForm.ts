import type { Analysis } from '../../analysis/analysis.ts';
import { htmlElement, type Markup, svgText } from '../markup.ts';
import { heading, htmlSection, htmlTable, paragraph, prose } from './html.ts';

const BLANK_ROWS = 6;

/** A form for the bench and the pool: what to read off the boat, what would tell the most first, in the order of the keys under `trials:` of the boat file. */
export function trialForm(analysis: Analysis): Markup {
  const { units, name } = analysis.boat;
  const next = analysis.said.openQuestions.find(({ code }) => code === 'weigh-next');
  const isImperial = units.length === 'in' || units.length === 'ft';
  const lengths = isImperial ? 'inches' : units.length === 'cm' ? 'centimetres' : 'millimetres';
  const blank = (head: readonly string[], rows: number): Markup =>
    htmlTable(
      'blank',
      head,
      Array.from({ length: rows }, () => head.map(() => '')),
    );
  return htmlSection(
    'trial',
    heading(`At the pool${name === '' ? '' : `: ${name}`}`),
    fillIn(['Date', 'Place', `Water: fresh or sea, ${isImperial ? '°F' : '°C'}`, 'Who']),
    next
      ? htmlElement('p', {}, htmlElement('strong', {}, svgText('What tells the most. ')), prose(next.message))
      : null,
    htmlElement('h3', {}, svgText('On the bench, drained and dry, the whole boat')),
    paragraph(
      `On two scales: an edge across each under the keel, the boat level; where the edges are from the bow tip, in ${lengths}, and what each scale shows less its edge. On one scale: its mass. On a knife edge: where it balances. Lift a heavy boat with two, the batteries out.`,
    ),
    blank(['forward edge at', 'scale shows', 'after edge at', 'scale shows', 'knife edge at'], 2),
    htmlElement('h3', {}, svgText('Hung up under water, flooded')),
    paragraph(
      'On two spring balances, keel level, tanks full or as noted; what each shows less its line. Keep mains leads away from the water.',
    ),
    blank(['tank fill', 'forward hook at', 'balance shows', 'after hook at', 'balance shows'], 2),
    htmlElement('h3', {}, svgText('Afloat, tanks as on the surface')),
    paragraph(
      `Read how high the water stands on the hull near each end: height of the surface above the baseline and place along the hull from the bow tip, both in ${lengths}. Wait until the boat is at rest.`,
    ),
    blank(
      [
        'forward mark at',
        'water height there',
        'after mark at',
        'water height there',
        'heel °, to port or starboard',
        'loose lead or foam aboard: what, where',
      ],
      BLANK_ROWS,
    ),
    htmlElement('h3', {}, svgText('Under water, hanging neutral')),
    paragraph(
      `Fill the tanks until the boat neither rises nor sinks. Read the trim and the heel, then pour the tank water into a measuring jug${isImperial ? '' : ' (ml)'}.`,
    ),
    blank(
      [
        'tank water or fill',
        'trim °, bow up or down',
        'heel °, to port or starboard',
        'what still stood out',
        'loose lead or foam aboard: what, where',
      ],
      BLANK_ROWS - 2,
    ),
    htmlElement('h3', {}, svgText('Inclining: a weight moved athwart, afloat')),
    blank(['weight', `moved, ${lengths}, to port or starboard`, 'heel that it made, °'], BLANK_ROWS - 2),
    htmlElement(
      'div',
      { class: 'caution' },
      paragraph('Mind'),
      paragraph(
        'The first dive after a change is on a line, in shallow clear water. Wash your hands after handling lead. Keep lithium cells dry, and take one that got wet out of the boat, outdoors, away from people. Never leave children alone at the water. The pool’s and the club’s rules come first.',
      ),
    ),
  );
}

const fillIn = (words: readonly string[]): Markup =>
  htmlElement('div', { class: 'fill-in' }, ...words.map(word => htmlElement('span', {}, svgText(`${word}:`))));
