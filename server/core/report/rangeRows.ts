import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import type { RightingCurve } from '../conditions/rightingLever.ts';
import { angleText, lengthText } from '../wording/numbers.ts';
import type { Row } from './rows.ts';

/** How far over the boat may be knocked and still come back. */
export const rangeRows = ({ boat, conditions }: Analysis): readonly Row[] =>
  conditions.flatMap(({ condition, levers }) =>
    levers ? [{ name: condition.title, value: rangeWords(levers.all(), boat) }] : [],
  );

function rangeWords({ points, range }: RightingCurve, { units }: Boat): string {
  if (!range) return 'does not stay upright';
  const [port, starboard] = range;
  const most = points.reduce((a, b) => (Math.abs(b.lever) > Math.abs(a.lever) ? b : a));
  const lever = `greatest righting lever ${lengthText(Math.abs(most.lever), units)} at ${angleText(Math.abs(most.heel))}`;
  const all = Math.min(-port, starboard) > (175 / 180) * Math.PI;
  return all
    ? `from any heel; ${lever}`
    : `to ${angleText(-port)} to port and ${angleText(starboard)} to starboard, where its stability vanishes; ${lever}`;
}
