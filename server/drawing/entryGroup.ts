import { pathKey } from '../../schema/path.ts';
import type { Loop } from '../geometry/silhouette.ts';
import { type Frame, pathData } from './frame.ts';
import { element, type Markup, text } from './markup.ts';
import { fillOf, type PatternName } from './patterns.ts';
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
export function entryGroup(drawn: Drawn, frame: Frame, picture: string, ...more: readonly (Markup | null)[]): Markup {
  const { thing, loops, correction } = drawn;
  const isGhost = correction !== null;
  const kind = isGhost ? 'ghost' : thing.kind;
  const words = isGhost ? `Proposed: ${thing.words}` : thing.words;
  const fill = isPatterned(thing.kind) && !isGhost ? fillOf(picture, thing.kind) : null;
  return element(
    'g',
    {
      class: isGhost ? `ghost ${thing.kind}` : `entry ${kind}`,
      'data-path': isGhost ? null : pathKey(thing.path),
      'data-correction': correction,
      'data-drag': !isGhost && thing.canMove ? 'station' : null,
      role: 'img',
      'aria-label': words,
    },
    element('title', {}, text(words)),
    outline(thing, loops, frame, fill),
    ...more,
  );
}

const isPatterned = (kind: Thing['kind']): kind is Thing['kind'] & PatternName =>
  kind === 'lead' || kind === 'foam' || kind === 'part';

/** Its loops; what would be too small to see is grown, and dotted where its size is not told. */
function outline({ form }: Thing, loops: readonly Loop[], frame: Frame, fill: string | null): Markup {
  const least = LEAST / frame.scale;
  const points = loops.flat();
  const [across, up] = ([0, 1] as const).map(axis => spanOf(points, axis)) as [Span, Span];
  const isSmall = across.size < least / 2 || up.size < least / 3;
  if (!isSmall) return element('path', { class: 'body', d: pathData(loops, frame), fill });
  const [left, right] = grown(across, least);
  const [low, high] = grown(up, least);
  const grownLoop: Loop = [
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ];
  return element('path', { class: form ? 'body' : 'body unsized', d: pathData([grownLoop], frame), fill });
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
