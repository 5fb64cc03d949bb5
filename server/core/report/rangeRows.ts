import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import type { Afloat } from '../conditions/energy.ts';
import { boatIn } from '../conditions/float.ts';
import { rightingCurve } from '../conditions/rightingLever.ts';
import { angleText, lengthText } from '../wording/numbers.ts';
import type { Row } from './rows.ts';

/** How far over the boat may be knocked and still come back. */
export const rangeRows = ({ boat, conditions }: Analysis): readonly Row[] =>
  conditions
    .filter(({ state }) => state.status === 'afloat' || state.status === 'neutral')
    .map(({ condition, bodies }) => ({
      name: condition.title,
      value: rangeWords(boatIn(bodies, condition.loading), boat),
    }));

function rangeWords(afloat: Afloat, { units }: Boat): string {
  const { points, range } = rightingCurve(afloat);
  if (!range) return 'does not stay upright';
  const [port, starboard] = range;
  const most = points.reduce((a, b) => (Math.abs(b.lever) > Math.abs(a.lever) ? b : a));
  const lever = `greatest righting lever ${lengthText(Math.abs(most.lever), units)} at ${angleText(Math.abs(most.heel))}`;
  const all = Math.min(-port, starboard) > (175 / 180) * Math.PI;
  return all
    ? `from any heel; ${lever}`
    : `to ${angleText(-port)} to port and ${angleText(starboard)} to starboard, where its stability vanishes; ${lever}`;
}
