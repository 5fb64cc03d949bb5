import { type MarkName, markNames, symbol } from './marks.ts';
import { element, type Markup, svgText, together } from './markup.ts';
import { texture } from './texture.ts';
import { textWidth } from './textWidth.ts';

export type LegendKey = MarkName | 'lead' | 'foam' | 'part' | 'ballast' | 'bay' | 'ghost' | 'painted' | 'water';

const WORDS: Readonly<Record<Exclude<LegendKey, MarkName>, string>> = {
  lead: 'lead',
  foam: 'foam',
  part: 'equipment',
  ballast: 'tank water',
  bay: 'bay',
  ghost: 'proposed',
  painted: 'painted waterline',
  water: 'water’s edge',
};

const TYPE = 12;
const ROW = 20;
const MARGIN = 14;

/** What the signs of a picture mean, in rows. */
export function legend(
  width: number,
  top: number,
  keys: readonly LegendKey[],
): { readonly markup: Markup; readonly height: number } {
  let [x, row] = [MARGIN, 0];
  const items = keys.map(key => {
    const words = isMark(key) ? `${key} ${markNames[key]}` : WORDS[key];
    const wide = 28 + 0.84 * textWidth(words, TYPE) + 10;
    if (x + wide > width && x > MARGIN) [x, row] = [MARGIN, row + 1];
    const at = x;
    x += wide;
    const y = top + row * ROW + 11;
    return together([sign(key, at, y), element('text', { class: 'key-words', x: at + 28, y: y + 4 }, svgText(words))]);
  });
  return {
    markup: element('g', { class: 'legend', 'aria-hidden': 'true' }, together(items)),
    height: keys.length === 0 ? 0 : (row + 1) * ROW,
  };
}

function sign(key: LegendKey, x: number, y: number): Markup {
  const box = { class: 'body', x, y: y - 6, width: 22, height: 12, rx: 1 };
  if (isMark(key)) return element('g', { class: 'mark' }, symbol(key, [x + 14, y]));
  switch (key) {
    case 'painted':
      return element('path', { class: 'painted', d: `M${x} ${y}h22` });
    case 'water':
      return element('path', { class: 'surface', d: `M${x} ${y}h22` });
    case 'bay':
      return element('g', { class: 'bay' }, element('rect', box));
    case 'ghost':
      return element('g', { class: 'ghost' }, element('rect', box));
    default:
      return element(
        'g',
        { class: key },
        element('rect', box),
        texture(key, [
          [
            [x, y - 6],
            [x + 22, y - 6],
            [x + 22, y + 6],
            [x, y + 6],
          ],
        ]),
      );
  }
}

const isMark = (key: LegendKey): key is MarkName => key in markNames;
