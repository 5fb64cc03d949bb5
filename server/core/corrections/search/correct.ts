import type { Steps } from '../../steps/steps.ts';
import { priceOf, type Row } from '../balance/program.ts';
import type { Correction, FloatedBoat, Scope } from '../correction.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { type Slot, slotSets } from '../room/slots.ts';
import { correctionTitle } from '../words/correctionTitle.ts';
import { balancesOf } from './balances.ts';
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
  readonly suits?: (slot: Slot) => boolean;
  readonly besides?: readonly Slot[];
}

/** The fewest pieces, and then the least lead, that bring the boat within the limits of a scope; null for none. */
export function* correct(
  boatToTrim: BoatToTrim,
  scope: Scope,
  { suits = () => true, besides = [] }: Means = {},
): Steps<Correction | null> {
  const rows = balancesOf(boatToTrim, scope, PART_OF_LIMIT)(null);
  const sets = slotSets(boatToTrim.boat, isListing(rows)).map(slots => [...slots.filter(suits), ...besides]);
  return yield* correctWith(boatToTrim, scope, sets);
}

/** The same with given levers, one set after the other until one will do. */
export function* correctWith(
  boatToTrim: BoatToTrim,
  scope: Scope,
  sets: readonly (readonly Slot[])[],
): Steps<Correction | null> {
  for (const part of [PART_OF_LIMIT, NEARLY_ALL]) {
    for (const slots of sets) {
      if (slots.length === 0) continue;
      const laid = yield* firstThatHolds(slots, benchFor(boatToTrim, scope, part));
      if (laid) return asCorrection(laid, scope, boatToTrim);
    }
  }
  return null;
}

/** The first of the candidates that the full model confirms. */
function* firstThatHolds(slots: readonly Slot[], bench: Workbench): Steps<FloatedBoat | null> {
  let floated = 0;
  for (const candidate of candidatesFor(slots, bench.rowsFor(null))) {
    yield;
    if (!candidate) continue;
    if (++floated > MOST_FLOATED) return null;
    const laid = realise(candidate, bench);
    if (laid?.left.length === 0) return laid;
  }
  return null;
}

/** The same pieces held to both conditions and the way between; null when they do not keep all limits there. */
export function forBoth({ pieces }: FloatedBoat, boatToTrim: BoatToTrim): Correction | null {
  const laid = lay(pieces, benchFor(boatToTrim, 'both', PART_OF_LIMIT));
  return laid?.left.length === 0 ? asCorrection(laid, 'both', boatToTrim) : null;
}

/** The one of the fewest pieces, and then of the least lead. */
export function best(corrections: readonly (Correction | null)[]): Correction | null {
  const [first] = corrections
    .filter(correction => correction !== null)
    .sort((a, b) => a.pieces.length - b.pieces.length || pricedMass(a) - pricedMass(b));
  return first ?? null;
}

const pricedMass = ({ pieces }: FloatedBoat): number =>
  pieces.reduce((sum, { mass, slot }) => sum + mass * priceOf(slot), 0);

export const benchFor = (boatToTrim: BoatToTrim, scope: Scope, part: number): Workbench => ({
  boat: boatToTrim.boat,
  cache: boatToTrim.cache,
  schema: boatToTrim.schema,
  scope,
  rowsFor: balancesOf(boatToTrim, scope, part),
});

const asCorrection = (laid: FloatedBoat, scope: Scope, boatToTrim: BoatToTrim): Correction => ({
  ...laid,
  changes: laid.entries.map(entry => ({ kind: 'append', path: ['payload'], entry }) as const),
  title: correctionTitle(laid, scope, boatToTrim.submerged),
  condition: scope,
  note: null,
});

/** Some heel is to be held. */
export const isListing = (rows: readonly Row[]): boolean =>
  rows.some(({ name, wanted }) => name.endsWith('heel') && 'slack' in wanted && Math.abs(wanted.value) > wanted.slack);
