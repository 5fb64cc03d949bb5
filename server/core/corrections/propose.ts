import { conditionsOf, divesAtAll, SUBMERGED, SURFACED } from '../conditions/loadingCondition.ts';
import { conditionOf, type Finding } from '../findings/finding.ts';
import type { Steps } from '../steps/steps.ts';
import { priceOfPieces } from './balance/program.ts';
import { CANNOT_TELL } from './balance/prospect.ts';
import { type Reach, reachOf } from './balance/reach.ts';
import { type BalancedFigure, rowOf, type Scope, scopeOf } from './balance/row.ts';
import { chanceOfAll, countedChanceOfAll, type Floating, limitsKept } from './balance/sureness.ts';
import { allPieces, type Correction } from './correction.ts';
import { carryForEach, proposeCarrying } from './kinds/carry.ts';
import { brokenIn } from './kinds/isWithin.ts';
import { combine, proposeMoves } from './kinds/moves.ts';
import { missOf, nearestCorrection } from './kinds/nearest.ts';
import { asRecut, ownRooms, withoutLoose } from './kinds/recut.ts';
import { stiffen } from './kinds/stiffen.ts';
import type { BoatToTrim } from './room/boatToTrim.ts';
import { moversOf } from './room/movers.ts';
import { findSlots } from './room/slots.ts';
import { balancesOf, openIn } from './search/balances.ts';
import { benchFor, best, correct, forBoth, PART_OF_LIMIT, scoreIn } from './search/correct.ts';
import { lay } from './search/realise.ts';
import { type CorrectionExplanation, explainCorrection } from './words/explain.ts';

const MOST_OFFERED = 5;
/** Prices nearer together than this factor are the same to a builder: then one condition alone is no offer beside both. */
const AS_MUCH = 1.1;
/** What makes a boat this many times as likely to be within its limits in the water is much surer (common practice, no source). */
const MUCH_SURER = 1.1;

/**
 * Corrections, the best first: both conditions at once, by moving equipment where that alone will do, by pieces, by both
 * where that saves much; each condition alone, with lead only and with foam only, by recutting what is loose. Each comes to
 * the least that will do as surely as can be had, cut to what can be cut, written as its entries, read back and floated by
 * the full model; what leaves a finding of what it sets out to mend is not offered, nor what another beats in everything.
 * When nothing meets both conditions, the nearest that can be had stands last and says which limits give way.
 */
export function* proposeCorrections(boatToTrim: BoatToTrim): Steps<readonly Correction[]> {
  const dives = divesAtAll(boatToTrim.boat);
  const scope = scopeOf(boatToTrim.boat);
  const out = brokenIn(boatToTrim);
  const stiffening = dives ? yield* stiffen(boatToTrim) : null;
  if (out.length === 0) return [...(stiffening ? [stiffening] : []), ...(yield* surer(boatToTrim))];
  const offered: Correction[] = [];
  const offer = (correction: Correction | null | undefined) => {
    if (correction && !offered.some(other => sameChanges(other, correction))) offered.push(correction);
  };
  const alone = yield* forOneAlone(boatToTrim, out);
  // What mends one condition alone may keep the other's limits too, with less than what was made for both.
  const inBoth = new Map<Correction, Correction | null>();
  for (const correction of alone) {
    yield;
    inBoth.set(correction, forBoth(correction, boatToTrim));
  }
  const full = best([yield* correct(boatToTrim, scope), ...inBoth.values()], boatToTrim);
  yield;
  const moves = yield* proposeMoves(boatToTrim);
  const scoreOf = scoreIn(boatToTrim, scope);
  const chanceOf = chanceIn(boatToTrim, scope);
  if (stiffening && (!full || scoreOf(stiffening) < scoreOf(full))) offer(stiffening);
  // What costs nothing stands before what is bought, unless that is much surer.
  const isMuchSurer = (other: Correction | null): other is Correction =>
    other !== null && (!moves || chanceOf(other) > muchSurerThan(chanceOf(moves)));
  const combined = !moves || muchSurerThan(chanceOf(moves)) < 1 ? yield* combinedWith(full, boatToTrim) : null;
  const bought = [combined, full].filter(isMuchSurer);
  if (bought.length === 0) offer(moves);
  offer(bought[0]);
  offer(full);
  offer(moves);
  offer(stiffening);
  offer(yield* recut(boatToTrim));
  const isForAll = () => offered.some(({ condition }) => condition === scope);
  if (!isForAll()) offer(yield* proposeCarrying(boatToTrim));
  // What mends all stands before what mends one alone, and so does what comes nearer than that.
  const nearest = isForAll()
    ? null
    : yield* nearestCorrection(boatToTrim, benchFor(boatToTrim, scope, PART_OF_LIMIT), out.length);
  if (nearest && alone.every(correction => missOf(correction) >= missOf(nearest))) offer(nearest);
  for (const correction of alone) if (!inBoth.get(correction)) offer(correction);
  if (!isForAll() || nearest) for (const correction of yield* carryForEach(boatToTrim)) offer(correction);
  offer(nearest);
  for (const material of full ? (['lead', 'foam'] as const) : []) {
    if (full?.pieces.every(({ slot }) => slot.material === material)) continue;
    offer(yield* correct(boatToTrim, scope, { suits: slot => slot.material === material }));
  }
  return withoutBeaten(offered, boatToTrim).slice(0, MOST_OFFERED);
}

