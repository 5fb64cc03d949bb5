import type { Boat } from '../boat/boat.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import type { Figure } from '../figures/figure.ts';
import { type Figured, figuredIn, limitWords, offText } from '../figures/figured.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import type { Uncertainties } from '../uncertainty/uncertainties.ts';
import { plusMinus } from '../wording/withUncertainty.ts';

/**
 * Uncertainties that a limit must be away from a figure to be told: within two of them the truth lies 95 times in 100 (GUM, JCGM
 * 100:2008, 6.3.3: a coverage factor of 2; as a guard band to both sides JCGM 106:2012, 8.3, from memory).
 */
const COVERAGE = 2;

/** How a figure stands to its limit when its uncertainty is counted. */
export interface Standing {
  readonly figured: Figured;
  /** From the figure to the limit, SI; negative outside. */
  readonly margin: number;
  readonly uncertainty: Uncertainty;
  readonly verdict: Verdict;
  /** "0.2° bow up ± 4.7°". */
  readonly figure: string;
  /** "± 4.7°" as "4.7°". */
  readonly sigma: (sigma: number) => string;
  readonly limit: string;
}

type Verdict = 'inside' | 'outside' | 'cannot-tell';

/** Every limit that the boat's figures can be held against; none without uncertainties, nor of a boat that does not stay level. */
export function standingsOf(
  boat: Boat,
  conditions: readonly InCondition[],
  figures: readonly Figure[],
  uncertainties: Uncertainties | null,
): readonly Standing[] {
  if (!uncertainties) return [];
  return conditions.flatMap(inCondition => {
    const all = figuredIn(boat, inCondition, figures);
    if (!all.every(({ stays }) => stays)) return [];
    return all.flatMap(figured => standingOf(figured, uncertainties) ?? []);
  });
}

/** How one figure stands; null where no limit binds or its uncertainty cannot be had. */
export function standingOf(figured: Figured, uncertainties: Uncertainties): Standing | null {
  const { figure, condition, units, margin } = figured;
  const uncertainty = uncertainties.conditions[condition.id]?.[figure.id];
  if (!uncertainty || margin === null) return null;
  const sigma = (size: number) => figure.kind.size(size, units);
  return {
    figured,
    margin,
    uncertainty,
    verdict: Math.abs(margin) < COVERAGE * uncertainty.sigma ? 'cannot-tell' : margin >= 0 ? 'inside' : 'outside',
    figure: plusMinus(offText(figured), sigma(uncertainty.sigma)),
    sigma,
    limit: limitWords(figured) ?? '',
  };
}

/** Of the figures whose limit cannot be told, the one nearest to it in its own uncertainties. */
export function nearestToLimit(standings: readonly Standing[]): Standing | null {
  const open = standings.filter(({ verdict }) => verdict === 'cannot-tell');
  const nearness = ({ margin, uncertainty }: Standing) => Math.abs(margin) / uncertainty.sigma;
  return open.reduce<Standing | null>(
    (nearest, standing) => (!nearest || nearness(standing) < nearness(nearest) ? standing : nearest),
    null,
  );
}

/** How a figure stands to its limit: no word where it is inside, and its uncertainty leaves that open. */
export const verdictWord = ({ isKept, isOpen }: { readonly isKept?: boolean; readonly isOpen?: boolean }): string =>
  isKept ? (isOpen ? '' : 'ok') : 'out';
