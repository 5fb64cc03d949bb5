import type { Analysis } from '../../analysis/analysis.ts';
import type { Correction } from '../../corrections/correction.ts';
import { htmlElement, type Markup, svgText, together } from '../markup.ts';
import { expectedReadings } from './expected.ts';
import { heading, htmlSection, paragraph, prose } from './html.ts';

/** Blanks for so many trials. */
const TRIALS = 3;

/** The form for bench and pool: what is read off the boat, what it should show, and a blank for each trial. */
export function poolForm(analysis: Analysis, correction: Correction | null): Markup {
  const rows = expectedReadings(analysis, correction);
  const next = analysis.said.openQuestions.find(({ code }) => code === 'weigh-next');
  const blanks = Array.from({ length: TRIALS }, () => htmlElement('td', {}));
  const head = ['', 'reading', 'expected', ...(correction ? ['with the proposal'] : []), ...BLANKS];
  const expected = correction ? ['', ''] : [''];
  const row = (where: string, what: string, values: readonly string[]): Markup =>
    htmlElement(
      'tr',
      {},
      htmlElement('th', { scope: 'row' }, svgText(where)),
      htmlElement('td', {}, prose(what)),
      ...values.map(words => htmlElement('td', {}, prose(words))),
      ...blanks,
    );
  return htmlSection(
    'trial',
    heading('At the pool'),
    next ? htmlElement('p', {}, htmlElement('strong', {}, svgText('Next. ')), prose(next.message)) : null,
    htmlElement(
      'table',
      { class: `blank form${correction ? ' proposed' : ''}` },
      htmlElement(
        'thead',
        {},
        htmlElement('tr', {}, ...head.map(words => htmlElement('th', { scope: 'col' }, svgText(words)))),
      ),
      htmlElement(
        'tbody',
        {},
        row('Day', 'date, place, water', expected),
        together(
          rows.map(({ where, what, now, proposed }, i) =>
            row(rows[i - 1]?.where === where ? '' : where, what, proposed === null ? [now] : [now, proposed]),
          ),
        ),
        row('Aboard', 'loose lead or foam: what, where', expected),
      ),
    ),
    paragraph(
      'Read the water at rest, near both ends, with the tanks as on the surface; under water when it neither rises nor sinks, then pour the tank water into a jug. The first dive after a change is on a line, in shallow clear water. Keep mains leads away from the water; lithium cells stay dry, and one that got wet leaves the boat, outdoors, away from people. Never leave children alone at the water. The pool’s and the club’s rules come first.',
      'small',
    ),
  );
}

const BLANKS = Array.from({ length: TRIALS }, (_, i) => `trial ${i + 1}`);
