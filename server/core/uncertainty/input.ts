import type { Path } from '../../../schema/path.ts';
import type { Dimension } from '../../../schema/units.ts';
import type { WaterEntry } from '../../../schema/water.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Edit } from './edits.ts';

/**
 * One uncertain number of the boat. Inputs are independent of each other: what several entries have in common (the
 * density of a material, the water) is one input for all of them.
 */
export interface Input {
  /**
   * Stable as long as its place in the file is: the `pathKey` of the place, with a word after it where one place holds
   * several inputs (a range has its middle and its length, a box its two sizes).
   */
  readonly id: string;
  /** Where it stands in the file, or would stand: the value that a finding marks and an edit changes. */
  readonly path: Path;
  /** All places that it stands at: of a density taken from the handbook, each entry's material. */
  readonly places: readonly Path[];
  /** The entry or section that it is of. */
  readonly entry: Path;
  readonly entryName: string;
  /** "station". */
  readonly noun: string;
  /** "station of “battery”". */
  readonly words: string;
  /** SI; of a range its middle or its length. */
  readonly value: number;
  /** One standard uncertainty, more than 0, SI. */
  readonly sigma: number;
  readonly dimension: Dimension;
  readonly origin: Origin;
  readonly target: Target;
}

/** How a figure came about, which says how well it is known. */
export type Origin =
  /** Its tolerance stands in the file. */
  | 'written'
  | 'weighed'
  | 'measured'
  | 'dunked'
  /** A density that the file gives. */
  | 'given'
  | 'handbook'
  /** Not in the file at all. */
  | 'assumed';

/** What of the boat is made anew when the input changes. */
type Target =
  | { readonly on: 'entries'; readonly at: readonly EntryAt[]; readonly edit: Edit }
  | { readonly on: 'water'; readonly edit: (water: WaterEntry, by: number) => WaterEntry };

/** An entry by its list and its place among those of the list that could be read. */
export interface EntryAt {
  readonly list: ListName;
  readonly index: number;
}

export type ListName = 'shells' | 'compartments' | 'tanks' | 'payload';
export const LISTS = ['shells', 'compartments', 'tanks', 'payload'] as const satisfies readonly (keyof BoatSource)[];
