import type { Analysis } from '../core/analysis/analysis.ts';
import type { Correction } from '../core/corrections/correction.ts';
import { refusalWords } from '../core/corrections/kinds/refusal.ts';
import { isWithinLimits, roomAdvice } from '../core/corrections/propose.ts';
import { correctionReport } from '../core/report/correctionReport.ts';
import { explanationReport } from '../core/report/explanationReport.ts';
import { jsonReport } from '../core/report/jsonReport.ts';
import { waterSetJson } from '../core/report/waterSetJson.ts';
import { waterSetReport } from '../core/report/waterSetReport.ts';
import { applyChanges, splice } from '../core/text/editing/edit.ts';
import { attempted, ERRORS_FOUND, hasErrors, OK, paintFor, type World, WRONG_USE } from '../editor/world.ts';

/** How `correct` is asked for. */
interface Wanted {
  readonly json: boolean;
  readonly write: boolean;
  readonly explain: boolean;
  readonly bothWaters: boolean;
}

/** Prints the corrections, and with --write puts the best one into the file, as the editor's code action does. */
export function correctCommand(file: string, analysis: Analysis, wanted: Wanted, world: World): number {
  const { json, write, explain } = wanted;
  if (wanted.bothWaters) return bothWaters(analysis, json, world);
  const corrections = analysis.corrections.all();
  const [best] = corrections;
  const shown = (correction: Correction) => {
    const report = correctionReport(analysis, correction, paintFor(world));
    return explain ? `${report}\n\n${explanationReport(analysis, correction, paintFor(world))}` : report;
  };
  if (json) {
    world.out(`${JSON.stringify(jsonReport(analysis).corrections, null, 2)}\n`);
  } else {
    world.out(
      best ? `${corrections.map(correction => shown(correction)).join('\n\n\n')}\n` : `${nothingToCorrect(analysis)}\n`,
    );
    world.out(adviceOf(analysis, corrections));
  }
  if (write && best) {
    const splices = applyChanges(analysis.syntax, best.changes);
    if (splices === null) {
      world.err(`${file}: the pieces could not be written into this file; add them by hand.\n`);
      return ERRORS_FOUND;
    }
    const was = analysis.syntax.text;
    if (!attempted(file, world, () => world.rewriteFile(file, was, splice(was, splices)))) return WRONG_USE;
    world.err(`${file}: written.\n`);
  }
  return hasErrors(analysis) ? ERRORS_FOUND : OK;
}

/** Why there is nothing to add, or what room would help when nothing meets both conditions. */
function nothingToCorrect(analysis: Analysis): string {
  if (analysis.file.isFaulty) return 'The file has errors: mend them first (trimwright check).';
  if (analysis.boatToTrim && isWithinLimits(analysis.boatToTrim))
    return 'Nothing to correct: the boat is within its limits.';
  if (analysis.boat.bays.length === 0) {
    return 'The file names no bays, so there is no room for lead or foam. The editor’s quick fix proposes some, or add them under “bays:”.';
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
  const lead = payload.filter(({ material, fixed }) => material === 'lead' && fixed).map(({ name }) => `“${name}”`);
  return lead.length > 0
    ? ` If ${lead.join(' or ')} may be cut or moved, add “fixed: false” to it: then it is counted in.`
    : '';
}

function adviceOf(analysis: Analysis, corrections: readonly Correction[]): string {
  if (corrections.some(({ condition, left }) => condition === 'both' && left.length === 0)) return '';
  const advice = analysis.boatToTrim && roomAdvice(analysis.boatToTrim);
  return advice === null ? '' : `\n${advice}\n`;
}

/** The pieces that change with the water. */
function bothWaters(analysis: Analysis, json: boolean, world: World): number {
  const set = analysis.waterSet.all();
  const { figures } = analysis.scheme;
  if (json) world.out(`${JSON.stringify(set && waterSetJson(set, figures), null, 2)}\n`);
  else if (set) world.out(`${waterSetReport(set, figures, paintFor(world))}\n`);
  else world.out(`${analysis.file.isFaulty ? nothingToCorrect(analysis) : NO_SET}\n`);
  return hasErrors(analysis) ? ERRORS_FOUND : OK;
}

const NO_SET = 'No lead or foam that the bays and the stock allow brings the boat within its limits in both waters.';
