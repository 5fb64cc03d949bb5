import type { Boat } from '../../boat/boat.ts';
import type { Bodies, BodyCache } from '../../bodies/assemble.ts';
import type { Submerged } from '../../conditions/submerged.ts';
import type { SurfacedAfloat } from '../../conditions/surfaced.ts';
import type { Uncertainties } from '../../uncertainty/uncertainties.ts';
import type { PartSchema } from './pieceEntry.ts';

/** The boat to be corrected and how it lies now. */
export interface BoatToTrim {
  readonly boat: Boat;
  /** The same by the file alone: what is moved is written from where the file has it. */
  readonly filed: Boat;
  readonly bodies: Bodies;
  readonly surfaced: SurfacedAfloat;
  readonly submerged: Submerged;
  /** What is left open of its figures, trials known; null while parts of the file are missing. */
  readonly uncertainties: Uncertainties | null;
  readonly cache: BodyCache;
  /** The schema of a payload entry in the file's units, for reading back what is offered. */
  readonly schema: PartSchema;
}
