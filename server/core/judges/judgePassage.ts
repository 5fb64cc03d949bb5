import type { Boat } from '../boat/boat.ts';
import type { Passage } from '../conditions/passage.ts';
import { type TransitStep, worstStep } from '../conditions/transit.ts';
import type { Finding } from '../findings/finding.ts';
import { angleText, heelWords, lengthText, percentText, pressureText, trimWords } from '../wording/numbers.ts';
import { tankPlace } from './places.ts';

/** What happens between the two conditions, where else the boat may come to rest, and what its sealed tanks must hold. */
export function judgePassage(boat: Boat, passage: Passage): readonly Finding[] {
  return [
    ...judgeTransit(boat, passage.transit),
    ...judgeRests(boat, passage),
    ...judgeRange(boat, passage),
    ...judgePressure(boat, passage),
  ];
}

/** Only what neither end shows: a boat that is bad at an end is told so there. */
function judgeTransit(boat: Boat, steps: readonly TransitStep[]): readonly Finding[] {
  const [first, last] = [steps[0], steps.at(-1)];
  if (!first || !last) return [];
  const { limits } = boat;
  const findings: Finding[] = [];
  const out = (code: 'transit-trim' | 'transit-heel' | 'transit-gm', message: string) =>
    findings.push({ code, severity: 'warning', message, place: tankPlace(boat) });
  const between = steps.slice(1, -1);
  const ends = [first, last];
  const trim = worstStep(between, step => Math.abs(step.trim));
  if (trim && isNews(between, ends, step => Math.abs(step.trim), limits.transit.trim)) {
    out(
      'transit-trim',
      `On the way down, with the tanks ${percentText(trim.fill)} full, the boat trims ${trimWords(trim.trim)}, limit on the way ${angleText(limits.transit.trim)}, though both ends are well.`,
    );
  }
  const heel = worstStep(between, step => Math.abs(step.heel));
  if (heel && isNews(between, ends, step => Math.abs(step.heel), limits.transit.heel)) {
    out(
      'transit-heel',
      `On the way down, with the tanks ${percentText(heel.fill)} full, the boat heels ${heelWords(heel.heel)}, limit on the way ${angleText(limits.transit.heel)}, though both ends are well.`,
    );
  }
  const least = Math.min(limits.surfaced.gm, limits.submerged.bg);
  const tender = worstStep(between, step => -step.gm);
  if (tender && isNews(between, ends, step => -step.gm, -least)) {
    out(
      'transit-gm',
      `On the way down, with the tanks ${percentText(tender.fill)} full, the boat is tender: metacentric height ${lengthText(tender.gm, boat.units)}, limit ${lengthText(least, boat.units)}, though both ends are well. Weight lower down cures it, and a tank with less free surface.`,
    );
  }
  return findings;
}

/** Out of the limit somewhere between, and at neither end. */
function isNews(
  between: readonly TransitStep[],
  ends: readonly TransitStep[],
  badness: (step: TransitStep) => number,
  limit: number,
): boolean {
  return between.some(step => badness(step) > limit) && ends.every(step => badness(step) <= limit);
}

function judgeRests(boat: Boat, { otherEquilibria }: Passage): readonly Finding[] {
  const [rest] = [...otherEquilibria].sort((a, b) => Math.abs(b.heel) - Math.abs(a.heel));
  if (!rest) return [];
  return [
    {
      code: 'other-rest',
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

function judgeRange(boat: Boat, { range }: Passage): readonly Finding[] {
  if (!range) return [];
  const [port, starboard] = range;
  // A boat that does not rest upright is told so by her list.
  if (port > -UPRIGHT || starboard < UPRIGHT) return [];
  const isPort = -port < starboard;
  const least = isPort ? -port : starboard;
  if (least >= LEAST_RANGE) return [];
  return [
    {
      code: 'small-range',
      severity: 'warning',
      message: `On the surface the boat comes back only from ${angleText(least)} to ${isPort ? 'port' : 'starboard'}, wanted ${angleText(LEAST_RANGE)}: a wake or a hand may knock her over. Weight lower down, or more buoyancy high up, widens it.`,
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

function judgePressure(boat: Boat, { tanks }: Passage): readonly Finding[] {
  return tanks.flatMap(({ body: { tank }, gaugePressure }): readonly Finding[] => {
    if (tank.pressure === null || gaugePressure === null || gaugePressure <= tank.pressure) return [];
    const now = Number.isFinite(gaugePressure) ? pressureText(gaugePressure, boat.units) : 'more than any tank bears';
    return [
      {
        code: 'tank-pressure',
        severity: 'warning',
        message: `At the neutral fill the air in “${tank.name}” is at ${now} over the air outside, more than the ${pressureText(tank.pressure, boat.units)} that it takes; filled fast it is more still. A larger tank or a vented one cures it. A tank under pressure can burst: stay within its maker’s rating and test it away from faces.`,
        place: { on: 'key', path: [...tank.path, 'pressure'] },
      },
    ];
  });
}
