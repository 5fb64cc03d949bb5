import type { SheetGauge } from '../../server/editor/protocol.ts';
import { renewContent } from './renew.ts';
import { SAME } from './same.ts';
import { readSvg } from './svgDocument.ts';

/** The strip of gauges on the page. */
interface Gauges {
  show(gauges: readonly SheetGauge[]): void;
}

/** @param reveal goes to a place in the file */
export function createGauges(host: HTMLElement, reveal: (path: string) => void): Gauges {
  let shown = new Map<string, string>();
  let shownHeadings = '';
  host.addEventListener('click', ({ target }) => {
    const gauge = target instanceof Element ? target.closest<HTMLElement>('[data-place]') : null;
    if (gauge?.dataset.place !== undefined) reveal(gauge.dataset.place);
  });
  return {
    show(gauges) {
      const wanted = new Map(gauges.map(gauge => [gauge.name, JSON.stringify(gauge)]));
      const headings = [...new Set(gauges.map(({ heading }) => heading))];
      // Groups are known by their order: under other headings all is drawn anew.
      const isInPlace = shownHeadings === headings.join('\n');
      const cellOf = (gauge: SheetGauge): HTMLElement =>
        isInPlace && shown.get(gauge.name) === wanted.get(gauge.name) ? sameCell(gauge) : drawn(gauge);
      const strip = document.createDocumentFragment();
      for (const heading of headings) {
        const group = elementOf('section', 'gauge-group');
        group.append(
          elementOf('h2', 'gauge-heading', heading),
          ...gauges.filter(gauge => gauge.heading === heading).map(cellOf),
        );
        strip.append(group);
      }
      renewContent(host, strip);
      shown = wanted;
      shownHeadings = headings.join('\n');
    },
  };
}

/** A gauge as a button, in a cell whose width tells how it is laid out: all that the bar shows is said in words too. */
function drawn(gauge: SheetGauge): HTMLElement {
  const { name, title, value, proposed, limit, ends, standing, verdict, path, svg } = gauge;
  const button = elementOf(path === null ? 'div' : 'button', `gauge ${standing}`);
  button.dataset.gauge = name;
  if (button instanceof HTMLButtonElement && path !== null) {
    button.type = 'button';
    button.title = standing === 'out' ? 'Go to what is said of it' : 'Go to its limit';
    button.dataset.place = path;
  }
  button.append(
    elementOf('span', 'gauge-title', title),
    ' ',
    elementOf('span', 'gauge-verdict', verdict),
    ' ',
    elementOf('span', 'gauge-value', value),
    ' ',
  );
  if (proposed !== null) button.append(elementOf('span', 'gauge-proposed', `then ${proposed}`), ' ');
  const bar = readSvg(svg);
  if (bar) button.append(document.adoptNode(bar));
  const foot = elementOf('span', 'gauge-foot');
  foot.append(
    elementOf('span', 'gauge-end', ends[0]),
    elementOf('span', 'gauge-limit', limit),
    elementOf('span', 'gauge-end', ends[1]),
  );
  button.append(foot);
  const cell = cellFor(name);
  cell.append(button);
  return cell;
}

/** Stands for a gauge that is on the page as it is. */
function sameCell({ name }: SheetGauge): HTMLElement {
  const cell = cellFor(name);
  cell.setAttribute(SAME, '');
  return cell;
}

function cellFor(name: string): HTMLElement {
  const cell = elementOf('div', 'gauge-cell');
  cell.dataset.gauge = `${name} cell`;
  return cell;
}

function elementOf(name: string, kind: string, words?: string): HTMLElement {
  const made = document.createElement(name);
  made.className = kind;
  if (words !== undefined) made.textContent = words;
  return made;
}
