import type { OpenLoads } from '../balance/open.ts';
import { balanceName, type Scope } from '../balance/row.ts';
import { chanceOfAll, type Floating, inHand, limitsKept } from '../balance/sureness.ts';

/** A chance for people: "97 in 100". */
export const chanceWords = (chance: number): string =>
  chance > 0.99 ? 'over 99 in 100' : chance < 0.01 ? 'under 1 in 100' : `${Math.round(100 * chance)} in 100`;

/** A chance that is no use to anybody. */
const CANNOT_TELL = 0.1;

/** How likely all limits are kept in the water, and what is kept in hand of each that is not in its middle. */
export function surenessNote(floating: Floating, scope: Scope, open: OpenLoads): string | null {
  const limits = limitsKept(floating, scope, open);
  if (limits.length === 0) return null;
  const chance = chanceOfAll(limits);
  const tightest = limits.filter(({ isLeast }) => !isLeast).sort((a, b) => inHand(a) - inHand(b));
  const left = tightest.map(kept => `${balanceName(kept)} ${Math.round(100 * inHand(kept))} %`).join(', ');
  const told =
    chance < CANNOT_TELL
      ? 'The file leaves so much open that nobody can tell whether it is then in trim in the water: weigh and measure what the uncertainties name, or try it and write the trial down.'
      : `Likely within all limits in the water, as well as the file is known: ${chanceWords(chance)}.`;
  return `${told} Kept in hand of the limits by the figures: ${left}.`;
}
