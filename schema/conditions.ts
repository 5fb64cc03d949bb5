import * as z from 'zod';
import { atMost, map, noteKey, quantity, range, text, word } from './fields.ts';
import { pieceSchema } from './hull.ts';
import { reserveKey } from './limits.ts';
import type { FileUnits } from './units.ts';
import { waterSchema } from './water.ts';
import { withoutKey } from './without.ts';

/** A state of the boat besides surfaced and submerged: what is in its tanks and aboard, its water, what is asked of it then. */
export function conditionSchema(units: FileUnits) {
  return map(
    {
      name: text({
        description: 'What the condition is called; its figures stand under this name.',
        examples: ['awash'],
      }),
      condition: word(['surfaced', 'submerged'], {
        description:
          'surfaced: afloat, the tanks as `fill` or `tanks` says; so unless given. submerged: under water at the fill that makes it hang neutral.',
      }).optional(),
      ...tankKeys(units),
      ...boardKeys(units),
      water: waterSchema(units)
        .meta({ description: 'The water that it floats in then; that of the file unless given.', shown: ['sea'] })
        .optional(),
      limits: limitKeys(units),
      note: noteKey().optional(),
    },
    'a loading condition, such as { name: awash, fill: 45 %, limits: { trim: 1° } }',
  ).meta({
    description: 'A state of the boat besides surfaced and submerged, figured, drawn and judged as they are.',
  });
}

const share = (units: FileUnits, description: string, example: string) =>
  quantity(units, 'fraction', { description, examples: [example] }, { nonNegative: true });

/** What is in the tanks. */
const tankKeys = (units: FileUnits) => ({
  fill: share(
    units,
    'How full all tanks are together, by part of what they hold, as they fill side by side. Neither this nor `tanks` given, each keeps its own `fill`.',
    '45 %',
  ).optional(),
  tanks: list(
    map(
      {
        tank: text({ description: 'The tank, by its name.', examples: ['main ballast'] }),
        fill: share(units, 'How full it is, by part of what it holds.', '60 %'),
      },
      'a tank and how full it is, such as { tank: main ballast, fill: 60 % }',
    ),
    24,
    'How full each tank is, in place of `fill`; one that is not named keeps its own.',
    '- { tank: main ballast, fill: 60 % }',
  ),
});

/** What is aboard then and what is not. */
const boardKeys = (units: FileUnits) => ({
  aboard: list(
    pieceSchema(units).meta({ description: 'One thing carried in this condition only.' }),
    50,
    'What is carried in this condition only, as payload entries.',
    '- { name: long mast, mass: 22 g, station: 300 mm, height: 150 mm }',
  ),
  without: withoutKey('Payload entries that are not aboard then, by their names.', 'battery'),
});

/** What is asked of the boat then. */
function limitKeys(units: FileUnits) {
  const angle = (description: string) =>
    quantity(units, 'angle', { description, examples: ['1°'] }, { positive: true }).optional();
  const length = (description: string, example: string, options = {}) =>
    quantity(units, 'length', { description, examples: [example] }, options).optional();
  return map(
    {
      trim: angle('Greatest trim: afloat from the painted waterline, submerged from level.'),
      heel: angle('Greatest heel to either side.'),
      draft: length(
        'Afloat: greatest difference between the water and the painted waterline at half length.',
        '1.5 mm',
        { positive: true },
      ),
      gm: length('Afloat: least metacentric height, moving tank water counted.', '3 mm'),
      bg: length('Submerged: least height of B above G, after the tank’s free surface.', '5 mm'),
      fill: range(
        units,
        'fraction',
        { description: 'Submerged: the range for the neutral fill, all tanks together.', examples: ['40 to 85 %'] },
        { nonNegative: true },
      ).optional(),
      reserve: reserveKey(units),
    },
    'what is asked in this condition, such as { trim: 1°, gm: 3 mm }',
  )
    .meta({ description: 'What is asked of the boat in this condition. What is not given is not asked.' })
    .optional();
}

const list = <T extends z.ZodType>(item: T, most: number, description: string, example: string) =>
  z
    .array(item, { error: `Expected a list, such as ${example}.` })
    .max(...atMost(most, 'entries of one condition'))
    .meta({ description })
    .optional();

export type ConditionEntry = z.infer<ReturnType<typeof conditionSchema>>;
