import * as z from 'zod';
import { atMost, choose, isMap, map, noteKey, quantity, text } from './fields.ts';
import type { Quantity } from './quantity.ts';
import type { FileUnits } from './units.ts';

/** One thing in an assembly, for the record. */
export interface HeldEntry {
  readonly name: string;
  readonly mass?: Quantity | undefined;
  readonly note?: string | undefined;
}

/** What is in a thing that was weighed and balanced as one. */
export function holdsKey(units: FileUnits) {
  const called = text({ description: 'What it is.', examples: ['rudder servo'] });
  const asMap = map(
    {
      name: called,
      mass: quantity(
        units,
        'mass',
        { description: 'What it weighs by itself; it is in no figure.', examples: ['42 g'] },
        { nonNegative: true },
      ).optional(),
      note: noteKey().optional(),
    },
    'a thing in it, such as rudder servo or { name: rudder servo, mass: 42 g }',
  );
  const held = choose<HeldEntry>(
    [
      { suits: isMap, schema: asMap },
      { suits: () => true, schema: called.transform((name): HeldEntry => ({ name })) },
    ],
    { description: 'One thing in it: its name, or its name and what it weighs.' },
  );
  return z
    .array(held, { error: 'Expected a list, such as [rudder servo, { name: receiver, mass: 12 g }].' })
    .max(...atMost(100, 'things in one'))
    .meta({
      description:
        'What is in it, for the record: it was weighed and balanced as one, and its mass counts them already. Give them no entries of their own.',
      shown: [['rudder servo', 'receiver']],
    })
    .optional();
}
