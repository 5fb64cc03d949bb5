import type { Analysis } from '../analysis/analysis.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';

/** Contributors that are listed with each figure. */
const MOST_LISTED = 5;

/** From SI to the report's units, by the figure: lengths mm, masses g, angles degrees, fractions as they are. */
const FACTORS: Readonly<Record<string, number>> = {
  draft: 1e3,
  draftBow: 1e3,
  draftStern: 1e3,
  trim: 180 / Math.PI,
  heel: 180 / Math.PI,
  gm: 1e3,
  gmLongitudinal: 1e3,
  reserveBuoyancy: 1e3,
  fill: 1,
  bg: 1e3,
  bgEffective: 1e3,
  bgEffectiveLongitudinal: 1e3,
};

/**
 * For each figure of `surfaced` and `submerged` one standard uncertainty and its largest contributors: their share of the
 * variance, and what one uncertainty more of each does to the figure. Null where the figure cannot be had, or parts of the boat
 * are missing from it. `roughly`: why the number is no more than an idea.
 */
export function uncertaintyJson(analysis: Analysis) {
  const uncertainties = analysis.uncertainties();
  if (!uncertainties) return { surfaced: null, submerged: null, tanks: null };
  const { surfaced, submerged, tanks } = uncertainties;
  return {
    surfaced: surfaced && conditionJson(surfaced),
    submerged: submerged && conditionJson(submerged),
    tanks: tanks.map((uncertainty, i) => ({
      name: analysis.boat.tanks[i]!.name,
      recommendedCapacity: contributorsJson(uncertainty, 1e9),
    })),
  };
}

const conditionJson = (uncertainties: Readonly<Record<string, Uncertainty | undefined>>) =>
  Object.fromEntries(
    Object.entries(uncertainties).flatMap(([figure, uncertainty]) => {
      const factor = FACTORS[figure];
      return uncertainty && factor !== undefined ? [[figure, contributorsJson(uncertainty, factor)] as const] : [];
    }),
  );

const contributorsJson = ({ sigma, shares, rough }: Uncertainty, factor: number) => ({
  sigma: sigma * factor,
  roughly: rough,
  contributors: shares.slice(0, MOST_LISTED).map(({ input, share, change }) => ({
    input: input.words,
    path: input.path,
    share,
    change: change * factor,
  })),
});
