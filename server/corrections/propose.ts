import type { Boat } from '../boat/boat.ts';
import type { Bodies, BodyShelf } from '../bodies/assemble.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { SurfacedAfloat } from '../conditions/surfaced.ts';
import { judgeSubmerged } from '../findings/judgeSubmerged.ts';
import { judgeSurfaced } from '../findings/judgeSurfaced.ts';
import type { Correction, Scope } from './correction.ts';
import { correctionTitle } from './correctionTitle.ts';
import { findLevers, type Lever } from './levers.ts';
import { realise, type Workbench } from './realise.ts';
import { candidatesFor } from './search.ts';
import { referenceFill, submergedRows } from './submergedRows.ts';
import { surfacedRows, type Target, targetSurface } from './surfacedRows.ts';
import { type WetShare, wetInTheMiddle } from './wetShare.ts';

/** Part of each limit that the programme may use up, so that the rounded pieces stay within. */
const PART_OF_LIMIT = 0.75;
/** Candidates floated for one correction at most. */
const MOST_FLOATED = 10;
const MOST_OFFERED = 5;

/** The boat to be corrected and how it lies now. */
export interface Patient {
  readonly boat: Boat;
  readonly bodies: Bodies;
  readonly surfaced: SurfacedAfloat;
  readonly submerged: Submerged;
  readonly shelf: BodyShelf;
}

/**
 * Corrections, the best first: both conditions at once, each alone, both with lead only and with foam only. Each has the
 * fewest pieces and then the least lead that will do, cut to what can be cut, written as its entries, read back and
 * floated by the full model; what leaves a finding of what it sets out to mend is not offered.
 */
export function proposeCorrections(patient: Patient): readonly Correction[] {
  const { boat, surfaced, submerged } = patient;
  const levers = findLevers(boat);
  const isOut = {
    surfaced: judgeSurfaced(boat, surfaced).length > 0,
    submerged: boat.tanks.length > 0 && judgeSubmerged(boat, submerged).length > 0,
  };
  const wishes: (readonly [Scope, readonly Lever[]])[] = [];
  const dives = boat.tanks.length > 0;
  if ((isOut.surfaced || isOut.submerged) && dives) wishes.push(['both', levers]);
  if (isOut.surfaced) wishes.push(['surfaced', levers]);
  if (isOut.submerged) wishes.push(['submerged', levers]);
  if (wishes.length > 0 && dives) {
    wishes.push(['both', levers.filter(lever => lever.material === 'lead')]);
    wishes.push(['both', levers.filter(lever => lever.material === 'foam')]);
  }
  const offered: Correction[] = [];
  for (const [scope, allowed] of wishes) {
    const correction = allowed.length > 0 ? correct(patient, scope, allowed) : null;
    if (correction && !offered.some(other => sameEntries(other, correction))) offered.push(correction);
  }
  return offered.slice(0, MOST_OFFERED);
}

function correct(patient: Patient, scope: Scope, levers: readonly Lever[]): Correction | null {
  const { boat, bodies, surfaced, shelf } = patient;
  const target: Target = targetSurface(boat, surfaced);
  const rowsFor = (wet: WetShare, laid: Bodies | null) => [
    ...(scope === 'submerged' ? [] : surfacedRows(boat, bodies, target, PART_OF_LIMIT, wet)),
    ...(scope === 'surfaced' ? [] : submergedRows(boat, bodies, referenceFill(laid ?? bodies), PART_OF_LIMIT)),
  ];
  const bench: Workbench = { boat, shelf, scope, rowsFor };
  let floated = 0;
  for (const candidate of candidatesFor(levers, rowsFor(wetInTheMiddle, null))) {
    if (++floated > MOST_FLOATED) return null;
    const laid = realise(candidate, bench);
    if (!laid || laid.left.length > 0) continue;
    const title = correctionTitle(laid, scope, patient.submerged);
    const changes = laid.entries.map(entry => ({ kind: 'append', path: ['payload'], entry }) as const);
    return { ...laid, changes, title, condition: scope };
  }
  return null;
}

const sameEntries = (a: Correction, b: Correction): boolean => JSON.stringify(a.entries) === JSON.stringify(b.entries);
