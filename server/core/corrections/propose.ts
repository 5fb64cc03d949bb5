import type { Boat } from '../boat/boat.ts';
import { judgeSubmerged, stiffnessToTrim } from '../judges/judgeSubmerged.ts';
import { judgeSurfaced } from '../judges/judgeSurfaced.ts';
import { finish, type Steps } from '../steps/steps.ts';
import { type Reach, reachOf } from './balance/reach.ts';
import type { Correction } from './correction.ts';
import { proposeMoves } from './kinds/moves.ts';
import { imaginedSlots, nearestCorrection, roomWords } from './kinds/nearest.ts';
import { asRecut, ownRooms, withoutLoose } from './kinds/recut.ts';
import type { BoatToTrim } from './room/boatToTrim.ts';
import { findSlots } from './room/slots.ts';
import { balancesOf } from './search/balances.ts';
import { benchFor, best, correct, correctWith, forBoth, PART_OF_LIMIT } from './search/correct.ts';
import { breaksLimit } from './search/realise.ts';
import { stiffeningTitle } from './words/correctionTitle.ts';
import { type Explanation, explainCorrection } from './words/explain.ts';

const MOST_OFFERED = 5;

/**
 * Corrections, the best first: both conditions at once, by moving equipment where that alone will do, each condition
 * alone, with lead only and with foam only, by recutting what is loose. Each has the fewest pieces and then the least lead
 * that will do, cut to what can be cut, written as its entries, read back and floated by the full model; what leaves a
 * finding of what it sets out to mend is not offered. When no pieces meet both conditions, the nearest that can be had
 * stands last and says which limits give way.
 */
export function* proposeCorrections(boatToTrim: BoatToTrim): Steps<readonly Correction[]> {
  const { boat, surfaced, submerged } = boatToTrim;
  const dives = boat.tanks.length > 0;
  const surfacedOut = judgeSurfaced(boat, surfaced).filter(breaksLimit);
  const submergedOut = dives ? judgeSubmerged(boat, submerged).filter(breaksLimit) : [];
  const stiffer = dives ? withStifferLimit(boatToTrim) : null;
  const stiffening = stiffer ? yield* stiffen(boatToTrim, stiffer) : null;
  if (surfacedOut.length + submergedOut.length === 0) return stiffening ? [stiffening] : [];
  const offered: Correction[] = [];
  const offer = (correction: Correction | null | undefined) => {
    if (correction && !offered.some(other => sameChanges(other, correction))) offered.push(correction);
  };
  offer(stiffening);
  const ofSurface = surfacedOut.length > 0 ? yield* correct(boatToTrim, 'surfaced') : null;
  const ofDive = submergedOut.length > 0 ? yield* correct(boatToTrim, 'submerged') : null;
  // What mends one condition alone may keep the other's limits too, with less than what was made for both.
  const alone = [ofSurface, ofDive].filter(correction => correction !== null);
  const inBoth = new Map(dives ? alone.map(correction => [correction, forBoth(correction, boatToTrim)]) : []);
  const full = dives ? best([yield* correct(boatToTrim, 'both'), ...inBoth.values()]) : null;
  offer(full);
  if (dives) offer((yield* proposeMoves(boatToTrim, balancesOf(boatToTrim, 'both', PART_OF_LIMIT)(null)))[0]);
  for (const correction of alone) if (!inBoth.get(correction)) offer(correction);
  if (dives) offer(yield* recut(boatToTrim));
  if (full) {
    for (const material of ['lead', 'foam'] as const) {
      if (full.pieces.every(({ slot }) => slot.material === material)) continue;
      offer(yield* correct(boatToTrim, 'both', { suits: slot => slot.material === material }));
    }
  } else if (dives) {
    const out = surfacedOut.length + submergedOut.length;
    offer(yield* nearestCorrection(boatToTrim, benchFor(boatToTrim, 'both', PART_OF_LIMIT), out));
  }
  return offered.slice(0, MOST_OFFERED);
}

/** The boat asked to be stiff enough to be trimmed by weight; null when it is, or is not touchy for want of a rest. */
function withStifferLimit({ boat, submerged }: BoatToTrim): Boat | null {
  if (submerged.status !== 'neutral' || !submerged.stable) return null;
  const needed = stiffnessToTrim(boat, submerged);
  if (submerged.bgEffectiveLongitudinal >= needed) return null;
  return { ...boat, limits: { ...boat.limits, submerged: { ...boat.limits.submerged, bg: needed } } };
}

/** Lead low and foam high that trim the boat and stiffen it in one. */
function* stiffen(boatToTrim: BoatToTrim, stiffer: Boat): Steps<Correction | null> {
  const correction = yield* correct({ ...boatToTrim, boat: stiffer }, 'both');
  if (correction?.submerged.status !== 'neutral') return null;
  const { bgEffectiveLongitudinal } = correction.submerged;
  const before = boatToTrim.submerged.status === 'neutral' ? boatToTrim.submerged.bgEffectiveLongitudinal : 0;
  return {
    ...correction,
    boat: { ...correction.boat, limits: boatToTrim.boat.limits },
    title: stiffeningTitle(correction, before, bgEffectiveLongitudinal),
  };
}

/**
 * What extra room would bring both conditions within their limits, for when the bays do not: confirmed by the full model
 * with pieces laid there. Null when no room of the hull's own would.
 */
export function roomAdvice(boatToTrim: BoatToTrim): string | null {
  const wished = [...findSlots(boatToTrim.boat), ...imaginedSlots(boatToTrim.boat)];
  const correction = finish(correctWith(boatToTrim, 'both', [wished]));
  return correction && roomWords(correction.pieces, boatToTrim.boat);
}

/** Why a correction's pieces are what they are. */
export const explain = (boatToTrim: BoatToTrim, correction: Correction): Explanation =>
  explainCorrection(
    correction,
    balancesOf(boatToTrim, correction.condition, PART_OF_LIMIT)(correction),
    boatToTrim.cache,
  );

/** What the bays can still give against what is needed, in each condition. */
export function reaches(boatToTrim: BoatToTrim): { readonly surfaced: Reach; readonly submerged: Reach | null } {
  const slots = findSlots(boatToTrim.boat);
  const rows = balancesOf(boatToTrim, boatToTrim.boat.tanks.length > 0 ? 'both' : 'surfaced', PART_OF_LIMIT)(null);
  const row = (name: string) => rows.find(candidate => candidate.name === name);
  const draft = row('surfaced draft')!;
  const submergedTrim = row('submerged trim');
  return {
    surfaced: reachOf(slots, draft, row('surfaced trim')!),
    // Submerged the tank takes up the mass; the draft's aim stands in for it so that the two pictures compare.
    submerged: submergedTrim ? reachOf(slots, draft, submergedTrim) : null,
  };
}

function* recut(boatToTrim: BoatToTrim): Steps<Correction | null> {
  const bare = withoutLoose(boatToTrim);
  const correction = bare && (yield* correct(bare, 'both', { besides: ownRooms(boatToTrim.boat) }));
  return correction && asRecut(correction, boatToTrim);
}

const sameChanges = (a: Correction, b: Correction): boolean => JSON.stringify(a.changes) === JSON.stringify(b.changes);
