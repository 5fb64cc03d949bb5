import type { Analysis } from '../analysis/analysis.ts';
import { scopeOf } from '../corrections/balance/row.ts';
import type { Correction } from '../corrections/correction.ts';
import { isWithin } from '../corrections/kinds/isWithin.ts';
import { refusalWords } from '../corrections/kinds/refusal.ts';
import { whatWouldDo } from '../corrections/remedies/whatWouldDo.ts';
import { isBallast } from '../corrections/room/movers.ts';
import { finish } from '../steps/steps.ts';
import { correctionReport } from './correctionReport.ts';
import { explanationReport } from './explanationReport.ts';
import type { Paint } from './rows.ts';
import { waterSetReport } from './waterSetReport.ts';

/** The corrections for the bench, `explain` with why each piece is what it is; or why there is none. */
export function correctText(analysis: Analysis, explain: boolean, paint: Paint): string {
  const corrections = analysis.corrections.all();
  const shown = corrections.map(correction =>
    [
      correctionReport(analysis, correction, paint),
      ...(explain ? [explanationReport(analysis, correction, paint)] : []),
    ].join('\n\n'),
  );
  const advice = adviceOf(analysis, corrections);
  const text = shown.length > 0 ? shown.join('\n\n\n') : nothingToCorrect(analysis);
  return advice === null ? `${text}\n` : `${text}\n\n${advice}\n`;
}

/** The pieces that change with the water, or why there are none. */
export function waterSetText(analysis: Analysis, paint: Paint): string {
  const set = analysis.waterSet.all();
  if (set) return `${waterSetReport(set, analysis.scheme.figures, paint)}\n`;
  return `${analysis.file.isFaulty ? FAULTY : NO_SET}\n`;
}

const FAULTY = 'The file has errors: fix them first (trimwright check).';

const NO_SET = 'No lead or foam that the bays and the stock allow brings the boat within its limits in both waters.';

/** Why there is nothing to add, or what room would help when nothing meets both conditions. */
function nothingToCorrect(analysis: Analysis): string {
  if (analysis.file.isFaulty) return FAULTY;
  if (analysis.boatToTrim && isWithin(analysis.boatToTrim)) return 'Nothing to correct: the boat is within its limits.';
  if (analysis.boat.bays.length === 0) {
    return 'The file names no bays, so there is no room for lead or foam. The editor’s quick fix proposes some, or add them under “bays:”.'.concat(
      inTheWay(analysis),
    );
  }
  return `No lead or foam that the bays and the stock allow brings the boat within its limits.${inTheWay(analysis)}${analysis.boatToTrim ? '' : sawAdvice(analysis.boat)}`;
}

const JUST_NOT =
  'On paper it can just be done, but not by the marks of the tape: the limits leave less than one of them.';

/** Which limits are in the way; of a boat that does not even float, why. */
function inTheWay({ boatToTrim, findings }: Analysis): string {
  const words = boatToTrim
    ? (refusalWords(boatToTrim) ?? JUST_NOT)
    : findings.find(({ severity }) => severity === 'error')?.message;
  return words ? ` ${words}` : '';
}

/** Lead that nobody said may be cut: counted in when it may. */
function sawAdvice({ payload }: Analysis['boat']): string {
  const lead = payload
    .filter(part => isBallast(part) && part.fixed && part.material !== 'foam')
    .map(({ name }) => `“${name}”`);
  return lead.length > 0
    ? ` If ${lead.join(' or ')} may be cut or moved, add “fixed: false” to it: then it is counted in.`
    : '';
}

const NOTHING_ALONE =
  'No room for more lead or foam, no lead cut shorter, nothing put lower and no other tank would do it alone: it takes more than one change, or wider limits.';

/** What would do it where nothing that is offered does all that is asked. */
function adviceOf({ boatToTrim }: Analysis, corrections: readonly Correction[]): string | null {
  if (!boatToTrim || isWithin(boatToTrim)) return null;
  const asked = scopeOf(boatToTrim.boat);
  if (corrections.some(({ condition, left }) => condition === asked && left.length === 0)) return null;
  return finish(whatWouldDo(boatToTrim)) ?? `${NOTHING_ALONE}${sawAdvice(boatToTrim.boat)}`;
}
