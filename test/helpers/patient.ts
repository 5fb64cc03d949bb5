import { createDescriber } from '../../schema/describe.ts';
import { readBoat } from '../../server/boat/readBoat.ts';
import { assembleBodies, emptyShelf } from '../../server/bodies/assemble.ts';
import { floatSubmerged } from '../../server/conditions/submerged.ts';
import { floatSurfaced } from '../../server/conditions/surfaced.ts';
import type { Patient } from '../../server/corrections/patient.ts';
import { readSyntax } from '../../server/text/syntax.ts';

const describer = createDescriber();
/** Schemas are costly to make, so made once. */
const { kept } = readBoat(readSyntax('boat: Any'), describer);

/** The boat of a text as corrections take it, without all that an analysis finds out besides. */
export function patientOf(text: string): Patient {
  const reading = readBoat(readSyntax(text), describer, kept);
  const { boat } = reading;
  const shelf = emptyShelf();
  const bodies = assembleBodies(boat, shelf);
  const surfaced = floatSurfaced(bodies, boat.length);
  if (surfaced.status !== 'afloat') throw new Error(`the boat does not float: ${surfaced.status}`);
  const submerged = floatSubmerged(bodies);
  return { boat, bodies, surfaced, submerged, shelf, schema: reading.kept.schemas.made.part };
}
