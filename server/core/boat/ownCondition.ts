import type { PartEntry } from '../../../schema/hull.ts';
import type { Path } from '../../../schema/path.ts';
import type { WaterEntry } from '../../../schema/water.ts';
import type { Entry, Part, Water } from './boat.ts';
import type { Source } from './source.ts';

/** A loading condition of the builder's own, as the file has it. */
export interface OwnCondition extends Entry {
  readonly isSubmerged: boolean;
  /** Of all tanks together, 0..1; null: each as `tanks` says, else as its own entry does. */
  readonly fill: number | null;
  readonly tanks: readonly TankFill[];
  /** Carried in this condition only. */
  readonly aboard: readonly Source<PartEntry, Part>[];
  /** Payload entries that are ashore, by name. */
  readonly without: readonly string[];
  /** Null: that of the file. */
  readonly water: OwnWater | null;
  /** What is asked of the boat, by the word under `limits:`; rad, m, 0..1. */
  readonly asked: Readonly<Partial<Record<string, number | readonly [least: number, most: number]>>>;
}

interface TankFill {
  readonly path: Path;
  readonly tank: string;
  /** 0..1. */
  readonly fill: number;
}

interface OwnWater {
  readonly entry: WaterEntry;
  readonly made: Water;
}
