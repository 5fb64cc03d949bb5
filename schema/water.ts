import type * as z from 'zod';
import { choose, isMap, map, quantity, word } from './fields.ts';
import type { FileUnits } from './units.ts';

const KIND = {
  description: 'Fresh water, or sea water of 35 g/kg. For other water give its salinity or its density instead.',
  examples: ['fresh', 'sea'],
};

/** The water that the boat floats in: `fresh`, or its kind, salinity or density, and its temperature. */
export function waterSchema(units: FileUnits) {
  const asMap = map(
    {
      kind: word(['fresh', 'sea'], KIND).optional(),
      temperature: quantity(units, 'temperature', {
        description: 'Temperature of the water, 0 to 40 °C; 20 °C unless given. Colder water is denser.',
        examples: ['18 °C'],
      }).optional(),
      salinity: quantity(
        units,
        'salinity',
        { description: 'Salt in the water by mass; the open sea has about 35 g/kg.', examples: ['12 g/kg'] },
        { nonNegative: true },
      ).optional(),
      density: quantity(
        units,
        'density',
        {
          description: 'Density of the water as measured; it goes before kind, salinity and temperature.',
          examples: ['1004 kg/m3'],
        },
        { positive: true },
      ).optional(),
    },
    'the water as { kind: fresh, temperature: 18 °C }',
  );
  const asWord = word(['fresh', 'sea'], KIND).transform((kind): z.infer<typeof asMap> => ({ kind }));
  return choose(
    [
      { suits: isMap, schema: asMap },
      { suits: () => true, schema: asWord },
    ],
    {
      description: 'The water that the boat floats in. Fresh at 20 °C unless given.',
      examples: ['fresh', 'sea'],
    },
  );
}

export type WaterEntry = z.infer<ReturnType<typeof waterSchema>>;
