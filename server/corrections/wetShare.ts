import type { Part } from '../boat/boat.ts';
import { boxForm } from '../geometry/box.ts';
import { addImmersed, emptyImmersion } from '../geometry/immersion.ts';
import { solidOf } from '../geometry/solids.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Lever } from './levers.ts';

/** A water surface in boat axes: the wet side is `up·p <= level`. */
export interface Surface {
  readonly up: Vec3;
  readonly level: number;
}

/** Which share (0..1) of a lever's piece is under the surface. */
export interface WetShare {
  surfaced(lever: Lever, surface: Surface): number;
}

/** Before pieces are laid: for a short piece in the middle of the room. */
export const wetInTheMiddle: WetShare = {
  surfaced: (lever, surface) => {
    const x = (lever.station[0] + lever.station[1]) / 2;
    const y = (lever.offset[0] + lever.offset[1]) / 2;
    const half = Math.min(0.005, (lever.station[1] - lever.station[0]) / 2);
    return wetShare(
      [x - half, y - lever.breadth / 2, lever.height - lever.depth / 2],
      [x + half, y + lever.breadth / 2, lever.height + lever.depth / 2],
      surface,
    );
  },
};

/** Once pieces are laid: for what was really laid. */
export const wetAsLaid = (laid: ReadonlyMap<Lever, Part>): WetShare => ({
  surfaced: (lever, surface) => {
    const part = laid.get(lever);
    return part ? wetShare(part.from, part.to, surface) : wetInTheMiddle.surfaced(lever, surface);
  },
});

function wetShare(from: Vec3, to: Vec3, { up, level }: Surface): number {
  const body = solidOf(boxForm(from, to));
  const sums = emptyImmersion();
  addImmersed(body, up, level, sums);
  return sums.volume / body.volume;
}
