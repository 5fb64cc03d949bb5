import type { Analysis } from '../analysis.ts';
import type { Doubts } from '../doubt/doubts.ts';
import type { Doubt } from '../doubt/spread.ts';
import { type LimitName, type Standing, standingsOf } from '../findings/standings.ts';
import { plusMinus } from '../wording/withDoubt.ts';
import type { RowDoubt } from './rows.ts';

/** What stands after ± in the report. */
export interface RowDoubts {
  readonly all: Doubts | null;
  /** Of a figure that has a limit. */
  ofLimit(condition: Standing['condition'], name: LimitName): RowDoubt | null;
}

export function rowDoubts(analysis: Analysis): RowDoubts {
  const { boat, surfaced, submerged } = analysis;
  const all = analysis.doubts();
  const standings = standingsOf(boat, surfaced, submerged, all);
  return {
    all,
    ofLimit: (condition, name) => {
      const standing = standings.find(one => one.condition === condition && one.name === name);
      if (!standing) return null;
      const { doubt, sigma, verdict } = standing;
      return { text: sigmaText(doubt, sigma), isOpen: verdict === 'cannot-tell' };
    },
  };
}

/** A figure with its doubt where it has one. */
export const withDoubt = (figure: string, doubt: Doubt | undefined, show: (sigma: number) => string): string =>
  doubt ? plusMinus(figure, sigmaText(doubt, show)) : figure;

const sigmaText = (doubt: Doubt, show: (sigma: number) => string): string =>
  doubt.rough === null ? show(doubt.sigma) : `${show(doubt.sigma)}, roughly`;
