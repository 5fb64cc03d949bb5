import { capital } from '../../wording/capital.ts';
import type { DrawnGauge } from '../gauges/gaugeStrip.ts';
import { htmlElement, type Markup, svgText } from '../markup.ts';
import { prose } from './html.ts';

/** The strip of gauges on paper. */
export const gaugeGrid = (gauges: readonly DrawnGauge[]): Markup | null =>
  gauges.length === 0 ? null : htmlElement('div', { class: 'gauges' }, ...gauges.map(drawn));

const drawn = ({ name, value, proposed, limit, ends, standing, verdict, svg }: DrawnGauge): Markup =>
  htmlElement(
    'div',
    { class: `gauge ${standing}` },
    htmlElement(
      'p',
      { class: 'gauge-head' },
      htmlElement('strong', {}, svgText(capital(name))),
      htmlElement('span', { class: standing === 'out' ? 'verdict out' : 'verdict' }, svgText(verdict)),
    ),
    htmlElement('p', {}, prose(value)),
    proposed === null ? null : htmlElement('p', { class: 'gauge-proposed' }, prose(`then ${proposed}`)),
    svg,
    htmlElement(
      'p',
      { class: 'gauge-foot' },
      ...[ends[0], limit, ends[1]].map(words => htmlElement('span', {}, prose(words))),
    ),
  );
