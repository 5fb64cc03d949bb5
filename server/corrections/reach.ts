import type { Lever } from './levers.ts';
import type { Aim, Row } from './program.ts';

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

const DIRECTIONS = 72;

/**
 * The reach of the levers in a mass row and a moment row. The sum of convex sets is convex: its support in a direction is
 * the sum of the sets' supports, so that a fan of directions gives its corners.
 */
export function reachOf(levers: readonly Lever[], massRow: Row, momentRow: Row): Reach {
  const massAim = massRow.wanted as Aim;
  const momentAim = momentRow.wanted as Aim;
  const needed = [massAim.value, momentAim.value] as const;
  let margin = Number.POSITIVE_INFINITY;
  const polygon = Array.from({ length: DIRECTIONS }, (_, i) => {
    const angle = (2 * Math.PI * i) / DIRECTIONS;
    // Directions in units of slack, so that grams and moments weigh alike.
    const a = Math.cos(angle) / massAim.slack;
    const b = Math.sin(angle) / momentAim.slack;
    let mass = 0;
    let moment = 0;
    for (const lever of levers) {
      const [m, q] = furthest(lever, massRow, momentRow, [a, b]);
      mass += m;
      moment += q;
    }
    margin = Math.min(margin, a * (mass - needed[0]) + b * (moment - needed[1]));
    return [mass, moment] as const;
  });
  return { polygon, needed, isInside: margin >= 0, margin };
}

/** The furthest that one lever's piece can go in a direction: at each mass it lies at one end of its room. */
function furthest(
  lever: Lever,
  massRow: Row,
  momentRow: Row,
  [a, b]: readonly [number, number],
): readonly [number, number] {
  const k = massRow.effectOf(lever);
  const r = momentRow.effectOf(lever);
  const room = lever.station[1] - lever.station[0];
  const lambda = lever.massPerLength;
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
