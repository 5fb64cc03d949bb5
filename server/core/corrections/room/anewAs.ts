import type { Boat } from '../../boat/boat.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import { submergedOf } from '../../conditions/loadingCondition.ts';
import { floatSubmerged } from '../../conditions/submerged.ts';
import { floatSurfaced } from '../../conditions/surfaced.ts';
import type { BoatToTrim } from './boatToTrim.ts';
import { inOthers } from './inOthers.ts';

/** The boat with something about it changed, floated anew; null when it then does not float. */
export function anewAs(boatToTrim: BoatToTrim, boat: Boat): BoatToTrim | null {
  const bodies = assembleBodies(boat, boatToTrim.cache);
  const surfaced = floatSurfaced(bodies, boat.length);
  if (surfaced.status !== 'afloat') return null;
  const others = inOthers({ ...boatToTrim, boat }, boatToTrim.cache);
  return {
    ...boatToTrim,
    boat,
    bodies,
    surfaced,
    submerged: floatSubmerged(bodies, submergedOf(boat).loading),
    others,
  };
}
