import type { CodeLens, Command } from 'vscode-languageserver-types';
import type { Path } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { locate } from '../../core/text/reading/locate.ts';
import { inFull, stateWords, trialWords } from './conditionWords.ts';
import { lspRange } from './lspRange.ts';

/** Run by a click on a line over a section, with the address of the boat file. */
const openSheetCommand = 'trimwright.openSheet';

/** Run by a click on the line over the trials, with the address of the boat file. */
const newTrialCommand = 'trimwright.newTrial';

/**
 * A line over the hull and one over the payload, how the boat lies in the first condition and in the others, so that no sentence
 * stands twice; a click shows the trim sheet. Over the trials: one more of them.
 */
export function codeLensesOf(analysis: Analysis, uri: string): readonly CodeLens[] {
  const states = stateWords(analysis).map(state => `${state.title}: ${inFull(state)}`);
  const has = (path: Path): boolean => locate(analysis.syntax, path)?.key != null;
  const isSplit = has(['hull']) && has(['payload']);
  const sheet = (said: readonly string[]): Command => ({
    title: [...trialWords(analysis), ...said].join(' · '),
    command: openSheetCommand,
    arguments: [uri],
    tooltip: 'Open the trim sheet',
  });
  const trial = { title: 'New trial', command: newTrialCommand, arguments: [uri], tooltip: 'Write down a pool trial' };
  const sections: readonly (readonly [Path, Command])[] = [
    [['hull'], sheet(isSplit ? states.slice(0, 1) : states)],
    [['payload'], sheet(isSplit ? states.slice(1) : states)],
    [['trials'], trial],
  ];
  return sections.flatMap(([path, command]) => {
    const key = locate(analysis.syntax, path)?.key;
    return key ? [{ range: lspRange(analysis.syntax, key), command }] : [];
  });
}
