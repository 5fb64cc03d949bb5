import type { Boat } from '../../boat/boat.ts';
import type { Steps } from '../../steps/steps.ts';
import { scopeOf } from '../balance/row.ts';
import { isWithin } from '../kinds/isWithin.ts';
import { proposeMoves } from '../kinds/moves.ts';
import { anewAs } from '../room/anewAs.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { correct } from '../search/correct.ts';
import { piecesWords, wayOf } from '../words/correctionTitle.ts';

/**
 * What the boat changed in some way takes besides to keep every limit, floated by the full model, as the end of a sentence:
 * nothing, something moved, or pieces. Null where neither will do.
 */
export function* keepsWith(boatToTrim: BoatToTrim, changed: Boat): Steps<string | null> {
  yield;
  const anew = anewAs(boatToTrim, changed);
  if (isWithin(anew)) return ', it would keep every limit as it is';
  const moved = yield* proposeMoves(anew);
  if (moved) {
    const moves = moved.moves.map(move => `“${move.part.name}” moved ${wayOf(move, changed.units)}`);
    return `, and ${moves.join(' and ')}, it would keep every limit`;
  }
  const correction = yield* correct(anew, scopeOf(changed));
  return correction && `, and ${piecesWords(correction.pieces, changed)}, it would keep every limit`;
}
