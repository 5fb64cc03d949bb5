import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SURFACED } from '../../server/core/conditions/loadingCondition.ts';
import { cheapestPieces } from '../../server/core/corrections/balance/program.ts';
import type { Aim, BalanceRow, Band } from '../../server/core/corrections/balance/row.ts';
import type { Slot } from '../../server/core/corrections/room/slots.ts';
import { runsOf } from '../helpers/long.ts';

/** A slot whose pieces lie at one station: its strip is so heavy that a piece has no length to speak of. */
function slotAt(station: number, pieces: readonly number[] = [], material: 'lead' | 'foam' = 'lead'): Slot {
  const bay = {
    path: [],
    name: `at ${station}`,
    takes: material,
    inside: 'hold',
    from: [0, 0, 0],
    to: [0, 0, 0],
  } as const;
  return {
    bay,
    material,
    isShot: false,
    density: 11340,
    breadth: 0.01,
    depth: 0.01,
    strips: [1, 1],
    massPerLength: 1e6,
    pieces,
    station: [station - 1e-6, station + 1e-6],
    offset: [-1e-6, 1e-6],
    height: 0,
  };
}

/** Weight, and its moment about station 0: `k` is what a kilogram weighs there (less in the water). */
const massRow = (wanted: Aim | Band, k: (slot: Slot) => number = () => 1): BalanceRow => ({
  condition: SURFACED,
  figure: 'draft',
  measure: 'mass',
  axis: null,
  effectOf: slot => ({ perMass: k(slot), perAft: 0, perStarboard: 0 }),
  wanted,
});
const momentRow = (wanted: Aim | Band, k: (slot: Slot) => number = () => 1): BalanceRow => ({
  condition: SURFACED,
  figure: 'trim',
  measure: 'moment',
  axis: 'along',
  effectOf: slot => ({ perMass: k(slot) * slot.station[0], perAft: k(slot), perStarboard: 0 }),
  wanted,
});
const GRAMS_PER_SLACK = 2;
/** An aim that costs 2 g of lead to miss by its whole slack. */
const missable = (value: number, slack: number): Aim => ({
  value,
  slack,
  off: [{ size: slack, price: GRAMS_PER_SLACK / slack }],
});
const exactly = (value: number): Aim => missable(value, 1e-9);

describe('two stations', () => {
  it('share a weight by the slot rule', () => {
    // L-10: 0.8 kg with its centroid at -0.05 m, between -0.30 and +0.25 m: 0.436364 and 0.363636 kg (derived).
    const slots = [slotAt(-0.3), slotAt(0.25)];
    const solution = cheapestPieces(slots, [massRow(exactly(0.8)), momentRow(exactly(-0.04))]);
    expect(solution?.shares.map(share => share.mass)).toEqual([
      expect.closeTo(0.436364, 5),
      expect.closeTo(0.363636, 5),
    ]);
  });
  it('cannot bring a centroid that lies outside them', () => {
    const slots = [slotAt(-0.3), slotAt(0.25)];
    expect(cheapestPieces(slots, [massRow(exactly(0.8)), momentRow(exactly(0.3))])).toBeNull();
  });
  it('take no more than the band asks', () => {
    const solution = cheapestPieces([slotAt(0.2)], [massRow({ least: 0.12, most: 0.3, near: [] })]);
    expect(solution?.shares[0]?.mass).toBeCloseTo(0.12, 9);
  });
});

describe('a long piece', () => {
  it('keeps clear of both ends of its room', () => {
    // 200 g of a strip of 1 kg/m are 200 mm: in a room from 0 to 300 mm the middle lies between 100 and 200 mm.
    const slot: Slot = { ...slotAt(0), massPerLength: 1, station: [0, 0.3] };
    const moments = (value: number) => [massRow(exactly(0.2)), momentRow(exactly(value))];
    expect(cheapestPieces([slot], moments(0.2 * 0.15))?.shares[0]?.station).toBeCloseTo(0.15, 6);
    for (const middle of [0.08, 0.22]) expect(cheapestPieces([slot], moments(0.2 * middle)), `${middle}`).toBeNull();
  });
});

/*
 * The cost that the programme says it minimises: lead in grams, a gram of foam as 30 of lead, and 2 g for an aim that is
 * missed by its whole slack.
 */
/** Slots have a micrometre of room: an aim met to its very edge may seem missed by so much of its slack. */
const EDGE = 5e-4;

