import { conditionsOf, divesAtAll, SUBMERGED, SURFACED } from '../conditions/loadingCondition.ts';
import { FIGURES } from '../figures/table.ts';
import { conditionOf, type Finding } from '../findings/finding.ts';
import { judgeIn } from '../judges/judge.ts';
import { finish, type Steps } from '../steps/steps.ts';
import { priceOfPieces } from './balance/program.ts';
import { CANNOT_TELL } from './balance/prospect.ts';
import { type Reach, reachOf } from './balance/reach.ts';
import { type BalancedFigure, rowOf, type Scope } from './balance/row.ts';
import { chanceOfAll, countedChanceOfAll, type Floating, limitsKept } from './balance/sureness.ts';
import type { Correction } from './correction.ts';
import { combine, proposeMoves } from './kinds/moves.ts';
import { imaginedSlots, missOf, nearestCorrection, roomWords } from './kinds/nearest.ts';
import { asRecut, ownRooms, withoutLoose } from './kinds/recut.ts';
import { stiffen } from './kinds/stiffen.ts';
import { tankAdvice } from './kinds/tankAdvice.ts';
import type { BoatToTrim } from './room/boatToTrim.ts';
import { moversOf } from './room/movers.ts';
import { findSlots } from './room/slots.ts';
import { balancesOf, openIn } from './search/balances.ts';
import { benchFor, best, correct, correctWith, forBoth, PART_OF_LIMIT, scoreIn } from './search/correct.ts';
import { breaksLimit, lay } from './search/realise.ts';
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
  const out = brokenIn(boatToTrim);
  const isOut = (id: string): boolean => out.some(finding => conditionOf(finding) === id);
  const stiffening = dives ? yield* stiffen(boatToTrim) : null;
  if (out.length === 0) return [...(stiffening ? [stiffening] : []), ...(yield* surer(boatToTrim))];
  const offered: Correction[] = [];
  const offer = (correction: Correction | null | undefined) => {
    if (correction && !offered.some(other => sameChanges(other, correction))) offered.push(correction);
  };
  const isSurfaceOut = dives ? isOut(SURFACED.id) : out.length > 0;
  const ofSurface = isSurfaceOut ? yield* correct(boatToTrim, 'surfaced') : null;
  const ofDive = isOut(SUBMERGED.id) ? yield* correct(boatToTrim, 'submerged') : null;
  // What mends one condition alone may keep the other's limits too, with less than what was made for both.
  const alone = [ofSurface, ofDive].filter(correction => correction !== null);
  const inBoth = new Map(dives ? alone.map(correction => [correction, forBoth(correction, boatToTrim)]) : []);
  const full = dives ? best([yield* correct(boatToTrim, 'both'), ...inBoth.values()], boatToTrim) : null;
  const moves = dives ? yield* proposeMoves(boatToTrim) : null;
  const scoreOf = scoreIn(boatToTrim, 'both');
  const chanceOf = chanceIn(boatToTrim, 'both');
  if (stiffening && (!full || scoreOf(stiffening) < scoreOf(full))) offer(stiffening);
  // What costs nothing stands before what is bought, unless that is much surer.
  const isMuchSurer = (other: Correction | null): other is Correction =>
    other !== null && (!moves || chanceOf(other) > muchSurerThan(chanceOf(moves)));
  const combined =
    dives && (!moves || muchSurerThan(chanceOf(moves)) < 1) ? yield* combinedWith(full, boatToTrim) : null;
  const bought = [combined, full].filter(isMuchSurer);
  if (bought.length === 0) offer(moves);
  offer(bought[0]);
  offer(full);
  offer(moves);
  offer(stiffening);
  if (dives) offer(yield* recut(boatToTrim));
  // What mends both stands before what mends one alone, and so does what comes nearer than that.
  const isForBoth = offered.some(({ condition }) => condition === 'both');
  const nearest =
    dives && !isForBoth
      ? yield* nearestCorrection(boatToTrim, benchFor(boatToTrim, 'both', PART_OF_LIMIT), out.length)
      : null;
  if (nearest && alone.every(correction => missOf(correction) >= missOf(nearest))) offer(nearest);
  for (const correction of alone) if (!inBoth.get(correction)) offer(correction);
  offer(nearest);
  for (const material of full ? (['lead', 'foam'] as const) : []) {
    if (full?.pieces.every(({ slot }) => slot.material === material)) continue;
    offer(yield* correct(boatToTrim, 'both', { suits: slot => slot.material === material }));
  }
  return withoutBeaten(offered, boatToTrim).slice(0, MOST_OFFERED);
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
  const chanceOf = chanceIn(boatToTrim, 'both');
  const alone = full && { correction: full, sure: muchSurerThan(chanceOf(full)) };
  return combine(boatToTrim, alone, movers => correct(boatToTrim, 'both', { movers }), chanceOf);
}

