import type { Steps } from '../steps.ts';
import { balancesOf } from './balances.ts';
import type { Correction, Laid, Scope } from './correction.ts';
import { correctionTitle } from './correctionTitle.ts';
import { type Lever, leverSets } from './levers.ts';
import type { Patient } from './patient.ts';
import { priceOf, type Row } from './program.ts';
import { lay, realise, type Workbench } from './realise.ts';
import { candidatesFor } from './search.ts';

/** Part of each limit that the programme may use up, so that the rounded pieces stay within. */
export const PART_OF_LIMIT = 0.75;
/** The same where nothing else will do: most rounded pieces then end outside, but not all. */
const NEARLY_ALL = 0.95;
/** Candidates floated for one correction at most. */
const MOST_FLOATED = 10;

/** What a correction may use: of the bays only what suits, and other room besides. */
interface Means {
  readonly suits?: (lever: Lever) => boolean;
  readonly besides?: readonly Lever[];
}

/** The fewest pieces, and then the least lead, that bring the boat within the limits of a scope; null for none. */
export function* correct(
  patient: Patient,
  scope: Scope,
  { suits = () => true, besides = [] }: Means = {},
): Steps<Correction | null> {
  const rows = balancesOf(patient, scope, PART_OF_LIMIT)(null);
  const sets = leverSets(patient.boat, isListing(rows)).map(levers => [...levers.filter(suits), ...besides]);
  return yield* correctWith(patient, scope, sets);
}

/** The same with given levers, one set after the other until one will do. */
export function* correctWith(
  patient: Patient,
  scope: Scope,
  sets: readonly (readonly Lever[])[],
): Steps<Correction | null> {
  for (const part of [PART_OF_LIMIT, NEARLY_ALL]) {
    for (const levers of sets) {
      if (levers.length === 0) continue;
      const laid = yield* firstThatHolds(levers, benchFor(patient, scope, part));
      if (laid) return asCorrection(laid, scope, patient);
    }
  }
  return null;
}

/** The first of the candidates that the full model confirms. */
function* firstThatHolds(levers: readonly Lever[], bench: Workbench): Steps<Laid | null> {
  let floated = 0;
  for (const candidate of candidatesFor(levers, bench.rowsFor(null))) {
    yield;
    if (!candidate) continue;
    if (++floated > MOST_FLOATED) return null;
    const laid = realise(candidate, bench);
    if (laid?.left.length === 0) return laid;
  }
  return null;
}

/** The same pieces held to both conditions and the way between; null when they do not keep all limits there. */
export function forBoth({ pieces }: Laid, patient: Patient): Correction | null {
  const laid = lay(pieces, benchFor(patient, 'both', PART_OF_LIMIT));
  return laid?.left.length === 0 ? asCorrection(laid, 'both', patient) : null;
}

/** The one of the fewest pieces, and then of the least lead. */
export function best(corrections: readonly (Correction | null)[]): Correction | null {
  const [first] = corrections
    .filter(correction => correction !== null)
    .sort((a, b) => a.pieces.length - b.pieces.length || pricedMass(a) - pricedMass(b));
  return first ?? null;
}

const pricedMass = ({ pieces }: Laid): number =>
  pieces.reduce((sum, { mass, lever }) => sum + mass * priceOf(lever), 0);

export const benchFor = (patient: Patient, scope: Scope, part: number): Workbench => ({
  boat: patient.boat,
  shelf: patient.shelf,
  schema: patient.schema,
  scope,
  rowsFor: balancesOf(patient, scope, part),
});

const asCorrection = (laid: Laid, scope: Scope, patient: Patient): Correction => ({
  ...laid,
  changes: laid.entries.map(entry => ({ kind: 'append', path: ['payload'], entry }) as const),
  title: correctionTitle(laid, scope, patient.submerged),
  condition: scope,
  note: null,
});

/** Some heel is to be held. */
export const isListing = (rows: readonly Row[]): boolean =>
  rows.some(({ name, wanted }) => name.endsWith('heel') && 'slack' in wanted && Math.abs(wanted.value) > wanted.slack);
