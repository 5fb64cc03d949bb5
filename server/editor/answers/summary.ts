import type { Afterthoughts, Analysis } from '../../core/analysis/analysis.ts';
import { submergedLie, surfacedLie } from './conditionWords.ts';
import { escaped } from './markdown.ts';

/** Both conditions in one line, for the status bar. */
export interface Summary {
  readonly text: string;
  /** Markdown. */
  readonly tooltip: string;
  readonly state: 'inTrim' | 'outOfTrim' | 'faulty';
}

export function summarise(analysis: Analysis, after: Afterthoughts = analysis.afterthoughts()): Summary {
  const findings = [...analysis.ofBoat, ...after.ofTrials];
  const state = findings.some(finding => finding.severity === 'error')
    ? 'faulty'
    : findings.some(finding => finding.severity === 'warning')
      ? 'outOfTrim'
      : 'inTrim';
  const said = findings.map(finding => `- ${escaped(finding.message)}`);
  const name = analysis.boat.name === '' ? 'this boat' : escaped(analysis.boat.name);
  return {
    text: `Surfaced: ${surfacedWords(analysis)} · Submerged: ${submergedWords(analysis)}`,
    tooltip: said.length > 0 ? said.join('\n') : `By the file ${name} is within all limits in both conditions.`,
    state,
  };
}

function surfacedWords(analysis: Analysis): string {
  const lie = surfacedLie(analysis);
  return lie.lies ? `${lie.trim}, ${lie.heel}` : lie.why;
}

function submergedWords(analysis: Analysis): string {
  const lie = submergedLie(analysis);
  return lie.lies ? `${lie.trim}, ${lie.water}` : lie.why;
}
