import { freeName } from '../../boat/arrangement.ts';
import type { Part, Water } from '../../boat/boat.ts';
import { waterOfKind } from '../../boat/readWater.ts';
import type { EntryText } from '../../findings/finding.ts';
import type { Steps } from '../../steps/steps.ts';
import type { LyingBoat } from '../balance/partEffects.ts';
import { scopeOf } from '../balance/row.ts';
import { type Correction, renamed } from '../correction.ts';
import { anewAs } from '../room/anewAs.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import type { Piece } from '../room/slots.ts';
import { correct } from '../search/correct.ts';
import { isWithin } from './isWithin.ts';

/** A piece of the set: one to be made, or one that is aboard already. */
export interface SetPiece {
  readonly part: Part;
  /** How it is cut and laid, and what stands in the file for it; null for what is aboard. */
  readonly made: { readonly piece: Piece; readonly entry: EntryText } | null;
}

/** One of the two waters: what lies aboard in it alone, and how the boat then lies. */
export interface InWater {
  readonly water: Water;
  readonly only: readonly SetPiece[];
  readonly lying: LyingBoat;
}

/** Pieces that change with the water: the boat is within all limits in both, each with its own pieces aboard. */
export interface WaterSet {
  readonly inBoth: readonly SetPiece[];
  readonly fresh: InWater;
  readonly sea: InWater;
}

/** Densities closer than this are the same water, kg/m3. */
const SAME_WATER = 1;

/**
 * The pieces to add for sea water and to take out again for fresh, at the file's temperature; the file's own water stands
 * for the kind that it is nearer to. What is loose aboard already is the sea's when the boat needs no more. Else it is
 * trimmed for fresh water and pieces are added for the sea; where adding will not do, each water gets pieces of its own.
 * Null when the bays and the stock allow neither.
 */
export function* waterSetOf(boatToTrim: BoatToTrim): Steps<WaterSet | null> {
  const [freshWater, seaWater] = watersOf(boatToTrim.boat.water);
  const fresh = inWater(boatToTrim, freshWater);
  const sea = inWater(boatToTrim, seaWater);
  const loose = boatToTrim.boat.payload.filter(part => !part.fixed);
  const unladen = loose.length > 0 ? inWater(without(boatToTrim, loose), freshWater) : null;
  if (unladen && isWithin(sea) && isWithin(unladen)) {
    return {
      inBoth: [],
      fresh: { water: freshWater, only: [], lying: unladen },
      sea: { water: seaWater, only: loose.map(part => ({ part, made: null })), lying: sea },
    };
  }
  yield;
  const first = yield* trimmed(fresh);
  if (!first) return null;
  const ladenAtSea = inWater({ ...boatToTrim, boat: first.lying.boat }, seaWater);
  const added = yield* trimmed(ladenAtSea, 'for sea');
  if (added) {
    return {
      inBoth: first.pieces,
      fresh: { water: freshWater, only: [], lying: first.lying },
      sea: { water: seaWater, only: added.pieces, lying: added.lying },
    };
  }
  const own = yield* trimmed(sea, 'for sea');
  if (!own) return null;
  return {
    inBoth: [],
    fresh: { water: freshWater, only: first.pieces, lying: first.lying },
    sea: { water: seaWater, only: own.pieces, lying: own.lying },
  };
}

/** Fresh and sea water, one of them the water that the file has. */
function watersOf(water: Water): readonly [fresh: Water, sea: Water] {
  const [fresh, sea] = [waterOfKind('fresh', water.temperature), waterOfKind('sea', water.temperature)];
  const isFresh = Math.abs(water.density - fresh.density) < Math.abs(water.density - sea.density);
  const near = isFresh ? fresh : sea;
  const own = Math.abs(water.density - near.density) < SAME_WATER ? near : water;
  return isFresh ? [own, sea] : [fresh, own];
}

interface Trimmed {
  readonly pieces: readonly SetPiece[];
  readonly lying: LyingBoat;
}

/** The boat within its limits, with pieces laid where it is not, `purpose` in their names; null when none will do. */
function* trimmed(boatToTrim: BoatToTrim, purpose = ''): Steps<Trimmed | null> {
  if (isWithin(boatToTrim)) return { pieces: [], lying: boatToTrim };
  const correction: Correction | null = yield* correct(boatToTrim, scopeOf(boatToTrim.boat));
  if (!correction) return null;
  const taken = [...boatToTrim.boat.payload, ...boatToTrim.boat.ashore];
  const pieces = correction.pieces.map((piece, i): SetPiece => {
    const part = correction.parts[i]!;
    const name = purpose === '' ? part.name : freeName(`${part.name} ${purpose}`, taken);
    return { part: { ...part, name }, made: { piece, entry: renamed(correction.entries[i]!, name) } };
  });
  return { pieces, lying: correction };
}

const inWater = (boatToTrim: BoatToTrim, water: Water): BoatToTrim => anewAs(boatToTrim, { ...boatToTrim.boat, water });

const without = (boatToTrim: BoatToTrim, parts: readonly Part[]): BoatToTrim => ({
  ...boatToTrim,
  boat: { ...boatToTrim.boat, payload: boatToTrim.boat.payload.filter(part => !parts.includes(part)) },
});
