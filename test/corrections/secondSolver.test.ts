import highsLoader from 'highs';
import { describe, expect, test } from 'vitest';
import { cheapestPieces } from '../../server/core/corrections/balance/program.ts';
import type { BalanceRow } from '../../server/core/corrections/balance/row.ts';
import { findSlots, type Slot } from '../../server/core/corrections/room/slots.ts';
import { balancesOf } from '../../server/core/corrections/search/balances.ts';
import { between, randomFrom } from '../accuracy/random.ts';
import { type BoatOptions, boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { boatToTrimOf } from '../helpers/boatToTrim.ts';
import { isLong } from '../helpers/long.ts';
import { linearText } from './linearText.ts';

/* The programme's optimum against HiGHS (highs-js 1.15.3), which knows nothing of boats: the check value is its own. */

const highs = await highsLoader();

/** Boats of which whole pieces are asked. */
const WHOLE = isLong ? 50 : 8;
const BOATS = isLong ? 200 : 8;
/** Relative; both solvers work to about 1e-9. */
const SAME = 1e-6;

interface Tally {
  feasible: number;
  infeasible: number;
}

function compare(slots: readonly Slot[], rows: readonly BalanceRow[], tally: Tally): void {
  const ours = cheapestPieces(slots, rows);
  const theirs = highs.solve(linearText(slots, rows), { mip_rel_gap: 0, mip_abs_gap: 0 });
  if (theirs.Status === 'Optimal') {
    tally.feasible++;
    expect(ours).not.toBeNull();
    expect(Math.abs(ours!.cost - theirs.ObjectiveValue)).toBeLessThanOrEqual(SAME * Math.max(1, theirs.ObjectiveValue));
  } else {
    tally.infeasible++;
    expect(theirs.Status).toMatch(/^Infeasible|^Primal infeasible or unbounded/);
    expect(ours).toBeNull();
  }
}

/** All slots of the boat, and some of them drawn by the seed. */
function setsOf(slots: readonly Slot[], seed: number): readonly (readonly Slot[])[] {
  const random = randomFrom(seed + 77);
  const some = (part: number) => slots.filter(() => random() < part);
  return [slots, some(0.7), some(0.5), some(between(random, 0.2, 0.5))].filter(set => set.length > 0);
}

function overBoats(count: number, options: BoatOptions): Tally {
  const tally: Tally = { feasible: 0, infeasible: 0 };
  for (let seed = 0; seed < count; seed++) {
    const boatToTrim = boatToTrimOf(boatOutOfTrim(seed, options).text);
    for (const scope of ['both', 'surfaced', 'submerged'] as const) {
      const rows = balancesOf(boatToTrim, scope, 0.75)(null);
      const sets = setsOf(findSlots(boatToTrim.boat), seed);
      for (const slots of scope === 'both' ? sets : sets.slice(0, 1)) compare(slots, rows, tally);
    }
  }
  return tally;
}

describe('the cheapest pieces', { timeout: 120_000 }, () => {
  test('are those of a general-purpose solver, and so are the cases that have none', () => {
    const { feasible, infeasible } = overBoats(BOATS, {});
    expect(feasible).toBeGreaterThan(3 * BOATS);
    expect(infeasible).toBeGreaterThan(BOATS / 2);
  });

  test('of whole pieces too', () => {
    const { feasible, infeasible } = overBoats(WHOLE, { stock: 'pieces' });
    expect(feasible).toBeGreaterThan(3 * WHOLE);
    expect(infeasible).toBeGreaterThan(WHOLE / 2);
  });
});
