import type { BodyCache } from '../../bodies/assemble.ts';
import { FIGURES } from '../../figures/table.ts';
import { broughtBy, broughtByMove } from '../balance/brought.ts';
import { effectOfFurther, effectOfMore, type FigureChange, type Further } from '../balance/partEffects.ts';
import { cheapestPieces, priceOfPieces } from '../balance/program.ts';
import type { Aim, BalanceRow, Band } from '../balance/row.ts';
import type { Correction } from '../correction.ts';
import type { Mover } from '../room/movers.ts';

/** Why the pieces are what they are: what each does in each balance, and what a little more would do. */
export interface CorrectionExplanation {
  readonly balances: readonly BalanceShare[];
  /** What a step of the scale more of each piece would change. */
  readonly more: readonly (readonly FigureChange[])[];
  /** What a mark of the tape further of each move would change. */
  readonly further: readonly Further[];
  readonly relaxations: readonly Relaxation[];
}

/** One balance: what was missing, and what each piece brings of it, in the row's own unit (kg or kg·m). */
interface BalanceShare {
  readonly row: BalanceRow;
  readonly brought: readonly number[];
  /** The same of each move. */
  readonly byMoves: readonly number[];
}

/** What a limit wider by a tenth would save in pieces, g of lead (foam priced in), by solving again. */
interface Relaxation {
  readonly row: BalanceRow;
  readonly saves: number;
}

const WIDER = 1.1;

/** `movers` are what the correction moves. */
export function explainCorrection(
  correction: Correction,
  rows: readonly BalanceRow[],
  movers: readonly Mover[],
  cache: BodyCache,
): CorrectionExplanation {
  const { pieces, moves } = correction;
  const slots = pieces.map(piece => piece.slot);
  const priceWith = (wanted: readonly BalanceRow[]): number | undefined => {
    const solution = cheapestPieces(slots, wanted, { movers });
    return solution ? priceOfPieces(solution.shares) : undefined;
  };
  const price = priceWith(rows);
  return {
    balances: rows.map(row => ({
      row,
      brought: pieces.map(piece => broughtBy(piece, row)),
      byMoves: moves.map(move => broughtByMove(move, row)),
    })),
    more: correction.parts.map(part => effectOfMore(part, correction, cache, FIGURES)),
    further: moves.map(move => effectOfFurther(move, correction, cache, FIGURES)),
    relaxations:
      price === undefined
        ? []
        : rows.flatMap(row => {
            const relaxed = rows.map(other => (other === row ? { ...row, wanted: widened(row.wanted) } : other));
            const saves = price - (priceWith(relaxed) ?? price);
            return saves > WORTH_SAYING ? [{ row, saves }] : [];
          }),
  };
}

/** Savings below this are nothing on a kitchen scale, g. */
const WORTH_SAYING = 0.1;

function widened(wanted: Aim | Band): Aim | Band {
  if ('slack' in wanted)
    return {
      ...wanted,
      slack: wanted.slack * WIDER,
      off: wanted.off.map(({ size, price }) => ({ size: size * WIDER, price: price / WIDER })),
    };
  const size = (end: number) => Math.abs(end) * (WIDER - 1);
  return { ...wanted, least: wanted.least - size(wanted.least), most: wanted.most + size(wanted.most) };
}
