import * as z from 'zod';
import { benchKeys } from './bench.ts';
import { atMost, map, noteKey, quantity, text, word } from './fields.ts';
import { pieceSchema } from './hull.ts';
import type { QuantityOptions } from './quantitySize.ts';
import { slipKey, slipsKey } from './struckOut.ts';
import type { FileUnits } from './units.ts';
import { waterSchema } from './water.ts';
import { withoutKey } from './without.ts';

/** What was read off the boat on one day, in the water or on the bench, and what was on board for it. */
export function trialSchema(units: FileUnits) {
  return map(
    {
      date: text({
        description: 'The day, or whatever you call the trial by.',
        examples: ['2026-05-02'],
      }).optional(),
      condition: word(['surfaced', 'submerged', 'inclining', 'bench', 'hung'], {
        description:
          'surfaced: afloat and at rest. submerged: hanging neutral under water. inclining: afloat, a weight moved athwart and the heel read that it makes. bench: the whole boat drained and dry, its tanks empty unless `fill` says otherwise, on scales or a knife edge. hung: the whole flooded boat under water on spring balances, its tanks as `fill` says.',
      }),
      ...afloatKeys(units),
      ...tankKeys(units),
      ...inclinedKeys(units),
      ...benchKeys(units),
      slips: slipsKey(),
      ...boardKeys(units),
      pool: waterSchema(units)
        .meta({ description: 'The water of that day, where it was not that of the file.', shown: ['sea'] })
        .optional(),
      note: noteKey().optional(),
    },
    'a trial, such as { condition: submerged, fill: 63 %, trim: 2° }',
  ).meta({ description: 'What was read off the boat in the water or on the bench: the trials teach the file.' });
}

const lengthIn = (units: FileUnits) => (description: string, example: string, options?: QuantityOptions) =>
  quantity(units, 'length', { description, examples: [example] }, options);

const angleIn = (units: FileUnits) => (description: string, example: string, sense: 'trim' | 'heel') =>
  quantity(units, 'angle', { description, examples: [example] }, { sense });

/** Where the water stood, and how the boat lay. */
function afloatKeys(units: FileUnits) {
  const length = lengthIn(units);
  const angle = angleIn(units);
  return {
    marks: list(
      map(
        {
          station: length('Where along the hull, aft of the bow tip.', '60 mm', { counted: 'station' }),
          height: length('The water surface there above the baseline, on the centreline.', '49 mm ± 1 mm', {
            counted: 'height',
          }),
          slip: slipKey(),
        },
        'a mark, such as { station: 60 mm, height: 49 mm }',
      ),
      'Where the water stood: its height above the baseline at a station. One mark near each end tells draft and trim; ± 1.5 mm unless given.',
      '- { station: 60 mm, height: 49 mm }',
    ),
    freeboard: list(
      map(
        {
          station: length('Where along the hull, aft of the bow tip.', '430 mm', { counted: 'station' }),
          height: length('From the water up to the top of the hull there; ± 1.5 mm unless given.', '31 mm', {
            sense: 'height',
          }),
          of: text({
            description: 'The shell or compartment to whose top it was read; the highest shell there unless given.',
            examples: ['outer hull'],
          }).optional(),
          slip: slipKey(),
        },
        'a freeboard, such as { station: 430 mm, height: 31 mm }',
      ),
      'Freeboard: how far the top of the hull stood out of the water at a station.',
      '- { station: 430 mm, height: 31 mm }',
    ),
    heel: angle(
      'Heel as it was read: to starboard; to port negative. In an inclining trial, the heel that the weight made. ± 0.5° unless given.',
      '1° ± 0.5°',
      'heel',
    ).optional(),
    trim: angle('Trim as it was read: bow up; bow down negative. ± 0.5° unless given.', '2° ± 0.5°', 'trim').optional(),
    proud: length(
      'Submerged but not quite: how much of the periscope or fin still stood out of the water. ± 2 mm unless given.',
      '12 mm',
      { nonNegative: true, sense: 'height' },
    ).optional(),
  };
}

/** What was in the tanks. */
function tankKeys(units: FileUnits) {
  const length = lengthIn(units);
  return {
    fill: quantity(
      units,
      'fraction',
      {
        description:
          'Water in the tanks, all together, by part of what they hold: submerged the neutral fill, else what was left in them. ± 3 % unless given.',
        examples: ['63 % ± 3 %'],
      },
      { nonNegative: true },
    ).optional(),
    water: quantity(
      units,
      'volume',
      {
        description:
          'Water in the tanks, all together, as poured into a measuring jug afterwards; ± 2 %, 5 ml at least, unless given.',
        examples: ['360 ml'],
      },
      { nonNegative: true },
    ).optional(),
    level: length(
      'Water level in the tank at the middle of its length, above its lowest point; ± 1.5 mm unless given.',
      '31 mm',
      { nonNegative: true, sense: 'height' },
    ).optional(),
    tank: text({
      description: 'The tank that `level` was read in; the first one unless given.',
      examples: ['main ballast'],
    }).optional(),
  };
}

/** A weight moved athwart, and the heel that it made. */
function inclinedKeys(units: FileUnits) {
  const length = lengthIn(units);
  const angle = angleIn(units);
  const weight = () =>
    quantity(
      units,
      'mass',
      { description: 'Mass of the weight that was moved. It is on board before and after.', examples: ['50 g'] },
      { positive: true },
    );
  const moved = () =>
    length(
      'How far the weight was moved athwart from where it lay at first: to starboard; to port negative.',
      '40 mm',
      {
        sense: 'side',
      },
    );
  const tilt = () =>
    angle(
      'The heel that it made, from before anything was moved: to starboard; to port negative.',
      '4.2° ± 0.2°',
      'heel',
    );
  return {
    mass: weight().optional(),
    moved: moved().optional(),
    shifts: list(
      map(
        { mass: weight(), moved: moved(), heel: tilt(), slip: slipKey() },
        'a shift, such as { mass: 50 g, moved: 40 mm, heel: 4.2° }',
      ),
      'Several shifts of one inclining trial, to both sides: a straight line through them tells that none is a slip.',
      '- { mass: 50 g, moved: 40 mm, heel: 4.2° }',
    ),
  };
}

/** What was on board for the trial, and what was not yet. */
function boardKeys(units: FileUnits) {
  return {
    aboard: list(
      pieceSchema(units),
      'What was on board for this trial only: temporary lead and foam, as payload entries.',
      '- { name: sheet lead at the bow, material: lead, mass: 60 g, station: 70 mm, height: -4 mm }',
    ),
    without: withoutKey('Payload entries that were not on board yet, by their names.', 'keel lead aft'),
  };
}

const list = <T extends z.ZodType>(item: T, description: string, example: string) =>
  z
    .array(item, { error: `Expected a list, such as ${example}.` })
    .max(...atMost(50, 'readings or entries of one trial'))
    .meta({ description })
    .optional();

export type TrialEntry = z.infer<ReturnType<typeof trialSchema>>;
