import { planeSection } from '../geometry/outline/planeSection.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import type { Steps } from '../steps/steps.ts';
import { boatPicture } from './boatPicture.ts';
import { captionOf } from './captions.ts';
import { centresOf } from './centresOf.ts';
import { type DrawnState, drawnStateOf } from './drawnState.ts';
import { type Frame, pathData } from './frame.ts';
import type { LegendKey } from './legend.ts';
import { element, type Markup, svgText, together } from './markup.ts';
import { namedAmong } from './named.ts';
import type { Picture } from './picture.ts';
import { roomIn, TAPE_STRIP } from './sideElevation.ts';
import { tape } from './tape.ts';
import { loopsOf, type Things } from './things.ts';
import { seen, unturned } from './turn.ts';
import type { ViewOf } from './viewOf.ts';

/** The boat as built from above, bow to the left and starboard up; where it floats, with the line of the water round it. */
export function plan({ analysis, there, things, page, drawEntry }: ViewOf): Steps<Picture> {
  const drawnState = drawnStateOf(there);
  const { boat, kept } = analysis;
  const isNamed = namedAmong(things, analysis, page.names);
  const beam = Math.max(0, ...[things.shells, things.compartments].flat().map(({ to }) => to[1]));
  return boatPicture(
    {
      id: `${there.condition.id}-plan`,
      // How it lies stands over the side elevation.
      caption: captionOf(analysis, there, 'plan'),
      hasWords: false,
      // From above there is water all round.
      drawnState: { ...drawnState, water: drawnState.water === 'below' ? 'everywhere' : drawnState.water },
      along: 2,
      station: null,
      turn: unturned,
      width: page.wide,
      room: { ...roomIn(page), ...(page.wide < 600 ? { left: 70, width: page.wide - 86 } : {}) },
      loopsOf: thing => loopsOf(thing, 2, kept.cache.shapes),
      depthOf: ({ to }) => to[2],
      isLabelled: thing => thing.kind !== 'shell' && thing.kind !== 'compartment' && isNamed(thing),
      surface: null,
      bones: [
        [
          [0, -beam],
          [boat.length, beam],
        ],
      ],
      headroom: 0,
      under: TAPE_STRIP,
      over: frame =>
        together([
          tape(boat, frame, { edges: [-beam, beam], margin: roomIn(page).left }),
          centreline(boat.length, frame),
          waterplane(drawnState, things, frame),
          sides(beam, frame),
        ]),
      onTop: () => null,
      centres: centresOf(analysis, drawnState, 2, ['B', 'G', 'F']),
      ways: [
        ['aft', 'forward'],
        ['to starboard', 'to port'],
      ],
      legend: drawnState.level !== null ? WATER : [],
      data: { 'data-trim': 0 },
    },
    { analysis, things, bodies: there.bodies, drawEntry },
  );
}

const WATER: readonly LegendKey[] = ['water'];

const centreline = (length: number, frame: Frame): Markup | null => {
  const [bow, stern] = [frame.at([-0.02 * length, 0]), frame.at([1.02 * length, 0])];
  return element('path', { class: 'plumb', d: `M${bow[0].toFixed(2)} ${bow[1].toFixed(2)}H${stern[0].toFixed(2)}` });
};

/** Where the surface meets what keeps water out, or lets it in. */
function waterplane({ up, level }: DrawnState, things: Things, frame: Frame): Markup | null {
  if (level === null) return null;
  const hull = [...things.shells, ...things.compartments];
  const loops: readonly Loop[] = hull.flatMap(({ form }) =>
    form ? planeSection(form, up, level).map(loop => loop.map(point => seen(point, 2))) : [],
  );
  if (loops.length === 0) return null;
  return element('path', { class: 'surface waterplane', d: pathData(loops, frame) });
}

const sides = (beam: number, frame: Frame): Markup => {
  const word = (words: string, at: number): Markup =>
    element('text', { class: 'tape-words', x: 12, y: frame.at([0, at])[1] + 4 }, svgText(words));
  return together([word('starboard', 0.8 * beam), word('port', -0.8 * beam)]);
};
