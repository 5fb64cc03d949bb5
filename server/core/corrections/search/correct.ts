import type { Steps } from '../../steps/steps.ts';
import type { OpenLoads } from '../balance/open.ts';
import { priceOfMiss } from '../balance/price.ts';
import { priceOfPieces } from '../balance/program.ts';
import { isForTheWaterFirst, type Prospect, prospectOf } from '../balance/prospect.ts';
import { type BalanceRow, type Scope, scopeOf } from '../balance/row.ts';
import { countedChanceOfAll, type Floating, limitsKept } from '../balance/sureness.ts';
import { withUnwritten } from '../balance/unwritten.ts';
import type { CorrectedBoat, Correction } from '../correction.ts';
import { asFiled, type BoatToTrim } from '../room/boatToTrim.ts';
import type { Mover } from '../room/movers.ts';
import { placeChanges, shifted } from '../room/shift.ts';
import { type Slot, slotSets } from '../room/slots.ts';
import { correctionTitle } from '../words/correctionTitle.ts';
import { surenessLines } from '../words/surenessWords.ts';
import { balancesOf, openIn } from './balances.ts';
import { withFewer } from './fewerPieces.ts';
import { lay, type Realised, realise, type Workbench } from './realise.ts';
import { candidatesFor, priceOfWork } from './search.ts';

/** Part of each limit that the programme may use up, so that the rounded pieces stay within. */
export const PART_OF_LIMIT = 0.75;
/** The same where nothing else will do: most rounded pieces then end outside, but not all. */
const PARTS = [PART_OF_LIMIT, 0.95, 1] as const;
/** A limit missed on the way down alone, against one missed at an end of it (common practice, no source). */
const PART_ON_THE_WAY = 0.5;
/** Candidates floated for one correction at most. */
const MOST_FLOATED = 10;

/** What a correction may use: of the bays only what suits, other room besides, and parts that may be moved. */
interface Means {
  readonly suits?: (slot: Slot) => boolean;
  readonly besides?: readonly Slot[];
  readonly movers?: readonly Mover[];
}

/** The pieces that come to the least, as surely as can be had, that bring the boat within the limits of a scope; null for none. */
export function* correct(
  boatToTrim: BoatToTrim,
  scope: Scope,
  { suits = () => true, besides = [], movers = [] }: Means = {},
): Steps<Correction | null> {
  const rows = balancesOf(boatToTrim, scope, PART_OF_LIMIT)(null);
  yield;
  const sets = slotSets(boatToTrim.boat, isListing(rows)).map(slots => [...slots.filter(suits), ...besides]);
  return yield* correctWith(boatToTrim, scope, sets, movers);
}

/** The same with given slots, one set after the other until one will do. */
export function* correctWith(
  boatToTrim: BoatToTrim,
  scope: Scope,
  sets: readonly (readonly Slot[])[],
  movers: readonly Mover[] = [],
): Steps<Correction | null> {
  for (const part of PARTS) {
    for (const slots of sets) {
      if (slots.length === 0) continue;
      const best = yield* bestThatHolds(slots, movers, benchFor(boatToTrim, scope, part));
      if (!best) continue;
      const { laid } = yield* withFewer(best, movers, benchFor(boatToTrim, scope, 1));
      yield;
      return asCorrection(laid, scope, boatToTrim);
    }
  }
  return null;
}

/** Of the candidates that the full model confirms the one that comes to the least. */
function* bestThatHolds(slots: readonly Slot[], movers: readonly Mover[], bench: Workbench): Steps<Realised | null> {
  let best: Realised | null = null;
  let floated = 0;
  const isWorth = (rank: number): boolean => !best || rank < best.score;
  for (const candidate of candidatesFor(slots, { rows: bench.rowsFor(null), movers, boatMass: bench.mass, isWorth })) {
    yield;
    if (!candidate || !isWorth(candidate.rank)) continue;
    if (++floated > MOST_FLOATED) break;
    const realised: Realised | null = yield* realise(candidate, bench);
    if (realised && (!best || realised.score < best.score)) best = realised;
  }
  return best;
}

