import { scaleLinear } from 'd3-scale';
import { countsForward, placedAt } from '../../../schema/places.ts';
import { fromSi, toSi, unitNamed } from '../../../schema/units.ts';
import type { Boat } from '../boat/boat.ts';
import { endsCounted } from '../wording/places.ts';
import type { Frame } from './frame.ts';
import { element, type Markup, short, svgText, together } from './markup.ts';
import { textWidth } from './textWidth.ts';

/** How far under the boat the tape lies, and how long its strokes are; user units. */
const UNDER = 9;
const STROKE = 5;
const TYPE = 12;
/** Words stand so far off the edge of the picture at least, user units. */
const EDGE = 2;

/**
 * A tape under the boat that counts from where the file’s stations do, in the file's unit; it trims with the boat. `edges`
 * are the lowest and the highest of the boat as built, m: keel up, it lies along the deck. Aft of the stern the picture has a
 * `margin`, user units.
 */
export function tape(
  { length, units }: Boat,
  frame: Frame,
  { edges, margin }: { readonly edges: readonly [number, number]; readonly margin: number },
): Markup | null {
  if (!(length > 0)) return null;
  const unit = unitNamed(units.length, 'length')!;
  const [least, most] = endsCounted([0, length], 'station', units).map(end => fromSi(end, unit)) as [number, number];
  const isOver = frame.turn.up[1] < 0;
  const way = (isOver ? 1 : -1) / frame.scale;
  const height = edges[isOver ? 1 : 0] + UNDER * way;
  const marks = scaleLinear([least, most], [0, length]).ticks(
    Math.max(2, Math.min(10, Math.round((length * frame.scale) / 62))),
  );
  const at = (x: number, down: number) => frame.at([x, height + down * way]);
  const line = (from: readonly [number, number], to: readonly [number, number]): string =>
    `M${short(from[0])} ${short(from[1])}L${short(to[0])} ${short(to[1])}`;
  const station = (mark: number): number => placedAt(toSi(mark, unit), 'station', units);
  const strokes = marks.map(mark => line(at(station(mark), 0), at(station(mark), STROKE)));
  const words = marks.map(mark => {
    const [x, y] = at(station(mark), STROKE + 9);
    const isLast = mark === (countsForward(units) ? marks[0] : marks.at(-1));
    const said = isLast ? `${mark} ${unit.name}` : String(mark);
    // At the stern itself the unit may have no room aft of its mark.
    const most = at(length, 0)[0] + margin - EDGE - textWidth(said, TYPE) / 2;
    return element(
      'text',
      { class: 'tape-words', x: Math.min(x, most), y: Math.round(y + 3), 'text-anchor': 'middle' },
      svgText(said),
    );
  });
  return element(
    'g',
    { class: 'tape-group' },
    element('path', { class: 'tape', d: line(at(0, 0), at(length, 0)) + strokes.join('') }),
    together(words),
  );
}
