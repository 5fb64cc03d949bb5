import type { Analysis } from '../analysis/analysis.ts';
import { SUBMERGED, SURFACED } from '../conditions/loadingCondition.ts';
import { leversReady } from '../conditions/withLevers.ts';
import type { Correction } from '../corrections/correction.ts';
import { finish, type Steps } from '../steps/steps.ts';
import { bodySection } from './bodySection.ts';
import { createDrawnEntries, type DrawEntry } from './drawnEntries.ts';
import { DESK, type Page } from './page.ts';
import type { Picture } from './picture.ts';
import { plan } from './plan.ts';
import { leverPlot } from './plots/leverPlot.ts';
import { polygonPlot } from './plots/polygonPlot.ts';
import { transitPlot } from './plots/transitPlot.ts';
import { trialPlot } from './plots/trialPlot.ts';
import { uncertaintyPlot } from './plots/uncertaintyPlot.ts';
import { sideElevation } from './sideElevation.ts';
import { aboardIn, thingsOf } from './things.ts';

/** Drawings of the boat in a loading condition. */
const VIEWS = { side: sideElevation, section: bodySection, plan } as const;

/** Plots of its figures. */
const PLOTS = {
  transit: transitPlot,
  'righting-lever': leverPlot,
  polygon: polygonPlot,
  uncertainty: uncertaintyPlot,
  trials: trialPlot,
} as const;

type ViewName = keyof typeof VIEWS;
type PlotName = keyof typeof PLOTS;

const viewNames: readonly ViewName[] = ['side', 'section', 'plan'];
const plotNames = Object.keys(PLOTS) as readonly PlotName[];

/** A view by the id of its loading condition, or a plot. */
export type PictureId = `${string}-${ViewName}` | PlotName;

const idsFor = (conditions: readonly string[]): readonly PictureId[] => [
  ...viewNames.flatMap(view => conditions.map((id): PictureId => `${id}-${view}`)),
  ...plotNames,
];

/** The drawings that there may be of every boat. */
export const PICTURES = idsFor([SURFACED.id, SUBMERGED.id]);

/** The drawing of a name; null for a name that is none. Which loading conditions a boat has, its file tells. */
export function pictureNamed(name: string): PictureId | null {
  const view = viewNames.find(each => name.length > each.length + 1 && name.endsWith(`-${each}`));
  if (view) return `${name.slice(0, -view.length - 1)}-${view}`;
  return plotNames.find(each => each === name) ?? null;
}

/** The same of one boat, with those in its other loading conditions. */
export const picturesOf = ({ conditions }: Analysis): readonly PictureId[] =>
  idsFor(conditions.map(({ condition }) => condition.id));

export interface SheetOptions {
  /** Draws these only, in the sheet's own order; all of them when left out. */
  readonly only?: readonly PictureId[];
  /** The correction that is drawn as ghosts: the preferred one of the analysis, once it is known. */
  readonly correction?: Correction | null;
  /** What it is drawn for: the desk unless given. */
  readonly page?: Page;
  /** Draws the entries: by itself unless given one that knows what it drew before. */
  readonly drawEntry?: DrawEntry;
}

export interface TrimSheet {
  readonly pictures: readonly Picture[];
}

/** The boat in its conditions as drawings. A pure function; works for any text, however little of it can be read. */
export const trimSheet = (analysis: Analysis, options: SheetOptions = {}): TrimSheet => ({
  pictures: finish(pictureSteps(analysis, options)),
});

/** Its drawings in steps. */
export function* pictureSteps(
  analysis: Analysis,
  { only, correction = null, page = DESK, drawEntry = createDrawnEntries() }: SheetOptions,
): Steps<readonly Picture[]> {
  const things = thingsOf(analysis, correction);
  const isWanted = (id: PictureId): boolean => only?.includes(id) ?? true;
  const wanted = viewNames.flatMap(view =>
    analysis.conditions.filter(({ condition }) => isWanted(`${condition.id}-${view}`)).map(there => ({ view, there })),
  );
  const { shells, compartments, tanks, parts, bays } = things;
  const isBlank = [shells, compartments, tanks, parts, bays].every(some => some.length === 0);
  // Of nothing one view says all that there is to say.
  const pictures: Picture[] = [];
  for (const { view, there } of isBlank ? wanted.slice(0, 1) : wanted) {
    yield;
    const shown = { analysis, there, things: aboardIn(things, analysis, there), page, drawEntry };
    pictures.push(yield* VIEWS[view](shown));
  }
  for (const name of plotNames.filter(isWanted)) {
    yield;
    if (name === 'righting-lever') yield* leversReady(analysis.conditions);
    const plot = PLOTS[name](analysis, page.narrow, things.proposal);
    if (plot) pictures.push(plot);
  }
  return pictures;
}
