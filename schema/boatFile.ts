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

/** The keys of the file, and those of its hull, each with its schema, made when it is read. */
function keySchemas() {
  const s = boatSchemas(DEFAULT_UNITS);
  const list = <T extends z.ZodType>(item: T, description: string) => z.array(item).meta({ description }).optional();
  const hull = madeWhenRead({
    length: () => s.length,
    waterline: () => s.waterline.optional(),
    origin: () => s.origin.optional(),
    shells: () => list(s.shell, 'Free-flooding hull and casing: only their walls displace.'),
    compartments: () =>
      list(s.compartment, 'Watertight spaces: their outer form displaces, what is in them only weighs.'),
    tanks: () => list(s.tank, 'Ballast tanks.'),
  });
  const file = madeWhenRead({
    boat: () => s.boat,
    scale: () => s.scale.optional(),
    units: () => s.units.optional(),
    water: () => s.water.optional(),
    hull: () =>
      map({ ...hull }, 'the hull, with length, waterline, shells, compartments and tanks').meta({ description: HULL }),
    payload: () => list(s.part, 'Everything carried, in the order it goes aboard.'),
    bays: () => list(s.bay, 'Room where lead or foam can still go. Corrections put pieces nowhere else.'),
    stock: () => s.stock.optional(),
    limits: () => s.limits.optional(),
    conditions: () =>
      list(
        s.condition,
        'States besides surfaced and submerged that the boat is figured, drawn and judged in, and that corrections hold in.',
      ),
    trials: () => list(s.trial, 'What was read off the boat in the water, day by day.'),
  });
  return { file, hull };
}

type JsonSchema = z.core.JSONSchema.BaseSchema;

/** The whole boat file, its numbers in mm and g. */
export const boatSchema = () =>
  map({ ...keySchemas().file }, 'a boat file, with boat, hull and payload').meta({
    title: 'Boat file',
    description: FILE,
  });

/** Its JSON Schema, of which only what is read is made: whoever asks for a key of the water needs nothing of the hull. */
export function boatKeyHelp(): JsonSchema {
  const { file, hull } = keySchemas();
  return mapMadeWhenRead(FILE, file, { hull: () => mapMadeWhenRead(HULL, hull) });
}

type Schemas = Readonly<Record<string, z.ZodType>>;
type Makers = Readonly<Record<string, () => JsonSchema>>;

function mapMadeWhenRead(description: string, schemas: Schemas, special: Makers = {}): JsonSchema {
  const keys = Object.keys(schemas);
  const properties = madeWhenRead(
    Object.fromEntries(keys.map(key => [key, special[key] ?? (() => jsonSchemaOf(schemas[key]!))])),
  );
  return {
    type: 'object',
    description,
    properties,
    get required() {
      return keys.filter(key => !schemas[key]!.isOptional());
    },
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
