import * as z from 'zod';
import { baySchema, stockSchema } from './bays.ts';
import { conditionSchema } from './conditions.ts';
import { map, quantity, text, word } from './fields.ts';
import { waterlineSchema } from './forms.ts';
import { compartmentSchema, partSchema, shellSchema, tankSchema } from './hull.ts';
import { limitsSchema } from './limits.ts';
import { originSchema } from './origin.ts';
import { trialSchema } from './trials.ts';
import type { FileUnits } from './units.ts';
import { waterSchema } from './water.ts';

/** Units in force when the file names none. */
export const DEFAULT_UNITS: FileUnits = { length: 'mm', mass: 'g' };

export const unitsSchema = map(
  {
    length: word(['mm', 'cm', 'm', 'in', 'ft'], { description: 'Unit of a bare length; mm unless given.' }).optional(),
    mass: word(['g', 'kg', 'oz', 'lb'], { description: 'Unit of a bare mass; g unless given.' }).optional(),
  },
  'units, such as { length: mm, mass: g }',
).meta({ description: 'Units for bare numbers, and for the figures that the tool shows.' });

export const scaleSchema = text({
  description:
    'Scale of the model, 1:60. Adds full-size figures to the report, and lets any length be given in full size: “length: 67.1 m full size”.',
  examples: ['1:60'],
});

/**
 * The schemas of every section for one choice of units. Each section and each entry is checked by its own, so that a
 * fault in one leaves the others readable.
 */
export function boatSchemas(units: FileUnits) {
  return madeWhenRead({
    boat: () => text({ description: 'The name of the boat.', examples: ['Petrel'] }),
    scale: () => scaleSchema,
    units: () => unitsSchema,
    water: () => waterSchema(units),
    length: () =>
      quantity(
        units,
        'length',
        { description: 'Length of the hull, from the bow tip to its after end.', examples: ['900 mm'] },
        { positive: true },
      ),
    waterline: () => waterlineSchema(units),
    origin: () => originSchema,
    shell: () => shellSchema(units),
    compartment: () => compartmentSchema(units),
    tank: () => tankSchema(units),
    part: () => partSchema(units),
    bay: () => baySchema(units),
    stock: () => stockSchema(units),
    limits: () => limitsSchema(units),
    condition: () => conditionSchema(units),
    trial: () => trialSchema(units),
  });
}

/** An object whose values are made when first read: a file without trials needs no schema of trials. */
function madeWhenRead<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }): Readonly<T> {
  const object = {} as T;
  for (const key of Object.keys(makers) as (keyof T)[]) {
    Object.defineProperty(object, key, {
      enumerable: true,
      configurable: true,
      get: () => {
        const value = makers[key]();
        Object.defineProperty(object, key, { enumerable: true, value });
        return value;
      },
    });
  }
  return object;
}

export type BoatSchemas = ReturnType<typeof boatSchemas>;

const HULL = 'What floats: length and waterline, shells, watertight compartments and ballast tanks.';
const FILE = 'A scale submarine: its water, hull, payload, bays, stock and limits.';

/** Makes the schema of a key that may be left out: known to be one before it is made. */
interface Optional<T extends z.ZodType> {
  (): z.ZodOptional<T>;
  readonly isOptional: true;
}

const optional = <T extends z.ZodType>(make: () => T): Optional<T> =>
  Object.assign(() => make().optional(), { isOptional: true } as const);

/** The keys of the file, and those of its hull, each with what makes its schema. */
function keyMakers() {
  const s = boatSchemas(DEFAULT_UNITS);
  const list = <T extends z.ZodType>(item: () => T, description: string) =>
    optional(() => z.array(item()).meta({ description }));
  const hull = {
    length: () => s.length,
    waterline: optional(() => s.waterline),
    origin: optional(() => s.origin),
    shells: list(() => s.shell, 'Free-flooding hull and casing: only their walls displace.'),
    compartments: list(
      () => s.compartment,
      'Watertight spaces: their outer form displaces, what is in them only weighs.',
    ),
    tanks: list(() => s.tank, 'Ballast tanks.'),
  };
  const file = {
    boat: () => s.boat,
    scale: optional(() => s.scale),
    units: optional(() => s.units),
    water: optional(() => s.water),
    hull: () =>
      map({ ...madeWhenRead(hull) }, 'the hull, with length, waterline, shells, compartments and tanks').meta({
        description: HULL,
      }),
    payload: list(() => s.part, 'Everything carried, in the order it goes aboard.'),
    bays: list(() => s.bay, 'Room where lead or foam can still go. Corrections put pieces nowhere else.'),
    stock: optional(() => s.stock),
    limits: optional(() => s.limits),
    conditions: list(
      () => s.condition,
      'States besides surfaced and submerged that the boat is figured, drawn and judged in, and that corrections hold in.',
    ),
    trials: list(() => s.trial, 'What was read off the boat in the water, day by day.'),
  };
  return { file, hull };
}

type JsonSchema = z.core.JSONSchema.BaseSchema;

/** The whole boat file, its numbers in mm and g. */
export const boatSchema = () =>
  map({ ...madeWhenRead(keyMakers().file) }, 'a boat file, with boat, hull and payload').meta({
    title: 'Boat file',
    description: FILE,
  });

/** Its JSON Schema, of which only what is read is made: whoever asks for a key of the water needs nothing of the hull. */
export function boatKeyHelp(): JsonSchema {
  const { file, hull } = keyMakers();
  return mapMadeWhenRead(FILE, file, { hull: () => mapMadeWhenRead(HULL, hull) });
}

type Makers = Readonly<Record<string, (() => z.ZodType) | Optional<z.ZodType>>>;

function mapMadeWhenRead(
  description: string,
  makers: Makers,
  special: Readonly<Record<string, () => JsonSchema>> = {},
): JsonSchema {
  const keys = Object.entries(makers);
  return {
    type: 'object',
    description,
    properties: madeWhenRead(
      Object.fromEntries(keys.map(([key, make]) => [key, special[key] ?? (() => jsonSchemaOf(make()))])),
    ),
    required: keys.flatMap(([key, make]) => ('isOptional' in make ? [] : [key])),
  };
}

/** A JSON Schema (draft 7), for editors that know nothing of this tool. */
export function jsonSchemaOf(schema: z.ZodType): JsonSchema {
  return z.toJSONSchema(schema, {
    target: 'draft-7',
    io: 'input',
    override: ({ jsonSchema }) => {
      const { alternatives, shown } = jsonSchema as Notes;
      if (alternatives === undefined && shown === undefined) return;
      for (const key of ['alternatives', 'shown'] as const) delete (jsonSchema as Notes)[key];
      if (shown) jsonSchema.examples = [...shown];
      if (alternatives) jsonSchema.anyOf = alternatives.map(withoutDialect);
    },
  });
}

/** What the fields of this room note on a schema besides its description. */
interface Notes {
  alternatives?: readonly z.ZodType[];
  shown?: readonly unknown[];
}

function withoutDialect(schema: z.ZodType): JsonSchema {
  const { $schema: _, ...inner } = jsonSchemaOf(schema);
  return inner;
}
