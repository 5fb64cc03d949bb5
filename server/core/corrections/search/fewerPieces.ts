import type { Steps } from '../../steps/steps.ts';
import { priceOfPieces } from '../balance/program.ts';
import type { CorrectedBoat } from '../correction.ts';
import type { Mover } from '../room/movers.ts';
import type { Piece } from '../room/slots.ts';
import { lay, type Realised, slide, type Workbench } from './realise.ts';
import { PRICE_OF_ONE_MORE } from './search.ts';

/**
 * The same with fewer of the stock's whole pieces, one after the other, as long as that comes to no more than the pieces are
 * worth avoiding: the programme on paper knows neither what the full model says nor how near two numbers of pieces are.
 * The bench is one with whole limits: what need not be cut ends where it was meant to.
 */
export function* withFewer(found: Realised, movers: readonly Mover[], bench: Workbench): Steps<Realised> {
  let best = found;
  // Ends: each round takes at least one piece away.
  for (;;) {
    const rows = bench.rowsFor(best.laid);
    const fewer: Realised[] = [];
    for (const pieces of fewerThan(best.laid.pieces)) {
      yield;
      const slid = slide(pieces, rows, movers, bench);
      const laid: CorrectedBoat | null = slid && lay(slid.pieces, slid.moves, bench);
      if (laid?.left.length === 0) fewer.push({ laid, score: bench.scoreOf(laid) });
    }
    const least = fewer.sort((a, b) => a.score - b.score)[0];
    const worth = PRICE_OF_ONE_MORE * priceOfPieces(best.laid.pieces);
    if (!least || least.score >= best.score + worth) return best;
    best = least;
  }
}

/** Each way to leave out one whole piece; the last of a row stays. */
const fewerThan = (pieces: readonly Piece[]): readonly (readonly Piece[])[] =>
  pieces.flatMap((piece, i) =>
    piece.counts.flatMap((count, kind) => {
      const left = piece.mass - piece.slot.pieces[kind]!;
      if (count === 0 || left < HAIR) return [];
      const counts = piece.counts.map((other, k) => (k === kind ? other - 1 : other));
      return [pieces.with(i, { ...piece, mass: left, counts })];
    }),
  );

/** Less is no piece, kg. */
const HAIR = 1e-6;
