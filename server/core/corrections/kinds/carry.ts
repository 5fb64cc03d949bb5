import { freeName } from '../../boat/arrangement.ts';
import { asksNothing, conditionsOf, type LoadedCondition } from '../../conditions/loadingCondition.ts';
import { FIGURES } from '../../figures/table.ts';
import type { EntryText } from '../../findings/finding.ts';
import { judgeIn } from '../../judges/judge.ts';
import type { Steps } from '../../steps/steps.ts';
import { type Scope, scopeOf } from '../balance/row.ts';
import { type Carried, type CorrectedBoat, type Correction, renamed } from '../correction.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { meets } from '../room/slots.ts';
import { asCorrection, correct } from '../search/correct.ts';
import { breaksLimit } from '../search/realise.ts';
import { carryTitle } from '../words/correctionTitle.ts';
import { usualFirst } from './usualFirst.ts';

/**
 * All conditions within their limits where no one set of pieces does for all of them: the boat trimmed for those that every
 * boat has, and what a condition of the builder's own still lacks carried in that alone. Null where that will not do either.
 */
export function* proposeCarrying(boatToTrim: BoatToTrim): Steps<Correction | null> {
  const first = yield* usualFirst(boatToTrim);
  if (!first) return null;
  const { done, start } = first;
  const carried: CarriedThere[] = [];
  for (const other of start.others.filter(each => isOut(each, start))) {
    const there = yield* carriedIn(other, start);
    if (!there) return null;
    carried.push(there);
  }
  return carried.length > 0 ? offerOf(scopeOf(boatToTrim.boat), start, done, carried, boatToTrim) : null;
}

/** What serves each condition of the builder's own alone that is out of its limits, and touches no other. */
export function* carryForEach(boatToTrim: BoatToTrim): Steps<readonly Correction[]> {
  const offers: Correction[] = [];
  for (const other of boatToTrim.others.filter(each => isOut(each, boatToTrim))) {
    const there = yield* carriedIn(other, boatToTrim);
    if (there) offers.push(offerOf(other.condition.id, boatToTrim, null, [there], boatToTrim));
  }
  return offers;
}

interface CarriedThere {
  readonly what: Carried;
  /** The condition with it aboard. */
  readonly laden: LoadedCondition;
}

const isOut = (inCondition: LoadedCondition, { boat }: BoatToTrim): boolean =>
  !asksNothing(inCondition.condition, boat) && judgeIn(boat, inCondition, FIGURES).some(breaksLimit);

function* carriedIn({ condition }: LoadedCondition, boatToTrim: BoatToTrim): Steps<CarriedThere | null> {
  const { boat, source } = boatToTrim;
  const correction: Correction | null = yield* correct(boatToTrim, condition.id);
  const laden = correction?.others.find(other => other.condition.id === condition.id);
  if (!correction || !laden) return null;
  // What is carried there already has a place of its own.
  const already = (condition.aboard?.(source).boat.payload ?? []).filter(part => !source.boat.payload.includes(part));
  const { parts, entries } = correction;
  if (parts.some(part => already.some(other => other.inside === part.inside && meets(part, other)))) return null;
  const taken = [...boat.payload, ...boat.ashore, ...already];
  const named = parts.map(({ name }) => freeName(`${name} ${condition.id}`, taken));
  return {
    what: {
      condition,
      pieces: correction.pieces,
      parts: parts.map((part, i) => ({ ...part, name: named[i]! })),
      entries: entries.map((entry, i) => renamed(asCarried(entry), named[i]!)),
    },
    laden,
  };
}

/** Corrections are of what is always aboard: what is not need not say that it may be recut. */
const asCarried = (entry: EntryText): EntryText => ({
  ...entry,
  fields: entry.fields.filter(([key]) => key !== 'fixed'),
});

function offerOf(
  scope: Scope,
  start: BoatToTrim,
  base: Correction | null,
  carried: readonly CarriedThere[],
  boatToTrim: BoatToTrim,
): Correction {
  const { boat, source, surfaced, submerged, others } = start;
  const laid: CorrectedBoat = {
    ...(base ?? { pieces: [], parts: [], entries: [], moves: [], left: [], onTheWay: [] }),
    boat,
    source,
    surfaced,
    submerged,
    others: others.map(other => carried.find(({ laden }) => laden.condition === other.condition)?.laden ?? other),
  };
  const offer = asCorrection(laid, scope, boatToTrim);
  const what = carried.map(each => each.what);
  return {
    ...offer,
    kind: 'carry',
    carried: what,
    title: carryTitle(
      laid,
      what,
      conditionsOf(laid).every(each => each.condition.id !== scope),
    ),
    changes: [
      ...offer.changes,
      ...what.flatMap(({ condition, entries }) =>
        entries.map(entry => ({ kind: 'append', path: [...(condition.path ?? []), 'aboard'], entry }) as const),
      ),
    ],
  };
}
