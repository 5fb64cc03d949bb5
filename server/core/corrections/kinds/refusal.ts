import { massText, momentText } from '../../wording/numbers.ts';
import { broughtBy, broughtByMove } from '../balance/brought.ts';
import { cheapestPieces } from '../balance/program.ts';
import { type BalanceRow, balanceName, rowOf, scopeOf } from '../balance/row.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import type { Move } from '../room/movers.ts';
import { findMovers } from '../room/movers.ts';
import { shifted } from '../room/shift.ts';
import { type Slot, slotSets } from '../room/slots.ts';
import { balancesOf } from '../search/balances.ts';

/** Less of a limit than this is rounding. */
const NOTHING = 1e-3;

/**
 * Which limits are in the way, and by how much, with all that the bays, the stock and moves allow: what the nearest that the
 * programme finds leaves. Null when on paper nothing is in the way, so that only sawing to the tape is.
 */
export function refusalWords(boatToTrim: BoatToTrim): string | null {
  const { boat } = boatToTrim;
  const rows = balancesOf(boatToTrim, scopeOf(boat), 1)(null);
  const left = slotSets(boat, false)
    .map(slots => missesOf(slots, rows, boatToTrim))
    .reduce((least, misses) => (sumOf(misses) < sumOf(least) ? misses : least));
  const dry = boat.waterline && !rowOf(rows, 'surfaced', 'draft') ? [NO_SURFACE] : [];
  const tooFar = left
    .filter(({ part }) => part > NOTHING)
    .sort((a, b) => b.part - a.part)
    .map(({ row, by }) => {
      const size = row.measure === 'mass' ? massText(Math.abs(by), boat.units) : momentText(Math.abs(by), boat.units);
      return `${balanceName(row)} by ${size}${wayOf(row, by)}`;
    });
  const words = [...dry, ...tooFar];
  if (words.length === 0) return null;
  const means = [
    ...(boat.bays.length > 0 ? ['all that the bays take'] : []),
    ...(findMovers(boatToTrim).length > 0 ? ['what may be moved'] : []),
  ];
  return `In the way${means.length > 0 ? `, with ${means.join(' and with ')}` : ''}: ${words.join(', ')}.`;
}

/** No balance is drawn up for a surface that nothing would float at. */
const NO_SURFACE = 'the painted waterline, which lies where the water would cut no part of the hull';

interface Miss {
  readonly row: BalanceRow;
  /** What is missing beyond the limit, in the row's own unit. */
  readonly by: number;
  /** The same in limits. */
  readonly part: number;
}

const sumOf = (misses: readonly Miss[]): number => misses.reduce((sum, { part }) => sum + part, 0);

function missesOf(slots: readonly Slot[], rows: readonly BalanceRow[], boatToTrim: BoatToTrim): readonly Miss[] {
  const movers = findMovers(boatToTrim);
  const solution = cheapestPieces(slots, rows, { elastic: true, movers });
  const pieces = (solution?.shares ?? []).map(({ slot, mass, station, offset, counts }) => {
    const half = mass / slot.massPerLength / 2;
    return { slot, mass, station: [station - half, station + half] as const, offset, counts };
  });
  const moves = (solution?.shifts ?? []).map(
    ({ mover: { part }, along, across }): Move => ({ part, moved: shifted(part, along, across), along, across }),
  );
  return rows.map(row => {
    const brought =
      pieces.reduce((sum, piece) => sum + broughtBy(piece, row), 0) +
      moves.reduce((sum, move) => sum + broughtByMove(move, row), 0);
    const { wanted } = row;
    if ('least' in wanted) {
      const by = Math.max(0, wanted.least - brought);
      return {
        row,
        by,
        part:
          by /
          Math.max(
            wanted.near.reduce((sum, { size }) => sum + size, 0),
            1e-9,
          ),
      };
    }
    const off = wanted.value - brought;
    const by = Math.sign(off) * Math.max(0, Math.abs(off) - wanted.slack);
    return { row, by, part: Math.abs(by) / wanted.slack };
  });
}

/** Which way weight is missing. */
function wayOf({ figure, measure, axis }: BalanceRow, by: number): string {
  if (axis === 'along') return by > 0 ? ' aft' : ' forward';
  if (axis === 'across') return by > 0 ? ' to starboard' : ' to port';
  if (measure === 'moment') return ' of weight lower down';
  const way = by > 0 ? ' of weight in water too little' : ' of weight in water too much';
  return figure === 'fill' ? `${way}, or a ${by > 0 ? 'larger' : 'smaller'} tank` : way;
}
