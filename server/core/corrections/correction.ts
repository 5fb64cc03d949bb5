import type { Boat, Part } from '../boat/boat.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import type { Change, EntryText, Finding } from '../findings/finding.ts';
import type { Piece } from './room/slots.ts';

/** What a correction sets right. */
export type Scope = 'both' | 'surfaced' | 'submerged';

/** A boat with pieces laid in it, floated by the full model. */
export interface FloatedBoat {
  readonly pieces: readonly Piece[];
  /** The pieces as payload entries: as parts, and as they shall stand in the file. */
  readonly parts: readonly Part[];
  readonly entries: readonly EntryText[];
  /** The boat with the pieces aboard. */
  readonly boat: Boat;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
  /** What the full model still has to say of it in the conditions aimed at. */
  readonly left: readonly Finding[];
}

/** An entry under another name. */
export const renamed = (entry: EntryText, name: string): EntryText => ({
  ...entry,
  fields: entry.fields.map(([key, text]) => [key, key === 'name' ? name : text] as const),
});

/** Pieces that mend the trim, computed, rounded to what can be cut, and re-floated by the full model. */
export interface Correction extends FloatedBoat {
  /** What it adds and what it brings. */
  readonly title: string;
  readonly condition: Scope;
  /** What makes the file say so. */
  readonly changes: readonly Change[];
  /** What there is to say of it besides, for the report. */
  readonly note: string | null;
}
