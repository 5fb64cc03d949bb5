import type { Analysis } from '../analysis.ts';
import type { Correction } from '../corrections/correction.ts';
import type { Row as Balance } from '../corrections/program.ts';
import { explain } from '../corrections/propose.ts';
import { lengthText, massText, momentText, percentText } from '../wording/numbers.ts';
import type { Paint } from './rows.ts';

/** Why a correction's pieces are what they are: their part in each balance, the next gram, and what a wider limit saves. */
export function explanationReport({ boat, patient }: Analysis, correction: Correction, paint: Paint): string {
  if (!patient || correction.pieces.length === 0)
    return 'This correction adds nothing, so there is nothing to share out.';
  const { balances, nextGrams, relaxations } = explain(patient, correction);
  const { units } = boat;
  const amount = (row: Balance, value: number) =>
    row.measure === 'mass'
      ? signed(value, massText(Math.abs(value), units))
      : signed(value, momentText(Math.abs(value), units));
  const names = correction.parts.map(part => part.name);
  return [
    [
      paint.heading('What was missing, and what each piece brings of it'),
      ...balances
        .filter(({ row }) => 'slack' in row.wanted)
        .map(({ row, brought }) => {
          const missing = 'slack' in row.wanted ? amount(row, row.wanted.value) : '';
          const shares = brought.map((value, i) => `${names[i]} ${amount(row, value)}`).join(', ');
          return `  ${row.name}: missing ${missing}; ${shares}`;
        }),
    ].join('\n'),
    [
      paint.heading('One gram more of'),
      ...nextGrams.map(
        ({ changes }, i) =>
          `  ${names[i]}: ${changes.map(({ row, change }) => `${row.name} ${figureWords(row, change, units)}`).join(', ')}`,
      ),
    ].join('\n'),
    [
      paint.heading('A limit wider by a tenth'),
      ...(relaxations.length > 0
        ? relaxations.map(
            ({ row, saves }) => `  of ${row.name} would save about ${massText(saves / 1e3, units)} of lead`,
          )
        : ['  would save nothing worth weighing']),
    ].join('\n'),
  ].join('\n\n');
}

const signed = (value: number, size: string): string => `${value < 0 ? 'less ' : ''}${size}`;

/** A change in a figure, in sign words. */
function figureWords({ name }: Balance, change: number, units: Analysis['boat']['units']): string {
  const small = (radians: number) => `${Number(((Math.abs(radians) * 180) / Math.PI).toPrecision(2))}°`;
  if (name.endsWith('trim') && !name.includes('stiffness'))
    return `${small(change)} ${change > 0 ? 'bow up' : 'bow down'}`;
  if (name.endsWith('heel') && !name.includes('stiffness'))
    return `${small(change)} ${change > 0 ? 'to starboard' : 'to port'}`;
  if (name === 'neutral fill') return `${percentText(Math.abs(change))} ${change > 0 ? 'fuller' : 'emptier'}`;
  const size = lengthText(Math.abs(change), units);
  if (name === 'surfaced draft') return `${size} ${change > 0 ? 'deeper' : 'higher'}`;
  return `${size} ${change > 0 ? 'more' : 'less'}`;
}
