import { applyChanges, splice } from '../text/editing/edit.ts';
import { readSyntax } from '../text/reading/syntax.ts';
import { entriesOf } from '../text/reading/values.ts';
import { dayText, type PoolDay } from './day.ts';
import { takeTrials } from './take.ts';

/** The boat file of the day: its trials in it, and what is on board now as payload fitted after the last of them. */
export function textOfDay(text: string, day: PoolDay): string {
  const trials = dayText(day);
  const taking = trials === '' ? null : takeTrials(readSyntax(text), trials);
  const withTrials = taking?.status === 'taken' ? splice(text, taking.splices) : text;
  if (day.aboard.length === 0) return withTrials;
  const syntax = readSyntax(withTrials);
  const count = entriesOf(syntax, ['trials']).length;
  const fitted = count > 0 ? [['fitted', `after trial ${count}`] as const] : [];
  const pieces = applyChanges(
    syntax,
    day.aboard.map(({ name, fields }) => ({
      kind: 'append',
      path: ['payload'],
      entry: { fields: [['name', name], ...fields, ...fitted] },
    })),
  );
  return pieces ? splice(withTrials, pieces) : withTrials;
}
