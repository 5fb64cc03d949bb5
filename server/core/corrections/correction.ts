import type { Boat, Part } from '../boat/boat.ts';
import type { BoatSource } from '../boat/source.ts';
import type { LoadingCondition, LyingEverywhere } from '../conditions/loadingCondition.ts';
import type { Change, EntryText, Finding } from '../findings/finding.ts';
import type { Scope } from './balance/row.ts';
import type { Move } from './room/movers.ts';
import type { Piece } from './room/slots.ts';

/** A boat with pieces laid in it and parts moved, floated by the full model. */
export interface CorrectedBoat extends LyingEverywhere {
  readonly pieces: readonly Piece[];
  /** The pieces as payload entries: as parts, and as they shall stand in the file. */
  readonly parts: readonly Part[];
  readonly entries: readonly EntryText[];
  readonly moves: readonly Move[];
  /** The boat with all of it done. */
  readonly boat: Boat;
  /** What the boat was read from before. */
  readonly source: BoatSource;
  /** What the full model still has to say of it in the conditions aimed at. */
  readonly left: readonly Finding[];
  /** What it has to say of the way down between two conditions that are both well. */
  readonly onTheWay: readonly Finding[];
}

/** An entry under another name. */
export const renamed = (entry: EntryText, name: string): EntryText => ({
  ...entry,
  fields: entry.fields.map(([key, text]) => [key, key === 'name' ? name : text] as const),
});

/** Pieces that are aboard in one loading condition of the builder's own, and in no other. */
export interface Carried {
  readonly condition: LoadingCondition;
  readonly pieces: readonly Piece[];
  readonly parts: readonly Part[];
  readonly entries: readonly EntryText[];
}

/** What mends the trim, rounded to what can be cut and measured, and floated again by the full model. */
interface Offer extends CorrectedBoat {
  /** What it does and what it brings. */
  readonly title: string;
  readonly condition: Scope;
  /** What makes the file say so. */
  readonly changes: readonly Change[];
  /** What there is to say of it besides, for the report. */
  readonly note: string | null;
  /** So much is open that the boat had better be floated as it is, and read, before this is done. */
  readonly floatFirst: boolean;
  /** What is carried now and then only, besides. */
  readonly carried: readonly Carried[];
}

/** New pieces only. */
interface Insert extends Offer {
  readonly kind: 'insert';
}

/** Parts put somewhere else, nothing bought. */
interface MoveOnly extends Offer {
  readonly kind: 'move';
}

/** New pieces, and parts put somewhere else. */
interface Combination extends Offer {
  readonly kind: 'combination';
}

/** Loose pieces of the file cut anew, taken out or joined by new ones. */
export interface Recut extends Offer {
  readonly kind: 'recut';
  /** Loose pieces that are taken out. */
  readonly removed: readonly Part[];
}

/** Pieces that trim the boat and stiffen it so that it can be trimmed by weight at all. */
export interface Stiffen extends Offer {
  readonly kind: 'stiffen';
}

/** Pieces for a condition of the builder's own, aboard there alone; for every condition with what the rest asks besides. */
interface Carry extends Offer {
  readonly kind: 'carry';
}

/** The nearest that can be had when nothing meets all limits: `left` says which give way. */
interface Nearest extends Offer {
  readonly kind: 'nearest';
}

export type Correction = Insert | MoveOnly | Combination | Recut | Stiffen | Carry | Nearest;

/** Every piece that is cut for it. */
export const allPieces = ({ pieces, carried }: Correction): readonly Piece[] => [
  ...pieces,
  ...carried.flatMap(each => each.pieces),
];
