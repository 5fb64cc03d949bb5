import { loadTank, type TankBody } from '../bodies/tankWater.ts';
import { clipLoop } from '../geometry/clipLoop.ts';
import { levelFor } from '../geometry/levelCut.ts';
import type { Point2 } from '../geometry/outline.ts';
import type { Loop, Sight } from '../geometry/silhouette.ts';
import { boundsOf } from '../geometry/solids.ts';
import { dot, scale, type Vec3 } from '../geometry/vector.ts';
import type { Lie } from './lie.ts';
import { seen, type Turn, turned } from './turn.ts';

/** The tank's outline, where it is full of water at this attitude: free water lies level, m in the seen axes. */
export function tankWaterLoops(
  body: TankBody,
  fill: number,
  lie: Lie,
  { loops, along, turn }: { readonly loops: readonly Loop[]; readonly along: Sight; readonly turn: Turn },
): readonly Loop[] {
  if (fill <= 0) return [];
  if (fill >= 1) return loops;
  const { kind, fillsFrom, form } = body.tank;
  if (kind === 'bladder') return loops.map(loop => shrunk(loop, seen(middleOf(body), along), Math.cbrt(fill)));
  if (kind === 'piston') {
    const towards: Vec3 = fillsFrom === 'forward' ? [1, 0, 0] : [-1, 0, 0];
    const level = levelFor(body.whole, towards, fill * body.capacity);
    if (along === 0) return loops;
    return loops.map(loop => clipLoop(loop, point => towards[0] * point[0] - level));
  }
  const bounds = boundsOf(form);
  const step = (bounds.to[0] - bounds.from[0]) / Math.max(1, body.cells.length);
  return loadTank(body, fill).free.flatMap(({ space, volume }, i) => {
    const level = levelFor(space, lie.up, volume);
    const centre = scale(space.moment, 1 / space.volume);
    const height = turn.height(level, centre[along]);
    const cell =
      along === 0 || body.cells.length === 1
        ? loops
        : loops.map(loop => between(loop, bounds.from[0] + i * step, step));
    return cell.map(loop => clipLoop(loop, point => turned(turn, point)[1] - height));
  });
}

const middleOf = ({ whole }: TankBody): Vec3 => scale(whole.moment, 1 / whole.volume);

const between = (loop: Loop, from: number, step: number): Loop =>
  clipLoop(
    clipLoop(loop, point => from - point[0]),
    point => point[0] - from - step,
  );

const shrunk = (loop: Loop, [x, y]: Point2, by: number): Loop =>
  loop.map(point => [x + (point[0] - x) * by, y + (point[1] - y) * by]);

/** Height above the plane of the water, m; below it negative. */
export const overWater = ({ up, level }: Lie, point: Vec3): number => dot(up, point) - (level ?? 0);
