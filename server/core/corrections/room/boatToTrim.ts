import { pathKey } from '../../../../schema/path.ts';
import type { Boat, Part } from '../../boat/boat.ts';
import type { BoatSource } from '../../boat/source.ts';
import type { Bodies, BodyCache } from '../../bodies/assemble.ts';
import type { LoadedCondition } from '../../conditions/loadingCondition.ts';
import type { Submerged } from '../../conditions/submerged.ts';
import type { Surfaced } from '../../conditions/surfaced.ts';
import type { Uncertainties } from '../../uncertainty/uncertainties.ts';
import type { PartSchema } from './pieceEntry.ts';

/** The boat to be corrected and how it lies now. */
export interface BoatToTrim {
  readonly boat: Boat;
  /** The boat by the file alone, where trials have it otherwise: what is written is written of this one. */
  readonly filed: Boat;
  readonly bodies: Bodies;
  /** A boat that does not float has a painted waterline to be brought to. */
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
  /** The same in loading conditions besides surfaced and submerged. */
  readonly others: readonly LoadedCondition[];
  /** What the boat was read from, to be loaded for them. */
  readonly source: BoatSource;
  /** What is left open of its figures, trials known; null while parts of the file are missing. */
  readonly uncertainties: Uncertainties | null;
  readonly readSoFar: ReadSoFar;
  readonly cache: BodyCache;
  /** The schema of a payload entry in the file's units, for reading back what is offered. */
  readonly schema: PartSchema;
}

/** Where something of the boat as a whole was read and is heard: the water tells most, and a scale more than the file. */
export type ReadSoFar = 'nowhere' | 'ashore' | 'in the water';

/** A part of the boat as the file has it: a place that was measured is not rewritten for what the trials make of it. */
export function asFiled(part: Part, { filed }: Pick<BoatToTrim, 'filed'>): Part {
  const key = pathKey(part.path);
  return filed.payload.find(({ path }) => pathKey(path) === key) ?? part;
}
