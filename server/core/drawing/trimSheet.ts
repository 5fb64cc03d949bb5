import type { Analysis } from '../analysis/analysis.ts';
import type { Correction } from '../corrections/correction.ts';
import { bodySection } from './bodySection.ts';
import { DESK, type Page } from './page.ts';
import type { Picture } from './picture.ts';
import { plan } from './plan.ts';
import { leverPlot } from './plots/leverPlot.ts';
import { polygonPlot } from './plots/polygonPlot.ts';
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
  'polygon',
  'uncertainty',
  'trials',
] as const;
export type PictureId = (typeof PICTURES)[number];

export interface SheetOptions {
  /** Draws these only, in the sheet's own order; all of them when left out. */
  readonly only?: readonly PictureId[];
  /** The correction that is drawn as ghosts: the preferred one of the analysis, once it is known. */
  readonly correction?: Correction | null;
  /** What it is drawn for: the desk unless given. */
  readonly page?: Page;
}

export interface TrimSheet {
  readonly pictures: readonly Picture[];
}

/** The boat in its two conditions as drawings. A pure function; works for any text, however little of it can be read. */
export function trimSheet(
  analysis: Analysis,
  { only = PICTURES, correction = null, page = DESK }: SheetOptions = {},
): TrimSheet {
  const things = thingsOf(analysis, correction);
  return { pictures: PICTURES.filter(id => only.includes(id)).flatMap(id => draw[id](analysis, things, page) ?? []) };
}

const draw: Readonly<Record<PictureId, (analysis: Analysis, things: Things, page: Page) => Picture | null>> = {
  'surfaced-side': (analysis, things, page) => sideElevation(analysis, 'surfaced', things, page),
  'submerged-side': (analysis, things, page) => sideElevation(analysis, 'submerged', things, page),
  'surfaced-section': (analysis, things, page) => bodySection(analysis, 'surfaced', things, page),
  'submerged-section': (analysis, things, page) => bodySection(analysis, 'submerged', things, page),
  'surfaced-plan': (analysis, things, page) => plan(analysis, 'surfaced', things, page),
  'submerged-plan': (analysis, things, page) => plan(analysis, 'submerged', things, page),
  transit: (analysis, _, { narrow }) => transitPlot(analysis, narrow),
  'righting-lever': (analysis, _, { narrow }) => leverPlot(analysis, narrow),
  polygon: (analysis, { proposal }, { narrow }) => polygonPlot(analysis, proposal, narrow),
  uncertainty: (analysis, _, { narrow }) => uncertaintyPlot(analysis, narrow),
  trials: (analysis, _, { narrow }) => trialPlot(analysis, narrow),
};
