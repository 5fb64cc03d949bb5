import type { Correction } from './correction.ts';
import type { Piece } from './levers.ts';
import { type Aim, type Band, cheapestPieces, type Row } from './program.ts';

/** Why the pieces are what they are: what each does in each balance, and what a little more would do. */
export interface Explanation {
  readonly balances: readonly BalanceShare[];
  readonly nextGrams: readonly NextGram[];
  readonly relaxations: readonly Relaxation[];
}

/** One balance: what was missing, and what each piece brings of it, in the row's own unit (kg or kg·m). */
export interface BalanceShare {
  readonly row: Row;
  readonly brought: readonly number[];
}

/** What one more gram of a piece would change: m, rad or a fraction, by row. */
export interface NextGram {
  readonly piece: Piece;
  readonly changes: readonly { readonly row: Row; readonly change: number }[];
}

/** What a limit wider by a tenth would save, g of lead (foam priced in): the programme's shadow prices, by solving again. */
export interface Relaxation {
  readonly row: Row;
  readonly saves: number;
}

const GRAM = 1e-3;
const WIDER = 1.1;

export function explainCorrection(correction: Correction, rows: readonly Row[]): Explanation {
  const { pieces } = correction;
  const levers = pieces.map(piece => piece.lever);
  const cost = cheapestPieces(levers, rows)?.cost;
  return {
    balances: rows.map(row => ({ row, brought: pieces.map(piece => broughtBy(piece, row, piece.mass)) })),
    nextGrams: pieces.map(piece => ({
      piece,
      changes: rows.map(row => ({ row, change: broughtBy(piece, row, GRAM) * row.perUnit })),
    })),
    relaxations:
      cost === undefined
        ? []
        : rows.flatMap(row => {
            const relaxed = rows.map(other => (other === row ? { ...row, wanted: widened(row.wanted) } : other));
            const saves = cost - (cheapestPieces(levers, relaxed)?.cost ?? cost);
            return saves > WORTH_SAYING ? [{ row, saves }] : [];
          }),
  };
}

/** Savings below this are nothing on a kitchen scale, g. */
const WORTH_SAYING = 0.1;

/** What so much of the piece, where it lies, brings in a row. */
function broughtBy({ lever, station, offset }: Piece, row: Row, mass: number): number {
  const { perMass, perAft, perStarboard } = row.effectOf(lever);
  const aft = mass * ((station[0] + station[1]) / 2 - lever.station[0]);
  const starboard = mass * (offset - lever.offset[0]);
  return perMass * mass + perAft * aft + perStarboard * starboard;
}

function widened(wanted: Aim | Band): Aim | Band {
  if ('slack' in wanted) return { ...wanted, slack: wanted.slack * WIDER };
  const size = (end: number) => Math.abs(end) * (WIDER - 1);
  return { least: wanted.least - size(wanted.least), most: wanted.most + size(wanted.most) };
}
