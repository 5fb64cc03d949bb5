import type { Analysis } from '../analysis/analysis.ts';
import type { Correction } from '../corrections/correction.ts';
import { refusalWords } from '../corrections/kinds/refusal.ts';
import { isWithinLimits, whatWouldDo } from '../corrections/propose.ts';
import { isBallast } from '../corrections/room/movers.ts';
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
  return `${shown.length > 0 ? shown.join('\n\n\n') : nothingToCorrect(analysis)}\n${adviceOf(analysis, corrections)}`;
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
  if (analysis.boatToTrim && isWithinLimits(analysis.boatToTrim))
    return 'Nothing to correct: the boat is within its limits.';
  if (analysis.boat.bays.length === 0) {
    return 'The file names no bays, so there is no room for lead or foam. The editor’s quick fix proposes some, or add them under “bays:”.'.concat(
      inTheWay(analysis),
    );
  }
  return `No lead or foam that the bays and the stock allow brings the boat within its limits.${inTheWay(analysis)}${sawAdvice(analysis.boat)}`;
}

/** Which limits are in the way; of a boat that does not even float, why. */
function inTheWay({ boatToTrim, findings }: Analysis): string {
  const words = boatToTrim ? refusalWords(boatToTrim) : findings.find(({ severity }) => severity === 'error')?.message;
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

function adviceOf(analysis: Analysis, corrections: readonly Correction[]): string {
  if (corrections.some(({ condition, left }) => condition === 'both' && left.length === 0)) return '';
  const { boatToTrim } = analysis;
  const advice = boatToTrim && whatWouldDo(boatToTrim);
  return advice ? `\n${advice}\n` : '';
}
