import type { Slot } from '../room/slots.ts';
import type { Aim, BalanceRow } from './row.ts';

/**
 * What the bays can still give: the set of (mass, moment) in two rows, a convex polygon, and the point that is needed.
 * The equilibrium polygon of the textbooks, drawn for pieces that slide.
 */
export interface Reach {
  /** Corners in turn, kg and kg·m. */
  readonly polygon: readonly (readonly [mass: number, moment: number])[];
  readonly needed: readonly [mass: number, moment: number];
  readonly isInside: boolean;
  /** How far the needed point is from the edge, as a part of the limits' slack in each direction: negative outside. */
  readonly margin: number;
}

/** How near the polygon comes to the round edge of the set, as a part of the limits' slack. */
const STRAIGHT_ENOUGH = 0.01;
/** Times that an edge is bent at most: each brings it four times as near. */
const DEEPEST = 8;

type Point = readonly [mass: number, moment: number];

/**
 * The reach of the slots in a mass row and a moment row. The sum of convex sets is convex: its support in a direction is
 * the sum of the sets' supports. Beginning from the four ways along the axes, the edge between two corners is bent out as
 * far as the set goes until it goes no further: a fan of fixed directions passes by the sides of a long narrow set.
 */
export function reachOf(slots: readonly Slot[], massRow: BalanceRow, momentRow: BalanceRow): Reach {
  const massAim = massRow.wanted as Aim;
  const momentAim = momentRow.wanted as Aim;
  const needed: Point = [massAim.value / massAim.slack, momentAim.value / momentAim.slack];
  // Counted in slacks, so that grams and moments weigh alike.
  const furthestIn = ([a, b]: Point): Point => {
    const corners = slots.map(slot => furthest(slot, massRow, momentRow, [a / massAim.slack, b / momentAim.slack]));
    const sum = (k: 0 | 1) => corners.reduce((total, corner) => total + corner[k], 0);
    return [sum(0) / massAim.slack, sum(1) / momentAim.slack];
  };
  let margin = Number.POSITIVE_INFINITY;
  const corner = (direction: Point): Point => {
    const found = furthestIn(direction);
    margin = Math.min(margin, direction[0] * (found[0] - needed[0]) + direction[1] * (found[1] - needed[1]));
    return found;
  };
  const bend = (from: Point, to: Point, depth: number): readonly Point[] => {
    const [along, up] = [to[0] - from[0], to[1] - from[1]];
    const length = Math.hypot(along, up);
    if (length < STRAIGHT_ENOUGH || depth === DEEPEST) return [];
    const outward: Point = [up / length, -along / length];
    const found = corner(outward);
    const out = outward[0] * (found[0] - from[0]) + outward[1] * (found[1] - from[1]);
    return out < STRAIGHT_ENOUGH ? [] : [...bend(from, found, depth + 1), found, ...bend(found, to, depth + 1)];
  };
  const ends = AXES.map(corner);
  const inSlacks = ends.flatMap((end, i) => [end, ...bend(end, ends[(i + 1) % ends.length]!, 0)]);
  return {
    polygon: inSlacks.map(([mass, moment]) => [mass * massAim.slack, moment * momentAim.slack] as const),
    needed: [massAim.value, momentAim.value],
    isInside: margin >= 0,
    margin,
  };
}

const AXES: readonly Point[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

/** The furthest that one slot's piece can go in a direction: at each mass it lies at one end of its room. */
function furthest(
  slot: Slot,
  massRow: BalanceRow,
  momentRow: BalanceRow,
  [a, b]: readonly [number, number],
): readonly [number, number] {
  const k = massRow.effectOf(slot);
  const r = momentRow.effectOf(slot);
  const room = slot.station[1] - slot.station[0];
  const lambda = slot.massPerLength;
  const gain = b * r.perAft;
  const direct = a * k.perMass + b * r.perMass;
  // With q = m²/2λ (forward end) or m·L - m²/2λ (after end) the gain is a parabola in m.
  const forward = gain < 0;
  const linear = direct + (forward ? 0 : gain * room);
  const bend = (forward ? gain : -gain) / lambda;
  const full = room * lambda;
  const mass = bend < 0 ? Math.min(full, Math.max(0, -linear / bend)) : linear > 0 ? full : 0;
  const aft = forward ? (mass * mass) / (2 * lambda) : mass * room - (mass * mass) / (2 * lambda);
  return [k.perMass * mass, r.perMass * mass + r.perAft * aft];
}
