import type { Path } from '../../../../schema/path.ts';
import { AXES } from '../../boat/placed.ts';
import type { BoatSource } from '../../boat/source.ts';
import { pacer, type Steps } from '../../steps/steps.ts';
import type { EntryAt, Input } from '../../uncertainty/input.ts';
import { DISPLACED } from '../../uncertainty/pushRow.ts';
import { type VariationCache, variationOf } from '../../uncertainty/variations.ts';

/** Something of which it may be wrong how much it displaces. */
export interface Displacing {
  /** What it is called, and where that stands in the file. */
  readonly what: string;
  readonly path: Path;
  readonly isCompartment: boolean;
  /** One standard uncertainty of what it displaces by what its figures leave open, as a part of it. */
  readonly open: number;
  /** How much more each figure is where it displaces twice as much, by straight lines, SI. */
  readonly doubled: readonly { readonly input: Input; readonly by: number }[];
}

/**
 * What displaces, each with the figures that say how much: breadths and depths in proportion (a tape tells the length better),
 * the volume of what was dunked, the density of what was weighed; things of one material share that.
 */
export function* displacingOf(
  source: BoatSource,
  inputs: readonly Input[],
  cache: VariationCache,
): Steps<readonly Displacing[]> {
  const things = new Map<string, { readonly at: readonly EntryAt[]; readonly figures: Figure[] }>();
  const isDue = pacer(STEP);
  for (const input of inputs) {
    if (isDue(1)) yield;
    if (input.target.on !== 'entries' || isPlace(input) || input.noun.startsWith('length')) continue;
    const { at } = input.target;
    const change = at.reduce((sum, place) => sum + variationOf(source, input, place, cache).row[DISPLACED]!, 0);
    if (change === 0) continue;
    const key = at.map(({ list, index }) => `${list} ${index}`).join();
    const thing = things.get(key) ?? { at, figures: [] };
    thing.figures.push({ input, change });
    things.set(key, thing);
  }
  return [...things.values()].flatMap(({ at, figures }) => {
    const volume = at.reduce((sum, { list, index }) => sum + volumeOf(source, list, index), 0);
    // All figures more by their own value.
    const grown = figures.reduce((sum, { input, change }) => sum + (input.value / input.sigma) * change, 0);
    if (!(volume > 0) || Math.abs(grown) < LEAST_GROWN * volume) return [];
    const [first] = figures as [Figure];
    const [{ list, index }] = at as readonly [EntryAt];
    const { entry } = source[list][index]!;
    const isOne = at.length === 1;
    return [
      {
        what: isOne ? entry.name : first.input.entryName,
        path: isOne ? entry.path : first.input.path,
        isCompartment: list === 'compartments',
        open: Math.hypot(...figures.map(({ change }) => change)) / volume,
        doubled: figures.map(({ input }) => ({ input, by: (input.value * volume) / grown })),
      },
    ];
  });
}

/** Figures that are looked at in one step. */
const STEP = 500;

interface Figure {
  readonly input: Input;
  /** Of what is displaced, where the figure is one uncertainty more, m3. */
  readonly change: number;
}

/** Figures that grow by all their value and leave it so nearly as it was do not make it displace what it does. */
const LEAST_GROWN = 0.1;

const isPlace = ({ noun }: Input): boolean => AXES.some(axis => axis === noun);

function volumeOf(source: BoatSource, list: EntryAt['list'], index: number): number {
  const { entry } = source[list][index]!;
  return 'volume' in entry ? entry.volume : 0;
}
