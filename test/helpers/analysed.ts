import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { conditionFindings } from '../../server/core/findings/catalogue/conditionFindings.ts';
import type { Finding } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { createBoatService } from '../../server/service/service.ts';

export const service = createBoatService();

/** What is known of a text at once. */
export const analysed = (text: string): Analysis => service.analyse(text);

/** All that is known of a text, uncertainties and trials heard. */
export const heard = (text: string): Analysis => analysed(text).settled.all();

/** Findings about the file itself: what the boat does in the water is judged elsewhere. */
export const fileFindings = (analysis: Analysis): readonly Finding[] =>
  analysis.findings.filter(finding => !(finding.code in conditionFindings));

/**
 * What is said of the file itself that was not said of it before. A boat drawn at random may lie badly to begin with, and its
 * bays may reach into a wall: corrections take of them what is free.
 */
export function toldSince(before: Analysis, after: Analysis): readonly Finding[] {
  const key = ({ code, place }: Finding): string => `${code} ${JSON.stringify(place)}`;
  const known = new Set(fileFindings(before).map(key));
  const isOfBay = ({ place }: Finding) => 'path' in place && place.path[0] === 'bays';
  return fileFindings(after).filter(finding => !known.has(key(finding)) && !isOfBay(finding));
}

/** The characters that a finding underlines. */
export const marked = ({ syntax }: Analysis, finding: Finding): string =>
  syntax.text.slice(...rangeOf(syntax, finding.place));

/** The text after one of the mends that a finding offers; the first unless told. */
export function mended({ syntax }: Analysis, finding: Finding, which = 0): string {
  const mend = finding.mends?.[which];
  if (!mend) throw new Error(`no mend ${which} is offered for: ${finding.message}`);
  const splices = applyChanges(syntax, mend.changes);
  if (!splices) throw new Error(`the mend cannot be made: ${mend.title}`);
  return splice(syntax.text, splices);
}
