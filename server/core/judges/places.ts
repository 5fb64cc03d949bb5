import type { Boat } from '../boat/boat.ts';
import { type LoadingCondition, whereIn } from '../conditions/loadingCondition.ts';
import type { Place } from '../findings/finding.ts';

/** Where to say what the boat does in a condition: one of the builder's own has its place in the file. */
export function conditionPlace(boat: Boat, condition: LoadingCondition, hasLimit = true): Place {
  if (condition.path) return { on: 'value', path: [...condition.path, 'name'] };
  return whereIn(condition) === 'submerged' ? tankPlace(boat) : limitPlace(boat, hasLimit);
}

/** Where to say that a limit is not kept: on the painted waterline for the surface, which every boat has. */
function limitPlace(boat: Boat, hasLimit: boolean): Place {
  if (hasLimit && boat.waterline !== null) return { on: 'key', path: ['hull', 'waterline'] };
  return { on: 'key', path: boat.payload.length > 0 ? ['payload'] : ['hull'] };
}

/** Where to say what happens under water: on the first ballast tank. */
export function tankPlace(boat: Boat): Place {
  const tank = boat.tanks[0];
  return tank ? { on: 'value', path: [...tank.path, 'name'] } : { on: 'key', path: ['hull'] };
}
