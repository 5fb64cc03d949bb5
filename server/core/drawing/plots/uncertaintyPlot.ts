import { pathKey } from '../../../../schema/path.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import { figuredIn, nameIn, plainText } from '../../figures/figured.ts';
import type { Share, Uncertainty } from '../../uncertainty/spread.ts';
import { capital } from '../../wording/capital.ts';
import { percentText } from '../../wording/numbers.ts';
import { element, type Markup, svgText, together } from '../markup.ts';
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

/** Of the figures that are trimmed to, how well each is known and which inputs leave it open; null where none is. */
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
      svgText('± holds two times out of three; bars: each input’s share in it'),
    ),
    together(groups),
  );
}

function openFigures({ boat, conditions, scheme, uncertainties }: Analysis): readonly Open[] {
  const known = uncertainties;
  const all = conditions
    .flatMap(inCondition => figuredIn(boat, inCondition, scheme.figures))
    .filter(({ figure }) => figure.isTrimmedTo);
  return all.flatMap(figured => {
    const { figure, condition, units } = figured;
    const uncertainty = known?.conditions[condition.id]?.[figure.id];
    if (!uncertainty) return [];
    const isOnly = all.every(other => other === figured || other.figure.words !== figure.words);
    return [
      {
        name: capital(isOnly ? figure.words : nameIn(condition, figure)),
        value: plainText(figured),
        sigma: figure.kind.size(uncertainty.sigma, units),
        uncertainty,
      },
    ];
  });
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
    element('text', { class: 'uncertainty-head', x: 12, y: top + 14 }, svgText(`${name} ${value} ± ${sigma}${rough}`)),
    together(rows.map((bar, i) => barOf(bar, top + HEAD + i * ROW))),
  );
}

function barOf({ words, share, key }: Bar, y: number): Markup {
  const said = `${words}: ${percentText(share)}`;
  return element(
    'g',
    { class: 'share', 'data-path': key, role: 'img', 'aria-label': said },
    element('title', {}, svgText(said)),
    element('text', { class: 'note', x: BAR.left - 6, y: y + 10, 'text-anchor': 'end' }, svgText(shortened(words, 34))),
    element('rect', { class: 'bar up', x: BAR.left, y: y + 1, width: (BAR.right - BAR.left) * share, height: ROW - 6 }),
    element(
      'text',
      { class: 'tick', x: BAR.left + (BAR.right - BAR.left) * share + 5, y: y + 10 },
      svgText(percentText(share)),
    ),
  );
}
