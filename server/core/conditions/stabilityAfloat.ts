import type { Bodies } from '../bodies/assemble.ts';
import { surfacedBoat } from './load.ts';
import { type OtherEquilibrium, otherEquilibria } from './otherEquilibria.ts';
import { rightingCurve, type StabilityRange } from './rightingLever.ts';
import type { Surfaced } from './surfaced.ts';

/** Where a floating boat that is knocked over may end, and from how far over it comes back. */
export interface StabilityAfloat {
  /** Stable attitudes on the surface other than the one it floats in. */
  readonly otherEquilibria: readonly OtherEquilibrium[];
  /** Null where it has no other rest to go over to. */
  readonly range: StabilityRange | null;
}

export function stabilityAfloat(bodies: Bodies, surfaced: Surfaced): StabilityAfloat {
  const equilibria = surfaced.status === 'afloat' ? otherEquilibria(surfacedBoat(bodies), surfaced.up) : [];
  return {
    otherEquilibria: equilibria,
    range: equilibria.length > 0 ? rightingCurve(surfacedBoat(bodies)).range : null,
  };
}
