import type { Analysis } from '../analysis/analysis.ts';
import { isWorthSaying } from '../analysis/withTrials.ts';
import type { Boat } from '../boat/boat.ts';
import { GOOD_FILL, type TankSizing } from '../conditions/tankSizing.ts';
import { BLOW_CAUTION, blowWords } from '../judges/blowWords.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import { percentText, pressureText, tapeText, volumeText } from '../wording/numbers.ts';
import { timesName } from '../wording/times.ts';
import type { Row } from './rows.ts';
import { withUncertainty } from './withUncertainty.ts';

/** Each tank: what it holds when neutral, and what it should hold. */
export function tankRows(analysis: Analysis): readonly Row[] {
  const { boat, tankSizes } = analysis;
  const uncertainties = analysis.uncertainties?.tanks ?? [];
  const blown = analysis.blows.map(blow => ({
    name: tankSizes.some(({ body }) => body.tank === blow.tank) ? '' : timesName(blow.tank),
    value: blowWords(blow, boat.units),
    of: blow.tank,
  }));
  const sized = tankSizes.map((sizing, i) => {
    const { name } = sizing.body.tank;
    const filed = analysis.withTrials
      ? analysis.filed.tankSizes.find(({ body }) => body.tank.name === name)
      : undefined;
    return {
      name: timesName(sizing.body.tank),
      value: tankWords(sizing, boat, uncertainties[i], filed),
      of: sizing.body.tank,
    };
  });
  const rows = boat.tanks.flatMap(tank => [...sized, ...blown].filter(({ of }) => of === tank));
  return [
    ...rows.map(({ name, value }) => ({ name, value })),
    ...(blown.length > 0 ? [{ name: '', value: BLOW_CAUTION }] : []),
  ];
}

function tankWords(
  sizing: TankSizing,
  { units }: Boat,
  uncertainty: Uncertainty | undefined,
  filed: TankSizing | undefined,
): string {
  const { body, fillNeutral, recommendedCapacity, recommendedLength, gaugePressure } = sizing;
  const long = recommendedLength === null ? '' : `, ${tapeText(recommendedLength, units)} long`;
  const wanted = withUncertainty(volumeText(recommendedCapacity, units), uncertainty, sigma =>
    volumeText(sigma, units),
  );
  const sigma = uncertainty?.sigma ?? 0;
  const byFile =
    filed && isWorthSaying(recommendedCapacity, filed.recommendedCapacity, sigma)
      ? ` (by the file ${volumeText(filed.recommendedCapacity, units)})`
      : '';
  const air =
    gaugePressure === null
      ? ''
      : `; sealed, its air at ${Number.isFinite(gaugePressure) ? pressureText(gaugePressure, units) : 'no bearable pressure'} over the air outside`;
  return `holds ${volumeText(body.capacity, units)}, neutral at ${percentText(fillNeutral)}; one of ${wanted}${byFile}${long} would be neutral at ${percentText(GOOD_FILL)}${air}`;
}
