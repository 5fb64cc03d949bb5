import type { Analysis } from '../analysis/analysis.ts';
import { byCondition } from '../conditions/loadingCondition.ts';
import type { Figure } from '../figures/figure.ts';
import { figuresOf } from '../figures/figured.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import type { FigureUncertainties } from '../uncertainty/uncertainties.ts';

/** Contributors that are listed with each figure. */
const MOST_LISTED = 5;

/**
 * For each figure of each loading condition one standard uncertainty and its largest contributors: their share of the
 * variance, and what one uncertainty more of each does to the figure. Null where the figure cannot be had, or parts of the boat
 * are missing from it. `roughly`: why the number is no more than an idea.
 */
export function uncertaintyJson({ boat, conditions, scheme, uncertainties }: Analysis) {
  const known = uncertainties;
  return {
    ...byCondition(conditions, ({ condition }) => {
      const there = known?.conditions[condition.id];
      return there ? conditionJson(figuresOf(condition, scheme.figures), there) : null;
    }),
    tanks:
      known?.tanks.map((uncertainty, i) => ({
        name: boat.tanks[i]!.name,
        recommendedCapacity: contributorsJson(uncertainty, 1e9),
      })) ?? null,
  };
}

const conditionJson = (figures: readonly Figure[], uncertainties: FigureUncertainties) =>
  Object.fromEntries(
    figures.flatMap(({ id, kind, isForMachines }) => {
      const uncertainty = uncertainties[id];
      return uncertainty && isForMachines !== false ? [[id, contributorsJson(uncertainty, kind.factor)] as const] : [];
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
