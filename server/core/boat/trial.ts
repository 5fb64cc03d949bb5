import type { PartEntry } from '../../../schema/hull.ts';
import type { Path } from '../../../schema/path.ts';
import type { WaterEntry } from '../../../schema/water.ts';
import type { Entry, Part, Water } from './boat.ts';
import type { Source } from './source.ts';

export type TrialCondition = 'surfaced' | 'submerged' | 'inclining' | 'bench' | 'hung';

/** What was read off the boat on one day, in the water or on the bench. SI, boat axes. */
export interface Trial extends Entry {
  readonly condition: TrialCondition;
  readonly date: string | null;
  readonly note: string | null;
  /** What was measured, for comparing with what is predicted. */
  readonly readings: readonly Reading[];
  /** What was in the tanks of a boat that did not hang neutral; null: what the file says that they keep, on the bench nothing. */
  readonly left: TankReading | null;
  /** How much stood out of the water of a boat that was not quite under it, m. */
  readonly proud: Measured | null;
  readonly shifts: readonly Shift[];
  /** On board for this trial only. */
  readonly aboard: readonly Source<PartEntry, Part>[];
  /** Payload entries that were not on board yet, by name. */
  readonly without: readonly string[];
  /** Payload entries that were otherwise on that day than in the file. */
  readonly formerly: readonly Former[];
  /** The water of that day as given, and what it comes to; null: the file's. */
  readonly pool: WaterEntry | null;
  readonly water: Water | null;
}

/** A payload entry as it was on an earlier day. */
export interface Former {
  readonly path: Path;
  /** Null: not on board. */
  readonly part: Source<PartEntry, Part> | null;
  /** Its keys that said something else then, each with the place in `was` where they say it. */
  readonly changed: Readonly<Record<string, number>>;
}

/** A figure as it was read, SI. */
export interface Measured {
  readonly path: Path;
  readonly value: number;
  /** One standard uncertainty: as written, or what such a reading is good for. */
  readonly sigma: number;
}

export type Reading =
  | MarkReading
  | FreeboardReading
  | AngleReading
  | TankReading
  | TiltReading
  | SupportReading
  | BalanceReading;

interface Read extends Measured {
  /** Struck out: shown, but in no estimate. */
  readonly isSlip: boolean;
}

/** Height of the water surface above the baseline on the centreline, m. */
export interface MarkReading extends Read {
  readonly of: 'mark';
  readonly station: number;
}

/** From the water up to the top of the hull, square to the baseline on the centreline, m. */
export interface FreeboardReading extends Read {
  readonly of: 'freeboard';
  readonly station: number;
  /** The shell or compartment to whose top it was read; null: the highest shell there. */
  readonly top: string | null;
}

/** rad, positive bow up and to starboard. */
interface AngleReading extends Read {
  readonly of: 'trim' | 'heel';
}

/** Water in the tanks: part of all they hold, m3 of it, or m above the lowest point of one tank at its middle. */
export interface TankReading extends Read {
  readonly of: 'fill' | 'water' | 'level';
  /** The tank that the level was read in; null: the first. */
  readonly tank: string | null;
}

/** The change of heel that a shift made, rad. */
interface TiltReading extends Read {
  readonly of: 'tilt';
  /** Which of the trial's shifts. */
  readonly shift: number;
}

/** A weight moved athwart from where it lay at first. */
export interface Shift {
  /** kg. */
  readonly mass: Measured;
  /** m, to starboard. */
  readonly moved: Measured;
}

/** What a scale under the keel, or a spring balance over the boat under water, shows with the keel level, kg. */
export interface SupportReading extends Read {
  readonly of: 'scale' | 'hook';
  /** Stations of this support and of the other one, m; null: all of the boat is on this one. */
  readonly pair: { readonly station: number; readonly other: number } | null;
}

/** Station at which the whole boat balances, m. */
export interface BalanceReading extends Read {
  readonly of: 'balance';
}
