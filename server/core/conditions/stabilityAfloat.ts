import type { Bodies } from '../bodies/assemble.ts';
import { type Steps, through, type Working } from '../steps/steps.ts';
import { surfacedBoat } from './load.ts';
import { type OtherEquilibrium, otherEquilibriumSteps } from './otherEquilibria.ts';
import type { RightingCurve, StabilityRange } from './rightingLever.ts';
import type { Surfaced } from './surfaced.ts';

/** Where a floating boat that is knocked over may end, and from how far over it comes back. */
export interface StabilityAfloat {
  /** Stable attitudes on the surface other than the one it floats in. */
  readonly otherEquilibria: readonly OtherEquilibrium[];
  /** Null where it has no other rest to go over to. */
  readonly range: StabilityRange | null;
}

/** `levers` are those of the boat on the surface. */
export function* stabilitySteps(
  bodies: Bodies,
  surfaced: Surfaced,
  levers: Working<RightingCurve> | null,
): Steps<StabilityAfloat> {
  if (surfaced.status !== 'afloat') return { otherEquilibria: [], range: null };
  const otherEquilibria = yield* otherEquilibriumSteps(surfacedBoat(bodies), surfaced.up);
  return { otherEquilibria, range: levers && otherEquilibria.length > 0 ? (yield* through(levers)).range : null };
}