/** The same pieces held to both conditions and the way between; null when they do not keep all limits there. */
export function forBoth({ pieces, moves }: CorrectedBoat, boatToTrim: BoatToTrim): Correction | null {
  const laid = lay(pieces, moves, benchFor(boatToTrim, 'both', PART_OF_LIMIT));
  return laid?.left.length === 0 ? asCorrection(laid, 'both', boatToTrim) : null;
}

/** The one that comes to the least. */
export function best(corrections: readonly (Correction | null)[], boatToTrim: BoatToTrim): Correction | null {
  const scoreOf = scoreIn(boatToTrim, scopeOf(boatToTrim.boat));
  const [first] = corrections
    .filter(correction => correction !== null)
    .map(correction => ({ correction, score: scoreOf(correction) }))
    .sort((a, b) => a.score - b.score);
  return first?.correction ?? null;
}

export const benchFor = (boatToTrim: BoatToTrim, scope: Scope, part: number): Workbench => ({
  boat: boatToTrim.boat,
  source: boatToTrim.source,
  others: boatToTrim.others,
  mass: boatToTrim.bodies.mass,
  cache: boatToTrim.cache,
  schema: boatToTrim.schema,
  scope,
  rowsFor: balancesOf(boatToTrim, scope, part),
  scoreOf: scoreIn(boatToTrim, scope),
});

/** What a floated boat comes to, g of lead: its pieces, their work, and the chance to miss a limit. */
export function scoreIn(boatToTrim: BoatToTrim, scope: Scope): (laid: CorrectedBoat) => number {
  const open = openIn(boatToTrim);
  const { mass } = boatToTrim.bodies;
  return laid => {
    const price = priceOfPieces(laid.pieces);
    const miss = priceOfMiss(mass) * (1 - countedChanceOfAll(limitsKept(laid, scope, open)));
    const onTheWay = laid.onTheWay.length > 0 ? PART_ON_THE_WAY * priceOfMiss(mass) : 0;
    return price + priceOfWork(laid.pieces.length, price, mass) + miss + onTheWay;
  };
}

export function asCorrection(floated: CorrectedBoat, scope: Scope, boatToTrim: BoatToTrim): Correction {
  const { pieces, entries } = floated;
  const moves = floated.moves.map(move => {
    const part = asFiled(move.part, boatToTrim);
    return { ...move, part, moved: shifted(part, move.along, move.across) };
  });
  const laid: CorrectedBoat = { ...floated, moves };
  const { units } = boatToTrim.boat;
  const prospect = prospectIn(laid, scope, boatToTrim);
  return {
    ...laid,
    kind: moves.length === 0 ? 'insert' : pieces.length === 0 ? 'move' : 'combination',
    changes: [
      ...moves.flatMap(({ part, moved }) => placeChanges(part, moved, units)),
      ...entries.map(entry => ({ kind: 'append', path: ['payload'], entry }) as const),
    ],
    title: correctionTitle(laid, scope, boatToTrim, openIn(boatToTrim)),
    condition: scope,
    note: [...laid.onTheWay.map(({ message }) => message), ...surenessLines(prospect)].join(' ') || null,
    floatFirst: isForTheWaterFirst(prospect),
    carried: [],
  };
}

function prospectIn(laid: CorrectedBoat, scope: Scope, boatToTrim: BoatToTrim): Prospect {
  const open = openIn(boatToTrim);
  // What is not in the water yet can tell no more where its file has no figures.
  const readSoFar = boatToTrim.uncertainties === null ? 'in the water' : boatToTrim.readSoFar;
  const keeps = (floating: Floating) => (left: OpenLoads) => limitsKept(floating, scope, left);
  const unwritten = withUnwritten(open, boatToTrim.bodies.mass, boatToTrim.boat.length);
  return prospectOf(keeps(boatToTrim), keeps(laid), open, unwritten, readSoFar);
}

/** Some heel is to be held. */
export const isListing = (rows: readonly BalanceRow[]): boolean =>
  rows.some(({ figure, wanted }) => figure === 'heel' && 'slack' in wanted && Math.abs(wanted.value) > wanted.slack);
