import { markNames, symbol } from './marks.ts';
import { element, type Markup, text, together } from './markup.ts';
import { fillOf } from './patterns.ts';
import { textWidth } from './textWidth.ts';

export type LegendKey = 'G' | 'B' | 'M' | 'lead' | 'foam' | 'part' | 'ballast' | 'bay' | 'ghost' | 'painted';

const WORDS: Readonly<Record<Exclude<LegendKey, 'G' | 'B' | 'M'>, string>> = {
  lead: 'lead',
  foam: 'foam',
  part: 'equipment',
  ballast: 'tank water',
  bay: 'bay',
  ghost: 'proposed',
  painted: 'painted waterline',
};

const TYPE = 12;
const ROW = 20;
const MARGIN = 14;

/** What the signs of a picture mean, in rows. */
export function legend(
  picture: string,
  width: number,
  top: number,
  keys: readonly LegendKey[],
): { readonly markup: Markup; readonly height: number } {
  let [x, row] = [MARGIN, 0];
  const items = keys.map(key => {
    const words = key === 'G' || key === 'B' || key === 'M' ? `${key} ${markNames[key]}` : WORDS[key];
    const wide = 30 + textWidth(words, TYPE) + 14;
    if (x + wide > width && x > MARGIN) [x, row] = [MARGIN, row + 1];
    const at = x;
    x += wide;
    const y = top + row * ROW + 11;
    return together([sign(key, picture, at, y), element('text', { class: 'note', x: at + 28, y: y + 4 }, text(words))]);
  });
  return {
    markup: element('g', { class: 'legend', 'aria-hidden': 'true' }, together(items)),
    height: keys.length === 0 ? 0 : (row + 1) * ROW,
  };
}

function sign(key: LegendKey, picture: string, x: number, y: number): Markup {
  const box = { class: 'body', x, y: y - 6, width: 22, height: 12, rx: 1 };
  switch (key) {
    case 'G':
    case 'B':
    case 'M':
      return element('g', { class: 'mark' }, symbol(key, [x + 14, y]));
    case 'painted':
      return element('path', { class: 'painted', d: `M${x} ${y}h22` });
    case 'bay':
      return element('g', { class: 'bay' }, element('rect', box));
    case 'ghost':
      return element('g', { class: 'ghost' }, element('rect', box));
    default:
      return element('rect', { ...box, fill: fillOf(picture, key) });
  }
}
