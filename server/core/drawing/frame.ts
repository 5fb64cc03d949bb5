import { pathRound } from 'd3-path';
import type { Point2 } from '../geometry/outline/outline.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import { short } from './markup.ts';
import { type Turn, turned } from './turn.ts';

/** Where the boat stands in a picture, and how large. */
export interface Frame {
  readonly turn: Turn;
  /** User units per metre. */
  readonly scale: number;
  /** A point of the seen plane (boat axes, m) in user units. */
  at(point: Point2): Point2;
  /** Heights and places on the paper (m) in user units. */
  y(height: number): number;
  x(right: number): number;
}

/** What the boat takes up on the paper, m. */
export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** The extent of loops, turned; null of none. */
export function frameExtent(loops: readonly Loop[], turn: Turn): Extent | null {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const loop of loops) {
    for (const point of loop) {
      const [x, y] = turned(turn, point);
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < low) low = y;
      if (y > high) high = y;
    }
  }
  return left <= right ? { left, right, low, high } : null;
}

/** Room for the boat in a picture, user units. */
export interface FrameRoom {
  readonly left: number;
  readonly width: number;
  readonly mostHeight: number;
}

/** The largest scale that fits the room; the boat in its middle, the highest point of `extent` at `top`. */
export function frameFor(turn: Turn, extent: Extent, room: FrameRoom, top: number): Frame {
  const [broad, tall] = [extent.right - extent.left, extent.high - extent.low];
  const scale = Math.min(room.width / Math.max(broad, 1e-6), room.mostHeight / Math.max(tall, 1e-6));
  const x = (right: number): number => room.left + room.width / 2 + (right - (extent.left + extent.right) / 2) * scale;
  const y = (height: number): number => top + (extent.high - height) * scale;
  const at = (point: Point2): Point2 => {
    const [right, height] = turned(turn, point);
    return [x(right), y(height)];
  };
  return { turn, scale, at, x, y };
}

/** Loops as path data. */
export function pathData(loops: readonly Loop[], { at }: Pick<Frame, 'at'>): string {
  const pen = pathRound(2);
  for (const loop of loops) {
    if (loop.length === 0) continue;
    loop.forEach((point, i) => {
      const [x, y] = at(point);
      if (i === 0) pen.moveTo(x, y);
      else pen.lineTo(x, y);
    });
    pen.closePath();
  }
  return pen.toString();
}

/** Open lines as path data. */
export const lineData = (lines: readonly (readonly Point2[])[], { at }: Pick<Frame, 'at'>): string =>
  lines
    .map(line =>
      line
        .map((point, i) => {
          const [x, y] = at(point);
          return `${i === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`;
        })
        .join(''),
    )
    .join('');
