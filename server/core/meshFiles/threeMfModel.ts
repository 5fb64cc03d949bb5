import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { cutShort, quoted } from '../../../schema/quoted.ts';
import type { Steps } from '../steps/steps.ts';
import { type MeshUnit, MOST_TRIANGLES, tooManyTriangles } from './meshFile.ts';
import { damaged, Unreadable } from './unreadable.ts';

/** x' = x·m[0] + y·m[3] + z·m[6] + m[9], y' with the next of each, z' with the last: rows of a matrix for row vectors. */
export type Transform = readonly number[];

/** One object again, at another place: of this file of the package or another. */
export interface Placement {
  readonly object: string;
  /** The file that the object is in; null for the same one. */
  readonly file: string | null;
  readonly transform: Transform | null;
}

interface ModelObject {
  /** Printed as part of the thing; support is not. */
  readonly isPart: boolean;
  readonly vertices: readonly number[];
  readonly triangles: readonly number[];
  readonly components: readonly Placement[];
}

/** One model file of a 3MF package (3MF Core Specification 1.3, chapters 3 to 5; Production Extension for `path`). */
export interface Model {
  readonly unit: MeshUnit;
  readonly objects: ReadonlyMap<string, ModelObject>;
  readonly items: readonly Placement[];
}

/** Tags that a model may have: some three for each triangle where no corner is shared. */
const MOST_TAGS = 4 * MOST_TRIANGLES;
/** Attributes that a tag may have: the root of a model has one for each extension. */
const MOST_ATTRIBUTES = 64;
/** Characters of one: some programs write there how a triangle is painted. */
const LONGEST_ATTRIBUTE = 1_000_000;
/** Characters of a transform: twelve figures. */
const LONGEST_TRANSFORM = 1000;
/** Characters of what the parser says, which may have names out of the file in it. */
const LONGEST_REASON = 80;
/** Bytes that are read in one step. */
const STRETCH = 1 << 16;

const MILLIMETRES: MeshUnit = { name: 'millimetres', metres: 1e-3 };

const UNITS: ReadonlyMap<string, MeshUnit> = new Map(
  Object.entries({
    micron: { name: 'microns', metres: 1e-6 },
    millimeter: MILLIMETRES,
    centimeter: { name: 'centimetres', metres: 1e-2 },
    inch: { name: 'inches', metres: 0.0254 },
    foot: { name: 'feet', metres: 0.3048 },
    meter: { name: 'metres', metres: 1 },
  }),
);

interface OpenObject {
  readonly isPart: boolean;
  readonly vertices: number[];
  readonly triangles: number[];
  readonly components: Placement[];
}

/** Reads a model file; throws `Unreadable` for what it cannot be. */
export function* readModel(bytes: Uint8Array): Steps<Model> {
  const objects = new Map<string, ModelObject>();
  const items: Placement[] = [];
  let unit = MILLIMETRES;
  let object: OpenObject | null = null;
  let triangles = 0;
  // A map: a tag may be called “constructor”.
  const open: ReadonlyMap<string, (tag: SaxesTagPlain) => void> = new Map(
    Object.entries<(tag: SaxesTagPlain) => void>({
      model: ({ attributes }) => {
        const named = UNITS.get(attributes.unit ?? 'millimeter');
        if (!named) throw damaged(`it is in a unit that nobody knows, ${quoted(attributes.unit ?? '')}`);
        unit = named;
      },
      object: ({ attributes }) => {
        object = { isPart: !/support$/.test(attributes.type ?? ''), vertices: [], triangles: [], components: [] };
        objects.set(attributes.id ?? '', object);
      },
      vertex: tag => object?.vertices.push(...numbers(tag, 'x', 'y', 'z')),
      triangle: tag => {
        triangles++;
        if (triangles > MOST_TRIANGLES) throw new Unreadable(tooManyTriangles());
        object?.triangles.push(...numbers(tag, 'v1', 'v2', 'v3'));
      },
      component: tag => object?.components.push(placement(tag)),
      item: tag => items.push(placement(tag)),
    }),
  );
  const parser = new SaxesParser();
  let tags = 0;
  let attributes = 0;
  parser.on('attribute', ({ value }) => {
    attributes += 1;
    if (value.length > LONGEST_ATTRIBUTE) throw damaged('an attribute is longer than any that is written');
    if (attributes > MOST_ATTRIBUTES) throw damaged(`a tag has more than ${MOST_ATTRIBUTES} attributes`);
  });
  parser.on('opentag', tag => {
    attributes = 0;
    tags += 1;
    if (tags > MOST_TAGS) throw new Unreadable(tooManyTriangles());
    open.get(tag.name)?.(tag);
  });
  parser.on('error', problem => {
    throw damaged(`it is no proper XML (${cutShort(problem.message.replace(/\.$/, ''), LONGEST_REASON)})`);
  });
  const decoder = new TextDecoder();
  for (let at = 0; at < bytes.length; at += STRETCH) {
    const end = at + STRETCH;
    parser.write(decoder.decode(bytes.subarray(at, end), { stream: end < bytes.length }));
    yield;
  }
  parser.close();
  return { unit, objects, items };
}

function numbers({ name, attributes }: SaxesTagPlain, ...keys: readonly string[]): readonly number[] {
  return keys.map(key => {
    const value = Number(attributes[key] ?? Number.NaN);
    if (!Number.isFinite(value)) throw damaged(`a ${name} has no proper “${key}”`);
    return value;
  });
}

function placement({ name, attributes }: SaxesTagPlain): Placement {
  const file = Object.entries(attributes).find(([key]) => /^(?:\w+:)?path$/.test(key))?.[1] ?? null;
  const written = attributes.transform ?? null;
  const isLong = written !== null && written.length > LONGEST_TRANSFORM;
  const transform = isLong ? [] : (written?.trim().split(/\s+/).map(Number) ?? null);
  if (transform && (transform.length !== 12 || !transform.every(Number.isFinite))) {
    throw damaged(`a ${name} is placed by figures that make no sense`);
  }
  return { object: attributes.objectid ?? '', file, transform };
}
