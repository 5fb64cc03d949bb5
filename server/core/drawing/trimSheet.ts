import type { Analysis } from '../analysis/analysis.ts';
import type { Correction } from '../corrections/correction.ts';
import { bodySection } from './bodySection.ts';
import type { Picture } from './picture.ts';
import { plan } from './plan.ts';
import { leverPlot } from './plots/leverPlot.ts';
import { momentsPlot } from './plots/momentsPlot.ts';
import { reachPlot } from './plots/reachPlot.ts';
import { transitPlot } from './plots/transitPlot.ts';
import { trialPlot } from './plots/trialPlot.ts';
import { uncertaintyPlot } from './plots/uncertaintyPlot.ts';
import { sideElevation } from './sideElevation.ts';
import { type Things, thingsOf } from './things.ts';

/** Every drawing that there is. */
export const PICTURES = [
  'surfaced-side',
  'submerged-side',
  'surfaced-section',
  'submerged-section',
  'surfaced-plan',
  'submerged-plan',
  'transit',
  'righting-lever',
  'trim-moments',
  'reach',
  'uncertainty',
  'trials',
] as const;
export type PictureId = (typeof PICTURES)[number];

export interface SheetOptions {
  /** Draws these only, in the sheet's own order; all of them when left out. */
  readonly only?: readonly PictureId[];
  /** The correction that is drawn as ghosts: the preferred one of the analysis, once it is known. */
  readonly correction?: Correction | null;
}

export interface TrimSheet {
  readonly pictures: readonly Picture[];
}

/** The boat in its two conditions as drawings. A pure function; works for any text, however little of it can be read. */
export function trimSheet(analysis: Analysis, { only = PICTURES, correction = null }: SheetOptions = {}): TrimSheet {
  const things = thingsOf(analysis, correction);
  return { pictures: PICTURES.filter(id => only.includes(id)).flatMap(id => draw[id](analysis, things) ?? []) };
}

const draw: Readonly<Record<PictureId, (analysis: Analysis, things: Things) => Picture | null>> = {
  'surfaced-side': (analysis, things) => sideElevation(analysis, 'surfaced', things),
  'submerged-side': (analysis, things) => sideElevation(analysis, 'submerged', things),
  'surfaced-section': (analysis, things) => bodySection(analysis, 'surfaced', things),
  'submerged-section': (analysis, things) => bodySection(analysis, 'submerged', things),
  'surfaced-plan': (analysis, things) => plan(analysis, 'surfaced', things),
  'submerged-plan': (analysis, things) => plan(analysis, 'submerged', things),
  transit: transitPlot,
  'righting-lever': leverPlot,
  'trim-moments': momentsPlot,
  reach: reachPlot,
  uncertainty: uncertaintyPlot,
  trials: trialPlot,
};
