import { pathKey } from '../../../schema/path.ts';
import type { Point2 } from '../geometry/outline/outline.ts';
import type { Sight } from '../geometry/outline/sight.ts';
import type { Drawn } from './entryGroup.ts';
import type { Frame } from './frame.ts';
import { BOLD, type Labelled, type PlacedLabel, placeLabels } from './labels.ts';
import { element, type Markup, short, svgText, together } from './markup.ts';
import { shortened, textWidth } from './textWidth.ts';
import { called } from './things.ts';
import { linesOf } from './wrapped.ts';

/** Height of the type and of a row of labels, user units. */
const TYPE = 14;
const ROW = 17;
/** A name longer than this goes on in a second line, user units; what is longer than two is in the title alone. */
const LONG = 210;
/** Between a name and the edge of the picture. */
const MARGIN = 20;

/** Labels above or below the boat. */
export interface LabelBand {
  readonly labels: readonly PlacedLabel[];
  readonly height: number;
}

/** Labels for everything drawn: what lies in the upper half of the boat above it, the rest below. */
export function labelBands(
  all: readonly Drawn[],
  frame: Frame,
  { width, along }: { readonly width: number; readonly along: Sight },
): { readonly above: LabelBand; readonly below: LabelBand } {
  // In whole units: a boat that trims a little more leaves nearly all labels where they are.
  const placed = all.map(drawn => {
    const [x, y] = anchorOf(drawn, frame, along);
    return { drawn, at: [Math.round(x), Math.round(y)] as const };
  });
  const heights = placed.map(({ at }) => at[1]);
  const middle = (Math.min(...heights) + Math.max(...heights)) / 2;
  const room = Math.min(LONG, width / 2 - MARGIN);
  const label = ({ drawn: { thing, correction }, at }: (typeof placed)[number]): Labelled =>
    correction === null
      ? { lines: nameLines(thing.name, room), at, kind: thing.kind, of: pathKey(thing.path) }
      : { lines: nameLines(thing.name, room / BOLD), at, kind: 'ghost', of: null };
  const band = (isHere: (at: Point2) => boolean): LabelBand => {
    const labels = placeLabels(placed.filter(({ at }) => isHere(at)).map(label), TYPE, width);
    return { labels, height: ROW * Math.max(0, ...labels.map(({ row, lines }) => row + lines.length)) };
  };
  return { above: band(at => at[1] <= middle), below: band(at => at[1] > middle) };
}

/** A name in a line, or two where it has no room in one. */
function nameLines(name: string, room: number): readonly string[] {
  const [first = '', ...more] = linesOf(called(name), TYPE, room);
  const lines = more.length === 0 ? [first] : [first, more.join(' ')];
  return lines.map(line => (textWidth(line, TYPE) > room ? shortened(line, Math.floor(room / 9)) : line));
}

/** What holds other things is pointed at near its edge, everything else in its middle. */
function anchorOf({ thing, loops }: Drawn, frame: Frame, along: Sight): Point2 {
  const { kind } = thing;
  const holds = kind === 'shell' || kind === 'compartment' || kind === 'tank';
  const points = loops.flat();
  const middle: Point2 = [middleOf(points, 0), middleOf(points, 1)];
  if (!holds || along === 2) return frame.at(middle);
  if (along === 0) return frame.at(points.reduce((a, b) => (b[0] + b[1] > a[0] + a[1] ? b : a)));
  const station = thing.from[0] + SHARES[kind] * (thing.to[0] - thing.from[0]);
  return frame.at([station, topAt(points, station) ?? middle[1]]);
}

/** Where along their length shells, compartments and tanks are pointed at: clear of each other and of what is in them. */
const SHARES = { shell: 0.93, compartment: 0.96, tank: 0.5 } as const;

function middleOf(points: readonly Point2[], axis: 0 | 1): number {
  const all = points.map(point => point[axis]);
  return (Math.min(...all) + Math.max(...all)) / 2;
}

/** A little under the upper edge of an outline at a station, m; null past its ends. */
function topAt(loop: readonly Point2[], station: number): number | null {
  let [top, low] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  loop.forEach((point, i) => {
    const before = loop[(i + loop.length - 1) % loop.length]!;
    const [a, b] = before[0] < point[0] ? [before, point] : [point, before];
    if (a[0] > station || b[0] < station || a[0] === b[0]) return;
    const at = a[1] + ((b[1] - a[1]) * (station - a[0])) / (b[0] - a[0]);
    top = Math.max(top, at);
    low = Math.min(low, at);
  });
  return top > low ? top - 0.06 * (top - low) : null;
}

/** The labels of a band that begins at `edge` and grows upwards (-1) or downwards (1). */
export function drawLabels({ labels, height }: LabelBand, edge: number, way: 1 | -1, dy = 0): Markup | null {
  if (height === 0) return null;
  return element(
    'g',
    { class: 'labels', 'aria-hidden': 'true' },
    together(
      labels.map(({ lines, at, kind, of, pole, row, anchor }) => {
        const lineAt = (i: number): number => edge + way * (i * ROW + (way > 0 ? ROW - 4 : 3));
        const last = row + lines.length - 1;
        const far = lineAt(last);
        const foot = at[1] + dy;
        const x = pole + (anchor === 'start' ? 3 : -3);
        const lead = `M${short(pole)} ${short(far + (way > 0 ? 2 : 0))}V${short(edge)}L${short(at[0])} ${short(foot)}`;
        return together([
          element('path', { class: 'leader', d: lead }),
          element('circle', { class: 'leader-end', cx: at[0], cy: foot, r: 1.5 }),
          ...lines.map((line, i) => {
            const y = lineAt(way > 0 ? row + i : last - i);
            return element(
              'text',
              { class: `label ${kind}`, 'data-of': of, x, y, 'text-anchor': anchor },
              svgText(line),
            );
          }),
        ]);
      }),
    ),
  );
}
