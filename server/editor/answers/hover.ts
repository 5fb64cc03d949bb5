import type { Describer, KeyInfo } from '../../../schema/describe.ts';
import type { Path } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { pathAt } from '../../core/text/reading/pathAt.ts';
import { limitsHover, waterlineHover } from './conditionHover.ts';
import { fullSizeHover } from './fullSizeHover.ts';
import { bayHover, compartmentHover, shellHover, tankHover, tanksHover } from './hullHover.ts';
import { ownConditionHover } from './ownConditionHover.ts';
import { partHover } from './partHover.ts';
import { ownExample } from './snippets.ts';
import { snippetBoat } from './surroundings.ts';
import { trialHover } from './trialHover.ts';
import { uncertaintyHover } from './uncertaintyHover.ts';

/** Markdown about the place under the cursor, and the path that it is about. */
export interface HoverText {
  readonly markdown: string;
  readonly path: Path;
}

/** What the place at an offset means: its key's description, and what it does for this boat. Null where there is nothing. */
export function hoverAt(analysis: Analysis, describer: Describer, offset: number): HoverText | null {
  const at = pathAt(analysis.syntax, offset);
  if (at.on === 'between' || at.path.length === 0) return null;
  const about = boatWords(analysis, at.path);
  const help = describer.describe(at.path);
  const isName = at.path.at(-1) === 'name' || typeof at.path.at(-1) === 'number';
  const key = help && help.description !== '' && !isName ? keyWords(help, analysis) : null;
  const uncertainty = isName ? null : uncertaintyHover(analysis, at.path);
  const markdown = [key, fullSizeHover(analysis, at.path), uncertainty, about]
    .filter(block => block !== null)
    .join('\n\n---\n\n');
  return markdown === '' ? null : { markdown, path: at.path };
}

function keyWords(help: KeyInfo, analysis: Analysis): string {
  const { key, description } = help;
  const example = ownExample(help, snippetBoat(analysis));
  return `**${key}**: ${description}${example === undefined ? '' : ` Example: \`${key}: ${example}\``}`;
}

/** What the entry or section at a path does for this boat. */
function boatWords(analysis: Analysis, path: Path): string | null {
  const [section, second, third] = path;
  if (section === 'payload' && typeof second === 'number') return partHover(analysis, second);
  if (section === 'bays' && typeof second === 'number') return bayHover(analysis, second);
  if (section === 'limits') return limitsHover(analysis);
  if (section === 'conditions' && typeof second === 'number') return ownConditionHover(analysis, second);
  if (section === 'trials' && typeof second === 'number') return trialHover(analysis, path);
  if (section !== 'hull') return null;
  if (second === 'waterline') return waterlineHover(analysis);
  if (second === 'tanks' && third === undefined) return tanksHover(analysis);
  if (typeof third !== 'number') return null;
  if (second === 'shells') return shellHover(analysis, third);
  if (second === 'compartments') return compartmentHover(analysis, third);
  return second === 'tanks' ? tankHover(analysis, third) : null;
}
