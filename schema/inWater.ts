import { choose, isMap, map, quantity } from './fields.ts';
import type { Quantity } from './quantity.ts';
import type { FileUnits } from './units.ts';
import { type WaterEntry, waterSchema } from './water.ts';

/** What a spring balance showed of a thing hung under water. */
export interface InWaterEntry {
  /** Its weight in water, as the mass that would weigh so in air, kg; less than nothing for what floats. */
  readonly reads: Quantity;
  /** The water that it hung in; fresh at 20 °C where the file does not say. */
  readonly water?: WaterEntry | undefined;
}

/** Weighed in water: with the weight in air it tells the volume. */
export function inWaterKey(units: FileUnits) {
  const reads = quantity(
    units,
    'mass',
    {
      description:
        'What the spring balance shows with the thing wholly under water, no bubbles on it. What floats is held under by a sinker: the reading less what the sinker alone shows, so less than nothing.',
      examples: ['142 g', '-35 g'],
    },
    { signed: true },
  );
  const asMap = map(
    { reads, water: waterSchema(units).optional() },
    'what the balance shows, such as 142 g or { reads: 142 g, water: sea }',
  );
  return choose<InWaterEntry>(
    [
      { suits: isMap, schema: asMap },
      { suits: () => true, schema: reads.transform((read): InWaterEntry => ({ reads: read })) },
    ],
    {
      description:
        'Weighed in water: what a spring balance shows with it hung wholly under water. With its mass it tells the volume, better than a tape does: a form is then for its place only. In fresh water of 20 °C, a bucket from the tap; hung elsewhere write { reads: 142 g, water: sea }.',
      examples: ['142 g', '142 g ± 1 g'],
    },
  ).optional();
}
