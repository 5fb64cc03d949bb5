import type { Bodies } from '../bodies/assemble.ts';
import { type FloatingState, float, heldLevel, type Loading } from '../conditions/float.ts';

/** A boat to be laid in the water: for a condition, or for a trial with pieces aboard. */
export interface Arrangement {
  readonly bodies: Bodies;
  readonly loading: Loading;
  /** Held level instead of let go: for what is judged of a boat that does not stay level. */
  readonly isHeld?: boolean;
}

/** A boat with how it lies. */
export interface FloatedBoat {
  readonly arrangement: Arrangement;
  readonly floating: FloatingState;
}

/** What an arrangement comes to rest in; null where it sinks, turns over, or finds no rest: readings say nothing there. */
export function floatBoat({ bodies, loading, isHeld }: Arrangement, before?: FloatingState): FloatingState | null {
  if (isHeld || loading.kind === 'hung') return heldLevel(bodies, loading);
  const found = float(bodies, loading, before);
  return found.status === 'rests' ? found.floating : null;
}
