import { cheapestPieces, priceOfPieces, type Solution } from '../balance/program.ts';
import type { BalanceRow } from '../balance/row.ts';
import type { Mover } from '../room/movers.ts';
import type { Slot } from '../room/slots.ts';

/** Pieces in some of the slots, and moves, that satisfy every row, on paper. */
export interface Candidate {
  readonly slots: readonly Slot[];
  readonly movers: readonly Mover[];
  readonly solution: Solution;
  /** What it costs with the work that it makes, g of lead: on paper. */
  readonly rank: number;
}

/** What a set of slots is weighed by. */
export interface Search {
  readonly rows: readonly BalanceRow[];
  readonly movers: readonly Mover[];
  /** kg. */
  readonly boatMass: number;
  /** Whether something of this rank could still be the best. */
  readonly isWorth: (rank: number) => boolean;
}

/** Most pieces that a correction may have: more is a rebuild. */
export const MOST_PIECES = 5;
/** Less than can be cut from any strip, kg. */
const NOTHING = 1e-6;
/** Sets of slots tried at most for one number of pieces. */
const MOST_SETS = 150;
/** Programmes solved in one step. */
const PROGRAMMES_AT_ONCE = 2;

/** A piece to saw, lay and fix is worth avoiding at this part of the boat's mass in lead (common practice, no source). */
const PRICE_OF_PIECE = 0.001;
/** And one more of them at this part of the price of all (common practice, no source). */
export const PRICE_OF_ONE_MORE = 0.05;

/** What so many pieces of this price cost in work, g of lead. */
export const priceOfWork = (count: number, price: number, boatMass: number): number =>
  count * 1e3 * PRICE_OF_PIECE * boatMass + Math.max(0, count - 1) * PRICE_OF_ONE_MORE * price;

/**
 * Sets of slots that can do it, fewest pieces first and among equally many the cheapest first. Lazy, so that a caller
 * who is content pays for no more; null now and then while still searching. Nothing when not even all slots together can.
 */
export function* candidatesFor(slots: readonly Slot[], search: Search): Generator<Candidate | null> {
  const { rows, movers, boatMass, isWorth } = search;
  const all = cheapestPieces(slots, rows, { movers });
  if (!all) return;
  yield null;
  let programmes = 0;
  for (let count = 1; count <= Math.min(MOST_PIECES, slots.length); count++) {
    if (!isWorth(all.cost + priceOfWork(count, 0, boatMass))) return;
    const found: Candidate[] = [];
    for (const set of setsOf(slots, count, all)) {
      if (++programmes % PROGRAMMES_AT_ONCE === 0) yield null;
      const solution = cheapestPieces(set, rows, { movers });
      // A set with an idle slot is a smaller set, and was tried as that.
      if (!solution?.shares.every(share => share.mass > NOTHING)) continue;
      const rank = solution.cost + priceOfWork(count, priceOfPieces(solution.shares), boatMass);
      found.push({ slots: set, movers, solution, rank });
    }
    yield* found.sort((a, b) => a.rank - b.rank);
  }
}

/** All sets of so many slots; where they are too many, only those among the slots that the whole programme would use. */
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
