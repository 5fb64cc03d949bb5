import type { Boat } from '../boat/boat.ts';
import type { Correction } from '../corrections/correction.ts';
import { isWithin } from '../corrections/kinds/isWithin.ts';
import { refusalWords } from '../corrections/kinds/refusal.ts';
import { proposeCorrections } from '../corrections/propose.ts';
import type { BoatToTrim } from '../corrections/room/boatToTrim.ts';
import { piecesWords } from '../corrections/words/correctionTitle.ts';
import { cutLines } from '../report/bench.ts';
import type { Steps } from '../steps/steps.ts';
import type { LoosePiece } from './day.ts';

/** What to do with temporary lead and foam. */
export interface Advice {
  readonly state: 'pieces' | 'within' | 'none';
  readonly words: string;
  /** To put aboard, one after the other. */
  readonly pieces: readonly AdvisedPiece[];
}

interface AdvisedPiece {
  readonly piece: LoosePiece;
  /** "69 g lead in “keel aft”". */
  readonly head: string;
  /** How to cut it, where it goes, how it is fixed. */
  readonly lines: readonly string[];
}

/** What to do, and for drawing it the correction that it comes from, with the boat that this one corrects. */
export interface Advised {
  readonly advice: Advice;
  readonly drawn: { readonly boat: Boat; readonly correction: Correction } | null;
}

/** The best that pieces alone can do for the boat as it is aboard: what is moved or recut is work for the bench. */
export function* adviseAtPool(found: BoatToTrim | null): Steps<Advised> {
  if (!found) return nothing('none', 'Nothing can be proposed: see what is said of the boat above.');
  if (isWithin(found))
    return nothing('within', 'It is within its limits by all that was read. There is nothing to put aboard.');
  const boatToTrim = { ...found, boat: heldStill(found.boat) };
  const corrections = yield* proposeCorrections(boatToTrim);
  const correction = corrections.find(({ kind, pieces }) => kind !== 'carry' && pieces.length > 0);
  if (!correction) return nothing('none', whyNone(boatToTrim));
  const { boat } = boatToTrim;
  const words =
    correction.kind === 'nearest'
      ? 'This is the nearest that loose pieces can bring it; not all limits are kept then.'
      : correction.condition === 'both'
        ? 'Then it should be within its limits.'
        : `Then it should be within its limits ${correction.condition}.`;
  const pieces = correction.pieces.map((piece, i): AdvisedPiece => {
    const { name } = correction.parts[i]!;
    const fields = correction.entries[i]!.fields.filter(([key]) => key !== 'name' && key !== 'fixed');
    return {
      piece: { name, fields },
      head: piecesWords([piece], boat),
      lines: cutLines(piece, name, boat, 'comes out').map(line => line.trim()),
    };
  });
  return { advice: { state: 'pieces', words, pieces }, drawn: { boat, correction } };
}

const nothing = (state: 'within' | 'none', words: string): Advised => ({
  advice: { state, words, pieces: [] },
  drawn: null,
});

/** At the poolside nothing in the boat is moved. */
const heldStill = (boat: Boat): Boat => ({
  ...boat,
  payload: boat.payload.map(part => ({ ...part, fixed: true, pinned: true })),
});

function whyNone(boatToTrim: BoatToTrim): string {
  if (boatToTrim.boat.bays.length === 0)
    return 'The file names no bays, so there is no room for loose lead or foam. Write down under “bays:” where some can go.';
  const words = refusalWords(boatToTrim) ?? 'What the bays and the stock allow cannot be cut to do it.';
  return `No loose lead or foam brings it within its limits. ${words}`;
}
