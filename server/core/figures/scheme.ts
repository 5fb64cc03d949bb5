import type { LoadingCondition } from '../conditions/loadingCondition.ts';
import type { Figure } from './figure.ts';
import { FIGURES } from './table.ts';

/** What is figured of a boat: every report, hover, judge and plot goes by these lists. */
export interface Scheme {
  readonly figures: readonly Figure[];
  /** Loading conditions besides surfaced and submerged, which every boat has. */
  readonly others: readonly LoadingCondition[];
}

export const STANDARD: Scheme = { figures: FIGURES, others: [] };
