import type { Steps } from '../../steps/steps.ts';
import { scopeOf } from '../balance/row.ts';
import type { Correction } from '../correction.ts';
import { anewAs } from '../room/anewAs.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { correct } from '../search/correct.ts';
import { isWithin } from './isWithin.ts';
import { proposeMoves } from './moves.ts';

/** A boat within its limits in the conditions that every boat has. */
interface UsualFirst {
  /** What brings it there; null where it is there already. */
  readonly done: Correction | null;
  /** The boat after that, in all its conditions. */
  readonly start: BoatToTrim;
}

/** The boat trimmed for surfaced and submerged alone, by moves before pieces; null where neither will do. */
export function* usualFirst(boatToTrim: BoatToTrim): Steps<UsualFirst | null> {
  const usual: BoatToTrim = { ...boatToTrim, others: [] };
  if (isWithin(usual)) return { done: null, start: boatToTrim };
  const done = (yield* proposeMoves(usual)) ?? (yield* correct(usual, scopeOf(usual.boat)));
  return done && { done, start: anewAs(boatToTrim, done.boat) };
}
