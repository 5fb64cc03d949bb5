import type { Steps } from '../../steps/steps.ts';
import { isWithin } from '../kinds/isWithin.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { ballastAdvice } from './ballastAdvice.ts';
import { cellsAdvice } from './cellsAdvice.ts';
import { loweringAdvice } from './loweringAdvice.ts';
import { roomAdvice } from './roomAdvice.ts';
import { tankAdvice } from './tankAdvice.ts';
import { weightAdvice, weightThereAdvice } from './weightAdvice.ts';

/** What a builder would think of, in this order: each proves by the full model what it says. */
const WAYS = [roomAdvice, cellsAdvice, ballastAdvice, loweringAdvice, tankAdvice, weightAdvice] as const;

/** What would do it where nothing that can be offered does, in a sentence; null when none of that would. */
export function* whatWouldDo(boatToTrim: BoatToTrim): Steps<string | null> {
  const words = (yield* firstOf(boatToTrim)) ?? (yield* weightThereAdvice(boatToTrim));
  const { others } = boatToTrim;
  if (words !== null || others.length === 0) return words;
  const usual: BoatToTrim = { ...boatToTrim, others: [] };
  const without = isWithin(usual) ? null : yield* firstOf(usual);
  const aside = others.map(({ condition: { id } }) => `“${id}”`).join(' and ');
  return without && `Leaving ${aside} aside: ${without.charAt(0).toLowerCase()}${without.slice(1)}`;
}

function* firstOf(boatToTrim: BoatToTrim): Steps<string | null> {
  for (const way of WAYS) {
    const words = yield* way(boatToTrim);
    if (words !== null) return words;
  }
  return null;
}
