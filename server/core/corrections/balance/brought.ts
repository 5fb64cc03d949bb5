import type { Move } from '../room/movers.ts';
import type { Piece } from '../room/slots.ts';
import type { Aim, BalanceRow, Band } from './row.ts';

/** What a piece brings in a row, where it lies, in the row's own unit: by its length, for the mass is rounded to the scale. */
export function broughtBy({ slot, station, offset }: Piece, row: BalanceRow): number {
  const { perMass, perAft, perStarboard } = row.effectOf(slot);
  const mass = (station[1] - station[0]) * slot.massPerLength;
  const aft = (station[0] + station[1]) / 2 - slot.station[0];
  return mass * (perMass + perAft * aft + perStarboard * (offset - slot.offset[0]));
}

/** What a move of something inside a compartment brings in a row. */
export const broughtByMove = ({ part, along, across }: Move, { axis }: BalanceRow): number =>
  axis === null ? 0 : part.mass * (axis === 'along' ? along : across);

/** The row of a boat that has these pieces in it and these parts moved already, as a row of the boat without all that. */
export function withoutDone(row: BalanceRow, pieces: readonly Piece[], moves: readonly Move[]): BalanceRow {
  const brought =
    pieces.reduce((sum, piece) => sum + broughtBy(piece, row), 0) +
    moves.reduce((sum, move) => sum + broughtByMove(move, row), 0);
  return { ...row, wanted: moved(row.wanted, brought) };
}

const moved = (wanted: Aim | Band, by: number): Aim | Band =>
  'slack' in wanted
    ? { ...wanted, value: wanted.value + by }
    : { ...wanted, least: wanted.least + by, most: wanted.most + by };
