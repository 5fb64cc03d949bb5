import type { Boat } from '../../boat/boat.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import { submergedOf } from '../../conditions/loadingCondition.ts';
import { floatSubmerged } from '../../conditions/submerged.ts';
import { floatSurfaced } from '../../conditions/surfaced.ts';
import type { BoatToTrim } from './boatToTrim.ts';
import { inOthers } from './inOthers.ts';

/** The boat with something about it changed, floated anew. */
export function anewAs(boatToTrim: BoatToTrim, boat: Boat): BoatToTrim {
  const bodies = assembleBodies(boat, boatToTrim.cache);
  const others = inOthers({ ...boatToTrim, boat }, boatToTrim.cache);
  return {
    ...boatToTrim,
    boat,
    bodies,
    surfaced: floatSurfaced(bodies, boat.length),
    submerged: floatSubmerged(bodies, submergedOf(boat).loading),
    others,
  };
}
