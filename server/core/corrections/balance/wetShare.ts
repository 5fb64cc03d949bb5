import type { Part } from '../../boat/boat.ts';
import { addImmersed, emptyImmersion } from '../../geometry/cut/immersion.ts';
import { solidOf } from '../../geometry/cut/solids.ts';
import { boxForm } from '../../geometry/form/box.ts';
import type { Vec3 } from '../../geometry/form/vector.ts';
import type { Slot } from '../room/slots.ts';

/** A water surface in boat axes: the wet side is `up·p <= level`. */
interface Surface {
  readonly up: Vec3;
  readonly level: number;
}

/** Which share (0..1) of a slot's piece is under the surface. */
export interface WetShare {
  surfaced(slot: Slot, surface: Surface): number;
}

/** Before pieces are laid: for a short piece in the middle of the room. */
export const wetInTheMiddle: WetShare = {
  surfaced: (slot, surface) => {
    const x = (slot.station[0] + slot.station[1]) / 2;
    const y = (slot.offset[0] + slot.offset[1]) / 2;
    const half = Math.min(0.005, (slot.station[1] - slot.station[0]) / 2);
    return wetShare(
      [x - half, y - slot.breadth / 2, slot.height - slot.depth / 2],
      [x + half, y + slot.breadth / 2, slot.height + slot.depth / 2],
      surface,
    );
  },
};

/** Once pieces are laid: for what was really laid. */
export const wetAsLaid = (laid: ReadonlyMap<Slot, Part>): WetShare => ({
  surfaced: (slot, surface) => {
    const part = laid.get(slot);
    return part ? wetShare(part.from, part.to, surface) : wetInTheMiddle.surfaced(slot, surface);
  },
});

function wetShare(from: Vec3, to: Vec3, { up, level }: Surface): number {
  const body = solidOf(boxForm(from, to));
  const sums = emptyImmersion();
  addImmersed(body, up, level, sums);
  return sums.volume / body.volume;
}
