import { assembleBodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { floatSubmerged } from '../../server/core/conditions/submerged.ts';
import { floatSurfaced } from '../../server/core/conditions/surfaced.ts';
import { proposeCorrections } from '../../server/core/corrections/propose.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { readText } from './arrange.ts';
import type { FamilyBoat } from './family.ts';
import { type Floater, isInTrim, missesOf } from './figures.ts';
import type { Truth } from './truth.ts';

/** Corrections of corrections, at most. */
const ROUNDS = 3;

/** Whether the boat can be trimmed with what its bays take when one knows the truth, and cuts and lays without error. */
export function canBeTrimmed({ text }: FamilyBoat, { boat: real }: Truth, floater: Floater): boolean {
  const schema = readText(text).kept.schemas.made.part;
  let boat = real;
  for (let round = 0; round <= ROUNDS; round++) {
    if (isInTrim(missesOf(floater(boat), boat))) return true;
    const cache = emptyCache();
    const bodies = assembleBodies(boat, cache);
    const surfaced = floatSurfaced(bodies, boat.length);
    if (surfaced.status !== 'afloat') return false;
    const boatToTrim = { boat, bodies, surfaced, submerged: floatSubmerged(bodies), cache, schema };
    const [first] = finish(proposeCorrections(boatToTrim));
    if (!first) return false;
    boat = first.boat;
  }
  return false;
}
