import type { Bodies } from '../bodies/assemble.ts';
import { clipLoop } from '../geometry/outline/clipLoop.ts';
import type { Loop, Sight } from '../geometry/outline/silhouette.ts';
import type { Caption } from './captions.ts';
import type { DrawnState } from './drawnState.ts';
import { type Drawn, entryGroup } from './entryGroup.ts';
import { type Frame, type FrameRoom, frameExtent, frameFor, pathData } from './frame.ts';
import { drawLabels, labelBands } from './labelBands.ts';
import { type LegendKey, legend } from './legend.ts';
import { element, type Markup, svgText, together } from './markup.ts';
import { type Picture, pictureOf } from './picture.ts';
import { tankWaterLoops } from './tankWater.ts';
import { texture } from './texture.ts';
import { shortened } from './textWidth.ts';
import type { Thing, Things } from './things.ts';
import { type Turn, turned } from './turn.ts';
import { surfaceLine, waterBody } from './water.ts';

/** One way to look at the boat in one condition. */
export interface BoatView {
  readonly id: string;
  readonly caption: Caption;
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
  /** Room under the boat for what `over` draws there, user units. */
  readonly under: number;
  /** What is drawn over the boat: lines and marks. */
  readonly over: (frame: Frame) => Markup;
  readonly legend: readonly LegendKey[];
  readonly data: Readonly<Record<`data-${string}`, number>>;
  /** A line that says what the ghosts are. */
  readonly proposal: string | null;
}

/** Where the drawing begins, under the caption of two lines or three. */
const CAPTION = 44;
const LINE = 16;

/** The boat in its water, with labels, a caption and a legend. */
export function boatPicture(view: BoatView, things: Things, bodies: Bodies): Picture {
  const { id, caption, drawnState, width, surface } = view;
  const drawn = drawnThings(view, things);
  const layout = layoutOf(view, drawn);
  const { frame, top, below, head, legendTop, bands } = layout;
  const key = legend(width, legendTop, view.legend);
  // In steps, so that the page does not twitch while one types.
  const height = Math.ceil((legendTop + key.height) / 20) * 20;
  const sea = { width, from: head - 2, to: legendTop - 4 };
  const surfaceY = surface === null ? null : frame.y(surface);
  const outlined = (those: readonly Drawn[]) => together(those.map(one => entryGroup(one, frame)));
  const tanks = drawn.tanks.map(one => entryGroup(one, frame, tankWater(one, view, frame, { things, bodies })));
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
    together(drawn.shells.map(one => floodedShell(one, view, frame))),
    outlined(drawn.compartments),
    together(tanks),
    outlined(drawn.loose),
    surfaceLine(surfaceY, sea),
    view.over(frame),
    drawLabels(bands.above, top - 4, -1, top),
    drawLabels(bands.below, below, 1, top),
    ...headLines(view),
    key.markup,
  );
}

/** What is drawn, from the back to the front. */
interface DrawnThings {
  readonly shells: readonly Drawn[];
  readonly compartments: readonly Drawn[];
  readonly tanks: readonly Drawn[];
  /** Bays, parts and ghosts. */
  readonly loose: readonly Drawn[];
}

function drawnThings({ loopsOf, depthOf }: BoatView, things: Things): DrawnThings {
  const drawnOf = (list: readonly Thing[], correction: number | null = null): readonly Drawn[] =>
    list.map(thing => ({ thing, loops: loopsOf(thing), correction })).filter(({ loops }) => loops.length > 0);
  const parts = [...drawnOf(things.parts)].sort((a, b) => depthOf(a.thing) - depthOf(b.thing));
  return {
    shells: drawnOf(things.shells),
    compartments: drawnOf(things.compartments),
    tanks: drawnOf(things.tanks),
    loose: [...drawnOf(things.bays), ...parts, ...drawnOf(things.ghosts, things.proposal?.index)],
  };
}

/** Where things come to lie on the paper, user units down from its top. */
function layoutOf(view: BoatView, { shells, compartments, tanks, loose }: DrawnThings) {
  const { turn, width, room } = view;
  const all = [...shells, ...compartments, ...tanks, ...loose];
  const extent = frameExtent([...all.flatMap(({ loops }) => loops), ...view.bones], turn) ?? NOTHING;
  const head = CAPTION + (view.proposal === null ? 0 : LINE);
  const bands = labelBands(
    all.filter(({ thing }) => view.isLabelled(thing)),
    frameFor(turn, extent, room, 0),
    { width, along: view.along },
  );
  const top = head + bands.above.height + 4;
  const frame = frameFor(turn, extent, room, top);
  const below = top + (extent.high - extent.low) * frame.scale + view.under;
  return { frame, head, bands, top, below, legendTop: below + bands.below.height + 10 };
}

function floodedShell(drawn: Drawn, { drawnState, surface, turn }: BoatView, frame: Frame): Markup {
  const { loops } = drawn;
  const belowSurface = (): readonly Loop[] =>
    surface === null ? [] : loops.map(loop => clipLoop(loop, point => turned(turn, point)[1] - surface));
  const wet = drawnState.water === 'everywhere' ? loops : belowSurface();
  return entryGroup(
    drawn,
    frame,
    element('path', { class: 'flooded', d: pathData(wet, frame) }),
    element('path', { class: 'rim', d: pathData(loops, frame) }),
  );
}

function tankWater(
  { thing, loops }: Drawn,
  { drawnState, along, turn, station }: BoatView,
  frame: Frame,
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
    texture(
      'ballast',
      water.map(loop => loop.map(frame.at)),
    ),
  ]);
}

/** The caption, and what the ghosts are. */
function headLines({ caption, proposal, width }: BoatView): readonly (Markup | null)[] {
  return [
    element('text', { class: 'caption', x: 12, y: 20 }, svgText(caption.heading)),
    element('text', { class: 'note', x: 12, y: 37 }, svgText(caption.words)),
    proposal === null
      ? null
      : element('text', { class: 'note proposal', x: 12, y: 37 + LINE }, svgText(shortened(proposal, width / 6.5))),
  ];
}

/** An empty picture's. */
const NOTHING = { left: 0, right: 1, low: 0, high: 0.1 };
