import type { ToTell } from '../../core/analysis/meanwhile.ts';
import { waitingWords } from '../../core/analysis/waitingWords.ts';
import { type StateWords, stateWords, trialWords } from './conditionWords.ts';
import { escapedMarkdown } from './markdown.ts';

/** Both conditions in one line, for the status bar. */
export interface Summary {
  readonly text: string;
  /** Markdown. */
  readonly tooltip: string;
  readonly state: 'inTrim' | 'outOfTrim' | 'faulty' | 'open';
}

export function summarise(analysis: ToTell): Summary {
  const findings = analysis.findings;
  const state = findings.some(finding => finding.severity === 'error')
    ? 'faulty'
    : findings.some(finding => finding.severity === 'warning')
      ? 'outOfTrim'
      : isKnown(analysis)
        ? 'inTrim'
        : 'open';
  const said = findings.map(finding => `- ${escapedMarkdown(finding.message)}`);
  const name = analysis.boat.name === '' ? 'this boat' : escapedMarkdown(analysis.boat.name);
  const states = stateWords(analysis).map(
    (state, i) => `${state.title}: ${inShort(state, analysis.conditions[i]!.where)}`,
  );
  const heeds = analysis.withTrials ? 'With the trials' : 'By the file';
  return {
    text: [...trialWords(analysis), ...states].join(' · '),
    tooltip:
      said.length > 0
        ? said.join('\n')
        : (waitingWords(analysis) ??
          `${heeds} ${name} is within all limits in ${analysis.others.length > 0 ? 'all' : 'both'} conditions.`),
    state,
  };
}

/** The boat is read whole, its uncertainties are figured, and they leave no limit open. */
const isKnown = ({ file, uncertainties, said }: ToTell): boolean =>
  file.isWhole && uncertainties !== null && said.openQuestions.every(({ code }) => code === 'weigh-next');

/** Trim first; afloat the heel, which shows there, under water how full the tank is. */
const inShort = (state: StateWords, where: 'afloat' | 'submerged'): string =>
  state.rests ? `${state.trim}, ${where === 'afloat' ? state.heel : state.water}` : state.why;
