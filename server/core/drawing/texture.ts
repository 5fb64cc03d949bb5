import type { Point2 } from '../geometry/outline/outline.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import { element, type Markup, short } from './markup.ts';

/** What things are made of, told by strokes: they print as sharp as the outlines, in any colour and in none. */
export type Texture = 'lead' | 'foam' | 'part' | 'ballast';

/** How a texture is drawn: lines at an angle (rad, down to the right) this far apart, user units, or dots along them. */
const STROKES: Readonly<Record<Texture, { readonly angle: number; readonly gap: number; readonly dots?: number }>> = {
  lead: { angle: -Math.PI / 4, gap: 3.2 },
  foam: { angle: 0, gap: 4, dots: 6 },
  part: { angle: Math.PI / 4, gap: 6 },
  ballast: { angle: 0, gap: 5 },
};

/** The strokes inside closed lines, user units, in what is turned by `tilt`; null where not one fits. */
export function texture(name: Texture, loops: readonly Loop[], tilt = 0): Markup | null {
  const { angle, gap, dots } = STROKES[name];
  const strokes = linesInside(loops, angle - tilt, gap);
  const d = dots === undefined ? strokes.map(lineData).join('') : strokes.map(stroke => dotData(stroke, dots)).join('');
  return d === '' ? null : element('path', { class: `texture of-${name}`, d });
}

interface Stroke {
  readonly from: Point2;
  readonly to: Point2;
  /** Number of the line that it lies on. */
  readonly line: number;
}

const lineData = ({ from, to }: Stroke): string =>
  `M${short(from[0])} ${short(from[1])}L${short(to[0])} ${short(to[1])}`;

/** Dots at whole steps, those of every other line between those of its neighbours. */
function dotData({ from, to, line }: Stroke, step: number): string {
  const shift = line % 2 === 0 ? 0 : step / 2;
  let data = '';
  for (let x = Math.ceil((from[0] + 1 - shift) / step) * step + shift; x < to[0] - 1; x += step) {
    data += `M${short(x)} ${short(from[1])}h0`;
  }
  return data;
}

/** Stretches of parallel lines that lie inside, by the even-odd rule. */
function linesInside(loops: readonly Loop[], angle: number, gap: number): readonly Stroke[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const crossings = new Map<number, number[]>();
  for (const loop of loops) {
    const level = loop.map(([x, y]): Point2 => [c * x + s * y, c * y - s * x]);
    level.forEach((b, i) => {
      const a = level[(i + level.length - 1) % level.length]!;
      const [low, high] = a[1] < b[1] ? [a, b] : [b, a];
      // Ends: points are pixels of the page.
      for (let line = Math.ceil(low[1] / gap); line * gap < high[1]; line++) {
        const x = low[0] + ((high[0] - low[0]) * (line * gap - low[1])) / (high[1] - low[1]);
        const known = crossings.get(line);
        if (known) known.push(x);
        else crossings.set(line, [x]);
      }
    });
  }
  return [...crossings].flatMap(([line, found]) => {
    const y = line * gap;
    const back = (x: number): Point2 => [c * x - s * y, c * y + s * x];
    const sorted = found.sort((a, b) => a - b);
    return sorted.flatMap((x, i) =>
      i % 2 === 0 && sorted[i + 1]! - x > 0.4 ? [{ from: back(x), to: back(sorted[i + 1]!), line }] : [],
    );
  });
}