/** What makes a boat that is within its limits by its figures likelier to be so in the water, where that is much. */
function* surer(boatToTrim: BoatToTrim): Steps<readonly Correction[]> {
  const scope = divesAtAll(boatToTrim.boat) ? 'both' : 'surfaced';
  const chanceOf = chanceIn(boatToTrim, scope);
  const wanted = muchSurerThan(chanceOf(boatToTrim));
  if (wanted >= 1) return [];
  const moves = scope === 'both' ? yield* proposeMoves(boatToTrim) : null;
  const pieces = yield* correct(boatToTrim, scope);
  const canBeSurer = scope === 'both' && (!moves || muchSurerThan(chanceOf(moves)) < 1);
  const combined = canBeSurer ? yield* combinedWith(pieces, boatToTrim) : null;
  // What the way down breaks already is no reason to leave the rest as it is.
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
const sureOf = (floating: Floating, boatToTrim: BoatToTrim, scope: Scope = 'both'): number =>
  countedChanceOfAll(limitsKept(floating, scope, openIn(boatToTrim)));

/** Not those that another beats in everything: as sure of as much, with no more pieces, at no higher price. */
function withoutBeaten(offered: readonly Correction[], boatToTrim: BoatToTrim): readonly Correction[] {
  const worth = new Map(
    offered.map(correction => [
      correction,
      { chance: sureOf(correction, boatToTrim, correction.condition), price: priceOfPieces(correction.pieces) },
    ]),
  );
  const beats = (a: Correction, b: Correction): boolean => {
    const [one, other] = [worth.get(a)!, worth.get(b)!];
    const isForLess = b.condition !== 'both' && a.condition === 'both' && a.left.length === 0;
    if (isForLess && one.price <= AS_MUCH * other.price && a.pieces.length <= b.pieces.length) return true;
    const isAsMuch = a.condition === b.condition && a.kind !== 'nearest' && a.kind === b.kind;
    const isNoWorse = one.chance >= other.chance && one.price <= other.price && a.pieces.length <= b.pieces.length;
    return isAsMuch && isNoWorse && (one.chance > other.chance || one.price < other.price);
  };
  return offered.filter(correction => !offered.some(other => beats(other, correction)));
}

/** The boat keeps every limit in the conditions that it is floated in. */
export const isWithinLimits = (boatToTrim: BoatToTrim): boolean => brokenIn(boatToTrim).length === 0;

/** What is out of its limits; of a boat without a tank nothing under water. */
const brokenIn = (boatToTrim: BoatToTrim): readonly Finding[] =>
  conditionsOf(boatToTrim)
    .filter(({ where }) => where === 'afloat' || divesAtAll(boatToTrim.boat))
    .flatMap(inCondition => judgeIn(boatToTrim.boat, inCondition, FIGURES))
    .filter(breaksLimit);

/**
 * What extra room would bring both conditions within their limits, for when the bays do not: confirmed by the full model
 * with pieces laid there. Null when no room of the hull's own would.
 */
export function roomAdvice(boatToTrim: BoatToTrim): string | null {
  const wished = [...findSlots(boatToTrim.boat), ...imaginedSlots(boatToTrim.boat)];
  const correction = finish(correctWith(boatToTrim, 'both', [wished]));
  return correction && roomWords(correction.pieces, boatToTrim.boat);
}

/** What would do it where nothing that can be offered does: room, or another tank; null when neither would. */
export const whatWouldDo = (boatToTrim: BoatToTrim): string | null =>
  roomAdvice(boatToTrim) ?? finish(tankAdvice(boatToTrim));

/** Why a correction's pieces are what they are. */
export const explain = (boatToTrim: BoatToTrim, correction: Correction): CorrectionExplanation =>
  explainCorrection(
    correction,
    balancesOf(boatToTrim, correction.condition, PART_OF_LIMIT)(correction),
    moversOf(correction, boatToTrim),
    boatToTrim.cache,
  );

/**
 * What the bays can still give against what is needed, in each condition by its id; null where it has no trim to balance. Under
 * water the tank takes up the mass: the draft's aim on the surface stands in for it, so that the pictures compare.
 */
export function reaches(boatToTrim: BoatToTrim): Readonly<Record<string, Reach | null>> {
  const slots = findSlots(boatToTrim.boat);
  const rows = balancesOf(boatToTrim, boatToTrim.boat.tanks.length > 0 ? 'both' : 'surfaced', PART_OF_LIMIT)(null);
  const rowIn = (id: string, figure: BalancedFigure) =>
    rows.find(row => row.condition.id === id && row.figure === figure);
  const onSurface = rowIn(SURFACED.id, 'draft')!;
  return Object.fromEntries(
    conditionsOf(boatToTrim).map(({ condition: { id } }) => {
      const trim = rowIn(id, 'trim');
      return [id, trim ? reachOf(slots, rowIn(id, 'draft') ?? onSurface, trim) : null];
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
  const correction = bare && (yield* correct(bare, 'both', { besides: ownRooms(boatToTrim.boat) }));
  return correction && asRecut(correction, boatToTrim);
}

const sameChanges = (a: Correction, b: Correction): boolean => JSON.stringify(a.changes) === JSON.stringify(b.changes);
