import type { Analysis } from '../analysis.ts';
import { trimOf } from '../conditions/attitude.ts';
import { clipLoop } from '../geometry/clipLoop.ts';
import type { Point2 } from '../geometry/outline.ts';
import type { Loop } from '../geometry/silhouette.ts';
import { captionOf, markWords } from './captions.ts';
import { type Drawn, entryGroup } from './entryGroup.ts';
import { extentOf, type Frame, frameFor, pathData } from './frame.ts';
import { drawLabels, labelBands } from './labelBands.ts';
import { legend } from './legend.ts';
import { type Condition, type Lie, lieOf } from './lie.ts';
import { mark } from './marks.ts';
import { element, type Markup, text, together } from './markup.ts';
import { offMarks, paintedLine, paintedPoints } from './paintedWaterline.ts';
import { fillOf, patternsFor } from './patterns.ts';
import { type Picture, pictureOf } from './picture.ts';
import { tankWaterLoops } from './tankWater.ts';
import { tape } from './tape.ts';
import { loopsOf, type Thing, type Things } from './things.ts';
import { seen, turned, turnFor, unturned } from './turn.ts';
import { surfaceLine, waterBody } from './water.ts';

export const WIDTH = 880;
const ROOM = { left: 104, width: 672, mostHeight: 380 };
/** Room for the caption above, and for the tape below the keel. */
const CAPTION = 44;
const TAPE = 30;

/** The boat from its port side, bow to the left, at its trim in level water. */
export function sideElevation(analysis: Analysis, condition: Condition, things: Things): Picture {
  const id = `${condition}-side`;
  const lie = lieOf(analysis, condition);
  const { boat, bodies, kept } = analysis;
  const { shapes } = kept.shelf;
  const turn = turnFor(lie.up, 1) ?? unturned;
  const drawnOf = (list: readonly Thing[], correction: number | null = null): readonly Drawn[] =>
    list.map(thing => ({ thing, loops: loopsOf(thing, 1, shapes), correction }));
  const layers = {
    shells: drawnOf(things.shells),
    compartments: drawnOf(things.compartments),
    tanks: drawnOf(things.tanks),
    bays: drawnOf(things.bays),
    parts: [...drawnOf(things.parts)].sort((a, b) => areaOf(b.thing) - areaOf(a.thing)),
    ghosts: drawnOf(things.ghosts, 0),
  };
  const all = Object.values(layers).flat();
  const caption = captionOf(analysis, condition, 'side');
  const bones: readonly Loop[] = [
    ...all.flatMap(({ loops }) => loops),
    paintedPoints(boat),
    [
      [0, 0],
      [boat.length, 0],
    ],
  ];
  const extent = extentOf(bones, turn) ?? { left: 0, right: 1, low: 0, high: 0.1 };
  const loose = frameFor(turn, extent, ROOM, 0);
  const bands = labelBands(all, loose, WIDTH);
  const top = CAPTION + bands.above.height;
  const frame = frameFor(turn, extent, ROOM, top);
  const keel = top + (extent.high - extent.low) * frame.scale;
  const below = keel + TAPE;
  const legendTop = below + bands.below.height + 8;
  const key = legend(id, WIDTH, legendTop, legendKeys(analysis, lie, things));
  const height = Math.ceil((legendTop + key.height) / 20) * 20;
  const surface = lie.water === 'below' && lie.level !== null ? turn.height(lie.level, 0) : null;
  const surfaceY = surface === null ? null : frame.y(surface);
  const isSideways = turn === unturned && turnFor(lie.up, 1) === null;
  const wet = (loops: readonly Loop[]): readonly Loop[] =>
    lie.water === 'everywhere'
      ? loops
      : surface === null
        ? []
        : loops.map(loop => clipLoop(loop, point => turned(turn, point)[1] - surface));
  return pictureOf(
    {
      id,
      title: caption.title,
      description: caption.words,
      width: WIDTH,
      height,
      data: { 'data-scale': frame.scale, 'data-trim': isSideways ? 0 : trimOf(lie.up) },
    },
    patternsFor(id),
    element('rect', { class: 'paper', width: WIDTH, height }),
    waterBody(lie, isSideways ? null : surfaceY, { width: WIDTH, from: CAPTION - 6, to: legendTop - 4 }),
    together(layers.shells.map(drawn => shellGroup(drawn, wet(drawn.loops), frame, id))),
    together(layers.compartments.map(drawn => entryGroup(drawn, frame, id))),
    together(
      layers.tanks.map((drawn, i) => {
        const body = bodies.tanks[i];
        const water = body ? tankWaterLoops(body, lie.fills[i] ?? 0, lie, { loops: drawn.loops, along: 1, turn }) : [];
        return entryGroup(drawn, frame, id, ballast(water, frame, id));
      }),
    ),
    together(layers.bays.map(drawn => entryGroup(drawn, frame, id))),
    together(layers.parts.map(drawn => entryGroup(drawn, frame, id))),
    together(layers.ghosts.map(drawn => entryGroup(drawn, frame, id))),
    tape(boat, frame, lowestOf(all)),
    paintedLine(boat, frame),
    isSideways ? null : surfaceLine(surfaceY, WIDTH),
    condition === 'surfaced' && !isSideways ? offMarks(analysis, frame) : null,
    marksOf(analysis, lie, frame),
    drawLabels(bands.above, top - 4, -1, top),
    drawLabels(bands.below, below, 1, top),
    element('text', { class: 'caption', x: 12, y: 20 }, text(caption.heading)),
    element('text', { class: 'note', x: 12, y: 37 }, text(caption.words)),
    key.markup,
  );
}

