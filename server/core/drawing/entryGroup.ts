import { pathKey } from '../../../schema/path.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import { pathData } from './frame.ts';
import type { HullFrame } from './hullFrame.ts';
import { element, type Markup, svgText } from './markup.ts';
import { type Texture, texture } from './texture.ts';
import type { Thing } from './things.ts';

/** What is too small to be seen and hit is drawn this large, user units. */
const LEAST = 7;

/** What is drawn of a thing: an entry that the panel can light, click and drag, or a ghost that it can take. */
export interface Drawn {
  readonly thing: Thing;
  readonly loops: readonly Loop[];
  /** Number of the correction that a ghost belongs to; null for an entry of the file. */
  readonly correction: number | null;
}

/** The group of one thing, its title and outline first, then what else belongs to it. */
export function entryGroup(
  { thing, loops, correction }: Drawn,
  frame: HullFrame,
  ...more: readonly (Markup | null)[]
): Markup {
  const isGhost = correction !== null;
  const words = isGhost ? `Proposed: ${thing.words}` : thing.words;
  const shown = largeEnough(loops, frame);
  return element(
    'g',
    {
      class: isGhost ? `ghost ${thing.kind}` : `entry ${thing.kind}`,
      'data-path': isGhost ? null : pathKey(thing.path),
      'data-correction': correction,
      'data-drag': !isGhost && thing.canMove ? 'station' : null,
      role: 'img',
      'aria-label': words,
    },
    element('title', {}, svgText(words)),
    element('path', {
      class: thing.form === null && thing.kind !== 'bay' ? 'body unsized' : 'body',
      d: pathData(shown, frame),
    }),
    isTextured(thing.kind) && !isGhost
      ? texture(
          thing.kind,
          shown.map(loop => loop.map(frame.at)),
        )
      : null,
    ...more,
  );
}

const isTextured = (kind: Thing['kind']): kind is Thing['kind'] & Texture =>
  kind === 'lead' || kind === 'foam' || kind === 'part';

/** The outline; what would be too small to see is grown. */
function largeEnough(loops: readonly Loop[], frame: HullFrame): readonly Loop[] {
  const least = LEAST / frame.scale;
  const points = loops.flat();
  const [across, up] = [spanOf(points, 0), spanOf(points, 1)];
  if (across.size >= least / 2 && up.size >= least / 3) return loops;
  const [left, right] = grown(across, least);
  const [low, high] = grown(up, least);
  return [
    [
      [left, low],
      [right, low],
      [right, high],
      [left, high],
    ],
  ];
}

interface Span {
  readonly low: number;
  readonly size: number;
}

function spanOf(points: Loop, axis: 0 | 1): Span {
  let [low, high] = [Infinity, -Infinity];
  for (const point of points) {
    low = Math.min(low, point[axis]);
    high = Math.max(high, point[axis]);
  }
  return { low, size: high - low };
}

/** The span about its middle, at least so long. */
function grown({ low, size }: Span, least: number): readonly [number, number] {
  const more = Math.max(0, least - size) / 2;
  return [low - more, low + size + more];
}
