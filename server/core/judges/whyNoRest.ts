import type { FileUnits } from '../../../schema/units.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import { massText } from '../wording/numbers.ts';

/** What keeps the boat from a rest in a condition, in a few words. */
export function whyNoRest({ state }: InCondition, units: FileUnits): string {
  switch (state.status) {
    case 'sinks':
      return `sinks, ${massText(state.excess, units)} too heavy`;
    case 'overturns':
      return 'turns over';
    case 'heavy':
      return `${massText(state.excess, units)} too heavy`;
    case 'light':
      return state.hasTank ? `${massText(state.lack, units)} too light` : 'no tank';
    default:
      return 'not known';
  }
}
