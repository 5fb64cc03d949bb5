import type { Analysis } from '../../analysis/analysis.ts';
import { fromStationZero } from '../../wording/places.ts';
import { htmlElement, type Markup, svgText } from '../markup.ts';
import { heading, htmlSection, htmlTable, paragraph } from './html.ts';

const BLANK_ROWS = 5;

/** Blank forms for all that can be read off a boat, in the order of the keys under `trials:` of the boat file. */
export function trialForm(analysis: Analysis): Markup {
  const { units } = analysis.boat;
  const isImperial = units.length === 'in' || units.length === 'ft';
  const lengths = isImperial ? 'inches' : units.length === 'cm' ? 'centimetres' : 'millimetres';
  const from = fromStationZero(units);
  const blank = (head: readonly string[], rows: number): Markup =>
    htmlTable(
      'blank',
      head,
      Array.from({ length: rows }, () => head.map(() => '')),
    );
  return htmlSection(
    'trial-forms',
    heading('Blank forms'),
    fillIn(['Date', 'Place', `Water: fresh or sea, ${isImperial ? '°F' : '°C'}`, 'Who']),
    htmlElement('h3', {}, svgText('On the bench, drained and dry, the whole boat')),
    paragraph(
      `On two scales: an edge across each under the keel, the boat level; where the edges are, ${from}, in ${lengths}, and what each scale shows less its edge. On one scale: its mass. On a knife edge: where it balances. Lift a heavy boat with two, the batteries out.`,
    ),
    blank(['forward edge at', 'scale shows', 'after edge at', 'scale shows', 'knife edge at'], 2),
    htmlElement('h3', {}, svgText('Hung up under water, flooded')),
    paragraph(
      'On two spring balances, keel level, tanks full or as noted; what each shows less its line. Keep mains leads away from the water.',
    ),
    blank(['tank fill', 'forward hook at', 'balance shows', 'after hook at', 'balance shows'], 2),
    htmlElement('h3', {}, svgText('Afloat, tanks as on the surface')),
    paragraph(
      `Read how high the water stands on the hull near each end: height of the surface ${units.origin?.heights === 'waterline' ? 'over the painted waterline amidships' : 'above the baseline'} and place along the hull ${from}, both in ${lengths}. Wait until the boat is at rest.`,
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
  );
}

const fillIn = (words: readonly string[]): Markup =>
  htmlElement('div', { class: 'fill-in' }, ...words.map(word => htmlElement('span', {}, svgText(`${word}:`))));
