import type { Bodies } from '../bodies/assemble.ts';
import { surfacedBoat } from './load.ts';
import { type OtherEquilibrium, otherEquilibria } from './otherEquilibria.ts';
import { rightingCurve } from './rightingLever.ts';
import type { Submerged } from './submerged.ts';
import type { Surfaced } from './surfaced.ts';
import { sizeTanks, type TankSizing } from './tankSizing.ts';
import { type TransitStep, transitOf } from './transit.ts';

/** What follows from the two conditions: the way between them, where else the boat may rest, what its tanks should hold. */
export interface Passage {
  /** From empty to neutral; empty when the boat does not float, or cannot hang neutral. */
  readonly transit: readonly TransitStep[];
  /** Stable attitudes on the surface other than the one it floats in. */
  readonly otherEquilibria: readonly OtherEquilibrium[];
  /** Heels between which the floating boat comes back, rad; null where it has no other rest to go over to. */
  readonly range: readonly [port: number, starboard: number] | null;
  readonly tanks: readonly TankSizing[];
}

export function passageOf(bodies: Bodies, surfaced: Surfaced, submerged: Submerged, hullLength: number): Passage {
  const dives = surfaced.status === 'afloat' && submerged.status === 'neutral';
  const equilibria = surfaced.status === 'afloat' ? otherEquilibria(surfacedBoat(bodies), surfaced.up) : [];
  return {
    transit: dives && bodies.tanks.length > 0 ? transitOf(bodies, surfaced, submerged.fill, hullLength) : [],
    otherEquilibria: equilibria,
    range: equilibria.length > 0 ? rightingCurve(surfacedBoat(bodies)).range : null,
    tanks: submerged.status === 'neutral' ? sizeTanks(bodies, submerged.fill) : [],
  };
}
