import type { Analysis } from '../analysis/analysis.ts';
import { trimOf } from '../conditions/attitude.ts';
import type { LoadedCondition } from '../conditions/loadingCondition.ts';
import { boatPicture } from './boatPicture.ts';
import { captionOf, markWords } from './captions.ts';
import { drawnStateOf } from './drawnState.ts';
import { legendKeys } from './legendKeys.ts';
import { mark } from './marks.ts';
import { together } from './markup.ts';
import { offMarks, paintedLine, paintedPoints } from './paintedWaterline.ts';
import type { Picture } from './picture.ts';
import { tape } from './tape.ts';
import { loopsOf, type Things } from './things.ts';
import { seen, turnFor, unturned } from './turn.ts';

export const WIDTH = 880;
/** Room for the tape below the keel. */
export const TAPE_STRIP = 30;

/** The boat from its port side, bow to the left, at its trim in level water. */
export function sideElevation(analysis: Analysis, there: LoadedCondition, things: Things): Picture {
  const drawnState = drawnStateOf(there);
  const { boat, kept } = analysis;
  // On its side there is no telling up from here; the body section shows how it lies.
  const turn = turnFor(drawnState.up, 1);
  const { centreOfMass: g, centreOfBuoyancy: b } = drawnState;
  const edges = edgesOf(things);
  return boatPicture(
    {
      id: `${there.condition.id}-side`,
      caption: captionOf(analysis, there, 'side'),
      drawnState: turn ? drawnState : { ...drawnState, water: 'unknown' },
      along: 1,
      station: null,
      turn: turn ?? unturned,
      width: WIDTH,
      room: { left: 104, width: 672, mostHeight: 380 },
      loopsOf: thing => loopsOf(thing, 1, kept.cache.shapes),
      depthOf: ({ from, to }) => (from[0] - to[0]) * (to[2] - from[2]),
      isLabelled: () => true,
      surface:
        turn && drawnState.water === 'below' && drawnState.level !== null ? turn.height(drawnState.level, 0) : null,
      bones: [
        paintedPoints(boat),
        [
          [0, edges[0]],
          [boat.length, edges[1]],
        ],
      ],
      under: TAPE_STRIP,
      over: frame =>
        together([
          tape(boat, frame, edges),
          paintedLine(boat, frame),
          turn ? offMarks(boat, there, frame) : null,
          b ? mark('B', frame.at(seen(b, 1)), markWords('B', b, boat), 'left') : null,
          g ? mark('G', frame.at(seen(g, 1)), markWords('G', g, boat), 'right') : null,
        ]),
      legend: legendKeys(analysis, drawnState, things, ['G', 'B']),
      data: { 'data-trim': turn ? trimOf(drawnState.up) : 0 },
      proposal: things.proposal?.words ?? null,
    },
    things,
    there.bodies,
  );
}

/** The lowest and the highest of what is built, m. */
function edgesOf({ shells, compartments, tanks, parts }: Things): readonly [number, number] {
  const built = [shells, compartments, tanks, parts].flat();
  return [Math.min(0, ...built.map(({ from }) => from[2])), Math.max(0, ...built.map(({ to }) => to[2]))];
}
