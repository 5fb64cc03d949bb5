import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { conditionFindings } from '../../server/core/findings/catalogue/conditionFindings.ts';
import type { Finding } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { createBoatService } from '../../server/service/service.ts';

export const service = createBoatService();

/** Schemas are costly to make: those of the usual units are taken from here, as an editor takes them from the version before. */
const FIRST = service.analyse('boat: First');

/** What is known of a text at once. */
export const analysed = (text: string): Analysis => service.analyse(text, FIRST);

/** All that is known of a text, uncertainties and trials heard. */
export const heard = (text: string): Analysis => analysed(text).settled.all();

/** Findings about the file itself: what the boat does in the water is judged elsewhere. */
export const fileFindings = (analysis: Analysis): readonly Finding[] =>
  analysis.findings.filter(finding => !(finding.code in conditionFindings));

/**
 * What is said of the file itself that was not said of it before. A boat drawn at random may lie badly to begin with, and its
 * bays may reach into a wall: corrections take of them what is free. One finding stands for all that one wrong figure
 * accounts for, and a piece that lies well may turn the blame to another: what was told of the same things before is known.
 */
export function toldSince(before: Analysis, after: Analysis): readonly Finding[] {
  const known = fileFindings(before).map(finding => ({ finding, names: namesIn(finding, before) }));
  const isKnown = (finding: Finding): boolean =>
    known.some(
      ({ finding: { code, place }, names }) =>
        code === finding.code && (isAlike(place, finding.place) || areAmong(named(finding), names)),
    );
  const isOfBay = ({ place }: Finding) => 'path' in place && place.path[0] === 'bays';
  return fileFindings(after).filter(finding => !isKnown(finding) && !isOfBay(finding));
}

/** The things that a finding of a boat may be of: of several it names two, and counts the rest. */
const namesIn = (finding: Finding, { syntax }: Analysis): readonly string[] =>
  / and \d+ more /.test(finding.message)
    ? [...syntax.text.matchAll(/name: ([^,}\n]+)/g)].map(([, name]) => `“${name}”`)
    : named(finding);

/** The things that a finding names. */
const named = ({ message }: Finding): readonly string[] => message.match(/“[^”]+”/g) ?? [];

const isAlike = (a: Finding['place'], b: Finding['place']): boolean => JSON.stringify(a) === JSON.stringify(b);

const areAmong = (names: readonly string[], all: readonly string[]): boolean =>
  names.length > 0 && names.every(name => all.includes(name));

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
