import type { Analysis } from '../analysis/analysis.ts';
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
export function boatPicture(view: BoatView, things: Things, { bodies }: Analysis): Picture {
  const { id, caption, drawnState, turn, width, loopsOf, surface } = view;
  const drawnOf = (list: readonly Thing[], correction: number | null = null): readonly Drawn[] =>
    list.map(thing => ({ thing, loops: loopsOf(thing), correction })).filter(({ loops }) => loops.length > 0);
  const shells = drawnOf(things.shells);
  const compartments = drawnOf(things.compartments);
  const tanks = drawnOf(things.tanks);
  const bays = drawnOf(things.bays);
  const parts = [...drawnOf(things.parts)].sort((a, b) => view.depthOf(a.thing) - view.depthOf(b.thing));
  const ghosts = drawnOf(things.ghosts, things.proposal?.index);
  const all = [...shells, ...compartments, ...tanks, ...bays, ...parts, ...ghosts];
  const extent = frameExtent([...all.flatMap(({ loops }) => loops), ...view.bones], turn) ?? NOTHING;
  const head = CAPTION + (view.proposal === null ? 0 : LINE);
  const bands = labelBands(
    all.filter(({ thing }) => view.isLabelled(thing)),
    frameFor(turn, extent, view.room, 0),
    { width, along: view.along },
  );
  const top = head + bands.above.height + 4;
  const frame = frameFor(turn, extent, view.room, top);
  const below = top + (extent.high - extent.low) * frame.scale + view.under;
  const legendTop = below + bands.below.height + 10;
  const key = legend(width, legendTop, view.legend);
  // In steps, so that the page does not twitch while one types.
  const height = Math.ceil((legendTop + key.height) / 20) * 20;
  const sea = { width, from: head - 2, to: legendTop - 4 };
  const surfaceY = surface === null ? null : frame.y(surface);
  const wet = (loops: readonly Loop[]): readonly Loop[] => {
    if (drawnState.water === 'everywhere') return loops;
    return surface === null ? [] : loops.map(loop => clipLoop(loop, point => turned(turn, point)[1] - surface));
  };
  const waterIn = ({ thing, loops }: Drawn): Markup | null => {
    const index = things.tanks.indexOf(thing);
    const body = bodies.tanks[index];
    const water = body
      ? tankWaterLoops(body, drawnState.fills[index] ?? 0, drawnState, {
          loops,
          along: view.along,
          turn,
          station: view.station,
        })
      : [];
    if (water.length === 0) return null;
    return together([
      element('path', { class: 'ballast', d: pathData(water, frame) }),
      texture(
        'ballast',
        water.map(loop => loop.map(frame.at)),
      ),
    ]);
  };
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
    together(
      shells.map(drawn =>
        entryGroup(
          drawn,
          frame,
          element('path', { class: 'flooded', d: pathData(wet(drawn.loops), frame) }),
          element('path', { class: 'rim', d: pathData(drawn.loops, frame) }),
        ),
      ),
    ),
    together(compartments.map(drawn => entryGroup(drawn, frame))),
    together(tanks.map(drawn => entryGroup(drawn, frame, waterIn(drawn)))),
    together([...bays, ...parts, ...ghosts].map(drawn => entryGroup(drawn, frame))),
    surfaceLine(surfaceY, sea),
    view.over(frame),
    drawLabels(bands.above, top - 4, -1, top),
    drawLabels(bands.below, below, 1, top),
    element('text', { class: 'caption', x: 12, y: 20 }, svgText(caption.heading)),
    element('text', { class: 'note', x: 12, y: 37 }, svgText(caption.words)),
    view.proposal === null
      ? null
      : element(
          'text',
          { class: 'note proposal', x: 12, y: 37 + LINE },
          svgText(shortened(view.proposal, width / 6.5)),
        ),
    key.markup,
  );
}

/** An empty picture's. */
const NOTHING = { left: 0, right: 1, low: 0, high: 0.1 };
