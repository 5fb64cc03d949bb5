import type { Boat } from '../../boat/boat.ts';
import type { Steps } from '../../steps/steps.ts';
import { massText, tapeText } from '../../wording/numbers.ts';
import { heightUp, stationTape } from '../../wording/places.ts';
import { scopeOf } from '../balance/row.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { roomsOf } from '../room/proposeBays.ts';
import { findSlots, type Piece, type Slot } from '../room/slots.ts';
import { correctWith } from '../search/correct.ts';

/**
 * What extra room would bring all conditions within their limits, for when the bays do not: confirmed by the full model
 * with pieces laid there. Null when no room of the hull's own would.
 */
export function* roomAdvice(boatToTrim: BoatToTrim): Steps<string | null> {
  const { boat } = boatToTrim;
  const correction = yield* correctWith(boatToTrim, scopeOf(boat), [[...findSlots(boat), ...imaginedSlots(boat)]]);
  return correction && roomWords(correction.pieces, boat);
}

/** What room these pieces ask for, beyond that of the bays; null when they ask for none. */
function roomWords(pieces: readonly Piece[], { units }: Boat): string | null {
  const asked = pieces.filter(({ slot }) => slot.bay.path.length === 0);
  if (asked.length === 0) return null;
  const words = asked.map(({ slot, mass, station, offset }) => {
    const amount =
      slot.material === 'lead'
        ? `${massText(mass, units)} of lead`
        : `${tapeText(station[1] - station[0], units)} of foam strip`;
    const side = Math.abs(offset) < 0.001 ? '' : offset > 0 ? ', to starboard' : ', to port';
    const middle = stationTape((station[0] + station[1]) / 2, units);
    return `${amount} near station ${middle}, ${heightUp(slot.height, units)}${side}`;
  });
  return `A bay for ${words.join(' and for ')} would meet every limit.`;
}

/** Lead and foam wherever the hull has room of its own, as broad and deep as the strip. */
function imaginedSlots(boat: Boat): readonly Slot[] {
  return roomsOf(boat).map(({ name, takes, station, half, height }): Slot => {
    const stock = boat.stock[takes];
    const [breadth, depth] = stock.strip ?? [half, (height[1] - height[0]) / 2];
    return {
      bay: {
        path: [],
        name,
        takes,
        inside: null,
        from: [station[0], -half, height[0]],
        to: [station[1], half, height[1]],
      },
      material: takes,
      isShot: false,
      density: stock.density,
      breadth,
      depth,
      strips: [1, 1],
      massPerLength: stock.density * breadth * depth,
      pieces: [],
      station,
      offset: [-Math.max(0, half - breadth / 2), Math.max(0, half - breadth / 2)],
      height: takes === 'lead' ? height[0] + depth / 2 : height[1] - depth / 2,
    };
  });
}
