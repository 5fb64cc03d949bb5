import * as z from 'zod';
import { atMost, choose, map, noteKey, quantity, range, section, text, word } from './fields.ts';
import { densityKey } from './hull.ts';
import type { Quantity, QuantityOptions } from './quantity.ts';
import type { FileUnits } from './units.ts';

/** Room where lead or foam can still go: a box. */
export function baySchema(units: FileUnits) {
  const side = (description: string, example: string, options: QuantityOptions) =>
    range(units, 'length', { description, examples: [example] }, options);
  return map(
    {
      name: text({ description: 'What you call it; inserted pieces are named after it.', examples: ['keel forward'] }),
      in: text({
        description: 'The compartment the bay lies in: lead put there weighs but does not displace.',
        examples: ['dry cylinder'],
      }).optional(),
      takes: word(['lead', 'foam'], { description: 'What may be put there.' }),
      station: side('Where the room begins and ends, aft of the bow tip.', '40 to 190 mm', { counted: 'station' }),
      offset: side('How far it goes to port (negative) and to starboard.', '-10 to 10 mm', { sense: 'side' }),
      height: side('From how low to how high above the baseline.', '2 to 10 mm', { counted: 'height' }),
      note: noteKey().optional(),
    },
    'a bay, such as { name: keel forward, takes: lead, station: 40 to 190 mm, offset: -10 to 10 mm, height: 2 to 10 mm }',
  ).meta({ description: 'Room where lead or foam can still go. Corrections put pieces nowhere else.' });
}

/** Loose lead shot: that there is some, or how dense it lies. */
interface ShotEntry {
  readonly density?: Quantity;
}

/** Loose shot in the stock. */
function shotKey(units: FileUnits) {
  const help = {
    description:
      'Loose lead shot that corrections may pour into bays for lead, between two dams: true, or how dense it lies by the jug and the scale (about 6.7 g/cm3). It is poured where the strip does not fit, or does not do.',
    examples: ['true', '6.6 g/cm3'],
  };
  const yes = z.literal(true).transform((): ShotEntry => ({}));
  const density = densityKey(units).transform((measured): ShotEntry => ({ density: measured }));
  return choose<ShotEntry>(
    [
      { suits: raw => raw === true, schema: yes },
      { suits: () => true, schema: density },
    ],
    help,
  ).optional();
}

/** What corrections are cut from. */
export function stockSchema(units: FileUnits) {
  const strip = section(units, {
    description: 'Cross-section of the strip or block on the bench, breadth x depth; pieces are cut to length.',
    examples: ['12 x 6 mm'],
  }).optional();
  const pieces = z
    .array(quantity(units, 'mass', { description: 'Mass of one whole piece.' }, { positive: true }), {
      error: 'Expected a list of masses, such as [5 g, 10 g].',
    })
    .max(...atMost(100, 'pieces'))
    .meta({ description: 'Masses of the whole pieces at hand, used as they are.', shown: [['5 g', '10 g']] })
    .optional();
  const of = <S extends z.ZodRawShape>(what: string, example: string, more: S) =>
    map({ density: densityKey(units).optional(), strip, pieces, ...more }, `the ${what} at hand, such as ${example}`)
      .meta({ description: `The ${what} that corrections are cut from.` })
      .optional();
  return map(
    {
      lead: of('lead', '{ strip: 12 x 6 mm }', { shot: shotKey(units) }),
      foam: of('foam', '{ density: 30 kg/m3, strip: 25 x 25 mm }', {}),
    },
    'what is on the bench, such as { lead: { strip: 12 x 6 mm } }',
  ).meta({ description: 'What corrections are cut from: lead and foam on the bench.' });
}

export type BayEntry = z.infer<ReturnType<typeof baySchema>>;
export type StockEntry = z.infer<ReturnType<typeof stockSchema>>;
