import { pathKey } from '../../../../schema/path.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import { figuredIn, nameIn, plainText } from '../../figures/figured.ts';
import type { Share, Uncertainty } from '../../uncertainty/spread.ts';
import { capital } from '../../wording/capital.ts';
import { percentText } from '../../wording/numbers.ts';
import { element, type Markup, svgText, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { textWidth } from '../textWidth.ts';
import { linesOf, textLines } from '../wrapped.ts';
import { plotPicture } from './plotPicture.ts';

/** A figure with its uncertainty. */
interface Open {
  readonly name: string;
  readonly value: string;
  readonly sigma: string;
  readonly uncertainty: Uncertainty;
}

/** Inputs that are shown of a figure; smaller ones stand together in one bar. */
const MOST = 4;
/** Where names and bars stand: side by side, or, where that has no room, one over the other. */
interface Layout {
  readonly head: number;
  readonly row: number;
  readonly left: number;
  readonly right: number;
  readonly isStacked: boolean;
}

/** Room for names beside their bars, and the most of the width that it may take, user units. */
const NAMES = 236;
const MOST_NAMES = 0.65;

function layoutFor(width: number, bars: readonly Bar[]): Layout {
  const right = width - 56;
  const left = Math.max(NAMES, ...bars.map(({ words }) => textWidth(words, 13) + 12));
  return width < 400 || left > MOST_NAMES * width
    ? { head: 40, row: 32, left: 20, right, isStacked: true }
    : { head: 24, row: 17, left, right, isStacked: false };
}

/** Of the figures that are trimmed to, how well each is known and which inputs leave it open; null where none is. */
export function uncertaintyPlot(analysis: Analysis, width: number): Picture | null {
  const figures = openFigures(analysis).filter(({ uncertainty }) => uncertainty.shares.length > 0);
  if (figures.length === 0) return null;
  const bars = figures.map(({ uncertainty }) => barsOf(uncertainty.shares));
  const layout = layoutFor(width, bars.flat());
  const note = linesOf('± holds two times out of three; bars: each input’s share in it', 13, width - 24);
  let y = 36 + 16 * note.length;
  const groups = figures.map((figure, i) => {
    const top = y;
    const rows = bars[i]!;
    y += layout.head + rows.length * layout.row + 8;
    return group(figure, rows, top, layout);
  });
  return plotPicture(
    {
      id: 'uncertainty',
      title: 'How well it is known, and why',
      description: figures
        .map(
          ({ name, value, sigma, uncertainty }) =>
            `${name} ${value}, ± ${sigma}, most of it from the ${uncertainty.shares[0]!.input.words}.`,
        )
        .join(' '),
      width,
      height: Math.ceil((y + 4) / 20) * 20,
    },
    textLines(note, { kind: 'note', x: 12, y: 37, leading: 16 }),
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

function group({ name, value, sigma, uncertainty }: Open, rows: readonly Bar[], top: number, layout: Layout): Markup {
  const rough =
    uncertainty.rough === null ? '' : uncertainty.rough === 'curved' ? ', roughly' : ', or it does not rest here';
  const told = `${value} ± ${sigma}${rough}`;
  return element(
    'g',
    { class: 'uncertainty' },
    textLines(layout.isStacked ? [name, told] : [`${name} ${told}`], {
      kind: 'uncertainty-head',
      x: 12,
      y: top + 14,
      leading: 16,
    }),
    together(rows.map((bar, i) => barOf(bar, top + layout.head + i * layout.row, layout))),
  );
}

function barOf({ words, share, key }: Bar, y: number, { left, right, isStacked }: Layout): Markup {
  const at = isStacked ? y + 15 : y;
  const end = left + (right - left) * share;
  const said = `${words} ${percentText(share)}`;
  return element(
    'g',
    { class: 'share', 'data-path': key, role: 'img', 'aria-label': said },
    isStacked
      ? element('text', { class: 'note', 'aria-hidden': 'true', x: left, y: y + 11 }, svgText(`${words} `))
      : element(
          'text',
          { class: 'note', 'aria-hidden': 'true', x: left - 6, y: y + 10, 'text-anchor': 'end' },
          svgText(`${words} `),
        ),
    element('rect', { class: 'bar up', x: left, y: at + 1, width: end - left, height: 11 }),
    element('text', { class: 'tick', 'aria-hidden': 'true', x: end + 5, y: at + 10 }, svgText(percentText(share))),
  );
}
