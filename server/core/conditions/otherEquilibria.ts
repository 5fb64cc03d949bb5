import { dot, type Vec3 } from '../geometry/form/vector.ts';
import type { Steps } from '../steps/steps.ts';
import { heelOf, trimOf } from './attitude.ts';
import type { Afloat, EnergyState } from './energy.ts';
import { settleFrom, turn } from './equilibrium.ts';

/** A stable attitude that the boat may end in after a knock. */
export interface OtherEquilibrium {
  readonly up: Vec3;
  /** rad, positive to starboard; 180° is keel up. */
  readonly heel: number;
  /** rad, positive bow up. */
  readonly trim: number;
}

const DIAGONAL = Math.SQRT1_2;
/** Attitudes that a boat may be knocked into: on either side, keel up, half over, on bow and on stern. */
const KNOCKS: readonly Vec3[] = [
  [0, -1, 0],
  [0, 1, 0],
  [0, 0.02, -0.9998],
  [0, -DIAGONAL, -DIAGONAL],
  [0, DIAGONAL, -DIAGONAL],
  [1, 0, 0],
  [-1, 0, 0],
];

/** Rests nearer to each other than this are one, cos of 3°. */
const SAME_REST = Math.cos(Math.PI / 60);

/** A Newton step that ends so close to a known rest has found it, cos of 1°, from so near that it is no great one, cos of 6°. */
const HEADS_FOR_REST = Math.cos(Math.PI / 180);
const NEAR_REST = Math.cos(Math.PI / 30);

/**
 * Stable attitudes other than `known`, found by letting the boat go from every knock. A hull that is long work to cut is let
 * go roughly first; only where that does not come back to a known rest, it is seen in full where the boat ends.
 */
export function* otherEquilibriumSteps(boat: Afloat, known: Vec3): Steps<readonly OtherEquilibrium[]> {
  const found: Vec3[] = [known];
  const isFound = (up: Vec3, within: number): boolean => found.some(rest => dot(rest, up) > within);
  // A step that lands on a known rest needs no following up.
  const isKnown = ({ up }: EnergyState, step: Vec3): boolean =>
    isFound(up, NEAR_REST) && isFound(turn(up, step), HEADS_FOR_REST);
  const restFrom = (boat: Afloat, start: Vec3): Vec3 | null => {
    const rest = settleFrom(boat, start, { isKnown });
    return rest.status === 'settled' ? turn(rest.state.up, rest.left) : null;
  };
  const { rough } = boat.hull;
  for (const knock of KNOCKS) {
    yield;
    const roughly = rough ? restFrom({ ...boat, hull: rough }, knock) : null;
    if (roughly && isFound(roughly, SAME_REST)) continue;
    const up = restFrom(boat, roughly ?? knock);
    if (up && !isFound(up, SAME_REST)) found.push(up);
  }
  return found.slice(1).map(up => ({ up, heel: heelOf(up), trim: trimOf(up) }));
}
