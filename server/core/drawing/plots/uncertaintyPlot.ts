import { pathKey } from '../../../../schema/path.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import { offWaterline } from '../../judges/trim.ts';
import type { Share, Uncertainty } from '../../uncertainty/spread.ts';
import { angleText, lengthText, percentText, trimWords } from '../../wording/numbers.ts';
import { element, type Markup, text, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { shortened } from '../textWidth.ts';
import { PLOT_WIDTH, plotPicture } from './plotPicture.ts';

/** A figure with its uncertainty. */
interface Open {
  readonly name: string;
  readonly value: string;
  readonly sigma: string;
  readonly uncertainty: Uncertainty;
}

/** Inputs that are shown of a figure; smaller ones stand together in one bar. */
const MOST = 4;
const ROW = 17;
const HEAD = 24;
const BAR = { left: 236, right: PLOT_WIDTH - 56 };

/** Of the four figures that are trimmed to, how well each is known and which inputs leave it open; null where none is. */
export function uncertaintyPlot(analysis: Analysis): Picture | null {
  const figures = openFigures(analysis).filter(({ uncertainty }) => uncertainty.shares.length > 0);
  if (figures.length === 0) return null;
  let y = 52;
  const groups = figures.map(figure => {
    const top = y;
    const rows = barsOf(figure.uncertainty.shares);
    y += HEAD + rows.length * ROW + 8;
    return group(figure, rows, top);
  });
  return plotPicture(
    {
      id: 'uncertainty',
      title: 'How well it is known, and why not better',
      description: figures
        .map(
          ({ name, value, sigma, uncertainty }) =>
            `${name} ${value}, ± ${sigma}, most of it from the ${uncertainty.shares[0]!.input.words}.`,
        )
        .join(' '),
      height: Math.ceil((y + 4) / 20) * 20,
    },
    element(
      'text',
      { class: 'note', x: 12, y: 37 },
      text('± holds two times out of three; bars: each input’s share in it'),
    ),
    together(groups),
  );
}

function openFigures({ boat, surfaced, submerged, uncertainties }: Analysis): readonly Open[] {
  const { units } = boat;
  const known = uncertainties();
  const open: Open[] = [];
  if (surfaced.status === 'afloat' && known?.surfaced) {
    const { draft, trim } = known.surfaced;
    open.push(
      {
        name: 'Draft',
        value: lengthText(draft.value, units),
        sigma: lengthText(draft.sigma, units),
        uncertainty: draft,
      },
      {
        name: 'Surfaced trim',
        value: trimWords(offWaterline(boat, surfaced).trim),
        sigma: angleText(trim.sigma),
        uncertainty: trim,
      },
    );
  }
  if (submerged.status === 'neutral' && known?.submerged) {
    const { fill, trim } = known.submerged;
    if (fill) {
      open.push({
        name: 'Neutral fill',
        value: percentText(fill.value),
        sigma: percentText(fill.sigma),
        uncertainty: fill,
      });
    }
    if (trim) {
      open.push({
        name: 'Submerged trim',
        value: trimWords(trim.value),
        sigma: angleText(trim.sigma),
        uncertainty: trim,
      });
    }
  }
  return open;
}

interface Bar {
  readonly words: string;
  readonly share: number;
  /** The entry that it belongs to; null for several. */
  readonly key: string | null;
}

function barsOf(shares: readonly Share[]): readonly Bar[] {
  const first = shares
    .slice(0, MOST)
    .map(({ input, share }): Bar => ({ words: input.words, share, key: pathKey(input.entry) }));
  const rest = shares.slice(MOST);
  if (rest.length === 0) return first;
  return [
    ...first,
    { words: `${rest.length} more`, share: rest.reduce((sum, { share }) => sum + share, 0), key: null },
  ];
}

function group({ name, value, sigma, uncertainty }: Open, rows: readonly Bar[], top: number): Markup {
  const rough =
    uncertainty.rough === null ? '' : uncertainty.rough === 'curved' ? ', roughly' : ', or it does not rest here';
  return element(
    'g',
    { class: 'uncertainty' },
    element('text', { class: 'uncertainty-head', x: 12, y: top + 14 }, text(`${name} ${value} ± ${sigma}${rough}`)),
    together(rows.map((bar, i) => barOf(bar, top + HEAD + i * ROW))),
  );
}

function barOf({ words, share, key }: Bar, y: number): Markup {
  const said = `${words}: ${percentText(share)}`;
  return element(
    'g',
    { class: 'share', 'data-path': key, role: 'img', 'aria-label': said },
    element('title', {}, text(said)),
    element('text', { class: 'note', x: BAR.left - 6, y: y + 10, 'text-anchor': 'end' }, text(shortened(words, 34))),
    element('rect', { class: 'bar up', x: BAR.left, y: y + 1, width: (BAR.right - BAR.left) * share, height: ROW - 6 }),
    element(
      'text',
      { class: 'tick', x: BAR.left + (BAR.right - BAR.left) * share + 5, y: y + 10 },
      text(percentText(share)),
    ),
  );
}
