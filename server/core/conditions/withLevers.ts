import { inSteps, type Steps, through, type Working } from '../steps/steps.ts';
import { boatIn } from './float.ts';
import type { LoadedCondition } from './loadingCondition.ts';
import { type RightingCurve, rightingSteps } from './rightingLever.ts';

/** A condition with the boat in it, and its righting levers there: figured when asked for, null where it comes to no rest. */
export type WithLevers = LoadedCondition & { readonly levers: Working<RightingCurve> | null };

export function withLevers(there: LoadedCondition): WithLevers {
  const { condition, bodies, state } = there;
  const rests = state.status === 'afloat' || state.status === 'neutral';
  return { ...there, levers: rests ? inSteps(() => rightingSteps(boatIn(bodies, condition.loading))) : null };
}

/** Figures the levers of all of them, so that they are at hand when they are told. */
export function* leversReady(conditions: readonly WithLevers[]): Steps<void> {
  for (const { levers } of conditions) if (levers) yield* through(levers);
}
