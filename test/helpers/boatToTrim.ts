import { createDescriber } from '../../schema/describe.ts';
import { assembleBodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { floatSubmerged } from '../../server/core/conditions/submerged.ts';
import { floatSurfaced } from '../../server/core/conditions/surfaced.ts';
import type { BoatToTrim } from '../../server/core/corrections/room/boatToTrim.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { readBoat } from './atOnce.ts';

const describer = createDescriber();
/** Schemas are costly to make, so made once. */
const { kept } = readBoat(readSyntax('boat: Any'), describer);

/** The boat of a text as corrections take it, without all that an analysis finds out besides. */
export function boatToTrimOf(text: string): BoatToTrim {
  const reading = readBoat(readSyntax(text), describer, kept);
  const { boat } = reading;
  const cache = emptyCache();
  const bodies = assembleBodies(boat, cache);
  const surfaced = floatSurfaced(bodies, boat.length);
  if (surfaced.status !== 'afloat') throw new Error(`the boat does not float: ${surfaced.status}`);
  const submerged = floatSubmerged(bodies);
  return {
    boat,
    filed: boat,
    bodies,
    surfaced,
    submerged,
    others: [],
    source: reading.source,
    uncertainties: null,
    readSoFar: 'nowhere',
    cache,
    schema: reading.kept.schemas.inUse.made.part,
  };
}
