import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import { planeSection } from '../geometry/outline/planeSection.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import type { Steps } from '../steps/steps.ts';
import { stationWords } from '../wording/numbers.ts';
import { boatPicture } from './boatPicture.ts';
import { captionOf } from './captions.ts';
import { centresOf } from './centresOf.ts';
import { drawnStateOf } from './drawnState.ts';
import { type Frame, pathData } from './frame.ts';
import { element, type Markup, svgText, together } from './markup.ts';
import { namedAmong } from './named.ts';
import type { Picture } from './picture.ts';
import { loopsOf, type Thing, type Things } from './things.ts';
import { seen, turnFor, unturned } from './turn.ts';
import type { ViewOf } from './viewOf.ts';

/** The boat cut across, seen from astern with starboard to the right, at its heel in level water. */
export function* bodySection({ analysis, there, things: aboard, page, drawEntry }: ViewOf): Steps<Picture> {
  const width = page.narrow;
  // A hand cannot move anything along the boat here.
  const things: Things = { ...aboard, parts: aboard.parts.map(part => ({ ...part, canMove: false })) };
  const drawnState = drawnStateOf(there);
  const { boat } = analysis;
  const { station, where } = sectionStation(analysis, things);
  const turn = turnFor(drawnState.up, 0);
  const caption = captionOf(analysis, there, 'section');
  const hull = [...things.shells, ...things.compartments];
  const beam = Math.max(0.001, ...hull.map(({ to }) => to[1]));
  for (const { form } of hull) if (form) yield* analysis.shapes.silhouetteSteps(form, 0);
  return yield* boatPicture(
    {
      id: `${there.condition.id}-section`,
      caption: {
        ...caption,
        words: `Cut at ${where}, ${stationWords(station, boat.units)}.`,
      },
      hasWords: true,
      drawnState: turn ? drawnState : { ...drawnState, water: 'unknown' },
      along: 0,
      station,
      turn: turn ?? unturned,
      width,
      room: { left: 72, width: width - 144, mostHeight: Math.min(250, page.tall) },
      loopsOf: thing => cutLoops(thing, station),
      depthOf: ({ from, to }) => (from[1] - to[1]) * (to[2] - from[2]),
      isLabelled: namedAmong(things, analysis, page.names),
      surface:
        turn && drawnState.water === 'below' && drawnState.level !== null
          ? turn.height(drawnState.level, station)
          : null,
      bones: [...hull.flatMap(thing => loopsOf(thing, 0, analysis.shapes)), paintedEnds(boat, station, beam)],
      headroom: 0,
      under: 8,
      over: frame => together([rims(analysis, hull, frame), painted(boat, station, beam, frame), sides(frame, width)]),
      onTop: () => null,
      centres: centresOf(analysis, drawnState, 0, ['B', 'G', 'M']),
      ways: [
        ['to starboard', 'to port'],
        ['above', 'below'],
      ],
      legend: [
        'beyond',
        ...(turn && drawnState.water === 'below' ? (['water'] as const) : []),
        ...(boat.waterline ? (['painted'] as const) : []),
      ],
      data: { 'data-station': station },
    },
    { analysis, things, bodies: there.bodies, drawEntry },
  );
}

/** Through the middle of the largest tank, else of the broadest of what the hull is made of. */
function sectionStation({ boat }: Analysis, things: Things): { readonly station: number; readonly where: string } {
  const middle = ({ from, to }: Thing): number => (from[0] + to[0]) / 2;
  const largest = boat.tanks.reduce((a, tank, i) => (tank.capacity > (boat.tanks[a]?.capacity ?? 0) ? i : a), 0);
  const tank = things.tanks[largest];
  if (tank) return { station: middle(tank), where: `the middle of “${tank.name}”` };
  const [first, ...others] = [...things.shells, ...things.compartments];
  if (!first) return { station: boat.length / 2, where: 'half length' };
  const breadth = ({ from, to }: Thing): number => to[1] - from[1];
  const broadest = others.reduce((a, b) => (breadth(b) > breadth(a) ? b : a), first);
  return { station: middle(broadest), where: `the middle of “${broadest.name}”` };
}

/** Where the station cuts a thing; what has no form there is shown by its room. */
function cutLoops({ form, from, to }: Thing, station: number): readonly Loop[] {
  if (form) return planeSection(form, [1, 0, 0], station).map(loop => loop.map(point => seen(point, 0)));
  if (station < from[0] || station > to[0]) return [];
  const [a, b] = [seen(from, 0), seen(to, 0)];
  return [[a, [b[0], a[1]], b, [a[0], b[1]]]];
}

/** The greatest outline of the hull, lightly, behind the cut. */
function rims({ kept }: Analysis, hull: readonly Thing[], frame: Frame): Markup | null {
  const loops = hull.flatMap(thing => loopsOf(thing, 0, kept.cache.shapes));
  return loops.length === 0 ? null : element('path', { class: 'beyond', d: pathData(loops, frame) });
}

/** The painted waterline at the station, out to both sides of the hull, m. */
function paintedEnds({ waterline, length }: Boat, station: number, beam: number): Loop {
  if (!waterline) return [];
  const height = waterline.bow + ((waterline.stern - waterline.bow) * station) / length;
  return [
    [-1.15 * beam, height],
    [1.15 * beam, height],
  ];
}

function painted(boat: Boat, station: number, beam: number, frame: Frame): Markup | null {
  const [port, starboard] = paintedEnds(boat, station, beam).map(frame.at);
  if (!port || !starboard) return null;
  return element(
    'path',
    {
      class: 'painted',
      d: `M${port[0].toFixed(2)} ${port[1].toFixed(2)}L${starboard[0].toFixed(2)} ${starboard[1].toFixed(2)}`,
    },
    element('title', {}, svgText('painted waterline')),
  );
}

const sides = (frame: Frame, width: number): Markup => {
  const y = frame.y(0) - 4;
  return together([
    element('text', { class: 'tape-words', x: 12, y }, svgText('port')),
    element('text', { class: 'tape-words', x: width - 12, y, 'text-anchor': 'end' }, svgText('starboard')),
  ]);
};