const areaOf = ({ from, to }: Thing): number => (to[0] - from[0]) * (to[2] - from[2]);

const lowestOf = (all: readonly Drawn[]): number =>
  Math.min(0, ...all.flatMap(({ thing }) => (thing.kind === 'bay' ? [] : [thing.from[2]])));

/** A shell with the water that stands in it. */
const shellGroup = (drawn: Drawn, wet: readonly Loop[], frame: Frame, id: string): Markup =>
  entryGroup(
    drawn,
    frame,
    id,
    element('path', { class: 'flooded', d: pathData(wet, frame) }),
    element('path', { class: 'rim', d: pathData(drawn.loops, frame) }),
  );

const ballast = (water: readonly Loop[], frame: Frame, id: string): Markup | null =>
  water.length === 0
    ? null
    : element('path', { class: 'ballast', d: pathData(water, frame), fill: fillOf(id, 'ballast') });

function marksOf(analysis: Analysis, lie: Lie, frame: Frame): Markup {
  const { centreOfMass: g, centreOfBuoyancy: b } = lie;
  const at = (point: Point2): Point2 => frame.at(point);
  return together([
    b ? mark('B', at(seen(b, 1)), markWords('B', b, analysis.boat), 'left') : null,
    g ? mark('G', at(seen(g, 1)), markWords('G', g, analysis.boat), 'right') : null,
  ]);
}

function legendKeys(analysis: Analysis, lie: Lie, things: Things) {
  const has = (kind: string) => things.parts.some(part => part.kind === kind);
  return [
    ...(lie.centreOfMass ? (['G'] as const) : []),
    ...(lie.centreOfBuoyancy ? (['B'] as const) : []),
    ...(has('lead') ? (['lead'] as const) : []),
    ...(has('foam') ? (['foam'] as const) : []),
    ...(has('part') ? (['part'] as const) : []),
    ...(lie.fills.some(fill => fill > 0) ? (['ballast'] as const) : []),
    ...(things.bays.length > 0 ? (['bay'] as const) : []),
    ...(things.ghosts.length > 0 ? (['ghost'] as const) : []),
    ...(analysis.boat.waterline ? (['painted'] as const) : []),
  ];
}
