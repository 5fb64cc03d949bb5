import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { Correction } from '../../server/core/corrections/correction.ts';
import { conditionOf, type Finding } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import type { TextSplice } from '../../server/core/text/reading/layout.ts';

/** The edits that a correction makes in the file. */
export function splicesOf({ syntax }: Analysis, { changes, title }: Correction): readonly TextSplice[] {
  const splices = applyChanges(syntax, changes);
  if (!splices) throw new Error(`cannot be written into the file: ${title}`);
  return splices;
}

/** The file with a correction in it. */
export const corrected = (analysis: Analysis, correction: Correction): string =>
  splice(analysis.syntax.text, splicesOf(analysis, correction));

/** The first correction that sets both conditions right. */
export const firstOfBoth = (analysis: Analysis): Correction | undefined =>
  analysis.corrections.all().find(({ condition, left }) => condition === 'both' && left.length === 0);

/** What the boat does out of its limits; what is only remarked on does not count. */
export const outOfLimits = ({ findings }: Pick<Analysis, 'findings'>): readonly Finding[] =>
  findings.filter(
    finding => finding.severity !== 'information' && (conditionOf(finding) !== null || finding.about === 'transit'),
  );
