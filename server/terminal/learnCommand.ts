import type { Analysis } from '../core/analysis/analysis.ts';
import { trialsJson } from '../core/report/trialsJson.ts';
import { trialsBlock } from '../core/report/trialsReport.ts';
import { applyChanges, splice } from '../core/text/editing/edit.ts';
import { attempted, ERRORS_FOUND, hasErrors, OK, paintFor, type World, WRONG_USE } from '../editor/world.ts';

/** How `learn` is asked for. */
interface Wanted {
  readonly json: boolean;
  readonly write: boolean;
}

/** Prints what the trials tell, and with --write puts the best explanation into the file, as the editor's quick fix does. */
export function learnCommand(file: string, analysis: Analysis, { json, write }: Wanted, world: World): number {
  const offers = analysis.learned?.verdict?.offers ?? [];
  const [best] = offers;
  if (json) {
    const told = { trials: trialsJson(analysis), offers: offers.map(({ title, details }) => ({ title, details })) };
    world.out(`${JSON.stringify(told, null, 2)}\n`);
  } else {
    const told = [trialsBlock(analysis, paintFor(world)), best ? '' : nothingToLearn(analysis)];
    world.out(`${told.filter(text => text !== '').join('\n\n')}\n`);
  }
  if (write && best) {
    const splices = applyChanges(analysis.syntax, best.changes);
    if (splices === null) {
      world.err(`${file}: what the trials teach could not be written into this file; change it by hand.\n`);
      return ERRORS_FOUND;
    }
    const was = analysis.syntax.text;
    if (!attempted(file, world, () => world.rewriteFile(file, was, splice(was, splices)))) return WRONG_USE;
    world.err(`${file}: written.\n`);
  }
  return hasErrors(analysis) ? ERRORS_FOUND : OK;
}

/** Why there is nothing to write. */
function nothingToLearn({ file: { isFaulty }, trials }: Analysis): string {
  if (isFaulty) return 'The file has errors: mend them first (trimwright check).';
  if (trials.length === 0)
    return 'The file has no trials. Write down what you read, on the bench or in the water, under “trials:”.';
  return 'The trials ask for no change of the file.';
}
