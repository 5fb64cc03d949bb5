import type { CodeLens } from 'vscode-languageserver-types';
import type { Path } from '../../schema/path.ts';
import type { Analysis } from '../analysis.ts';
import { locate } from '../text/locate.ts';
import { type Lie, submergedLie, surfacedLie } from './conditionWords.ts';
import { lspRange } from './lspRange.ts';

/** Run by a click on a line over a section, with the address of the boat file. */
const openSheetCommand = 'trimwright.openSheet';

/** A line over the hull and over the payload: how the boat lies in both conditions. A click shows the trim sheet. */
export function codeLensesOf(analysis: Analysis, uri: string): readonly CodeLens[] {
  const title = `Surfaced: ${words(surfacedLie(analysis))} · Submerged: ${words(submergedLie(analysis))}`;
  const sections: readonly Path[] = [['hull'], ['payload']];
  return sections.flatMap(path => {
    const key = locate(analysis.syntax, path)?.key;
    if (!key) return [];
    const command = { title, command: openSheetCommand, arguments: [uri], tooltip: 'Open the trim sheet' };
    return [{ range: lspRange(analysis.syntax, key), command }];
  });
}

const words = (lie: Lie): string => (lie.lies ? `${lie.water}, ${lie.trim}, ${lie.heel}` : lie.why);
