import { trimOf } from '../conditions/attitude.ts';
import { SURFACED } from '../conditions/loadingCondition.ts';
import type { Steps } from '../steps/steps.ts';
import { boatPicture } from './boatPicture.ts';
import { captionOf } from './captions.ts';
import { centresOf } from './centresOf.ts';
import { drawnStateOf } from './drawnState.ts';
import type { FrameRoom } from './frame.ts';
import { together } from './markup.ts';
import { namedAmong } from './named.ts';
import type { Page } from './page.ts';
import { offMarks, paintedLine, paintedPoints } from './paintedWaterline.ts';
import type { Picture } from './picture.ts';
import { tape } from './tape.ts';
import { loopsOf, type Things } from './things.ts';
import { turnFor, unturned } from './turn.ts';
import type { ViewOf } from './viewOf.ts';
import { isMarked, wantedMark } from './wantedMark.ts';

/** Room for the tape below the keel. */
export const TAPE_STRIP = 30;

/** The boat from its port side, bow to the left, at its trim in level water. */
export function sideElevation({ analysis, there, things, page, drawEntry }: ViewOf): Steps<Picture> {
  const drawnState = drawnStateOf(there);
  const { boat, kept } = analysis;
  // On its side there is no telling up from here; the body section shows how it lies.
  const turn = turnFor(drawnState.up, 1);
  const edges = edgesOf(things);
  const isAsFiled = there.condition === SURFACED;
  return boatPicture(
    {
      id: `${there.condition.id}-side`,
      caption: captionOf(analysis, there, 'side'),
      hasWords: true,
      drawnState: turn ? drawnState : { ...drawnState, water: 'unknown' },
      along: 1,
      station: null,
      turn: turn ?? unturned,
      width: page.wide,
      room: roomIn(page),
      loopsOf: thing => loopsOf(thing, 1, kept.cache.shapes),
      depthOf: ({ from, to }) => (from[0] - to[0]) * (to[2] - from[2]),
      isLabelled: namedAmong(things, analysis, page.names),
      surface:
        turn && drawnState.water === 'below' && drawnState.level !== null ? turn.height(drawnState.level, 0) : null,
      bones: [
        paintedPoints(boat),
        [
          [0, edges[0]],
          [boat.length, edges[0]],
          [boat.length, edges[1]],
        ],
      ],
      headroom: page.wide < ROOMY && there.where === 'afloat' ? 20 : 0,
      under: TAPE_STRIP,
      over: frame => together([tape(boat, frame, { edges, margin: roomIn(page).left }), paintedLine(boat, frame)]),
      onTop: frame =>
        together([
          turn ? offMarks(boat, there, frame, page.wide < ROOMY ? page.wide : null) : null,
          isAsFiled ? wantedMark(analysis, frame) : null,
        ]),
      centres: centresOf(analysis, drawnState, 1, ['B', 'G']),
      ways: [
        ['aft', 'forward'],
        ['above', 'below'],
      ],
      legend: [
        ...(turn && drawnState.water === 'below' ? (['water'] as const) : []),
        ...(boat.waterline ? (['painted'] as const) : []),
        ...(isAsFiled && isMarked(analysis) ? (['wanted'] as const) : []),
      ],
      data: { 'data-trim': turn ? trimOf(drawnState.up) : 0 },
    },
    { analysis, things, bodies: there.bodies, drawEntry },
  );
}

/** Room for the boat: the red figures stand before its bow and behind its stern. */
export function roomIn({ wide, tall }: Page): FrameRoom {
  const left = wide >= ROOMY ? 104 : 16;
  return { left, width: wide - 2 * left, mostHeight: tall };
}

/** On a narrower page they stand over its ends instead. */
const ROOMY = 600;

/** The lowest and the highest of what is built, m. */
function edgesOf({ shells, compartments, tanks, parts }: Things): readonly [number, number] {
  const built = [shells, compartments, tanks, parts].flat();
  return [Math.min(0, ...built.map(({ from }) => from[2])), Math.max(0, ...built.map(({ to }) => to[2]))];
}
