import { pathKey } from '../../../schema/path.ts';
import type { Loop } from '../geometry/outline/silhouette.ts';
import { type Drawn, entryGroup } from './entryGroup.ts';
import type { HullFrame } from './hullFrame.ts';
import type { Markup } from './markup.ts';

/** Draws entries of which nothing depends on the water; what was drawn before is not drawn again while it stays as it is. */
export type DrawEntry = (drawn: Drawn, frame: HullFrame) => Markup;

/** Of one outline: it is in a picture for each condition, of which the boat lies otherwise in each. */
const MOST_KEPT = 8;

export function createDrawnEntries(): DrawEntry {
  const byOutline = new WeakMap<readonly Loop[], Map<string, Markup>>();
  return (drawn, frame) => {
    const { thing, loops, correction } = drawn;
    const known = byOutline.get(loops) ?? new Map<string, Markup>();
    const key = `${frame.key} ${thing.kind} ${thing.canMove} ${correction} ${pathKey(thing.path)} ${thing.words}`;
    const markup = known.get(key) ?? entryGroup(drawn, frame);
    known.delete(key);
    known.set(key, markup);
    if (known.size > MOST_KEPT) known.delete(known.keys().next().value!);
    byOutline.set(loops, known);
    return markup;
  };
}
