import type { Point2 } from '../geometry/outline/outline.ts';
import { element, type Markup, svgText } from './markup.ts';

/** Radius of the marks of centres, user units. */
const R = 5.5;

/** Where the letter of a mark stands. */
const LETTERS = {
  left: { dx: -R - 3, dy: 4.5, anchor: 'end' },
  right: { dx: R + 3, dy: 4.5, anchor: 'start' },
  above: { dx: 0, dy: -R - 3, anchor: 'middle' },
} as const;

export type MarkName = 'G' | 'B' | 'M' | 'F';

export const markNames: Readonly<Record<MarkName, string>> = {
  G: 'centre of mass',
  B: 'centre of buoyancy',
  M: 'metacentre',
  F: 'centre of flotation',
};

/** The mark of a centre with its letter: G a quartered disk, B a ring with a dot, M a triangle, F a lozenge. */
export function mark(name: MarkName, [x, y]: Point2, words: string, side: keyof typeof LETTERS): Markup {
  const { dx, dy, anchor } = LETTERS[side];
  return element(
    'g',
    { class: `mark mark-${name}`, role: 'img', 'aria-label': words },
    element('title', {}, svgText(words)),
    symbol(name, [x, y]),
    element('text', { x: x + dx, y: y + dy, 'text-anchor': anchor }, svgText(name)),
  );
}

export function symbol(name: MarkName, [x, y]: Point2): Markup | null {
  const ring = element('circle', { cx: x, cy: y, r: R });
  if (name === 'B') return element('g', {}, ring, element('circle', { class: 'full', cx: x, cy: y, r: 1.8 }));
  if (name === 'M') return element('path', { d: `M${x.toFixed(2)} ${(y - R).toFixed(2)}l${R} ${1.7 * R}h${-2 * R}z` });
  if (name === 'F')
    return element('path', { d: `M${x.toFixed(2)} ${(y - R).toFixed(2)}l${R} ${R}l${-R} ${R}l${-R} ${-R}z` });
  const quarter = (dx: number, dy: number): string =>
    `M${x.toFixed(2)} ${y.toFixed(2)}h${dx * R}a${R} ${R} 0 0 ${dx * dy > 0 ? 1 : 0} ${-dx * R} ${dy * R}z`;
  return element('g', {}, ring, element('path', { class: 'full', d: quarter(1, 1) + quarter(-1, -1) }));
}
