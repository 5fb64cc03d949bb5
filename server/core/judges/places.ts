import type { Boat } from '../boat/boat.ts';
import type { Place } from '../findings/finding.ts';

/** Where to say that a limit is not kept: on the painted waterline for the surface, which every boat has. */
export function limitPlace(boat: Boat, hasLimit: boolean): Place {
  if (hasLimit && boat.waterline !== null) return { on: 'key', path: ['hull', 'waterline'] };
  return { on: 'key', path: boat.payload.length > 0 ? ['payload'] : ['hull'] };
}

/** Where to say what happens under water: on the first ballast tank. */
export function tankPlace(boat: Boat): Place {
  const tank = boat.tanks[0];
  return tank ? { on: 'value', path: [...tank.path, 'name'] } : { on: 'key', path: ['hull'] };
}
