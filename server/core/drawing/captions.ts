import type { Analysis } from '../analysis/analysis.ts';
import { titleIn } from '../analysis/withTrials.ts';
import type { Boat } from '../boat/boat.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import { offWaterline } from '../figures/offWaterline.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { angleText, heelWords, lengthText, massText, offsetWords, percentText, trimWords } from '../wording/numbers.ts';
import { heightText, stationText } from '../wording/places.ts';
import { type MarkName, markNames } from './marks.ts';

export type CaptionView = 'side' | 'plan' | 'section';

export interface Caption {
  /** The picture's name: "Surfaced, side elevation". */
  readonly title: string;
  /** What stands over the drawing. */
  readonly heading: string;
  /** How the boat lies there, in a sentence or two. */
  readonly words: string;
}

const VIEWS: Readonly<Record<CaptionView, readonly [name: string, from: string]>> = {
  side: ['side elevation', 'from the port side'],
  plan: ['plan', 'from above'],
  section: ['body section', 'from astern'],
};

export function captionOf(analysis: Analysis, { condition, where, state }: InCondition, view: CaptionView): Caption {
  const [name, from] = VIEWS[view];
  const { boat } = analysis;
  return {
    title: `${condition.title}, ${name}`,
    heading: `${titleIn(analysis, condition.title)}, ${from}`,
    words: where === 'afloat' ? wordsAfloat(boat, state) : wordsBelow(boat, state),
  };
}

function wordsAfloat(boat: Boat, surfaced: Surfaced): string {
  const { units } = boat;
  switch (surfaced.status) {
    case 'afloat': {
      const off = offWaterline(boat, surfaced);
      const against = boat.waterline ? ' against the painted waterline' : '';
      const draft = `Draft ${lengthText(surfaced.attitude.draft, units)}`;
      return `${draft}; ${trimWords(off.trim)}${against}; ${heelWords(off.heel)}; metacentric height ${lengthText(surfaced.gm, units)}.`;
    }
    case 'sinks':
      return `Sinks: ${massText(surfaced.excess, units)} too heavy to float. Drawn level.`;
    case 'overturns':
      return `Turns over: it comes to rest at a heel of ${angleText(Math.abs(surfaced.heel))}.`;
    case 'unsettled':
      return 'No attitude at rest was found. Drawn level.';
    case 'empty':
      return 'Nothing that floats is in the file yet.';
  }
}

function wordsBelow({ units }: Boat, submerged: Submerged): string {
  switch (submerged.status) {
    case 'neutral': {
      const left = Math.min(submerged.bgEffective, submerged.bgEffectiveLongitudinal);
      const stays = submerged.stable
        ? `${trimWords(submerged.trim)}; ${heelWords(submerged.heel)}; BG ${lengthText(left, units)}, tank water free`
        : 'does not stay level: B is not above G once the tank water is free';
      if (submerged.heldDown === null) return `Neutral with ${percentText(submerged.fill)} in the tanks; ${stays}.`;
      const press = massText(Math.abs(submerged.heldDown), units);
      return `${submerged.heldDown < 0 ? `Goes down by itself, ${press} too heavy` : `Held under against ${press}`}${submerged.fill > 0 ? ', tanks full' : ''}; ${stays}.`;
    }
    case 'heavy':
      return `Too heavy to hang neutral by ${massText(submerged.excess, units)}, tanks empty. Drawn level.`;
    case 'light': {
      const tanks = submerged.hasTank ? 'tanks full' : 'there is no tank';
      return `Too light to hang neutral by ${massText(submerged.lack, units)}, ${tanks}. Drawn level.`;
    }
    case 'unsettled':
      return 'No attitude at rest was found. Drawn level.';
    case 'empty':
      return 'Nothing that floats is in the file yet.';
  }
}

/** Where a centre is, for pointers and screen readers. */
export const markWords = (name: MarkName, [x, y, z]: Vec3, { units }: Boat): string =>
  `${name}, ${markNames[name]}: station ${stationText(x, units)}, ${offsetWords(y, units)}, height ${heightText(z, units)}`;
