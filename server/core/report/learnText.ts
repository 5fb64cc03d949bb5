import type { Analysis } from '../analysis/analysis.ts';
import type { Paint } from './rows.ts';
import { isSilent, trialsBlock } from './trialsReport.ts';

/** What the trials tell, and where they offer nothing to write, why. */
export function learnText(analysis: Analysis, paint: Paint): string {
  const hasOffers = analysis.offers.all().length > 0;
  const told = [trialsBlock(analysis, paint), hasOffers ? '' : nothingToLearn(analysis)];
  return `${told.filter(text => text !== '').join('\n\n')}\n`;
}

function nothingToLearn({ file: { isFaulty }, trials, learned }: Analysis): string {
  if (isFaulty) return 'The file has errors: fix them first (trimwright check).';
  if (trials.length === 0)
    return 'The file has no trials. Write down what you read, on the bench or in the water, under “trials:”.';
  const silent = (learned?.comparisons ?? []).filter(isSilent).map(({ trial }) => trial.name);
  if (silent.length === 0) return 'The trials ask for no change of the file.';
  const others = silent.length < trials.length ? ' The others ask for no change of the file.' : '';
  return `Nothing can be learned from ${silent.join(', ')}: by the file the boat could not have shown what was read.${others}`;
}
