import { loadTank, type TankBody } from '../bodies/tankWater.ts';
import { levelFor } from '../geometry/cut/levelCut.ts';
import { boundsOf } from '../geometry/cut/solids.ts';
import { scale } from '../geometry/form/vector.ts';
import { clipLoop } from '../geometry/outline/clipLoop.ts';
import type { Point2 } from '../geometry/outline/outline.ts';
import type { Sight } from '../geometry/outline/sight.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import type { DrawnState } from './drawnState.ts';
import { seen, type Turn, turned } from './turn.ts';

/** How one looks at a tank: its outline in the seen axes, m; `station` is that of a cut across the boat. */
export interface TankSight {
  readonly loops: readonly Loop[];
  readonly along: Sight;
  readonly turn: Turn;
  readonly station: number | null;
}

/**
 * The part of a tank's outline that is water at this attitude: free water lies level, a piston's ends at the piston, and a
 * bladder is a smaller tank about the same middle.
 */
export function tankWaterLoops(
  body: TankBody,
  fill: number,
  drawnState: DrawnState,
  sight: TankSight,
): readonly Loop[] {
  const { loops, along } = sight;
  if (fill <= 0) return [];
  if (fill >= 1) return loops;
  if (body.tank.kind === 'piston') return pistonWater(body, fill, sight);
  if (body.tank.kind === 'bladder') {
    const middle = seen(scale(body.whole.moment, 1 / body.whole.volume), along);
    return loops.map(loop => shrunk(loop, middle, Math.cbrt(fill)));
  }
  return freeWater(body, fill, drawnState, sight);
}

function pistonWater(
  { tank, whole, capacity }: TankBody,
  fill: number,
  { loops, station }: TankSight,
): readonly Loop[] {
  const sign = tank.fillsFrom === 'forward' ? 1 : -1;
  const level = levelFor(whole, [sign, 0, 0], fill * capacity);
  if (station !== null) return sign * station <= level ? loops : [];
  return loops.map(loop => clipLoop(loop, point => sign * point[0] - level));
}

function freeWater(body: TankBody, fill: number, { up }: DrawnState, sight: TankSight): readonly Loop[] {
  const { loops, along, turn, station } = sight;
  const bounds = boundsOf(body.tank.form);
  const step = (bounds.to[0] - bounds.from[0]) / Math.max(1, body.cells.length);
  return loadTank(body, fill).free.flatMap(({ space, volume }, i) => {
    const [from, to] = [bounds.from[0] + i * step, bounds.from[0] + (i + 1) * step];
    if (station !== null && (station < from || station >= to)) return [];
    const cell = station !== null || body.cells.length <= 1 ? loops : loops.map(loop => between(loop, from, to));
    // From above one looks down on the water.
    if (along === 2) return cell;
    const height = turn.height(levelFor(space, up, volume), station ?? space.moment[1] / space.volume);
    return cell.map(loop => clipLoop(loop, point => turned(turn, point)[1] - height));
  });
}

const between = (loop: Loop, from: number, to: number): Loop =>
  clipLoop(
    clipLoop(loop, point => from - point[0]),
    point => point[0] - to,
  );

const shrunk = (loop: Loop, [x, y]: Point2, by: number): Loop =>
  loop.map(point => [x + (point[0] - x) * by, y + (point[1] - y) * by]);