/** What mends the surface or the dive alone, where that is out and not all that is asked. */
function* forOneAlone(boatToTrim: BoatToTrim, out: readonly Finding[]): Steps<readonly Correction[]> {
  if (!divesAtAll(boatToTrim.boat)) return [];
  const offers: Correction[] = [];
  for (const { id } of [SURFACED, SUBMERGED]) {
    if (!out.some(finding => conditionOf(finding) === id)) continue;
    const correction = yield* correct(boatToTrim, id);
    if (correction) offers.push(correction);
  }
  return offers;
}

/** How likely a boat keeps all limits in the water, as well as it is known, 0..1. */
const chanceIn =
  (boatToTrim: BoatToTrim, scope: Scope) =>
  (floating: Floating): number =>
    chanceOfAll(limitsKept(floating, scope, openIn(boatToTrim)));

/** What is much surer than this; where nobody can tell, a little more is worth nothing. */
const muchSurerThan = (chance: number): number => Math.max(CANNOT_TELL, MUCH_SURER * chance);

/** Pieces with something moved, where that saves much or is much surer. */
function combinedWith(full: Correction | null, boatToTrim: BoatToTrim): Steps<Correction | null> {
  const scope = scopeOf(boatToTrim.boat);
  const chanceOf = chanceIn(boatToTrim, scope);
  const alone = full && { correction: full, sure: muchSurerThan(chanceOf(full)) };
  return combine(boatToTrim, alone, movers => correct(boatToTrim, scope, { movers }), chanceOf);
}

/** What makes a boat that is within its limits by its figures likelier to be so in the water, where that is much. */
function* surer(boatToTrim: BoatToTrim): Steps<readonly Correction[]> {
  const scope = scopeOf(boatToTrim.boat);
  const chanceOf = chanceIn(boatToTrim, scope);
  const wanted = muchSurerThan(chanceOf(boatToTrim));
  if (wanted >= 1) return [];
  const moves = yield* proposeMoves(boatToTrim);
  const pieces = yield* correct(boatToTrim, scope);
  yield;
  const combined = !moves || muchSurerThan(chanceOf(moves)) < 1 ? yield* combinedWith(pieces, boatToTrim) : null;
  // What the way down breaks already is no reason to leave the rest as it is.
  yield;
  const onTheWay = lay([], [], benchFor(boatToTrim, scope, PART_OF_LIMIT))?.onTheWay.length ?? 0;
  const offered = [moves, pieces, combined]
    .filter(correction => correction !== null)
    .filter(correction => correction.onTheWay.length <= onTheWay && chanceOf(correction) > wanted);
  // What costs least stands first, unless another is much surer.
  const [first] = offered;
  const best = offered.find(other => first && chanceOf(other) > muchSurerThan(chanceOf(first)));
  return best ? [best, ...offered.filter(other => other !== best)] : offered;
}

/** How sure a boat is to keep its limits, 0..1, as it is counted when what to do is chosen. */
const sureOf = (floating: Floating, boatToTrim: BoatToTrim, scope: Scope): number =>
  countedChanceOfAll(limitsKept(floating, scope, openIn(boatToTrim)));

