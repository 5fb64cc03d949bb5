import { assembleBodies, emptyShelf } from '../../server/bodies/assemble.ts';
import { floatSubmerged } from '../../server/conditions/submerged.ts';
import { floatSurfaced } from '../../server/conditions/surfaced.ts';
import { proposeCorrections } from '../../server/corrections/propose.ts';
import { finish } from '../../server/steps.ts';
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
    const shelf = emptyShelf();
    const bodies = assembleBodies(boat, shelf);
    const surfaced = floatSurfaced(bodies, boat.length);
    if (surfaced.status !== 'afloat') return false;
    const patient = { boat, bodies, surfaced, submerged: floatSubmerged(bodies), shelf, schema };
    const [first] = finish(proposeCorrections(patient));
    if (!first) return false;
    boat = first.boat;
  }
  return false;
}
