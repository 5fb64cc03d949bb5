import type { Analysis } from '../analysis/analysis.ts';
import { type LimitName, type Standing, standingsOf } from '../judges/standings.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import type { Uncertainties } from '../uncertainty/uncertainties.ts';
import { plusMinus } from '../wording/withUncertainty.ts';
import type { RowUncertainty } from './rows.ts';

/** What stands after ± in the report. */
export interface RowUncertainties {
  readonly all: Uncertainties | null;
  /** Of a figure that has a limit. */
  ofLimit(condition: Standing['condition'], name: LimitName): RowUncertainty | null;
}

export function rowUncertainties(analysis: Analysis): RowUncertainties {
  const { boat, surfaced, submerged } = analysis;
  const all = analysis.uncertainties();
  const standings = standingsOf(boat, surfaced, submerged, all);
  return {
    all,
    ofLimit: (condition, name) => {
      const standing = standings.find(one => one.condition === condition && one.name === name);
      if (!standing) return null;
      const { uncertainty, sigma, verdict } = standing;
      return { text: sigmaText(uncertainty, sigma), isOpen: verdict === 'cannot-tell' };
    },
  };
}

/** A figure with its uncertainty where it has one. */
export const withUncertainty = (
  figure: string,
  uncertainty: Uncertainty | undefined,
  show: (sigma: number) => string,
): string => (uncertainty ? plusMinus(figure, sigmaText(uncertainty, show)) : figure);

const sigmaText = (uncertainty: Uncertainty, show: (sigma: number) => string): string =>
  uncertainty.rough === null ? show(uncertainty.sigma) : `${show(uncertainty.sigma)}, roughly`;
