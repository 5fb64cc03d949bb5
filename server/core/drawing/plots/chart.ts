import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { Point2 } from '../../geometry/outline/outline.ts';
import { grouped } from '../../wording/numbers.ts';
import { element, type Markup, short, svgText, together } from '../markup.ts';
import { textWidth } from '../textWidth.ts';

/** One axis: what is on it, in the units of its ticks. */
export interface ChartAxis {
  /** Values that must be on it. */
  readonly values: readonly number[];
  readonly words: string;
  /** About how many ticks, or the ticks themselves. */
  readonly ticks?: number | readonly number[];
  /** Ends as they are, not rounded out to whole ticks. */
  readonly isExact?: boolean;
  /** What stands at a tick; its plain number when left out. */
  readonly tickWords?: (value: number) => string;
  /** Words for the two directions of an axis with nought in its middle: less, more. */
  readonly ends?: readonly [string, string];
}

/** The room of a chart inside its axes' words, user units. */
export interface PlotBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Chart {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly box: PlotBox;
  /** Grid, ticks, axis words: what lies under the curves. */
  readonly ground: Markup;
}

/** A chart's scales and ground. */
export function chartOf(box: PlotBox, across: ChartAxis, up: ChartAxis): Chart {
  const x = scaleOf(across, [box.left, box.right]);
  const y = scaleOf(up, [box.bottom, box.top]);
  const columns = ticksOf(x, across).map(value => {
    const at = x(value);
    return together([
      element('path', { class: value === 0 ? 'zero' : 'grid', d: `M${short(at)} ${box.top}V${box.bottom}` }),
      element(
        'text',
        { class: 'tick', x: at, y: box.bottom + 15, 'text-anchor': 'middle' },
        svgText(wordsAt(across, value)),
      ),
    ]);
  });
  const rows = ticksOf(y, up).map(value => {
    const at = y(value);
    return together([
      element('path', { class: value === 0 ? 'zero' : 'grid', d: `M${box.left} ${short(at)}H${box.right}` }),
      element('text', { class: 'tick', x: box.left - 5, y: at + 4, 'text-anchor': 'end' }, svgText(wordsAt(up, value))),
    ]);
  });
  const middle = (box.left + box.right) / 2;
  const ground = together([
    ...columns,
    ...rows,
    element('path', { class: 'axis', d: `M${box.left} ${box.top}V${box.bottom}H${box.right}` }),
    element('text', { class: 'axis-words', x: box.left, y: box.top - 7 }, svgText(up.words)),
    across.words === ''
      ? null
      : element(
          'text',
          { class: 'axis-words', x: middle, y: box.bottom + 31, 'text-anchor': 'middle' },
          svgText(across.words),
        ),
    endWords(up, box),
  ]);
  return { x, y, box, ground };
}

function scaleOf(
  { values, ticks = 5, isExact = false }: ChartAxis,
  range: readonly [number, number],
): ScaleLinear<number, number> {
  const finite = values.filter(Number.isFinite);
  const [least, most] = [Math.min(...finite, Infinity), Math.max(...finite, -Infinity)];
  const domain: readonly [number, number] =
    least < most ? [least, most] : least === most ? [least - 1, most + 1] : [0, 1];
  const scale = scaleLinear(domain, range);
  return isExact || typeof ticks !== 'number' ? scale : scale.nice(ticks);
}

const ticksOf = (scale: ScaleLinear<number, number>, { ticks = 5 }: ChartAxis): readonly number[] =>
  typeof ticks === 'number' ? scale.ticks(ticks) : ticks;

const wordsAt = (axis: ChartAxis, value: number): string =>
  axis.tickWords ? axis.tickWords(value) : plainNumber(axis.ends ? Math.abs(value) : value);

/** As short as it goes, long ones in groups of three: 0.5, 1200, 12 000. */
const plainNumber = (value: number): string => grouped(String(Number(value.toPrecision(6))));

