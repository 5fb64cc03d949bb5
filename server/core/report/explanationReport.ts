import type { Analysis } from '../analysis/analysis.ts';
import type { FigureChange } from '../corrections/balance/partEffects.ts';
import { type Aim, type BalanceRow as Balance, balanceName } from '../corrections/balance/row.ts';
import type { Correction } from '../corrections/correction.ts';
import { explain } from '../corrections/propose.ts';
import { PART_OF_LIMIT } from '../corrections/search/correct.ts';
import { wayOf } from '../corrections/words/correctionTitle.ts';
import { changedName, effectWords, littleWords } from '../corrections/words/effectWords.ts';
import { allowedIn } from '../figures/allowed.ts';
import { massText, momentText } from '../wording/numbers.ts';
import type { Paint } from './rows.ts';

/** Why a correction's pieces are what they are: their part in each balance, the next gram, and what a wider limit saves. */
export function explanationReport({ boat, boatToTrim }: Analysis, correction: Correction, paint: Paint): string {
  if (!boatToTrim || correction.pieces.length + correction.moves.length === 0)
    return 'This correction adds and moves nothing, so there is nothing to share out.';
  const { balances, more, further, relaxations } = explain(boatToTrim, correction);
  const { units } = boat;
  const amount = (row: Balance, value: number) => amountWords(row, value, units);
  const names = correction.parts.map(part => part.name);
  const moved = correction.moves.map(({ part }) => part.name);
  const changesWords = (changes: readonly FigureChange[]): string =>
    changes.map(change => `${changedName(change)} ${effectWords(change, units)}`).join(', ');
  return [
    [
      paint.heading('What was missing, and what each piece brings of it'),
      ...balances
        .filter(({ row }) => 'slack' in row.wanted && isAsked(row, boat))
        .map(({ row, brought, byMoves }) => {
          const shares = [
            ...byMoves.map((value, i) => `moving ${moved[i]} ${amount(row, value)}`),
            ...brought.map((value, i) => `${names[i]} ${amount(row, value)}`),
          ].join(', ');
          return `  ${balanceName(row)}: missing ${'slack' in row.wanted ? missingWords(row, row.wanted, units) : ''}; ${shares}`;
        }),
    ].join('\n'),
    [
      paint.heading('What a little more would change'),
      ...further.map(
        ({ move, changes }) => `  ${move.part.name}, another ${wayOf(move, units)}: ${changesWords(changes)}`,
      ),
      ...more.map(
        (changes, i) => `  ${names[i]}, ${littleWords(correction.parts[i]!, units)}: ${changesWords(changes)}`,
      ),
    ].join('\n'),
    [
      paint.heading('A limit wider by a tenth'),
      ...(relaxations.length > 0
        ? relaxations.map(
            ({ row, saves }) => `  of ${balanceName(row)} would save about ${massText(saves / 1e3, units)} of lead`,
          )
        : ['  would save nothing worth weighing']),
    ].join('\n'),
  ].join('\n\n');
}

/** Where no draft is asked, any will do. */
const isAsked = ({ figure, condition }: Balance, boat: Analysis['boat']): boolean =>
  figure !== 'draft' || Number.isFinite(allowedIn('draft', condition, boat).most);

type Units = Analysis['boat']['units'];

const sizeText = ({ measure }: Balance, value: number, units: Units): string =>
  measure === 'mass' ? massText(Math.abs(value), units) : momentText(Math.abs(value), units);

/** What is wanted and how far it may be missed, as the limit has it. */
const missingWords = (row: Balance, { value, slack }: Aim, units: Units): string =>
  `${amountWords(row, value, units)}, give or take ${sizeText(row, slack / PART_OF_LIMIT, units)}`;

/** A weight in water, or a moment with the way that it turns the boat. */
function amountWords(row: Balance, value: number, units: Units): string {
  const size = sizeText(row, value, units);
  if (!/[1-9]/.test(size)) return 'nothing';
  if (row.measure === 'mass') return value < 0 ? `${size} less` : size;
  if (row.figure === 'heel') return `${size} ${value > 0 ? 'to starboard' : 'to port'}`;
  return `${size} ${value > 0 ? 'aft' : 'forward'}`;
}
