import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import type { Afloat } from '../conditions/energy.ts';
import { loadedBoat, surfacedBoat } from '../conditions/load.ts';
import { rightingCurve } from '../conditions/rightingLever.ts';
import { GOOD_FILL, type TankSizing } from '../conditions/tankSizing.ts';
import { type TransitStep, worstStep } from '../conditions/transit.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import {
  angleText,
  heelWords,
  lengthText,
  percentText,
  pressureText,
  tapeText,
  trimWords,
  volumeText,
} from '../wording/numbers.ts';
import type { Row } from './rows.ts';
import { withUncertainty } from './withUncertainty.ts';

/** The way down: the worst of each figure between empty and neutral, and where. */
export function transitRows({ boat, passage }: Analysis): readonly Row[] {
  const { transit } = passage;
  const { limits, units } = boat;
  const at = (step: TransitStep) => `with the tanks ${percentText(step.fill)} full`;
  const trim = worstStep(transit, step => Math.abs(step.trim));
  const heel = worstStep(transit, step => Math.abs(step.heel));
  const gm = worstStep(transit, step => -step.gm);
  const gmLongitudinal = worstStep(transit, step => -step.gmLongitudinal);
  if (!trim || !heel || !gm || !gmLongitudinal) return [];
  return [
    {
      name: 'Most trim',
      value: tiltText(trimWords(trim.trim), at(trim)),
      limit: angleText(limits.transit.trim),
      isKept: Math.abs(trim.trim) <= limits.transit.trim,
    },
    {
      name: 'Most heel',
      value: tiltText(heelWords(heel.heel), at(heel)),
      limit: angleText(limits.transit.heel),
      isKept: Math.abs(heel.heel) <= limits.transit.heel,
    },
    { name: 'Least metacentric height', value: `${lengthText(gm.gm, units)} ${at(gm)}` },
    { name: 'Least lengthwise', value: `${lengthText(gmLongitudinal.gmLongitudinal, units)} ${at(gmLongitudinal)}` },
  ];
}

/** A tilt and where it is worst; nowhere, when there is none to see. */
const tiltText = (tilt: string, where: string): string =>
  /\d/.test(tilt) ? `${tilt} ${where}` : `${tilt} all the way`;

/** How far over the boat may be knocked and still come back. */
export function rangeRows({ boat, bodies, surfaced, submerged }: Analysis): readonly Row[] {
  const rows: Row[] = [];
  if (surfaced.status === 'afloat') rows.push({ name: 'Surfaced', value: rangeWords(surfacedBoat(bodies), boat) });
  if (submerged.status === 'neutral') {
    rows.push({ name: 'Submerged', value: rangeWords(loadedBoat(bodies, submerged.fill, 'submerged'), boat) });
  }
  return rows;
}

function rangeWords(afloat: Afloat, { units }: Boat): string {
  const { points, range } = rightingCurve(afloat);
  if (!range) return 'does not stay upright';
  const [port, starboard] = range;
  const most = points.reduce((a, b) => (Math.abs(b.lever) > Math.abs(a.lever) ? b : a));
  const lever = `greatest lever ${lengthText(Math.abs(most.lever), units)} at ${angleText(Math.abs(most.heel))}`;
  const all = Math.min(-port, starboard) > (175 / 180) * Math.PI;
  return all
    ? `from any heel; ${lever}`
    : `from ${angleText(-port)} to port and ${angleText(starboard)} to starboard; ${lever}`;
}

/** Each tank: what it holds when neutral, and what it should hold. */
export function tankRows(analysis: Analysis): readonly Row[] {
  const { boat, passage } = analysis;
  const uncertainties = analysis.uncertainties()?.tanks ?? [];
  return passage.tanks.map((sizing, i) => ({
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
