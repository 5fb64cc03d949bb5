import type { StockEntry } from '../../../schema/bays.ts';
import type { CompartmentEntry, PartEntry, ShellEntry, TankEntry } from '../../../schema/hull.ts';
import type { Path } from '../../../schema/path.ts';
import type { WaterEntry } from '../../../schema/water.ts';
import type { Boat, Compartment, Entry, Part, Shell, Tank } from './boat.ts';
import type { ReadingContext } from './readingContext.ts';

/** An entry with what its schema made of the text, so that it can be read again with another figure in it. */
export interface Source<T, E extends Entry> {
  readonly checked: T;
  readonly entry: E;
}

/** A boat with what it was read from; each list in the order of the boat's own. */
export interface BoatSource {
  readonly boat: Boat;
  readonly water: WaterEntry | null;
  /** Where that stands, when it is the water of a loading condition, or another that was asked for, and not the file's. */
  readonly waterAt?: Path;
  readonly stock: StockEntry | null;
  readonly shells: readonly Source<ShellEntry, Shell>[];
  readonly compartments: readonly Source<CompartmentEntry, Compartment>[];
  readonly tanks: readonly Source<TankEntry, Tank>[];
  readonly payload: readonly Source<PartEntry, Part>[];
  readonly ashore: readonly Source<PartEntry, Part>[];
  readonly around: ReadingContext;
}

export const entriesIn = <E extends Entry>(sources: readonly Source<unknown, E>[]): readonly E[] =>
  sources.map(({ entry }) => entry);
