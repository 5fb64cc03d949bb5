import type { Finding } from '../findings/finding.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { isBroken, sectionSlips } from '../text/reading/values.ts';

/**
 * What is to be told now. How things lie to each other, and what was read off the boat, waits until the boat itself is
 * read whole; what seems to be missing, and whatever is in the section, waits until the writing is in order: it would be a
 * second complaint about one slip.
 */
export function toldNow(findings: readonly Finding[], syntax: Syntax): readonly Finding[] {
  const sure = findings.filter(finding => !isUncertain(syntax, finding));
  const slipped = syntax.slips.length > 0;
  const errors = sure.filter(
    ({ code, severity, place }) => severity === 'error' && !FOLLOWS.has(code) && !isApart(place),
  );
  if (!slipped && errors.length === 0) return sure;
  // The compartment may stand under a key, or have a name, that cannot be read.
  const isHullRead = !errors.some(isOfCompartments);
  return sure.filter(({ code, place }) => {
    if (FOLLOWS.has(code) || isOfTrials(place)) return false;
    if (slipped && (LACKS.has(code) || ('path' in place && sectionSlips(syntax, place.path)))) return false;
    return code !== 'unknown-compartment' || (isHullRead && !slipped);
  });
}

/** Of the kind that is not told while the writing slips. */
export const waits = ({ code, place }: Pick<Finding, 'code' | 'place'>): boolean =>
  FOLLOWS.has(code) || LACKS.has(code) || code === 'unknown-compartment' || isOfTrials(place);

/** It spoils nothing of the boat itself. */
const isApart = (place: Finding['place']): boolean =>
  isOfTrials(place) || ('path' in place && place.path[0] === 'conditions');

const isOfTrials = (place: Finding['place']): boolean => 'path' in place && place.path[0] === 'trials';

function isOfCompartments({ code, place }: Finding): boolean {
  if (!('path' in place)) return false;
  const [section, list] = place.path;
  return (section === 'hull' && list === 'compartments') || (code === 'unknown-key' && place.path.length < 3);
}

/** Findings about how the things of the boat go together. */
const FOLLOWS: ReadonlySet<string> = new Set(['density-unlikely']);

/** Findings about what is not there. */
const LACKS: ReadonlySet<string> = new Set([
  'missing-key',
  'mass-unknown',
  'volume-unknown',
  'length-unknown',
  'form-unknown',
  'not-a-list',
]);

/** What a slip of the pen leaves in uncertainty is not said: it would be a second complaint about the same slip. */
function isUncertain(syntax: Syntax, { code, place }: Finding): boolean {
  if ('path' in place && isBroken(syntax, place.path)) return true;
  // The scale is there, and told; what hangs on it is read once it is.
  if (code === 'scale-missing') return /^[ \t]*scale\b/m.test(syntax.text);
  return OF_ALL.has(code) && syntax.slips.length > 0;
}

/** Findings that come of the whole file: of what a trial or a condition has or lacks. */
const OF_ALL: ReadonlySet<string> = new Set([
  'trial-empty',
  'trial-impossible',
  'trial-reading-unused',
  'condition-impossible',
]);
