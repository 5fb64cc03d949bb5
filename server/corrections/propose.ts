import type { Boat } from '../boat/boat.ts';
import { judgeSubmerged, stiffnessToTrim } from '../findings/judgeSubmerged.ts';
import { judgeSurfaced } from '../findings/judgeSurfaced.ts';
import { lengthText } from '../wording/numbers.ts';
import { balancesOf } from './balances.ts';
import type { Correction, Scope } from './correction.ts';
import { correctionTitle } from './correctionTitle.ts';
import { type Explanation, explainCorrection } from './explain.ts';
import { findLevers, type Lever } from './levers.ts';
import { proposeMoves } from './moves.ts';
import { imaginedLevers, nearestCorrection, roomWords } from './nearest.ts';
import type { Patient } from './patient.ts';
import { type Reach, reachOf } from './reach.ts';
import { breaksLimit, realise, type Workbench } from './realise.ts';
import { asRecut, withoutLoose } from './recut.ts';
import { candidatesFor } from './search.ts';

/** Part of each limit that the programme may use up, so that the rounded pieces stay within. */
const PART_OF_LIMIT = 0.75;
/** The same where nothing else will do: most rounded pieces then end outside, but not all. */
const NEARLY_ALL = 0.95;
/** Candidates floated for one correction at most. */
const MOST_FLOATED = 10;
const MOST_OFFERED = 5;

/**
 * Corrections, the best first: both conditions at once, by moving equipment where that alone will do, each condition
 * alone, with lead only and with foam only, by recutting what is loose. Each has the fewest pieces and then the least lead
 * that will do, cut to what can be cut, written as its entries, read back and floated by the full model; what leaves a
 * finding of what it sets out to mend is not offered. When no pieces meet both conditions, the nearest that can be had
 * stands last and says which limits give way.
 */
export function proposeCorrections(patient: Patient): readonly Correction[] {
  const { boat, surfaced, submerged } = patient;
  const dives = boat.tanks.length > 0;
  const surfacedOut = judgeSurfaced(boat, surfaced).filter(breaksLimit);
  const submergedOut = dives ? judgeSubmerged(boat, submerged).filter(breaksLimit) : [];
  const stiffer = dives ? withStifferLimit(patient) : null;
  const levers = findLevers(boat);
  const stiffening = stiffer ? stiffen(patient, stiffer, levers) : null;
  if (surfacedOut.length + submergedOut.length === 0) return stiffening ? [stiffening] : [];
  const offered: Correction[] = [];
  const offer = (correction: Correction | null | undefined) => {
    if (correction && !offered.some(other => sameChanges(other, correction))) offered.push(correction);
  };
  offer(stiffening);
  const full = dives ? correct(patient, 'both', levers) : null;
  offer(full);
  if (dives) offer(proposeMoves(patient, balancesOf(patient, 'both', PART_OF_LIMIT)(null))[0]);
  if (surfacedOut.length > 0) offer(correct(patient, 'surfaced', levers));
  if (submergedOut.length > 0) offer(correct(patient, 'submerged', levers));
  if (dives) offer(recut(patient));
  if (full) {
    for (const material of ['lead', 'foam'] as const) {
      offer(
        correct(
          patient,
          'both',
          levers.filter(lever => lever.material === material),
        ),
      );
    }
  } else if (dives) {
    const bench = benchFor(patient, 'both', PART_OF_LIMIT);
    offer(nearestCorrection(patient, bench.rowsFor(null), bench, [...surfacedOut, ...submergedOut]));
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
function stiffen(patient: Patient, stiffer: Boat, levers: readonly Lever[]): Correction | null {
  const correction = correct({ ...patient, boat: stiffer }, 'both', levers);
  if (correction?.submerged.status !== 'neutral') return null;
  const { bgEffectiveLongitudinal } = correction.submerged;
  const before = patient.submerged.status === 'neutral' ? patient.submerged.bgEffectiveLongitudinal : 0;
  const { units } = patient.boat;
  return {
    ...correction,
    boat: { ...correction.boat, limits: patient.boat.limits },
    title: `${correction.title}; stiffens it from ${lengthText(before, units)} to ${lengthText(bgEffectiveLongitudinal, units)} of B above G`,
  };
}

/**
 * What extra room would bring both conditions within their limits, for when the bays do not: confirmed by the full model
 * with pieces laid there. Null when no room of the hull's own would.
 */
export function roomAdvice(patient: Patient): string | null {
  const wished = [...findLevers(patient.boat), ...imaginedLevers(patient.boat)];
  const correction = correct(patient, 'both', wished);
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

function recut(patient: Patient): Correction | null {
  const bare = withoutLoose(patient);
  const correction = bare && correct(bare, 'both', findLevers(bare.boat));
  return correction && asRecut(correction, patient);
}

function correct(patient: Patient, scope: Scope, levers: readonly Lever[]): Correction | null {
  if (levers.length === 0) return null;
  return (
    firstThatHolds(patient, levers, benchFor(patient, scope, PART_OF_LIMIT)) ??
    firstThatHolds(patient, levers, benchFor(patient, scope, NEARLY_ALL))
  );
}

/** The first of the candidates that the full model confirms. */
function firstThatHolds(patient: Patient, levers: readonly Lever[], bench: Workbench): Correction | null {
  let floated = 0;
  for (const candidate of candidatesFor(levers, bench.rowsFor(null))) {
    if (++floated > MOST_FLOATED) return null;
    const laid = realise(candidate, bench);
    if (!laid || laid.left.length > 0) continue;
    const title = correctionTitle(laid, bench.scope, patient.submerged);
    const changes = laid.entries.map(entry => ({ kind: 'append', path: ['payload'], entry }) as const);
    return { ...laid, changes, title, condition: bench.scope };
  }
  return null;
}

const benchFor = (patient: Patient, scope: Scope, part: number): Workbench => ({
  boat: patient.boat,
  shelf: patient.shelf,
  schema: patient.schema,
  scope,
  rowsFor: balancesOf(patient, scope, part),
});

const sameChanges = (a: Correction, b: Correction): boolean => JSON.stringify(a.changes) === JSON.stringify(b.changes);
