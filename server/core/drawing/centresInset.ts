import type { FileUnits } from '../../../schema/units.ts';
import type { Point2 } from '../geometry/outline/outline.ts';
import { lengthText } from '../wording/numbers.ts';
import { type MarkName, symbol } from './marks.ts';
import { element, type Markup, short, svgText, together } from './markup.ts';
import { textWidth } from './textWidth.ts';
import { textLines } from './wrapped.ts';

/** A centre in a picture: where it is in user units, and on the paper in m, to the right and up. */
export interface PlacedCentre {
  readonly name: MarkName;
  readonly at: Point2;
  readonly paper: Point2;
}

/** Marks whose middles are nearer than this, user units, would print over each other with their letters. */
const CLOSE = 17;
const BESIDE = 28;

/** The directions of a view on the paper, more first: to the right, and up. */
export type Ways = readonly [right: readonly [string, string], up: readonly [string, string]];

interface InsetWords {
  readonly units: FileUnits;
  readonly ways: Ways;
}

/** Of its picture; what it says stands to the right of that. */
const PICTURE = { width: 104, height: 86 };
const PAD = 20;
/** Enlarged more often than this, nothing is left of where in the boat they are. */
const MOST = 200;

/** Centres that are too near to another to be told apart at the picture's scale. */
export function closeCentres(centres: readonly PlacedCentre[]): readonly PlacedCentre[] {
  const within = (distance: number, some: readonly PlacedCentre[]): readonly PlacedCentre[] =>
    centres.filter(({ at, name }) =>
      some.some(other => other.name !== name && Math.hypot(at[0] - other.at[0], at[1] - other.at[1]) < distance),
    );
  const close = within(CLOSE, centres);
  // One beside them would stand in the ring, or under its letters.
  return close.length === 0 ? [] : centres.filter(one => close.includes(one) || within(BESIDE, close).includes(one));
}

/** The close centres enlarged, each with its letter, and how far they are from G, or from the first of them. */
export function centresInset(
  centres: readonly PlacedCentre[],
  [left, top]: Point2,
  scale: number,
  words: InsetWords,
): { readonly markup: Markup; readonly width: number; readonly height: number } | null {
  const from = centres.find(({ name }) => name === 'G') ?? centres[0];
  if (!from || centres.length < 2) return null;
  const others = centres.filter(one => one !== from);
  const [xs, ys] = [0, 1].map(axis => centres.map(({ paper }) => paper[axis as 0 | 1])) as [number[], number[]];
  const spanOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const middleOf = (values: readonly number[]): number => (Math.max(...values) + Math.min(...values)) / 2;
  const room: Point2 = [PICTURE.width - 2 * PAD, PICTURE.height - 2 * PAD];
  const wanted = Math.min(room[0] / Math.max(spanOf(xs), 1e-9), room[1] / Math.max(spanOf(ys), 1e-9), MOST * scale);
  const times = roundDown(wanted / scale);
  const at = ([x, y]: Point2): Point2 => [
    left + PICTURE.width / 2 + (x - middleOf(xs)) * times * scale,
    top + PICTURE.height / 2 - (y - middleOf(ys)) * times * scale,
  ];
  const origin = at(from.paper);
  const lines = [
    `${times} times`,
    ...others.flatMap(other => [`${other.name} from ${from.name}:`, ...offWords(other, from, words)]),
  ];
  const width = PICTURE.width + Math.max(...lines.map(line => textWidth(line, 12))) + 8;
  const height = Math.max(PICTURE.height, 15 * lines.length + 10);
  const markup = element(
    'g',
    { class: 'centres-inset' },
    element('rect', { class: 'inset', x: left, y: top, width, height, rx: 3 }),
    // How far each stands off G: upright and along, the sides of one corner.
    together(
      others.map(({ paper }) => {
        const [x, y] = at(paper);
        return element('path', {
          class: 'leader',
          d: `M${short(origin[0])} ${short(origin[1])}V${short(y)}H${short(x)}`,
        });
      }),
    ),
    together(centres.map(({ name, paper }) => element('g', { class: 'mark' }, symbol(name, at(paper))))),
    together(
      letters(
        centres.map(({ name, paper }) => ({ name, at: at(paper) })),
        spanOf(xs) > spanOf(ys),
      ),
    ),
    textLines(lines, { kind: 'key-words', x: left + PICTURE.width, y: top + 18, leading: 15 }),
  );
  return { markup, width, height };
}

/** Letters beside their signs, clear of the lines between these: over and under a row of them, on both sides of a column. */
function letters(
  marks: readonly { readonly name: MarkName; readonly at: Point2 }[],
  isRow: boolean,
): readonly Markup[] {
  const along = isRow ? 0 : 1;
  const sorted = [...marks].sort((a, b) => a.at[along] - b.at[along]);
  return sorted.map(({ name, at: [x, y] }, i) => {
    const side = i % 2 === 0 ? -1 : 1;
    const place = isRow
      ? { x, y: y + (side < 0 ? -10 : 20), 'text-anchor': 'middle' }
      : { x: x + side * 11, y: y + 5, 'text-anchor': side < 0 ? 'end' : 'start' };
    return element('text', { class: 'inset-letter', ...place }, svgText(name));
  });
}

/** How a centre stands off another on the paper, in a line each: "14 mm above", "0.2 mm forward". */
function offWords({ paper }: PlacedCentre, from: PlacedCentre, { units, ways }: InsetWords): readonly string[] {
  const said = [1, 0].flatMap(axis => {
    const size = paper[axis as 0 | 1] - from.paper[axis as 0 | 1];
    const words = lengthText(Math.abs(size), units);
    return /[1-9]/.test(words) ? [`${words} ${ways[axis as 0 | 1][size > 0 ? 0 : 1]}`] : [];
  });
  return said.length === 0 ? ['at the same place'] : said;
}

/** A round number of times: 2, 3, 4, 5, 6, 8, 10, 15, 20 and so on; at least 2. */
function roundDown(times: number): number {
  const good = [2, 3, 4, 5, 6, 8, 10, 15, 20, 30, 40, 60, 80, 100, 150, MOST];
  return good.filter(one => one <= times).at(-1) ?? 2;
}
