import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import { GOOD_FILL, type TankSizing } from '../conditions/tankSizing.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import { percentText, pressureText, tapeText, volumeText } from '../wording/numbers.ts';
import type { Row } from './rows.ts';
import { withUncertainty } from './withUncertainty.ts';

/** Each tank: what it holds when neutral, and what it should hold. */
export function tankRows(analysis: Analysis): readonly Row[] {
  const { boat, tankSizes } = analysis;
  const uncertainties = analysis.uncertainties?.tanks ?? [];
  return tankSizes.map((sizing, i) => ({
    name: sizing.body.tank.name,
    value: tankWords(sizing, boat, uncertainties[i]),
  }));
}

function tankWords(sizing: TankSizing, { units }: Boat, uncertainty: Uncertainty | undefined): string {
  const { body, fillNeutral, recommendedCapacity, recommendedLength, gaugePressure } = sizing;
  const long = recommendedLength === null ? '' : `, ${tapeText(recommendedLength, units)} long`;
  const wanted = withUncertainty(volumeText(recommendedCapacity, units), uncertainty, sigma =>
    volumeText(sigma, units),
  );
  const air =
    gaugePressure === null
      ? ''
      : `; sealed, its air at ${Number.isFinite(gaugePressure) ? pressureText(gaugePressure, units) : 'no bearable pressure'} over the air outside`;
  return `holds ${volumeText(body.capacity, units)}, neutral at ${percentText(fillNeutral)}; one of ${wanted}${long} would be neutral at ${percentText(GOOD_FILL)}${air}`;
}
