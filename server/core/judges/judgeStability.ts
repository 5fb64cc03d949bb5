import type { Boat } from '../boat/boat.ts';
import type { OtherEquilibrium } from '../conditions/otherEquilibria.ts';
import type { StabilityRange } from '../conditions/rightingLever.ts';
import type { StabilityAfloat } from '../conditions/stabilityAfloat.ts';
import type { Finding } from '../findings/finding.ts';
import { angleText, heelWords } from '../wording/numbers.ts';

/** Where else the floating boat may come to rest, and from how far over it comes back. */
export const judgeStability = (boat: Boat, { otherEquilibria, range }: StabilityAfloat): readonly Finding[] => [
  ...judgeRests(boat, otherEquilibria),
  ...judgeRange(boat, range),
];

function judgeRests(boat: Boat, otherEquilibria: readonly OtherEquilibrium[]): readonly Finding[] {
  const [rest] = [...otherEquilibria].sort((a, b) => Math.abs(b.heel) - Math.abs(a.heel));
  if (!rest) return [];
  return [
    {
      code: 'other-rest',
      about: 'stability',
      severity: 'information',
      message: `On the surface the boat can also rest ${restWords(rest.heel, rest.trim)}: knocked that far over, it stays there. Weight lower down makes it come back.`,
      place: { on: 'key', path: boat.waterline ? ['hull', 'waterline'] : ['hull'] },
    },
  ];
}

/** A boat that does not come back from this heel is told (common practice, no source), rad. */
const LEAST_RANGE = (40 / 180) * Math.PI;

/** Heels within which a boat counts as upright, rad. */
const UPRIGHT = Math.PI / 180;

function judgeRange(boat: Boat, range: StabilityRange | null): readonly Finding[] {
  if (!range) return [];
  const [port, starboard] = range;
  // A boat that does not rest upright is told so by its list.
  if (port > -UPRIGHT || starboard < UPRIGHT) return [];
  const isPort = -port < starboard;
  const least = isPort ? -port : starboard;
  if (least >= LEAST_RANGE) return [];
  return [
    {
      code: 'small-range',
      about: 'stability',
      severity: 'warning',
      message: `On the surface the boat comes back only from ${angleText(least)} to ${isPort ? 'port' : 'starboard'}, wanted ${angleText(LEAST_RANGE)}: a wake or a hand may knock it over. Weight lower down, or more buoyancy high up, widens it.`,
      place: { on: 'key', path: boat.waterline ? ['hull', 'waterline'] : ['hull'] },
    },
  ];
}

function restWords(heel: number, trim: number): string {
  const over = Math.abs(heel);
  if (Math.abs(trim) > Math.PI / 4) return `on its ${trim > 0 ? 'stern' : 'bow'}, at ${angleText(Math.abs(trim))}`;
  if (over > (150 / 180) * Math.PI) return 'keel up';
  return `lying over ${heelWords(heel)}`;
}
