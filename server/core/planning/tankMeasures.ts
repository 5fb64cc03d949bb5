import type { Boat, Compartment, Tank } from '../boat/boat.ts';
import { prismLength } from '../conditions/tankSizing.ts';
import { boundsOf } from '../geometry/cut/solids.ts';
import type { TankWanted } from './wanted.ts';

/** A round tank that would hold what is wanted, lying fore and aft in a compartment. m. */
export interface RoundTank {
  readonly compartment: Compartment;
  readonly diameter: number;
  /** Stations of its ends. */
  readonly from: number;
  readonly to: number;
  readonly offset: number;
  readonly height: number;
  /** The compartment is long enough for it. */
  readonly fits: boolean;
}

/** Of a compartment's bore a tank takes this much, and of its length at most so much: walls, rods and wires go past it (common practice, no source). */
const OF_BORE = 0.9;
const OF_LENGTH = 0.9;

/** The round tank for what is wanted in the largest compartment, as near as it goes to where the ballast belongs; null without a compartment. */
export function roundTank({ compartments }: Boat, { capacity, centre }: TankWanted): RoundTank | null {
  const [compartment] = [...compartments].sort((a, b) => b.volume - a.volume);
  if (!compartment || !centre) return null;
  const { from, to } = boundsOf(compartment.form);
  const diameter = OF_BORE * Math.min(to[1] - from[1], to[2] - from[2]);
  const length = capacity / ((Math.PI / 4) * diameter ** 2);
  const longest = to[0] - from[0];
  const spare = ((1 - OF_LENGTH) / 2) * longest;
  const placed = placedIn(centre[0], length, [from[0] + spare, to[0] - spare]);
  return {
    compartment,
    diameter,
    ...placed,
    offset: (from[1] + to[1]) / 2,
    height: (from[2] + to[2]) / 2,
    fits: length <= OF_LENGTH * longest,
  };
}

/** The only tank, made as long as it takes about its own middle, or as near to that as its compartment allows; m. */
export interface LongerTank {
  readonly tank: Tank;
  readonly from: number;
  readonly to: number;
  readonly fits: boolean;
}

/** Null for several tanks, or one whose capacity does not go with its length. */
export function resizedTank({ tanks, compartments }: Boat, { capacity, held }: TankWanted): LongerTank | null {
  const [tank] = tanks;
  if (!tank || tanks.length > 1 || tank.copies > 1 || tank.byJug || held <= 0) return null;
  const now = prismLength(tank.form);
  if (now === null) return null;
  const length = now * (capacity / held);
  const { from, to } = boundsOf(tank.form);
  const middle = (from[0] + to[0]) / 2;
  const around = compartments.find(({ name }) => name === tank.inside);
  if (!around) return { tank, from: middle - length / 2, to: middle + length / 2, fits: true };
  const room = boundsOf(around.form);
  const ends: Span = [room.from[0], room.to[0]];
  return { tank, ...placedIn(middle, length, ends), fits: length <= ends[1] - ends[0] };
}

type Span = readonly [from: number, to: number];

/** A stretch about a middle, moved no further than it takes to keep inside the ends. */
function placedIn(middle: number, length: number, [first, last]: Span): { readonly from: number; readonly to: number } {
  const from = Math.max(first, Math.min(middle - length / 2, last - length));
  return { from, to: from + length };
}
