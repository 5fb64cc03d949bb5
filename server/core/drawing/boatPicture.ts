import type { Analysis } from '../analysis/analysis.ts';
import type { Bodies } from '../bodies/assemble.ts';
import { clipLoop } from '../geometry/outline/clipLoop.ts';
import type { Line, Lines } from '../geometry/outline/hiddenLines.ts';
import type { Sight } from '../geometry/outline/sight.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { pacer, type Steps } from '../steps/steps.ts';
import { blankPicture } from './blankPicture.ts';
import { captionBlock } from './captionBlock.ts';
import type { Caption } from './captions.ts';
import { type Centre, drawCentres } from './centres.ts';
import type { Ways } from './centresInset.ts';
import type { DrawEntry } from './drawnEntries.ts';
import type { DrawnState } from './drawnState.ts';
import { type Drawn, entryGroup } from './entryGroup.ts';
import { pictureFoot } from './foot.ts';
import { type Frame, type FrameRoom, frameExtent, frameFor, lineData, pathData } from './frame.ts';
import { type HullFrame, hullFrame } from './hullFrame.ts';
import { drawLabels, labelBands } from './labelBands.ts';
import { type LegendKey, signsOf } from './legend.ts';
import { element, type Markup, together } from './markup.ts';
import { type Picture, pictureOf } from './picture.ts';
import { shellLines } from './shellLines.ts';
import { tankWaterLoops } from './tankWater.ts';
import { texture } from './texture.ts';
import type { Thing, Things } from './things.ts';
import { type Turn, turned } from './turn.ts';
import { surfaceLine, waterBody } from './water.ts';

/** One way to look at the boat in one condition. */
export interface BoatView {
  readonly id: string;
  readonly caption: Caption;
  /** Its words stand over the drawing too, not over another one of the same condition alone. */
  readonly hasWords: boolean;
  readonly drawnState: DrawnState;
  readonly along: Sight;
  /** Of the cut, for a section, m. */
  readonly station: number | null;
  readonly turn: Turn;
  readonly width: number;
  readonly room: FrameRoom;
  /** The lines by which a thing is drawn, m in the seen axes; none for what is not in this view. */
  readonly loopsOf: (thing: Thing) => readonly Loop[];
  readonly isLabelled: (thing: Thing) => boolean;
  /** Parts with more of it are drawn over those with less. */
  readonly depthOf: (thing: Thing) => number;
  /** Height of the surface on the paper, m; null where it is not to be seen. */
  readonly surface: number | null;
  /** Lines that have to be in the picture besides the things themselves, m. */
  readonly bones: readonly Loop[];
  /** Room over the boat for what `onTop` draws there, user units. */
  readonly headroom: number;
  /** Room under the boat for what `over` draws there, user units. */
  readonly under: number;
  /** What is drawn over the boat: lines. */
  readonly over: (frame: Frame) => Markup;
  /** What nothing may be drawn over. */
  readonly onTop: (frame: Frame) => Markup | null;
  readonly centres: readonly Centre[];
  /** What the directions on the paper are called. */
  readonly ways: Ways;
  /** The signs of what `over` draws. */
  readonly legend: readonly LegendKey[];
  readonly data: Readonly<Record<`data-${string}`, number>>;
}

/** What is in a boat's picture. */
export interface Shown {
  readonly analysis: Analysis;
  readonly things: Things;
  readonly bodies: Bodies;
  readonly drawEntry: DrawEntry;
}

/** The boat in its water, with labels, a caption and a legend; what is missing where there is no boat yet. */
export function* boatPicture(view: BoatView, { analysis, things, bodies, drawEntry }: Shown): Steps<Picture> {
  const { id, caption, drawnState, width, surface } = view;
  const drawn = yield* drawnThings(view, things, analysis.kept.cache.shapes);
  yield;
  if (drawn.all.length === 0) return blankPicture(view, analysis);
  const { frame, head, bands, top, below, footTop } = layoutOf(view, drawn);
  yield;
  const centres = drawCentres(view.centres, frame);
  const rims = yield* rimsOf(drawn.shells, view, analysis);
  yield;
  const hasWater = drawn.tanks.some(({ thing }) => (drawnState.fills[things.tanks.indexOf(thing)] ?? 0) > 0);
  const foot = pictureFoot({
    width,
    top: footTop,
    keys: [
      ...view.centres.map(({ name }) => name),
      ...signsOf(drawn.all, { hasWater, hasHidden: rims.hidden.length > 0 }),
      ...view.legend,
    ],
    close: centres.close,
    ways: view.ways,
    scale: frame.scale,
    units: analysis.boat.units,
  });
  // In steps, so that the page does not twitch while one types.
  const height = Math.ceil((footTop + foot.height + 6) / 20) * 20;
  const sea = { width, from: head.height - 2, to: footTop - 4 };
  const surfaceY = surface === null ? null : frame.y(surface);
  const hull = hullFrame(frame);
  const isDue = pacer(STEP);
  function* outlined(those: readonly Drawn[]): Steps<Markup> {
    const groups: Markup[] = [];
    for (const one of those) {
      if (isDue(1)) yield;
      groups.push(drawEntry(one, hull));
    }
    return together(groups);
  }
  const compartments = yield* outlined(drawn.compartments);
  const loose = yield* outlined(drawn.loose);
  const tanks = drawn.tanks.map(one => entryGroup(one, hull, tankWater(one, view, hull, { things, bodies })));
  return pictureOf(
    {
      id,
      title: caption.title,
      description: caption.words,
      width,
      height,
      data: { 'data-scale': frame.scale, ...view.data },
    },
    element('rect', { class: 'paper', width, height }),
    waterBody(drawnState, surfaceY, sea),
    element(
      'g',
      { class: 'boat', transform: hull.transform },
      together(drawn.shells.map(one => floodedShell(one, view, hull))),
      shellRims(rims, hull),
      compartments,
      together(tanks),
      loose,
    ),
    surfaceLine(surfaceY, sea),
    view.over(frame),
    centres.markup,
    drawLabels(bands.above, top - 4 - view.headroom, -1, top),
    drawLabels(bands.below, below, 1, top),
    view.onTop(frame),
    head.markup,
    foot.markup,
  );
}

