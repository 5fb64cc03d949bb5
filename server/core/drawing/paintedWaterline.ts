import type { Boat } from '../boat/boat.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import { offWaterline } from '../figures/offWaterline.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import { lengthText } from '../wording/numbers.ts';
import type { Frame } from './frame.ts';
import { element, type Markup, svgText, together } from './markup.ts';

/** The ends of the painted waterline as one sees it from the side, m. */
export const paintedPoints = ({ waterline, length }: Boat): Loop =>
  waterline
    ? [
        [0, waterline.bow],
        [length, waterline.stern],
      ]
    : [];

export function paintedLine(boat: Boat, frame: Frame): Markup | null {
  const [bow, stern] = paintedPoints(boat).map(frame.at);
  if (!bow || !stern) return null;
  return element(
    'path',
    { class: 'painted', d: `M${bow[0].toFixed(2)} ${bow[1].toFixed(2)}L${stern[0].toFixed(2)} ${stern[1].toFixed(2)}` },
    element('title', {}, svgText('painted waterline')),
  );
}

/** Less than this is nothing to show, m. */
const NOTHING = 0.0003;

/**
 * How far the painted waterline stands out of the water, or lies under it, at the bow and at the stern: beside the ends of the
 * boat, or over them on a page that is only so wide (`within`, user units).
 */
export function offMarks(
  boat: Boat,
  { state: surfaced }: InCondition,
  frame: Frame,
  within: number | null,
): Markup | null {
  if (surfaced.status !== 'afloat') return null;
  const { bowUp, sternUp } = offWaterline(boat, surfaced);
  const [bow, stern] = paintedPoints(boat).map(frame.at);
  if (bowUp === null || sternUp === null || !bow || !stern) return null;
  const water = frame.y(frame.turn.height(surfaced.level, 0));
  const off = (up: number, [x, y]: readonly [number, number], side: -1 | 1): Markup | null => {
    if (Math.abs(up) < NOTHING) return null;
    const words = `${lengthText(Math.abs(up), boat.units)} ${up > 0 ? 'high' : 'low'}`;
    if (within !== null) {
      return element(
        'text',
        {
          class: 'off-words',
          // Clear of the mark of the water's surface.
          x: side < 0 ? 24 : within - 6,
          y: Math.min(y, water) - 7,
          'text-anchor': side < 0 ? 'start' : 'end',
        },
        svgText(words),
      );
    }
    const at = x + side * 14;
    const anchor = side < 0 ? 'end' : 'start';
    const middle = Math.abs(y - water) > 34 ? (y + water) / 2 - 3 : Math.max(y, water) + 20;
    const line = (said: string, dy: number): Markup =>
      element('text', { class: 'off-words', x: at + side * 6, y: middle + dy, 'text-anchor': anchor }, svgText(said));
    return element(
      'g',
      { class: 'off-group' },
      element('path', {
        class: 'off',
        d: `M${(x + side * 3).toFixed(2)} ${y.toFixed(2)}H${(at + side * 4).toFixed(2)}M${at.toFixed(2)} ${y.toFixed(2)}V${water.toFixed(2)}`,
      }),
      line(lengthText(Math.abs(up), boat.units), 0),
      line(up > 0 ? 'high' : 'low', 14),
    );
  };
  return together([off(bowUp, bow, -1), off(sternUp, stern, 1)]);
}
