import type { Analysis } from '../analysis/analysis.ts';
import type { LoadedCondition } from '../conditions/loadingCondition.ts';
import type { DrawEntry } from './drawnEntries.ts';
import type { Page } from './page.ts';
import type { Things } from './things.ts';

/** What a view of the boat is drawn from: the boat, in one condition, with what is aboard there. */
export interface ViewOf {
  readonly analysis: Analysis;
  readonly there: LoadedCondition;
  readonly things: Things;
  readonly page: Page;
  readonly drawEntry: DrawEntry;
}