/** Not those that another beats in everything: as sure of as much, with no more pieces, at no higher price. */
function withoutBeaten(offered: readonly Correction[], boatToTrim: BoatToTrim): readonly Correction[] {
  const worth = new Map(
    offered.map(correction => [
      correction,
      { chance: sureOf(correction, boatToTrim, correction.condition), price: priceOfPieces(allPieces(correction)) },
    ]),
  );
  const scope = scopeOf(boatToTrim.boat);
  const beats = (a: Correction, b: Correction): boolean => {
    const [one, other] = [worth.get(a)!, worth.get(b)!];
    const isAsGoodThere = a.left.every(finding => conditionOf(finding) !== b.condition);
    const isForLess =
      b.condition !== scope &&
      a.condition === scope &&
      isAsGoodThere &&
      (a.left.length === 0 || missOf(a) <= missOf(b));
    if (isForLess && one.price <= AS_MUCH * other.price && a.pieces.length <= b.pieces.length) return true;
    const isAsMuch = a.condition === b.condition && a.kind !== 'nearest' && a.kind === b.kind;
    const isNoWorse = one.chance >= other.chance && one.price <= other.price && a.pieces.length <= b.pieces.length;
    return isAsMuch && isNoWorse && (one.chance > other.chance || one.price < other.price);
  };
  return offered.filter(correction => !offered.some(other => beats(other, correction)));
}

/** Why a correction's pieces are what they are. */
export const explain = (boatToTrim: BoatToTrim, correction: Correction): CorrectionExplanation =>
  explainCorrection(
    correction,
    balancesOf(boatToTrim, correction.condition, PART_OF_LIMIT)(correction),
    moversOf(correction, boatToTrim),
    boatToTrim.cache,
  );

/**
 * What the bays can still give against what is needed, in each condition by its id; null where it has no trim to balance, and
 * where nothing is aimed at on the surface. Under water the tank takes up the mass: the draft's aim on the surface stands in
 * for it, so that the pictures compare.
 */
export function reaches(boatToTrim: BoatToTrim): Readonly<Record<string, Reach | null>> {
  const slots = findSlots(boatToTrim.boat);
  const rows = balancesOf(boatToTrim, scopeOf(boatToTrim.boat), PART_OF_LIMIT)(null);
  const rowIn = (id: string, figure: BalancedFigure) =>
    rows.find(row => row.condition.id === id && row.figure === figure);
  const onSurface = rowIn(SURFACED.id, 'draft');
  return Object.fromEntries(
    conditionsOf(boatToTrim).map(({ condition: { id } }) => {
      const [mass, trim] = [rowIn(id, 'draft') ?? onSurface, rowIn(id, 'trim')];
      return [id, mass && trim ? reachOf(slots, mass, trim) : null];
    }),
  );
}

/** The same under water, weight in water against its moment about a station of one's own; null for a boat without tanks. */
export function submergedReach(boatToTrim: BoatToTrim, about: number): Reach | null {
  if (boatToTrim.boat.tanks.length === 0) return null;
  const rows = balancesOf(boatToTrim, 'submerged', PART_OF_LIMIT)(null);
  const fill = (rowOf(rows, 'submerged', 'fill') ?? rowOf(rows, 'submerged', 'reserve'))!;
  const trim = rowOf(rows, 'submerged', 'trim')!;
  return reachOf(findSlots(boatToTrim.boat), fill, {
    ...trim,
    effectOf: slot => {
      const { perMass } = fill.effectOf(slot);
      return { perMass: perMass * (slot.station[0] - about), perAft: perMass, perStarboard: 0 };
    },
  });
}

function* recut(boatToTrim: BoatToTrim): Steps<Correction | null> {
  const bare = withoutLoose(boatToTrim);
  const correction = bare && (yield* correct(bare, scopeOf(bare.boat), { besides: ownRooms(boatToTrim.boat) }));
  return correction && asRecut(correction, boatToTrim);
}

const sameChanges = (a: Correction, b: Correction): boolean => JSON.stringify(a.changes) === JSON.stringify(b.changes);
