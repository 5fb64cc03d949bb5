import { type FoldingRange, FoldingRangeKind } from 'vscode-languageserver-types';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { foldsOf } from '../../core/text/reading/folds.ts';

/** What can be folded away: sections, entries, long values and comments. */
export const foldingRangesOf = ({ syntax }: Analysis): readonly FoldingRange[] =>
  foldsOf(syntax).map(({ from, to, isComment }) => ({
    startLine: from,
    endLine: to,
    ...(isComment ? { kind: FoldingRangeKind.Comment } : {}),
  }));
