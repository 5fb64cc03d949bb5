import type { Piece } from './levers.ts';
import type { Aim, Band, Row } from './program.ts';

/** What a piece brings in a row, where it lies, in the row's own unit: by its length, for the mass is rounded to the scale. */
export function broughtBy({ lever, station, offset }: Piece, row: Row): number {
  const { perMass, perAft, perStarboard } = row.effectOf(lever);
  const mass = (station[1] - station[0]) * lever.massPerLength;
  const aft = (station[0] + station[1]) / 2 - lever.station[0];
  return mass * (perMass + perAft * aft + perStarboard * (offset - lever.offset[0]));
}

/** The row of a boat that has these pieces in it already, as a row of the boat without them. */
export function withoutPieces(row: Row, pieces: readonly Piece[]): Row {
  const brought = pieces.reduce((sum, piece) => sum + broughtBy(piece, row), 0);
  return { ...row, wanted: moved(row.wanted, brought) };
}

const moved = (wanted: Aim | Band, by: number): Aim | Band =>
  'slack' in wanted ? { ...wanted, value: wanted.value + by } : { least: wanted.least + by, most: wanted.most + by };
