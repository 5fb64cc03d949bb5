import { assembleBodies } from '../bodies/assemble.ts';
import { withoutPieces } from './brought.ts';
import type { Scope } from './correction.ts';
import type { Patient } from './patient.ts';
import type { Row } from './program.ts';
import type { LaidPieces } from './realise.ts';
import { referenceFill, submergedRows } from './submergedRows.ts';
import { surfacedRows, type Target, targetSurface } from './surfacedRows.ts';
import { wetAsLaid, wetInTheMiddle } from './wetShare.ts';

/**
 * The balances that pieces must bring about, `part` (0..1) of each limit used up at most. On paper pieces are as wet as
 * the middle of their room; once laid, the rows are drawn up with them aboard, where they are exact, and said for the
 * boat without them.
 */
export function balancesOf({ boat, bodies, surfaced, shelf }: Patient, scope: Scope, part: number) {
  const target: Target = targetSurface(boat, surfaced);
  return (laid: LaidPieces | null): readonly Row[] => {
    const aboard = laid ? assembleBodies(laid.boat, shelf) : bodies;
    const wet = laid
      ? wetAsLaid(new Map(laid.pieces.map((piece, i) => [piece.lever, laid.parts[i]!])))
      : wetInTheMiddle;
    const rows = [
      ...(scope === 'submerged' ? [] : surfacedRows(boat, aboard, target, part, wet)),
      ...(scope === 'surfaced' ? [] : submergedRows(boat, aboard, referenceFill(aboard), part)),
    ];
    return laid ? rows.map(row => withoutPieces(row, laid.pieces)) : rows;
  };
}
