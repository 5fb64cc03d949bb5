import { assembleBodies } from '../../bodies/assemble.ts';
import { withoutPieces } from '../balance/brought.ts';
import type { Row } from '../balance/program.ts';
import { referenceFill, submergedRows } from '../balance/submergedRows.ts';
import { surfacedRows, type Target, targetSurface } from '../balance/surfacedRows.ts';
import { wetAsLaid, wetInTheMiddle } from '../balance/wetShare.ts';
import type { Scope } from '../correction.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import type { LaidPieces } from './realise.ts';

/**
 * The balances that pieces must bring about, `part` (0..1) of each limit used up at most. On paper pieces are as wet as
 * the middle of their room; once laid, the rows are drawn up with them aboard, where they are exact, and said for the
 * boat without them.
 */
export function balancesOf({ boat, bodies, surfaced, cache }: BoatToTrim, scope: Scope, part: number) {
  const target: Target = targetSurface(boat, surfaced);
  return (laid: LaidPieces | null): readonly Row[] => {
    const aboard = laid ? assembleBodies(laid.boat, cache) : bodies;
    const wet = laid ? wetAsLaid(new Map(laid.pieces.map((piece, i) => [piece.slot, laid.parts[i]!]))) : wetInTheMiddle;
    const rows = [
      ...(scope === 'submerged' ? [] : surfacedRows(boat, aboard, target, part, wet)),
      ...(scope === 'surfaced' ? [] : submergedRows(boat, aboard, referenceFill(aboard), part)),
    ];
    return laid ? rows.map(row => withoutPieces(row, laid.pieces)) : rows;
  };
}