function costOf(masses: readonly number[], slots: readonly Slot[], rows: readonly BalanceRow[]): number {
  let cost = masses.reduce((sum, mass, i) => sum + 1e3 * mass * (slots[i]!.material === 'lead' ? 1 : 30), 0);
  for (const row of rows) {
    const reached = masses.reduce((sum, mass, i) => sum + mass * row.effectOf(slots[i]!).perMass, 0);
    if ('least' in row.wanted) {
      if (reached < row.wanted.least - 1e-6 || reached > row.wanted.most + 1e-6) return Number.POSITIVE_INFINITY;
    } else {
      const missed = Math.abs(reached - row.wanted.value) / row.wanted.slack;
      if (missed > 1 + EDGE) return Number.POSITIVE_INFINITY;
      cost += GRAMS_PER_SLACK * missed;
    }
  }
  return cost;
}

/** All masses on a grid, for as many slots. */
const grid = (slots: number, values: readonly number[]): readonly (readonly number[])[] =>
  slots === 0 ? [[]] : grid(slots - 1, values).flatMap(rest => values.map(value => [value, ...rest]));

const small = fc.record({
  stations: fc.uniqueArray(fc.integer({ min: -30, max: 30 }), { minLength: 1, maxLength: 2 }),
  wet: fc.constantFrom(1, 0.912),
  mass: fc.integer({ min: 5, max: 90 }),
  massSlack: fc.integer({ min: 3, max: 20 }),
  moment: fc.integer({ min: -2000, max: 2000 }),
  momentSlack: fc.integer({ min: 100, max: 900 }),
});

describe('the cheapest pieces', { timeout: 120_000 }, () => {
  it('are cheaper than any on a fine grid, and satisfy every row', () => {
    let solved = 0;
    let impossible = 0;
    fc.assert(
      fc.property(small, ({ stations, wet, mass, massSlack, moment, momentSlack }) => {
        const slots = stations.map(cm => slotAt(cm / 100));
        const k = () => wet;
        const rows = [
          massRow(missable(mass / 1e3, massSlack / 1e3), k),
          momentRow(missable(moment / 1e5, momentSlack / 1e5), k),
        ];
        const grams = Array.from({ length: 121 }, (_, i) => i / 1e3);
        const best = Math.min(...grid(slots.length, grams).map(masses => costOf(masses, slots, rows)));
        const solution = cheapestPieces(slots, rows);
        if (!solution) {
          impossible++;
          expect(best).toBe(Number.POSITIVE_INFINITY);
          return;
        }
        solved++;
        const masses = solution.shares.map(share => share.mass);
        expect(Math.min(...masses)).toBeGreaterThanOrEqual(-1e-9);
        const cost = costOf(masses, slots, rows);
        expect(cost).toBeCloseTo(solution.cost, 2);
        expect(cost).toBeLessThan(best + 0.05);
      }),
      runsOf(100, 400),
    );
    expect([solved > 25, impossible > 25]).toEqual([true, true]);
  });

  it('of whole pieces are as cheap as the cheapest of all numbers of them', () => {
    let solved = 0;
    fc.assert(
      fc.property(small, fc.constantFrom([0.005, 0.02], [0.007, 0.011], [0.01]), (it, pieces) => {
        const slots = it.stations.map(cm => slotAt(cm / 100, pieces));
        const rows = [
          massRow(missable(it.mass / 1e3, it.massSlack / 1e3)),
          momentRow(missable(it.moment / 1e5, it.momentSlack / 1e5)),
        ];
        const counts = grid(pieces.length, [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]);
        const sums = [...new Set(counts.map(n => n.reduce((sum, count, i) => sum + count * pieces[i]!, 0)))];
        const masses = sums.filter(sum => sum < 0.13);
        const best = Math.min(...grid(slots.length, masses).map(each => costOf(each, slots, rows)));
        const solution = cheapestPieces(slots, rows);
        if (!solution) {
          expect(best).toBe(Number.POSITIVE_INFINITY);
          return;
        }
        solved++;
        for (const { mass, counts: n } of solution.shares) {
          expect(n.reduce((sum, count, i) => sum + count * pieces[i]!, 0)).toBeCloseTo(mass, 6);
        }
        const cost = costOf(
          solution.shares.map(share => share.mass),
          slots,
          rows,
        );
        expect(Math.abs(cost - best)).toBeLessThan(0.05);
      }),
      runsOf(60, 300),
    );
    expect(solved).toBeGreaterThan(15);
  });
});
