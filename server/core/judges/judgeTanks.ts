import type { Boat } from '../boat/boat.ts';
import type { Blow } from '../conditions/blowing.ts';
import type { TankSizing } from '../conditions/tankSizing.ts';
import type { Finding } from '../findings/finding.ts';
import { pressureText } from '../wording/numbers.ts';
import { BLOW_CAUTION, blowWords } from './blowWords.ts';

/** Charges that do not empty their tank even once from the depth asked for. */
export function judgeBlows({ units }: Boat, blows: readonly Blow[]): readonly Finding[] {
  return blows.flatMap((blow): readonly Finding[] => {
    const { tank, times, gauge } = blow;
    if (times === null || times >= 1) return [];
    const bottle = tank.blow?.bottle;
    const why =
      bottle && bottle.pressure <= gauge
        ? `the bottle’s ${pressureText(bottle.pressure, units)} do not even reach the pressure of the water there`
        : 'the charge does not empty it once';
    return [
      {
        code: 'blow-short',
        about: 'tanks',
        severity: 'warning',
        message: `“${tank.name}”: ${blowWords(blow, units)}: ${why}. ${BLOW_CAUTION}`,
        place: { on: 'key', path: [...tank.path, 'blow'] },
      },
    ];
  });
}

/** Sealed tanks whose air is pressed beyond what they take at the neutral fill. */
export function judgeTanks(boat: Boat, tanks: readonly TankSizing[]): readonly Finding[] {
  return tanks.flatMap(({ body: { tank }, gaugePressure }): readonly Finding[] => {
    if (tank.pressure === null || gaugePressure === null || gaugePressure <= tank.pressure) return [];
    const now = Number.isFinite(gaugePressure) ? pressureText(gaugePressure, boat.units) : 'more than any tank bears';
    return [
      {
        code: 'tank-pressure',
        about: 'tanks',
        severity: 'warning',
        message: `At the neutral fill the air in “${tank.name}” is at ${now} over the air outside; it takes ${pressureText(tank.pressure, boat.units)}, and filled fast it is more still. It can burst: keep to its maker’s rating, away from faces. A larger tank or a vented one cures it.`,
        place: { on: 'key', path: [...tank.path, 'pressure'] },
      },
    ];
  });
}
