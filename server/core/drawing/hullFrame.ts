import type { Point2 } from '../geometry/outline/outline.ts';
import type { Frame } from './frame.ts';
import { turned } from './turn.ts';

/**
 * The frame in which what belongs to the boat is drawn: turned and scaled in steps, so that a boat that lies a little
 * otherwise is drawn with the same strokes and only put into the picture otherwise.
 */
export interface HullFrame extends Pick<Frame, 'scale' | 'at'> {
  /** How it lies in the picture, as the `transform` of a group. */
  readonly transform: string;
  /** By how much that turns it, rad, down to the right. */
  readonly tilt: number;
  /** Frames with the same key draw alike. */
  readonly key: string;
}

/** Hatching may stand half of this off, rad. */
const TURN_STEP = Math.PI / 18;
/** Strokes may be half of this share too broad. */
const SCALE_STEP = 0.01;

/** The hull’s frame nearest to a picture’s, its origin that of the seen axes. */
export function hullFrame(frame: Frame): HullFrame {
  const { turn } = frame;
  const [x, y] = turn.up;
  const isMirrored = turn.right[0] * y < turn.right[1] * x;
  const step = Math.round(Math.atan2(x, y) / TURN_STEP);
  const size = Math.round(Math.log(frame.scale) / SCALE_STEP);
  const [sine, cosine] = [Math.sin(step * TURN_STEP), Math.cos(step * TURN_STEP)];
  const right: Point2 = isMirrored ? [-cosine, sine] : [cosine, -sine];
  const scale = Math.exp(size * SCALE_STEP);
  const at = (point: Point2): Point2 => {
    const [across, up] = turned({ right, up: [sine, cosine] }, point);
    return [across * scale, -up * scale];
  };
  return { scale, at, ...between(at, frame.at), key: `${step} ${size} ${isMirrored}` };
}

/** What takes one frame, which leaves the origin where it is, into another. */
function between(from: Frame['at'], to: Frame['at']): Pick<HullFrame, 'transform' | 'tilt'> {
  const origin = to([0, 0]);
  const [p, q] = [from([1, 0]), from([0, 1])];
  const [u, v] = [to([1, 0]), to([0, 1])].map((point): Point2 => [point[0] - origin[0], point[1] - origin[1]]);
  const size = p[0] * q[1] - p[1] * q[0];
  const [a, b] = [0, 1].map(axis => (u![axis]! * q[1] - v![axis]! * p[1]) / size);
  const [c, d] = [0, 1].map(axis => (v![axis]! * p[0] - u![axis]! * q[0]) / size);
  const turn = [a!, b!, c!, d!].map(value => Number(value.toFixed(6)));
  const shift = origin.map(value => Number(value.toFixed(3)));
  // Commas: what places things in CSS reads it too.
  return { transform: `matrix(${[...turn, ...shift].join(', ')})`, tilt: Math.atan2(b!, a!) };
}
