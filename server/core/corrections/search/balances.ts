import { assembleBodies } from '../../bodies/assemble.ts';
import { type LoadedCondition, SUBMERGED, SURFACED, submergedOf } from '../../conditions/loadingCondition.ts';
import { withoutDone } from '../balance/brought.ts';
import { type OpenLoads, openLoads } from '../balance/open.ts';
import { type BalanceRow, isInScope, type Scope } from '../balance/row.ts';
import { referenceFill, submergedRows } from '../balance/submergedRows.ts';
import { type Margins, surfacedRows, targetSurface } from '../balance/surfacedRows.ts';
import { type WetShare, wetAsLaid, wetInTheMiddle } from '../balance/wetShare.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { inOthers } from '../room/inOthers.ts';
import type { DoneBoat } from './realise.ts';

/**
 * The balances that pieces and moves must bring about, `part` (0..1) of each limit used up at most. On paper pieces are as
 * wet as the middle of their room; once laid, the rows are drawn up with them aboard, where they are exact, and said for
 * the boat without them.
 */
export function balancesOf(boatToTrim: BoatToTrim, scope: Scope, part: number) {
  const { boat, bodies, surfaced, cache } = boatToTrim;
  const target = targetSurface(boat, SURFACED, surfaced);
  const margins = { part, open: openIn(boatToTrim) };
  return (laid: DoneBoat | null): readonly BalanceRow[] => {
    const aboard = laid ? assembleBodies(laid.boat, cache) : bodies;
    const wet = laid ? wetAsLaid(new Map(laid.pieces.map((piece, i) => [piece.slot, laid.parts[i]!]))) : wetInTheMiddle;
    const others = laid ? inOthers({ ...boatToTrim, boat: laid.boat }, cache) : boatToTrim.others;
    const rows = [
      ...(target && isInScope(SURFACED, scope, boat) ? surfacedRows(boat, aboard, target, margins, wet) : []),
      ...(isInScope(SUBMERGED, scope, boat)
        ? submergedRows(boat, aboard, { condition: submergedOf(boat), fill: referenceFill(aboard) }, margins)
        : []),
      ...others
        .filter(({ condition }) => isInScope(condition, scope, boat))
        .flatMap(inCondition => rowsIn(inCondition, boatToTrim, margins, wet)),
    ];
    return laid ? rows.map(row => withoutDone(row, laid.pieces, laid.moves)) : rows;
  };
}

/** The balances of a loading condition of the builder's own; where nothing says how it should lie there, none. */
function rowsIn(
  inCondition: LoadedCondition,
  { boat }: BoatToTrim,
  margins: Margins,
  wet: WetShare,
): readonly BalanceRow[] {
  const { condition, bodies } = inCondition;
  if (inCondition.where === 'submerged')
    return submergedRows(boat, bodies, { condition, fill: referenceFill(bodies) }, margins);
  const target = targetSurface(boat, condition, inCondition.state);
  return target ? surfacedRows(boat, bodies, target, margins, wet) : [];
}

/** What is left open of the boat's balances. */
export const openIn = (boatToTrim: BoatToTrim): OpenLoads =>
  openLoads(boatToTrim.bodies, boatToTrim, boatToTrim.uncertainties, boatToTrim.boat.length);