/** Which way is which: over the chart beside its name, or, where both have no room there, inside its ends. */
function endWords({ ends, words }: ChartAxis, { left, right, top, bottom }: PlotBox): Markup | null {
  if (ends === undefined) return null;
  const [less, more] = [`▾ ${ends[0]}`, `▴ ${ends[1]}`];
  const both = `${more}  ${less}`;
  const word = (said: string, right: number, y: number): Markup =>
    element('text', { class: 'end-words', x: right, y, 'text-anchor': 'end' }, svgText(said));
  if (textWidth(words, 13) + textWidth(both, 12) < right - left) return word(both, right, top - 7);
  // On a ground of their own, for a limit may run behind them; more to the left and less to the right, for curves mostly rise.
  const inside = (said: string, from: number, y: number): Markup => {
    const long = textWidth(said, 12);
    const ground = { class: 'paper', x: from, y: y - 11, width: long, height: 14 };
    return together([element('rect', ground), word(said, from + long, y)]);
  };
  return together([inside(more, left + 1, top + 13), inside(less, right - textWidth(less, 12), bottom - 5)]);
}

/** A curve through points in the chart's own units; gaps where a value is null. */
export function curve(
  { x, y }: Chart,
  points: readonly (readonly [number, number | null])[],
  name: string,
  title: string,
): Markup {
  const path = line<readonly [number, number | null]>()
    .digits(2)
    .defined(([, value]) => value !== null)
    .x(([at]) => x(at))
    .y(([, value]) => y(value ?? 0));
  return element('path', { class: `curve ${name}`, d: path(points) }, element('title', {}, svgText(title)));
}

/** What is out of a limit is shaded, above and below the values that keep it; an infinite end has no shade. */
export function shade({ y, box }: Chart, [least, most]: readonly [number, number]): Markup {
  const clamp = (at: number): number => Math.min(box.bottom, Math.max(box.top, at));
  const strip = (from: number, to: number): Markup | null =>
    to - from < 0.5
      ? null
      : element('rect', { class: 'out', x: box.left, y: from, width: box.right - box.left, height: to - from });
  const [high, low] = [
    clamp(Number.isFinite(most) ? y(most) : box.top),
    clamp(Number.isFinite(least) ? y(least) : box.bottom),
  ];
  const edge = (at: number): Markup | null =>
    at <= box.top || at >= box.bottom
      ? null
      : element('path', { class: 'limit', d: `M${box.left} ${short(at)}H${box.right}` });
  return together([strip(box.top, high), strip(low, box.bottom), edge(high), edge(low)]);
}

/** A dot with its value in its title. */
export const chartDot = ({ x, y }: Chart, [a, b]: Point2, title: string, name = 'dot-mark'): Markup =>
  element('circle', { class: name, cx: x(a), cy: y(b), r: 3 }, element('title', {}, svgText(title)));

type CurveKey = readonly [name: string, words: string];

/** Height of a row of keys, user units. */
export const KEY_ROW = 18;

/** Keys of the curves, a stroke and what it is each, row under row where one has no room for all; `across` is that room. */
export function curveKeys(
  keys: readonly CurveKey[],
  { x, y, across }: { readonly x: number; readonly y: number; readonly across: number },
): { readonly markup: Markup; readonly rows: number } {
  let [at, row] = [0, 0];
  const items = keys.map(([name, words]) => {
    const wide = 32 + textWidth(words, 13) + 14;
    if (at > 0 && at + wide > across) [at, row] = [0, row + 1];
    const [left, base] = [x + at, y + row * KEY_ROW];
    at += wide;
    return together([
      element('path', { class: `curve ${name}`, d: `M${short(left)} ${base - 4}h26` }),
      element('text', { class: 'note', x: left + 32, y: base }, svgText(words)),
    ]);
  });
  return { markup: together(items), rows: row + 1 };
}
