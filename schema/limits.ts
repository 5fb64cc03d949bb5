import type * as z from 'zod';
import { choose, isMap, map, quantity, range } from './fields.ts';
import type { Quantity } from './quantity.ts';
import type { FileUnits } from './units.ts';

/**
 * Limits where the file gives none (rad, m, fraction). All are common practice, no source: half a degree is what the
 * eye sees against the water; 2 mm of draft shows on the painted waterline; a neutral fill of 40 to 85 % leaves the
 * tank room both ways; 3 mm of GM and 5 mm of BG keep a model upright in a ripple and out of a dive; 5° on
 * the way down passes for a lively dive.
 */
export const DEFAULT_LIMITS = {
  surfaced: { trim: Math.PI / 360, heel: Math.PI / 180, draft: 0.002, gm: 0.003 },
  submerged: { trim: Math.PI / 180, heel: Math.PI / 180, bg: 0.005, fill: [0.4, 0.85], reserve: null },
  transit: { trim: Math.PI / 36, heel: Math.PI / 36 },
} as const;

type PerCondition = {
  readonly surfaced?: Quantity | undefined;
  readonly submerged?: Quantity | undefined;
  readonly transit?: Quantity | undefined;
};

/** For boats that are meant to stay a little light under water. */
export const reserveKey = (units: FileUnits) =>
  range(
    units,
    'mass',
    {
      description:
        'In place of `fill`, for a boat that is meant to stay a little light under water, or that has no tank and dives by speed and planes: how much buoyancy may be left with all tanks full. Submerged is then the boat held under, and this is what its planes must hold down.',
      examples: ['10 to 30 g'],
    },
    { nonNegative: true },
  ).optional();

/** What the boat is trimmed to. */
export function limitsSchema(units: FileUnits) {
  const angle = (description: string, example: string) => {
    const one = quantity(units, 'angle', { description, examples: [example] }, { positive: true });
    const both: z.ZodType<PerCondition> = map(
      { surfaced: one.optional(), submerged: one.optional(), transit: one.optional() },
      'an angle, or { surfaced: 0.5°, submerged: 1° }',
    );
    return choose<PerCondition>(
      [
        { suits: isMap, schema: both },
        { suits: () => true, schema: one.transform((angle): PerCondition => ({ surfaced: angle, submerged: angle })) },
      ],
      { description, examples: [example] },
    ).optional();
  };
  const least = (description: string, example: string) =>
    quantity(units, 'length', { description, examples: [example] }).optional();
  return map(
    {
      trim: angle(
        'Greatest trim: surfaced from the painted waterline, submerged from level. 0.5° surfaced and 1° submerged unless given; `transit` on the way down, 5°.',
        '0.5°',
      ),
      heel: angle('Greatest heel to either side; 1° unless given.', '1°'),
      draft: quantity(
        units,
        'length',
        {
          description:
            'Greatest difference between the water and the painted waterline at half length; 2 mm unless given.',
          examples: ['1.5 mm'],
        },
        { positive: true },
      ).optional(),
      fill: range(
        units,
        'fraction',
        {
          description: 'The range for the neutral fill, all tanks together; 40 to 85 % unless given.',
          examples: ['40 to 85 %'],
        },
        { nonNegative: true },
      ).optional(),
      reserve: reserveKey(units),
      gm: least('Least metacentric height when surfaced, moving tank water counted; 3 mm unless given.', '4 mm'),
      bg: least(
        'Least height of the centre of buoyancy over the centre of mass submerged, after the tank’s free surface; 5 mm unless given.',
        '5 mm',
      ),
    },
    'the limits, such as { trim: 0.5°, heel: 1° }',
  ).meta({ description: 'What the boat is trimmed to; what is not given has a default.' });
}

export type LimitsEntry = z.infer<ReturnType<typeof limitsSchema>>;
