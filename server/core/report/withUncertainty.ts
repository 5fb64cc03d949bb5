import type { Uncertainty } from '../uncertainty/spread.ts';
import { plusMinus } from '../wording/withUncertainty.ts';

/** A figure with its uncertainty where it has one. */
export const withUncertainty = (
  figure: string,
  uncertainty: Uncertainty | undefined,
  show: (sigma: number) => string,
): string => (uncertainty ? plusMinus(figure, sigmaText(uncertainty, show)) : figure);

const sigmaText = (uncertainty: Uncertainty, show: (sigma: number) => string): string =>
  uncertainty.rough === null ? show(uncertainty.sigma) : `${show(uncertainty.sigma)}, roughly`;
