import * as z from 'zod';
import { flag, map, quantity, text } from './fields.ts';
import { balanceKey, placing, recutKeys } from './forms.ts';
import { inWaterKey } from './inWater.ts';
import type { FileUnits } from './units.ts';

const WHEN =
  'a day (2026-05-10), a trial by its place in the list (trial 3), or after one (after trial 3, after 2026-05-09)';

/** Since when an entry is aboard and until when, and what it was before: each trial is held against the boat of its day. */
export function historyKeys(units: FileUnits) {
  const when = (description: string, example: string) =>
    text({ description: `${description}: ${WHEN}.`, examples: [example] });
  const was = map(
    {
      until: when('The last day, or trial, that had it so', 'trial 3'),
      mass: quantity(
        units,
        'mass',
        { description: 'What it weighed then.', examples: ['120 g'] },
        { nonNegative: true },
      ).optional(),
      density: quantity(
        units,
        'density',
        { description: 'Its density then.', examples: ['32 kg/m3'] },
        { positive: true },
      ).optional(),
      inWater: inWaterKey(units),
      in: text({ description: 'The watertight compartment it lay in then.', examples: ['dry cylinder'] }).optional(),
      ...placing(units),
      ...recutKeys(units),
      balance: balanceKey(units),
    },
    'what it was before, such as { until: trial 3, station: 230 to 310 mm }',
  );
  return {
    fitted: when(
      'Since when it is aboard; earlier trials had it not. From the first one unless given',
      '2026-05-10',
    ).optional(),
    removed: when(
      'Since when it is no longer aboard. It stays in the file for the trials that had it, and is in no other figure',
      'after trial 3',
    ).optional(),
    was: z
      .array(was, { error: 'Expected a list, such as [{ until: trial 3, station: 230 to 310 mm }].' })
      .meta({
        description:
          'What it was before it was moved or recut, the oldest first: only what was otherwise. Earlier trials are held against that.',
      })
      .optional(),
    written: map(placing(units), 'where it was written to lie, such as { station: 192 to 272 mm }')
      .meta({
        description:
          'Where it was written to lie before the trials taught otherwise; with “learned: true”. The trials are weighed from there, so that nothing is counted twice.',
      })
      .optional(),
    learned: flag({
      description:
        'true: what the trials have taught, not weighed or measured; its ± is for the reader. Take it out of the entry once you have weighed it.',
    }).optional(),
  };
}
