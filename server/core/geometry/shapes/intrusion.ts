import { cornersOf } from '../form/box.ts';
import type { Form } from '../form/form.ts';
import type { Vec3 } from '../form/vector.ts';
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

/** Places a side of the grid that is laid through the room that both boxes have in common; odd, so that one is its middle. */
const PLACES = 15;
/** The outermost places lie just within that room: a share of its size. */
const WITHIN = 1e-6;
/** Places of which the depth is asked, at most. */
const MOST_ASKED = 400;

/** How far two forms reach into each other, by their true forms: a ring round a tube does not. Null where they do not. */
export function intrusionOf(
  one: Bounded & { readonly depth: Depth },
  two: Bounded & { readonly depth: Depth },
): Intrusion | null {
  const from = ([0, 1, 2] as const).map(axis => Math.max(one.bounds.from[axis], two.bounds.from[axis]));
  const size = ([0, 1, 2] as const).map(axis => Math.min(one.bounds.to[axis], two.bounds.to[axis]) - from[axis]!);
  if (!size.every(each => each > 0)) return null;
  const blocks = blocksOf(one.form, two.form);
  if (blocks) return deepestInBlocks(blocks, { from, to: from.map((least, axis) => least + size[axis]!) });
  const marks = size.map((whole, axis) =>
    Array.from({ length: PLACES }, (_, i) => from[axis]! + whole * (WITHIN + ((1 - 2 * WITHIN) * i) / (PLACES - 1))),
  );
  const [inFirst, inSecond] = [insideOf(one.form), insideOf(two.form)];
  const shared = marks[1]!.flatMap(y =>
    marks[2]!.flatMap(z => {
      // A line through the edge of a box may miss it: a hair beside it goes through.
      const [first, second] = [inFirst(y + HAIR, z + HAIR / 2), inSecond(y + HAIR, z + HAIR / 2)];
      return marks[0]!.flatMap((x): readonly Vec3[] => (first(x) && second(x) ? [[x, y, z]] : []));
    }),
  );
  const step = Math.ceil(shared.length / MOST_ASKED);
  let deepest: Intrusion | null = null;
  for (let i = 0; i < shared.length; i += step) {
    const at = shared[i]!;
    const by = Math.max(one.depth(at), two.depth(at));
    if (!deepest || by > deepest.by) deepest = { by, at };
  }
  return deepest && deepest.by > 0
    ? refined(
        deepest,
        size,
        place => Math.min(one.depth(place), two.depth(place)) > 0,
        place => Math.max(one.depth(place), two.depth(place)),
      )
    : null;
}

type Block = NonNullable<ReturnType<typeof cornersOf>>;

function blocksOf(...forms: readonly Form[]): readonly Block[] | null {
  const blocks = forms.flatMap(form => (form.shape === 'polyhedron' ? (cornersOf(form) ?? []) : []));
  return blocks.length === forms.length ? blocks : null;
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
function refined(
  start: Intrusion,
  size: readonly number[],
  isShared: (place: Vec3) => boolean,
  depth: (place: Vec3) => number,
): Intrusion {
  let deepest = start;
  for (let round = 1; round <= HALVINGS; round++) {
    for (const axis of [0, 1, 2] as const) {
      for (const side of [-1, 1]) {
        const at: [number, number, number] = [deepest.at[0], deepest.at[1], deepest.at[2]];
        at[axis] += (side * size[axis]!) / (PLACES - 1) / 2 ** round;
        const by = depth(at);
        if (by > deepest.by && isShared(at)) deepest = { by, at };
      }
    }
  }
  return deepest;
}

const HAIR = 2e-7;
