import { cornersOf } from '../form/box.ts';
import { length, subtract, type Vec3 } from '../form/vector.ts';
import { insideOf } from '../mesh/lineCast.ts';
import type { Depth } from './depth.ts';
import type { Bounded } from './overlap.ts';

/** How far two things reach into each other. */
export interface Intrusion {
  /** The deepest that the one reaches below the other's surface, m. */
  readonly by: number;
  /** Where that is, m. */
  readonly at: Vec3;
}

/** Places of the grid that is laid through the room that both boxes have in common. */
const PLACES = 15 ** 3;
/** The least of a side; odd, so that one is its middle. */
const LEAST_SIDE = 5;
/** The outermost places lie just within that room: a share of its size. */
const WITHIN = 1e-6;
/** Places of which the depth is asked, at most. */
const MOST_ASKED = 400;

type Solid = Bounded & { readonly depth: Depth };

/**
 * How far two things reach into each other, by the true forms of those of their parts that share room: a ring round a tube
 * does not. Null where they do not.
 */
export function intrusionOf(pairs: readonly (readonly [one: Solid, two: Solid])[]): Intrusion | null {
  let deepest: (Intrusion & { readonly among: Shared | null }) | null = null;
  // Of many pairs each is looked at less closely.
  const share = Math.max(1, pairs.filter(pair => !blocksOf(...pair)).length);
  for (const pair of pairs) {
    const among = sharedBy(pair, share);
    const found = among && deepestIn(pair, among);
    if (found && found.by > (deepest?.by ?? 0)) deepest = { ...found, among: found.isExact ? null : among };
  }
  return deepest && (deepest.among ? refined(deepest, deepest.among) : deepest);
}

/** The room that the boxes of two forms share, and the grid in it. */
interface Shared {
  readonly pair: readonly [one: Solid, two: Solid];
  readonly from: readonly number[];
  readonly size: readonly number[];
  /** Places a side, and of which so many are asked how deep they lie. */
  readonly side: number;
  readonly asked: number;
}

function sharedBy(pair: Shared['pair'], share: number): Shared | null {
  const [one, two] = pair;
  const from = ([0, 1, 2] as const).map(axis => Math.max(one.bounds.from[axis], two.bounds.from[axis]));
  const size = ([0, 1, 2] as const).map(axis => Math.min(one.bounds.to[axis], two.bounds.to[axis]) - from[axis]!);
  if (!size.every(each => each > 0)) return null;
  const half = Math.floor(Math.cbrt(PLACES / share) / 2);
  return { pair, from, size, side: Math.max(LEAST_SIDE, 2 * half + 1), asked: Math.ceil(MOST_ASKED / share) };
}

function deepestIn([one, two]: Shared['pair'], shared: Shared): (Intrusion & { readonly isExact: boolean }) | null {
  const { from, size } = shared;
  const blocks = blocksOf(one, two);
  if (blocks) {
    const to = from.map((least, axis) => least + size[axis]!);
    return { ...deepestInBlocks(blocks, { from, to }), isExact: true };
  }
  const deepest = deepestOf(placesInBoth(shared), shared.asked, place => Math.max(one.depth(place), two.depth(place)));
  return deepest && deepest.by > 0 ? { ...deepest, isExact: false } : null;
}

/** Places are asked in leaps of this share of their number, so that those asked first are spread over all. */
const LEAP = 0.618;

/**
 * The deepest of so many places, the first of those alike. Nothing lies deeper than another place by more than the two are
 * apart: where that is less than what was found, it is not asked.
 */
function deepestOf(places: readonly Vec3[], most: number, depth: (place: Vec3) => number): Intrusion | null {
  if (places.length === 0) return null;
  const step = Math.ceil(places.length / most);
  const count = Math.ceil(places.length / step);
  let leap = Math.max(1, Math.round(LEAP * count));
  // Ends: with 1 at the latest. All are come to where the leap has no divisor in common with their number.
  while (divisorOf(leap, count) > 1) leap -= 1;
  const asked: (Intrusion & { readonly i: number })[] = [];
  let deepest: (typeof asked)[number] | null = null;
  for (let k = 0; k < count; k++) {
    const i = (k * leap) % count;
    const at = places[i * step]!;
    const found = deepest?.by ?? -Infinity;
    if (asked.some(each => each.by + length(subtract(at, each.at)) < found)) continue;
    const by = depth(at);
    const each = { by, at, i };
    asked.push(each);
    if (!deepest || by > deepest.by || (by === deepest.by && i < deepest.i)) deepest = each;
  }
  return deepest && { by: deepest.by, at: deepest.at };
}

/** The greatest that divides both. */
function divisorOf(a: number, b: number): number {
  // Ends: the rest is less each round.
  while (b > 0) [a, b] = [b, a % b];
  return a;
}

function placesInBoth({ pair: [one, two], from, size, side }: Shared): readonly Vec3[] {
  const marks = size.map((whole, axis) =>
    Array.from({ length: side }, (_, i) => from[axis]! + whole * (WITHIN + ((1 - 2 * WITHIN) * i) / (side - 1))),
  );
  const [inFirst, inSecond] = [insideOf(one.form), insideOf(two.form)];
  const places: Vec3[] = [];
  for (const y of marks[1]!) {
    for (const z of marks[2]!) {
      // A line through the edge of a box may miss it: a hair beside it goes through.
      const [first, second] = [inFirst(y + HAIR, z + HAIR / 2), inSecond(y + HAIR, z + HAIR / 2)];
      for (const x of marks[0]!) if (first(x) && second(x)) places.push([x, y, z]);
    }
  }
  return places;
}

type Block = NonNullable<ReturnType<typeof cornersOf>>;

function blocksOf(...solids: readonly Solid[]): readonly Block[] | null {
  const blocks = solids.flatMap(({ form }) => (form.shape === 'polyhedron' ? (cornersOf(form) ?? []) : []));
  return blocks.length === solids.length ? blocks : null;
}

/** Two blocks: in the room that they share, each is deepest at the place nearest to its own middle. */
function deepestInBlocks(
  blocks: readonly Block[],
  shared: { readonly from: readonly number[]; readonly to: readonly number[] },
): Intrusion {
  const deepest = blocks.map(({ from, to }): Intrusion => {
    const [x, y, z] = from.map((least, axis) =>
      Math.min(shared.to[axis]!, Math.max(shared.from[axis]!, (least + to[axis]!) / 2)),
    );
    const at: Vec3 = [x!, y!, z!];
    return { at, by: Math.min(...at.flatMap((place, axis) => [place - from[axis]!, to[axis]! - place])) };
  });
  return deepest.reduce((most, each) => (each.by > most.by ? each : most));
}

/** Rounds in which the step between places is halved: to a hundredth of it. */
const HALVINGS = 7;

/** The deepest place near one of the grid, step by step along the axes. */
function refined(start: Intrusion, { pair: [one, two], size, side }: Shared): Intrusion {
  let deepest: Intrusion = { by: start.by, at: start.at };
  for (let round = 1; round <= HALVINGS; round++) {
    for (const axis of [0, 1, 2] as const) {
      for (const way of [-1, 1]) {
        const at: [number, number, number] = [deepest.at[0], deepest.at[1], deepest.at[2]];
        at[axis] += (way * size[axis]!) / (side - 1) / 2 ** round;
        const depths = [one.depth(at), two.depth(at)];
        const by = Math.max(...depths);
        if (by > deepest.by && Math.min(...depths) > 0) deepest = { by, at };
      }
    }
  }
  return deepest;
}

const HAIR = 2e-7;
