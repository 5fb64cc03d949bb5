import type { InCondition } from '../conditions/loadingCondition.ts';
import { type Figured, figuredIn, mainText } from '../figures/figured.ts';
import type { Analysis } from './analysis.ts';

/** How many of its uncertainties a figure must be off the file's own for both to be shown (common practice, no source). */
const WORTH_SAYING = 1 / 2;

/** What figures stand under, where the trials are in them. */
export const titleIn = ({ withTrials }: Pick<Analysis, 'withTrials'>, title: string): string =>
  withTrials ? `${title}, with the trials` : title;

/** A condition of the boat by the file alone. */
export const filedIn = ({ filed }: Pick<Analysis, 'filed'>, { condition }: Pick<InCondition, 'condition'>) =>
  filed.conditions.find(there => there.condition.id === condition.id) ?? null;

/** Two values of a figure are so far apart that both are shown; where no uncertainty is known, any difference. */
export const isWorthSaying = (value: number, filed: number, sigma: number): boolean =>
  Math.abs(value - filed) > WORTH_SAYING * sigma;

type Asked = Pick<Analysis, 'filed' | 'withTrials' | 'uncertainties'>;

/**
 * "by the file 5.9° bow down": a figure of the boat by the file alone, where the trials have it elsewhere by more than half of
 * what they leave open. Null where both are as good as the same, and without trials.
 */
export function byFileWords(
  analysis: Asked,
  figured: Figured,
  show: (figured: Figured) => string = mainText,
): string | null {
  const { filed, uncertainties, withTrials } = analysis;
  const there = withTrials ? filedIn(analysis, figured) : null;
  if (!there) return null;
  const { figure, condition } = figured;
  const other = figuredIn(filed.boat, there, [figure])[0];
  if (!other) return null;
  const sigma = uncertainties?.conditions[condition.id]?.[figure.id]?.sigma ?? 0;
  const words = show(other);
  return isWorthSaying(figured.value, other.value, sigma) && words !== show(figured) ? `by the file ${words}` : null;
}
