import type { Analysis } from '../analysis/analysis.ts';
import type { StillWanted } from '../planning/wanted.ts';
import { isPlanned, massWanted } from '../planning/wantedWords.ts';
import type { Frame } from './frame.ts';
import { element, type Markup, svgText, together } from './markup.ts';

/** Half the breadth of the mark where nearly nothing is wanted, and what all of the boat adds, user units. */
const LEAST = 4;
const MOST = 13;

/** Where the centre of what is still wanted must lie, as large as that is much; null where nothing is, or no place does it. */
export function wantedMark({ boat, wanted }: Analysis, frame: Frame): Markup | null {
  if (!wanted?.centre || !isWorthMarking(wanted)) return null;
  const [x, , z] = wanted.centre;
  const words = `Still wanted: ${massWanted(wanted, boat)}`;
  const r = LEAST + MOST * Math.sqrt(Math.min(1, wanted.mass / wanted.displacement));
  return element(
    'g',
    { class: 'still-wanted', role: 'img', 'aria-label': words },
    element('title', {}, svgText(words)),
    wantedSign(frame.at([x, z]), r),
  );
}

const isWorthMarking = (wanted: StillWanted): boolean =>
  wanted.centre !== null && wanted.mass > 0 && !isPlanned(wanted);

/** Something is wanted, and there is a place for it. */
export const isMarked = ({ wanted }: Analysis): boolean => wanted !== null && isWorthMarking(wanted);

/** A broken ring round a cross. */
export function wantedSign([x, y]: readonly [number, number], r: number): Markup {
  const arm = r / 2;
  const at = (value: number): string => value.toFixed(2);
  return together([
    element('circle', { cx: x, cy: y, r }),
    element('path', { d: `M${at(x - arm)} ${at(y)}h${at(2 * arm)}M${at(x)} ${at(y - arm)}v${at(2 * arm)}` }),
  ]);
}
