import type { Analysis } from '../analysis/analysis.ts';
import type { Paint } from './rows.ts';
import { trialsBlock } from './trialsReport.ts';

/** What the trials tell, and where they offer nothing to write, why. */
export function learnText(analysis: Analysis, paint: Paint): string {
  const hasOffers = (analysis.learned?.verdict?.offers.length ?? 0) > 0;
  const told = [trialsBlock(analysis, paint), hasOffers ? '' : nothingToLearn(analysis)];
  return `${told.filter(text => text !== '').join('\n\n')}\n`;
}

function nothingToLearn({ file: { isFaulty }, trials }: Analysis): string {
  if (isFaulty) return 'The file has errors: fix them first (trimwright check).';
  if (trials.length === 0)
    return 'The file has no trials. Write down what you read, on the bench or in the water, under “trials:”.';
  return 'The trials ask for no change of the file.';
}
