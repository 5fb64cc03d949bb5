import type { Boat } from '../boat/boat.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import type { Uncertainties } from '../uncertainty/uncertainties.ts';
import { angleText, heelWords, lengthText, percentText, trimWords } from '../wording/numbers.ts';
import { plusMinus } from '../wording/withUncertainty.ts';
import { offWaterline } from './trim.ts';

/**
 * Uncertainties that a limit must be away from a figure to be told: within two of them the truth lies 95 times in 100 (GUM, JCGM
 * 100:2008, 6.3.3: a coverage factor of 2; as a guard band to both sides JCGM 106:2012, 8.3, from memory).
 */
export const COVERAGE = 2;

/** How a figure stands to its limit when its uncertainty is counted. */
export interface Standing {
  readonly condition: 'surfaced' | 'submerged';
  /** "trim". */
  readonly name: LimitName;
  /** From the figure to the limit, SI; negative outside. */
  readonly margin: number;
  readonly uncertainty: Uncertainty;
  readonly verdict: 'inside' | 'outside' | 'cannot-tell';
  /** "0.2° bow up ± 4.7°". */
  readonly figure: string;
  /** "± 4.7°" as "4.7°". */
  readonly sigma: (sigma: number) => string;
  readonly limit: string;
}

export type LimitName = 'draft' | 'trim' | 'heel' | 'metacentric height' | 'neutral fill' | 'B above G';

/** Every limit that the boat's figures can be held against; none without uncertainties. */
export function standingsOf(
  boat: Boat,
  surfaced: Surfaced,
  submerged: Submerged,
  uncertainties: Uncertainties | null,
): readonly Standing[] {
  if (!uncertainties) return [];
  return [...standingsAfloat(boat, surfaced, uncertainties), ...standingsBelow(boat, submerged, uncertainties)];
}

function standingsAfloat(boat: Boat, surfaced: Surfaced, uncertainties: Uncertainties): readonly Standing[] {
  if (surfaced.status !== 'afloat' || !uncertainties.surfaced) return [];
  const { units } = boat;
  const limits = boat.limits.surfaced;
  const off = offWaterline(boat, surfaced);
  const { draft, trim, heel, gm } = uncertainties.surfaced;
  const length = (metres: number) => lengthText(metres, units);
  const stand = standingIn('surfaced');
  return [
    ...(off.draft === null
      ? []
      : [
          stand('draft', draft, limits.draft - Math.abs(off.draft), {
            figure: `${length(Math.abs(off.draft))} ${off.draft > 0 ? 'deep' : 'high'}`,
            limit: length(limits.draft),
            sigma: length,
          }),
        ]),
    stand('trim', trim, limits.trim - Math.abs(off.trim), {
      figure: trimWords(off.trim),
      limit: angleText(limits.trim),
      sigma: angleText,
    }),
    stand('heel', heel, limits.heel - Math.abs(off.heel), {
      figure: heelWords(off.heel),
      limit: angleText(limits.heel),
      sigma: angleText,
    }),
    stand('metacentric height', gm, surfaced.gm - limits.gm, {
      figure: length(surfaced.gm),
      limit: `${length(limits.gm)} at least`,
      sigma: length,
    }),
  ];
}

function standingsBelow(boat: Boat, submerged: Submerged, uncertainties: Uncertainties): readonly Standing[] {
  if (submerged.status !== 'neutral' || !submerged.stable || !uncertainties.submerged) return [];
  const { units } = boat;
  const limits = boat.limits.submerged;
  const { fill, trim, heel, bgEffective, bgEffectiveLongitudinal } = uncertainties.submerged;
  const length = (metres: number) => lengthText(metres, units);
  const stand = standingIn('submerged');
  const isTrim = submerged.bgEffectiveLongitudinal <= submerged.bgEffective;
  const left = isTrim ? submerged.bgEffectiveLongitudinal : submerged.bgEffective;
  const [least, most] = limits.fill;
  const standings: (Standing | null)[] = [
    boat.tanks.length > 0 && fill
      ? stand('neutral fill', fill, Math.min(submerged.fill - least, most - submerged.fill), {
          figure: percentText(submerged.fill),
          limit: `${percentText(least)} to ${percentText(most)}`,
          sigma: percentText,
        })
      : null,
    trim
      ? stand('trim', trim, limits.trim - Math.abs(submerged.trim), {
          figure: trimWords(submerged.trim),
          limit: angleText(limits.trim),
          sigma: angleText,
        })
      : null,
    heel
      ? stand('heel', heel, limits.heel - Math.abs(submerged.heel), {
          figure: heelWords(submerged.heel),
          limit: angleText(limits.heel),
          sigma: angleText,
        })
      : null,
    bgEffective && bgEffectiveLongitudinal
      ? stand('B above G', isTrim ? bgEffectiveLongitudinal : bgEffective, left - limits.bg, {
          figure: length(left),
          limit: `${length(limits.bg)} at least`,
          sigma: length,
        })
      : null,
  ];
  return standings.filter(standing => standing !== null);
}

interface StandingText {
  readonly figure: string;
  readonly limit: string;
  readonly sigma: (sigma: number) => string;
}

const standingIn =
  (condition: Standing['condition']) =>
  (name: LimitName, uncertainty: Uncertainty, margin: number, text: StandingText): Standing => ({
    condition,
    name,
    margin,
    uncertainty,
    verdict: Math.abs(margin) < COVERAGE * uncertainty.sigma ? 'cannot-tell' : margin >= 0 ? 'inside' : 'outside',
    ...text,
    figure: plusMinus(text.figure, text.sigma(uncertainty.sigma)),
  });

/** Of the figures whose limit cannot be told, the one nearest to it in its own uncertainties. */
export function nearestToLimit(standings: readonly Standing[]): Standing | null {
  const open = standings.filter(({ verdict }) => verdict === 'cannot-tell');
  const nearness = ({ margin, uncertainty }: Standing) => Math.abs(margin) / uncertainty.sigma;
  return open.reduce<Standing | null>(
    (nearest, standing) => (!nearest || nearness(standing) < nearness(nearest) ? standing : nearest),
    null,
  );
}
