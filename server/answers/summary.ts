import type { Analysis } from '../analysis.ts';
import { offWaterline } from '../findings/trim.ts';
import { heelWords, massText, percentText, trimWords } from '../wording/numbers.ts';
import { escaped } from './markdown.ts';

/** Both conditions in one line, for the status bar. */
export interface Summary {
  readonly text: string;
  /** Markdown. */
  readonly tooltip: string;
  readonly state: 'inTrim' | 'outOfTrim' | 'faulty';
}

export function summarise(analysis: Analysis): Summary {
  const { findings } = analysis;
  const state = findings.some(finding => finding.severity === 'error')
    ? 'faulty'
    : findings.some(finding => finding.severity === 'warning')
      ? 'outOfTrim'
      : 'inTrim';
  const said = findings.map(finding => `- ${escaped(finding.message)}`);
  const name = analysis.boat.name === '' ? 'This boat' : escaped(analysis.boat.name);
  return {
    text: `Surfaced: ${surfacedWords(analysis)} · Submerged: ${submergedWords(analysis)}`,
    tooltip: said.length > 0 ? said.join('\n') : `${name} is within all limits in both conditions.`,
    state,
  };
}

function surfacedWords({ boat, surfaced }: Analysis): string {
  switch (surfaced.status) {
    case 'afloat': {
      const off = offWaterline(boat, surfaced);
      return `${trimWords(off.trim)}, ${heelWords(off.heel)}`;
    }
    case 'sinks':
      return `sinks, ${massText(surfaced.excess, boat.units)} too heavy`;
    case 'overturns':
      return 'turns over';
    case 'unsettled':
    case 'empty':
      return 'not known';
  }
}

function submergedWords({ boat, submerged }: Analysis): string {
  switch (submerged.status) {
    case 'neutral':
      return `${submerged.stable ? trimWords(submerged.trim) : 'does not stay level'}, tank ${percentText(submerged.fill)}`;
    case 'heavy':
      return `${massText(submerged.excess, boat.units)} too heavy`;
    case 'light':
      return submerged.hasTank ? `${massText(submerged.lack, boat.units)} too light` : 'no tank';
    case 'unsettled':
    case 'empty':
      return 'not known';
  }
}
