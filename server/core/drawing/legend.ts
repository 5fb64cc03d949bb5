import type { Drawn } from './entryGroup.ts';
import { type MarkName, markNames, symbol } from './marks.ts';
import { element, type Markup, short, svgText, together } from './markup.ts';
import { texture } from './texture.ts';
import { textWidth } from './textWidth.ts';
import type { ThingKind } from './things.ts';
import { wantedSign } from './wantedMark.ts';

export type LegendKey =
  | MarkName
  | ThingKind
  | 'ballast'
  | 'ghost'
  | 'painted'
  | 'water'
  | 'beyond'
  | 'hidden'
  | 'wanted';

const WORDS: Readonly<Record<Exclude<LegendKey, MarkName>, string>> = {
  shell: 'free-flooding hull',
  compartment: 'dry compartment',
  tank: 'tank',
  lead: 'lead',
  foam: 'foam',
  part: 'equipment',
  ballast: 'tank water',
  bay: 'bay',
  ghost: 'proposed',
  painted: 'painted waterline',
  wanted: 'still wanted: its centre',
  water: 'water’s edge',
  beyond: 'greatest outline',
  hidden: 'hidden edge',
};

const TYPE = 12;
const ROW = 20;

/** Where a legend stands, user units. */
interface LegendRoom {
  readonly left: number;
  readonly right: number;
  readonly top: number;
}

/** What the signs of a picture mean, in rows. */
export function legend(
  { left, right, top }: LegendRoom,
  keys: readonly LegendKey[],
): { readonly markup: Markup; readonly height: number } {
  let [x, row] = [left, 0];
  const items = keys.map(key => {
    const words = isMark(key) ? `${key} ${markNames[key]}` : WORDS[key];
    const wide = 28 + textWidth(words, TYPE) + 12;
    if (x + wide > right && x > left) [x, row] = [left, row + 1];
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

/** The signs of what is drawn of a boat, each once. */
export function signsOf(
  drawn: readonly Drawn[],
  { hasWater, hasHidden }: { readonly hasWater: boolean; readonly hasHidden: boolean },
): readonly LegendKey[] {
  const has = (kind: ThingKind): boolean =>
    drawn.some(({ thing, correction }) => correction === null && thing.kind === kind);
  const keys: readonly (readonly [LegendKey, boolean])[] = [
    ['shell', has('shell')],
    ['hidden', hasHidden],
    ['compartment', has('compartment')],
    ['tank', has('tank')],
    ['lead', has('lead')],
    ['foam', has('foam')],
    ['part', has('part')],
    ['ballast', hasWater],
    ['bay', has('bay')],
    ['ghost', drawn.some(({ correction }) => correction !== null)],
  ];
  return keys.flatMap(([key, isUsed]) => (isUsed ? [key] : []));
}

function sign(key: LegendKey, x: number, y: number): Markup {
  const box = { class: 'body', x, y: y - 6, width: 22, height: 12, rx: 1 };
  if (isMark(key)) return element('g', { class: 'mark' }, symbol(key, [x + 14, y]));
  switch (key) {
    case 'painted':
      return element('path', { class: 'painted', d: `M${short(x)} ${short(y)}h22` });
    case 'water':
      return element('path', { class: 'surface', d: `M${short(x)} ${short(y)}h22` });
    case 'hidden':
      return element('path', { class: 'hidden-rim', d: `M${short(x)} ${short(y)}h22` });
    case 'beyond':
      return element('path', { class: 'beyond', d: `M${short(x)} ${short(y)}h22` });
    case 'wanted':
      return element('g', { class: 'still-wanted' }, wantedSign([x + 12, y], 6));
    case 'shell':
    case 'compartment':
    case 'tank':
    case 'bay':
    case 'ghost':
      return element('g', { class: key }, element('rect', box));
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
