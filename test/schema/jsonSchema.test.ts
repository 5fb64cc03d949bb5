import { readdirSync, readFileSync } from 'node:fs';
import { Ajv, type ErrorObject, type ValidateFunction } from 'ajv';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { newBoatText } from '../../server/editor/answers/newBoat.ts';
import { boatJsonSchema } from '../helpers/atOnce.ts';
import { boatText } from '../helpers/boatText.ts';
import { PROBE } from '../helpers/probe.ts';

const schema = boatJsonSchema();
const validate: ValidateFunction = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(schema);

function complaints(text: string): readonly string[] {
  validate(parse(text));
  return (validate.errors ?? []).map(
    ({ instancePath, keyword, params }: ErrorObject) => `${instancePath} ${keyword} ${Object.values(params).join(' ')}`,
  );
}

const samples = readdirSync(new URL('../../samples/', import.meta.url)).filter(name => name.endsWith('.boat.yaml'));
const textOf = (name: string) => readFileSync(new URL(`../../samples/${name}`, import.meta.url), 'utf8');

describe('the published JSON Schema', () => {
  it('is what schema/boat.schema.json says', async () => {
    // Vitest writes it with -u, and fails in CI when it is stale.
    await expect(`${JSON.stringify(schema, null, 2)}\n`).toMatchFileSnapshot('../../schema/boat.schema.json');
  });
  it('is of draft 7, closed, and says where it begins', () => {
    expect(schema).toMatchObject({
      $schema: 'http://json-schema.org/draft-07/schema#',
      title: 'Boat file',
      type: 'object',
      additionalProperties: false,
      required: ['boat', 'hull'],
    });
  });
});

describe('what it takes', () => {
  it('has samples to try', () => expect(samples.length).toBeGreaterThanOrEqual(3));
  it.each(samples)('%s', name => expect(complaints(textOf(name))).toEqual([]));
  it.each([
    ['a new boat', newBoatText('Gannet')],
    ['the probe', PROBE],
    [
      'water in a word',
      boatText`
        boat: 12
        water: sea
        hull: { length: 12 in }
      `,
    ],
    [
      'a waterline with ends',
      boatText`
        boat: x
        hull: { length: 12, waterline: { bow: 1 in, stern: 2 in } }
      `,
    ],
    [
      'limits by condition',
      boatText`
        boat: x
        hull: { length: 12 }
        limits: { trim: { surfaced: 1° }, heel: 2 }
      `,
    ],
    [
      'whole pieces',
      boatText`
        boat: x
        hull: { length: 12 }
        stock: { lead: { pieces: [5 g, 10] } }
      `,
    ],
  ])('%s', (_, text) => expect(complaints(text)).toEqual([]));
});

describe('what it refuses', () => {
  it.each([
    ['a misspelt key', PROBE.replace('kind: bladder', 'knid: bladder'), '/hull/tanks/0 required kind'],
    ['an unknown section', `${PROBE}crew: 4`, ' additionalProperties crew'],
    ['a word that is none of those', PROBE.replace('kind: bladder', 'kind: bag'), '/hull/tanks/0/kind enum'],
    [
      'a hull without a length',
      boatText`
        boat: x
        hull: {}
      `,
      '/hull required length',
    ],
    [
      'one entry where a list belongs',
      boatText`
        boat: x
        hull: { length: 9 }
        payload: { name: a }
      `,
      '/payload type array',
    ],
    ['a list where a mass belongs', PROBE.replace('mass: 800 g', 'mass: [800]'), '/payload/0/mass type string,number'],
  ])('%s', (_, text, says) => {
    expect(complaints(text).some(complaint => complaint.startsWith(says.trimEnd()))).toBe(true);
  });
});

interface Node {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly items?: Node | readonly Node[];
  readonly anyOf?: readonly Node[];
}

function* keysOf(node: Node, path: string): Generator<readonly [path: string, node: Node]> {
  for (const [key, value] of Object.entries(node.properties ?? {})) {
    yield [`${path}.${key}`, value];
    yield* keysOf(value, `${path}.${key}`);
  }
  const items = Array.isArray(node.items) ? node.items : node.items ? [node.items as Node] : [];
  for (const [i, item] of items.entries()) yield* keysOf(item, `${path}[${i}]`);
  for (const way of node.anyOf ?? []) yield* keysOf(way, path);
}

it('describes every key in whole sentences', () => {
  const all = [...keysOf(schema as Node, '')];
  expect(all.length).toBeGreaterThan(100);
  const poor = all.filter(([, { description }]) => !description || !/^[A-Za-z].*[.:…)]$/s.test(description));
  expect(poor.map(([path, { description }]) => `${path}: ${description}`)).toEqual([]);
});
