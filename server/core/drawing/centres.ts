import type { Point2 } from '../geometry/outline/outline.ts';
import { closeCentres, type PlacedCentre } from './centresInset.ts';
import type { Frame } from './frame.ts';
import { type MarkName, mark } from './marks.ts';
import { element, type Markup, svgText, together } from './markup.ts';
import { turned } from './turn.ts';

/** A centre to mark: where it is in the seen axes, m, and what it is in words. */
export interface Centre {
  readonly name: MarkName;
  readonly point: Point2;
  readonly words: string;
}

/** Centres where they are in a picture, and those among them that only an inset can tell apart. */
interface Centres {
  readonly markup: Markup;
  readonly close: readonly PlacedCentre[];
}

const SIDES = { B: 'left', G: 'right', M: 'right', F: 'above' } as const;
/** Of the ring round close centres, user units beyond them. */
const AROUND = 9;

/** Each centre with its sign and letter; close ones as dots in a ring that names them, for their signs would overprint. */
export function drawCentres(centres: readonly Centre[], frame: Frame): Centres {
  const placed = centres.map(centre => ({
    ...centre,
    at: frame.at(centre.point),
    paper: turned(frame.turn, centre.point),
  }));
  const close = closeCentres(placed);
  const dots = placed.filter(one => close.includes(one));
  return {
    close,
    markup: together([
      ...placed.filter(one => !close.includes(one)).map(({ name, at, words }) => mark(name, at, words, SIDES[name])),
      dots.length > 0 ? ringOf(dots, placed) : null,
    ]),
  };
}

function ringOf(dots: readonly (PlacedCentre & Pick<Centre, 'words'>)[], all: readonly PlacedCentre[]): Markup {
  const [xs, ys] = [dots.map(({ at }) => at[0]), dots.map(({ at }) => at[1])];
  const [x, y] = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
  const r = AROUND + Math.max(...dots.map(({ at }) => Math.hypot(at[0] - x, at[1] - y)));
  // On the side where no other centre is.
  const isLeft = all.some(({ at }) => at[0] > x + r && Math.abs(at[1] - y) < r + 12);
  return element(
    'g',
    { class: 'close-centres' },
    element('circle', { class: 'centres-ring', cx: x, cy: y, r }),
    together(
      dots.map(({ name, at, words }) =>
        element(
          'g',
          { class: `mark mark-${name}`, role: 'img', 'aria-label': words },
          element('title', {}, svgText(words)),
          element('circle', { class: 'full', cx: at[0], cy: at[1], r: 2 }),
        ),
      ),
    ),
    element(
      'text',
      { class: 'ring-words', x: isLeft ? x - r - 4 : x + r + 4, y: y + 5, 'text-anchor': isLeft ? 'end' : 'start' },
      svgText(dots.map(({ name }) => name).join(', ')),
    ),
  );
}