/** So many things are drawn in one step. */
const STEP = 20;

/** What is drawn, from the back to the front. */
interface DrawnThings {
  readonly shells: readonly Drawn[];
  readonly compartments: readonly Drawn[];
  readonly tanks: readonly Drawn[];
  /** Bays, parts and ghosts. */
  readonly loose: readonly Drawn[];
  readonly all: readonly Drawn[];
}

function* drawnThings(
  { along, station, loopsOf, depthOf }: BoatView,
  things: Things,
  shapes: Shapes,
): Steps<DrawnThings> {
  const isDue = pacer(STEP);
  function* drawnOf(list: readonly Thing[], correction: number | null = null): Steps<readonly Drawn[]> {
    const found: Drawn[] = [];
    for (const thing of list) {
      if (isDue(1)) yield;
      if (thing.form && station === null) yield* shapes.silhouetteSteps(thing.form, along);
      const loops = loopsOf(thing);
      if (loops.length > 0) found.push({ thing, loops, correction });
    }
    return found;
  }
  const parts = [...(yield* drawnOf(things.parts))].sort((a, b) => depthOf(a.thing) - depthOf(b.thing));
  const shells = yield* drawnOf(things.shells);
  const compartments = yield* drawnOf(things.compartments);
  const tanks = yield* drawnOf(things.tanks);
  const bays = yield* drawnOf(things.bays);
  const loose = [...bays, ...parts, ...(yield* drawnOf(things.ghosts, things.proposal?.index))];
  return { shells, compartments, tanks, loose, all: [...shells, ...compartments, ...tanks, ...loose] };
}

/** Where things come to lie on the paper, user units down from its top. */
function layoutOf(view: BoatView, { all }: DrawnThings) {
  const { turn, width, room, caption } = view;
  const extent = frameExtent([...all.flatMap(({ loops }) => loops), ...view.bones], turn) ?? NOTHING;
  const head = captionBlock({ heading: caption.heading, words: view.hasWords ? caption.words : null }, width);
  const bands = labelBands(
    all.filter(({ thing }) => view.isLabelled(thing)),
    frameFor(turn, extent, room, 0),
    { width, along: view.along },
  );
  const top = head.height + bands.above.height + 12 + view.headroom;
  const frame = frameFor(turn, extent, room, top);
  const below = Math.ceil(top + (extent.high - extent.low) * frame.scale + view.under);
  return { frame, head, bands, top, below, footTop: below + bands.below.height + 10 };
}

function floodedShell(drawn: Drawn, { drawnState, surface, turn }: BoatView, frame: HullFrame): Markup {
  const { loops } = drawn;
  const belowSurface = (): readonly Loop[] =>
    surface === null ? [] : loops.map(loop => clipLoop(loop, point => turned(turn, point)[1] - surface));
  const wet = drawnState.water === 'everywhere' ? loops : belowSurface();
  return entryGroup(drawn, frame, element('path', { class: 'flooded', d: pathData(wet, frame) }));
}

/** A cut is seen whole. */
function* rimsOf(shells: readonly Drawn[], { along, station }: BoatView, { kept }: Analysis): Steps<Lines> {
  if (station !== null) return { seen: shells.flatMap(({ loops }) => loops.map(closed)), hidden: [] };
  const things = shells.map(({ thing }) => thing);
  return yield* shellLines(things, along, kept.cache.shapes);
}

const closed = (loop: Loop): Line => [...loop, ...loop.slice(0, 1)];

/** Over all shells, for one may lie before another. */
const shellRims = ({ seen, hidden }: Lines, frame: HullFrame): Markup | null =>
  seen.length === 0
    ? null
    : element(
        'g',
        { class: 'rims', 'aria-hidden': 'true' },
        element('path', { class: 'rim', d: lineData(seen, frame) }),
        hidden.length > 0 ? element('path', { class: 'hidden-rim', d: lineData(hidden, frame) }) : null,
      );

function tankWater(
  { thing, loops }: Drawn,
  { drawnState, along, turn, station }: BoatView,
  frame: HullFrame,
  { things, bodies }: { readonly things: Things; readonly bodies: Bodies },
): Markup | null {
  const index = things.tanks.indexOf(thing);
  const body = bodies.tanks[index];
  const water = body
    ? tankWaterLoops(body, drawnState.fills[index] ?? 0, drawnState, { loops, along, turn, station })
    : [];
  if (water.length === 0) return null;
  return together([
    element('path', { class: 'ballast', d: pathData(water, frame) }),
    // Water lies level.
    texture(
      'ballast',
      water.map(loop => loop.map(frame.at)),
      frame.tilt,
    ),
  ]);
}

/** Of things that are points. */
const NOTHING = { left: 0, right: 1, low: 0, high: 0.1 };
