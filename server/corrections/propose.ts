import type { Boat } from '../boat/boat.ts';
import { judgeSubmerged, stiffnessToTrim } from '../findings/judgeSubmerged.ts';
import { judgeSurfaced } from '../findings/judgeSurfaced.ts';
import { finish, type Steps } from '../steps.ts';
import { balancesOf } from './balances.ts';
import { benchFor, best, correct, correctWith, forBoth, PART_OF_LIMIT } from './correct.ts';
import type { Correction } from './correction.ts';
import { stiffeningTitle } from './correctionTitle.ts';
import { type Explanation, explainCorrection } from './explain.ts';
import { findLevers } from './levers.ts';
import { proposeMoves } from './moves.ts';
import { imaginedLevers, nearestCorrection, roomWords } from './nearest.ts';
import type { Patient } from './patient.ts';
import { type Reach, reachOf } from './reach.ts';
import { breaksLimit } from './realise.ts';
import { asRecut, ownRooms, withoutLoose } from './recut.ts';

const MOST_OFFERED = 5;

/**
 * Corrections, the best first: both conditions at once, by moving equipment where that alone will do, each condition
 * alone, with lead only and with foam only, by recutting what is loose. Each has the fewest pieces and then the least lead
 * that will do, cut to what can be cut, written as its entries, read back and floated by the full model; what leaves a
 * finding of what it sets out to mend is not offered. When no pieces meet both conditions, the nearest that can be had
 * stands last and says which limits give way.
 */
export function* proposeCorrections(patient: Patient): Steps<readonly Correction[]> {
  const { boat, surfaced, submerged } = patient;
  const dives = boat.tanks.length > 0;
  const surfacedOut = judgeSurfaced(boat, surfaced).filter(breaksLimit);
  const submergedOut = dives ? judgeSubmerged(boat, submerged).filter(breaksLimit) : [];
  const stiffer = dives ? withStifferLimit(patient) : null;
  const stiffening = stiffer ? yield* stiffen(patient, stiffer) : null;
  if (surfacedOut.length + submergedOut.length === 0) return stiffening ? [stiffening] : [];
  const offered: Correction[] = [];
  const offer = (correction: Correction | null | undefined) => {
    if (correction && !offered.some(other => sameChanges(other, correction))) offered.push(correction);
  };
  offer(stiffening);
  const ofSurface = surfacedOut.length > 0 ? yield* correct(patient, 'surfaced') : null;
  const ofDive = submergedOut.length > 0 ? yield* correct(patient, 'submerged') : null;
  // What mends one condition alone may keep the other's limits too, with less than what was made for both.
  const alone = [ofSurface, ofDive].filter(correction => correction !== null);
  const inBoth = new Map(dives ? alone.map(correction => [correction, forBoth(correction, patient)]) : []);
  const full = dives ? best([yield* correct(patient, 'both'), ...inBoth.values()]) : null;
  offer(full);
  if (dives) offer((yield* proposeMoves(patient, balancesOf(patient, 'both', PART_OF_LIMIT)(null)))[0]);
  for (const correction of alone) if (!inBoth.get(correction)) offer(correction);
  if (dives) offer(yield* recut(patient));
  if (full) {
    for (const material of ['lead', 'foam'] as const) {
      if (full.pieces.every(({ lever }) => lever.material === material)) continue;
      offer(yield* correct(patient, 'both', { suits: lever => lever.material === material }));
    }
  } else if (dives) {
    const out = surfacedOut.length + submergedOut.length;
    offer(yield* nearestCorrection(patient, benchFor(patient, 'both', PART_OF_LIMIT), out));
  }
  return offered.slice(0, MOST_OFFERED);
}

/** The boat asked to be stiff enough to be trimmed by weight; null when it is, or is not touchy for want of a rest. */
function withStifferLimit({ boat, submerged }: Patient): Boat | null {
  if (submerged.status !== 'neutral' || !submerged.stable) return null;
  const needed = stiffnessToTrim(boat, submerged);
  if (submerged.bgEffectiveLongitudinal >= needed) return null;
  return { ...boat, limits: { ...boat.limits, submerged: { ...boat.limits.submerged, bg: needed } } };
}

/** Lead low and foam high that trim the boat and stiffen it in one. */
function* stiffen(patient: Patient, stiffer: Boat): Steps<Correction | null> {
  const correction = yield* correct({ ...patient, boat: stiffer }, 'both');
  if (correction?.submerged.status !== 'neutral') return null;
  const { bgEffectiveLongitudinal } = correction.submerged;
  const before = patient.submerged.status === 'neutral' ? patient.submerged.bgEffectiveLongitudinal : 0;
  return {
    ...correction,
    boat: { ...correction.boat, limits: patient.boat.limits },
    title: stiffeningTitle(correction, before, bgEffectiveLongitudinal),
  };
}

/**
 * What extra room would bring both conditions within their limits, for when the bays do not: confirmed by the full model
 * with pieces laid there. Null when no room of the hull's own would.
 */
export function roomAdvice(patient: Patient): string | null {
  const wished = [...findLevers(patient.boat), ...imaginedLevers(patient.boat)];
  const correction = finish(correctWith(patient, 'both', [wished]));
  return correction && roomWords(correction.pieces, patient.boat);
}

/** Why a correction's pieces are what they are. */
export const explain = (patient: Patient, correction: Correction): Explanation =>
  explainCorrection(correction, balancesOf(patient, correction.condition, PART_OF_LIMIT)(correction), patient.shelf);

/** What the bays can still give against what is needed, in each condition. */
export function reaches(patient: Patient): { readonly surfaced: Reach; readonly submerged: Reach | null } {
  const levers = findLevers(patient.boat);
  const rows = balancesOf(patient, patient.boat.tanks.length > 0 ? 'both' : 'surfaced', PART_OF_LIMIT)(null);
  const row = (name: string) => rows.find(candidate => candidate.name === name);
  const draft = row('surfaced draft')!;
  const submergedTrim = row('submerged trim');
  return {
    surfaced: reachOf(levers, draft, row('surfaced trim')!),
    // Submerged the tank takes up the mass; the draft's aim stands in for it so that the two pictures compare.
    submerged: submergedTrim ? reachOf(levers, draft, submergedTrim) : null,
  };
}

function* recut(patient: Patient): Steps<Correction | null> {
  const bare = withoutLoose(patient);
  const correction = bare && (yield* correct(bare, 'both', { besides: ownRooms(patient.boat) }));
  return correction && asRecut(correction, patient);
}

const sameChanges = (a: Correction, b: Correction): boolean => JSON.stringify(a.changes) === JSON.stringify(b.changes);
