import { cheapestPieces, type Row, type Solution } from '../balance/program.ts';
import type { Slot } from '../room/slots.ts';

/** Pieces in some of the levers that satisfy every row, on paper. */
export interface Candidate {
  readonly slots: readonly Slot[];
  readonly solution: Solution;
}

/** Most pieces that a correction may have: more is a rebuild. */
export const MOST_PIECES = 5;
/** Less than can be cut from any strip, kg. */
const NOTHING = 1e-6;
/** Sets of levers tried at most for one number of pieces. */
const MOST_SETS = 300;
/** Programmes solved in one step. */
const PROGRAMMES_AT_ONCE = 4;

/**
 * Sets of levers that can do it, fewest pieces first and among equally many the cheapest first. Lazy, so that a caller
 * who is content with the first pays for no more; null now and then while still searching. Nothing when not even all
 * levers together can.
 */
export function* candidatesFor(slots: readonly Slot[], rows: readonly Row[]): Generator<Candidate | null> {
  const all = cheapestPieces(slots, rows);
  if (!all) return;
  let programmes = 0;
  for (let count = 1; count <= Math.min(MOST_PIECES, slots.length); count++) {
    const found: Candidate[] = [];
    for (const set of setsOf(slots, count, all)) {
      if (++programmes % PROGRAMMES_AT_ONCE === 0) yield null;
      const solution = cheapestPieces(set, rows);
      // A set with an idle lever is a smaller set, and was tried as that.
      if (solution?.shares.every(share => share.mass > NOTHING)) found.push({ slots: set, solution });
    }
    yield* found.sort((a, b) => a.solution.cost - b.solution.cost);
  }
}

/** All sets of so many levers; where they are too many, only those among the levers that the whole programme would use. */
function setsOf(slots: readonly Slot[], count: number, all: Solution): readonly (readonly Slot[])[] {
  if (combinations(slots.length, count) <= MOST_SETS) return subsets(slots, count);
  const used = all.shares.filter(share => share.mass > NOTHING).map(share => share.slot);
  return used.length >= count && combinations(used.length, count) <= MOST_SETS ? subsets(used, count) : [];
}

function subsets<T>(items: readonly T[], count: number): readonly (readonly T[])[] {
  if (count === 0) return [[]];
  return items.flatMap((item, i) => subsets(items.slice(i + 1), count - 1).map(rest => [item, ...rest]));
}

const combinations = (n: number, k: number): number =>
  Array.from({ length: k }, (_, i) => (n - i) / (i + 1)).reduce((product, factor) => product * factor, 1);
