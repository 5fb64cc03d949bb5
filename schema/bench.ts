import * as z from 'zod';
import { map, quantity } from './fields.ts';
import { slipKey } from './struckOut.ts';
import type { FileUnits } from './units.ts';

const LIFTING =
  'Lift a heavy boat with two; keep hands from under it, the batteries out, and mains leads away from the water.';

/** What was read of the whole boat out of the pool: on scales, on a knife edge, and hung up under water. */
export function benchKeys(units: FileUnits) {
  const supports = (item: { readonly station: string; readonly reads: string; readonly what: string }) =>
    map(
      {
        station: quantity(
          units,
          'length',
          { description: item.station, examples: ['150 mm'] },
          { counted: 'station' },
        ).optional(),
        reads: quantity(units, 'mass', { description: item.reads, examples: ['812 g ± 1 g'] }, { nonNegative: true }),
        slip: slipKey(),
      },
      item.what,
    );
  return {
    scales: z
      .array(
        supports({
          station:
            'Where the edge that stands on this scale bears on the keel, aft of the bow tip; ± 0.5 mm unless given. Without it the whole boat was on this one scale.',
          reads: 'What the scale shows, less the support; ± 1 g or 0.5 %, the greater, unless given.',
          what: 'a scale, such as { station: 150 mm, reads: 812 g }',
        }),
        { error: 'Expected a list, such as - { station: 150 mm, reads: 812 g }.' },
      )
      .meta({
        description: `The whole boat on kitchen scales, keel level. Two scales, an edge on each, tell its mass and the station of its centre of mass; one without a station tells the mass. ${LIFTING}`,
      })
      .optional(),
    balance: quantity(
      units,
      'length',
      {
        description:
          'Where the whole boat balances on a knife edge across the keel, aft of the bow tip: the station of its centre of mass. ± 1 mm unless given.',
        examples: ['412 mm ± 1 mm'],
      },
      { counted: 'station' },
    ).optional(),
    hooks: z
      .array(
        supports({
          station:
            'Where this balance holds the boat, aft of the bow tip; ± 0.5 mm unless given. Without it the whole boat hung on this one balance.',
          reads: 'What the spring balance shows, less its line; ± 2 g or 1 %, the greater, unless given.',
          what: 'a hook, such as { station: 120 mm, reads: 43 g }',
        }),
        { error: 'Expected a list, such as - { station: 120 mm, reads: 43 g }.' },
      )
      .meta({
        description: `The whole flooded boat under water on spring balances, keel level. Two of them tell its weight in water and where that acts; one without a station tells the weight. ${LIFTING}`,
      })
      .optional(),
  };
}
