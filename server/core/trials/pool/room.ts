import type { BoatSource } from '../../boat/source.ts';
import type { Bounds } from '../../geometry/cut/solids.ts';
import type { Vec3 } from '../../geometry/form/vector.ts';

/** Where something may be, each place as likely as any other: the middle of a room and the standard deviation over it, m. */
export interface HidingRoom {
  readonly middle: Vec3;
  readonly spread: Vec3;
}

/** A box that is full evenly: its standard deviation is its size by √12. */
export function roomOf({ from, to }: Bounds): HidingRoom {
  const each = (of: (least: number, most: number) => number): Vec3 => [
    of(from[0], to[0]),
    of(from[1], to[1]),
    of(from[2], to[2]),
  ];
  return {
    middle: each((least, most) => (least + most) / 2),
    spread: each((least, most) => (most - least) / Math.sqrt(12)),
  };
}

/** The box round all shells and compartments; null for a boat without. */
export function hullBounds({ boat, around }: BoatSource): Bounds | null {
  const all = [...boat.shells, ...boat.compartments].map(({ form }) => around.shapes.boundsOf(form));
  if (all.length === 0) return null;
  const least = (axis: 0 | 1 | 2) => Math.min(...all.map(({ from }) => from[axis]));
  const most = (axis: 0 | 1 | 2) => Math.max(...all.map(({ to }) => to[axis]));
  return { from: [least(0), least(1), least(2)], to: [most(0), most(1), most(2)] };
}

/** The same box below a height, or above it; null where nothing of it is there. */
export function partOf(bounds: Bounds, height: number, side: 'below' | 'above'): Bounds | null {
  const { from, to } = bounds;
  const cut = Math.min(Math.max(height, from[2]), to[2]);
  const [low, high] = side === 'below' ? [from[2], cut] : [cut, to[2]];
  return high > low ? { from: [from[0], from[1], low], to: [to[0], to[1], high] } : null;
}

export const depthOf = ({ from, to }: Bounds): number => to[2] - from[2];
