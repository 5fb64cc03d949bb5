import { describe, expect, test } from 'vitest';
import { broughtBy } from '../../server/core/corrections/balance/brought.ts';
import { cheapestPieces } from '../../server/core/corrections/balance/program.ts';
import type { BalanceRow, Stretch } from '../../server/core/corrections/balance/row.ts';
import { findSlots, type Piece, type Slot } from '../../server/core/corrections/room/slots.ts';
import { balancesOf } from '../../server/core/corrections/search/balances.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { corrected, firstOfBoth, outOfLimits } from '../helpers/corrected.ts';
import { probe } from '../helpers/probe.ts';

/*
 * Whole pieces against every way of laying them: all counts that fit the bay, the middle of the row at each of the marks
 * of a grid. The check value is the cheapest of those that keep every row.
 */

const GRID = 33;
/** The grid's best may miss the true best place by half a mark: so many g, or a twelfth where being off its aim is dear. */
const GRID_LOSS = 0.6;

interface FloatedBoat {
  readonly cost: number;
  /** What it brings in each row. */
  readonly brought: readonly number[];
}

/** Every way to lay pieces in one slot, none at all included. */
function waysOf(slot: Slot, rows: readonly BalanceRow[]): readonly FloatedBoat[] {
  const room = slot.station[1] - slot.station[0];
  const most = room * slot.massPerLength;
  const [small, large] = [slot.pieces[0]!, slot.pieces[1]!];
  const masses = new Set<number>();
  for (let a = 0; a * small <= most; a++) {
    for (let b = 0; a * small + b * large <= most; b++) masses.add(Math.round((a * small + b * large) * 1e6) / 1e6);
  }
  const nothing: FloatedBoat = { cost: 0, brought: rows.map(() => 0) };
  return [...masses].flatMap(mass => {
    if (mass === 0) return [nothing];
    const half = mass / slot.massPerLength / 2;
    return Array.from({ length: GRID }, (_, g): FloatedBoat => {
      const middle = slot.station[0] + half + ((room - 2 * half) * g) / (GRID - 1);
      const offset = (slot.offset[0] + slot.offset[1]) / 2;
      const piece: Piece = { slot, mass, station: [middle - half, middle + half], offset, counts: [] };
      return { cost: mass * 1e3, brought: rows.map(row => broughtBy(piece, row)) };
    });
  });
}

/** The least cost over every way to lay pieces in these slots; infinite when no way keeps the rows. */
function bruteForce(slots: readonly Slot[], rows: readonly BalanceRow[]): number {
  const [first, second] = slots.map(slot => waysOf(slot, rows));
  const others = second ?? [{ cost: 0, brought: rows.map(() => 0) }];
  let best = Number.POSITIVE_INFINITY;
  for (const a of first!) {
    for (const b of others) {
      if (a.cost + b.cost >= best) continue;
      best = Math.min(best, a.cost + b.cost + missed(rows, a, b));
    }
  }
  return best;
}

/** What it costs, in g, to be so far off along stretches. */
const alongStretches = (stretches: readonly Stretch[], off: number): number => {
  let [cost, left] = [0, off];
  for (const { size, price } of stretches) {
    cost += price * Math.min(size, left);
    left = Math.max(0, left - size);
  }
  return cost;
};

/** What missing the aims costs; infinite outside the slack or a band. */
function missed(rows: readonly BalanceRow[], a: FloatedBoat, b: FloatedBoat): number {
  let cost = 0;
  for (const [r, { wanted }] of rows.entries()) {
    const brought = a.brought[r]! + b.brought[r]!;
    if ('slack' in wanted) {
      const miss = Math.abs(wanted.value - brought) / wanted.slack;
      if (miss > 1 + 1e-9) return Number.POSITIVE_INFINITY;
      cost += alongStretches(wanted.off, Math.abs(wanted.value - brought));
    } else if (brought < wanted.least - 1e-12 || brought > wanted.most + 1e-12) {
      return Number.POSITIVE_INFINITY;
    } else {
      const comfortable = wanted.near.reduce((least, { size }) => least + size, wanted.least);
      cost += alongStretches([...wanted.near].reverse(), Math.max(0, comfortable - brought));
    }
  }
  return cost;
}

const boatWith = (battery: string, pieces: string) =>
  probe(
    ['station: 150 to 250 mm', `station: ${battery}`],
    ['lead: { strip: 12 x 6 mm }', `lead: { pieces: ${pieces} }`],
    // Lighter by what the pieces may weigh.
    [
      boatText`
        mass: 600 g
            station: 120`,
      boatText`
        mass: 560 g
            station: 120`,
    ],
  );

const BATTERIES = [
  '146 to 246 mm',
  '148 to 248 mm',
  '150 to 250 mm',
  '153 to 253 mm',
  '156 to 256 mm',
  '162 to 262 mm',
];
const STOCKS = ['[5 g, 10 g]', '[7 g, 12 g]'];

describe('whole pieces', { timeout: 60_000 }, () => {
  test('are never dearer than the best of all counts and places, in one bay or two', () => {
    let hits = 0;
    let none = 0;
    for (const stock of STOCKS) {
      for (const battery of BATTERIES) {
        const { boatToTrim } = heard(boatWith(battery, stock));
        const rows = balancesOf(boatToTrim!, 'both', 0.75)(null);
        const [fore, aft] = findSlots(boatToTrim!.boat);
        for (const slots of [[fore!], [aft!], [fore!, aft!]]) {
          const best = bruteForce(slots, rows);
          const ours = cheapestPieces(slots, rows);
          if (best === Number.POSITIVE_INFINITY) {
            none++;
            continue;
          }
          hits++;
          expect(ours).not.toBeNull();
          expect(ours!.cost).toBeLessThanOrEqual(best + 1e-6);
          expect(ours!.cost).toBeGreaterThan(best - Math.max(GRID_LOSS, 0.08 * best));
        }
      }
    }
    expect(hits).toBeGreaterThan(10);
    expect(none).toBeGreaterThan(5);
  });

  test('go into the file as so many of each, and trim the boat', () => {
    let seen = 0;
    for (const stock of STOCKS) {
      for (const battery of BATTERIES) {
        const analysis = heard(boatWith(battery, stock));
        const correction = firstOfBoth(analysis);
        if (!correction) continue;
        seen++;
        for (const [i, { counts, slot, mass }] of correction.pieces.entries()) {
          const made = counts.reduce((sum, count, k) => sum + count * slot.pieces[k]!, 0);
          expect(made).toBeCloseTo(mass, 12);
          expect(correction.parts[i]!.mass).toBeCloseTo(made, 9);
          // They lie side by side where there is room for them.
          const [from, to] = correction.pieces[i]!.station;
          expect((to - from) * slot.massPerLength).toBeCloseTo(made, 9);
          expect(from).toBeGreaterThan(slot.station[0] - 1e-9);
          expect(to).toBeLessThan(slot.station[1] + 1e-9);
          const words = counts.flatMap((count, k) => (count > 0 ? [`${count} x ${slot.pieces[k]! * 1e3} g`] : []));
          expect(words.length).toBeGreaterThan(0);

          expect(correction.entries[i]!.comment).toContain(words.join(' and '));
        }
        expect(outOfLimits(heard(corrected(analysis, correction)))).toEqual([]);
      }
    }
    expect(seen).toBeGreaterThan(5);
  });
});
