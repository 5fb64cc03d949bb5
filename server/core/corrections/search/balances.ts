import { assembleBodies } from '../../bodies/assemble.ts';
import { withoutDone } from '../balance/brought.ts';
import { type OpenLoads, openLoads } from '../balance/open.ts';
import type { BalanceRow, Scope } from '../balance/row.ts';
import { referenceFill, submergedRows } from '../balance/submergedRows.ts';
import { surfacedRows, type Target, targetSurface } from '../balance/surfacedRows.ts';
import { wetAsLaid, wetInTheMiddle } from '../balance/wetShare.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import type { DoneBoat } from './realise.ts';

/**
 * The balances that pieces and moves must bring about, `part` (0..1) of each limit used up at most. On paper pieces are as
 * wet as the middle of their room; once laid, the rows are drawn up with them aboard, where they are exact, and said for
 * the boat without them.
 */
export function balancesOf(boatToTrim: BoatToTrim, scope: Scope, part: number) {
  const { boat, bodies, surfaced, cache } = boatToTrim;
  const target: Target = targetSurface(boat, surfaced);
  const margins = { part, open: openIn(boatToTrim) };
  return (laid: DoneBoat | null): readonly BalanceRow[] => {
    const aboard = laid ? assembleBodies(laid.boat, cache) : bodies;
    const wet = laid ? wetAsLaid(new Map(laid.pieces.map((piece, i) => [piece.slot, laid.parts[i]!]))) : wetInTheMiddle;
    const rows = [
      ...(scope === 'submerged' ? [] : surfacedRows(boat, aboard, target, margins, wet)),
      ...(scope === 'surfaced' ? [] : submergedRows(boat, aboard, referenceFill(aboard), margins)),
    ];
    return laid ? rows.map(row => withoutDone(row, laid.pieces, laid.moves)) : rows;
  };
}

/** What is left open of the boat's balances. */
export const openIn = ({ boat, bodies, surfaced, submerged, uncertainties }: BoatToTrim): OpenLoads =>
  openLoads(bodies, surfaced, submerged, uncertainties, boat.length);
