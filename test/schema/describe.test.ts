import { describe, expect, it } from 'vitest';
import { boatKeyHelp } from '../../schema/boatFile.ts';
import { createDescriber } from '../../schema/describe.ts';
import type { Path } from '../../schema/path.ts';
import { boatJsonSchema } from '../helpers/atOnce.ts';

const describer = createDescriber();
const keysAt = (path: Path) => describer.keysAt(path).map(info => info.key);

describe('the keys of a map', () => {
  it.each<readonly [Path, readonly string[]]>([
    [[], ['boat', 'scale', 'units', 'water', 'hull', 'payload', 'bays', 'stock', 'limits']],
    [['hull'], ['length', 'waterline', 'shells', 'compartments', 'tanks']],
    [['units'], ['length', 'mass']],
    [
      ['stock', 'lead'],
      ['density', 'strip', 'pieces'],
    ],
    [
      ['payload', 4, 'balance'],
      ['station', 'offset', 'height'],
    ],
    // Of the ways to write a thing, the map's keys.
    [['water'], ['kind', 'temperature', 'salinity', 'density']],
    [
      ['hull', 'waterline'],
      ['bow', 'stern'],
    ],
  ])('%j', (path, keys) => {
    expect(keysAt(path)).toEqual(expect.arrayContaining([...keys]));
    expect(keysAt(path).slice(0, 2)).toEqual(keys.slice(0, 2));
  });
  it.each<readonly [string, Path, readonly string[]]>([
    ['a shell', ['hull', 'shells', 0], ['ends']],
    ['a tank', ['hull', 'tanks', 9], ['kind', 'fill', 'cells', 'fills', 'in']],
    ['a part', ['payload', 0], ['mass', 'material', 'in', 'fixed', 'round', 'box', 'ball', 'profile', 'volume']],
    ['a bay', ['bays', 0], ['takes', 'in', 'station', 'offset', 'height']],
  ])('of %s has its own', (_, path, keys) => {
    expect(keysAt(path)).toEqual(expect.arrayContaining([...keys]));
  });
  it('none where no map belongs', () => {
    for (const path of [['boat'], ['payload'], ['hull', 'length'], ['crew'], ['payload', 0, 'mass', 'x']]) {
      expect(keysAt(path)).toEqual([]);
    }
  });
});

describe('one key', () => {
  it.each<readonly [Path, object]>([
    [['hull'], { key: 'hull', required: true, holds: 'map' }],
    [['hull', 'length'], { key: 'length', required: true, holds: 'value', example: '900 mm' }],
    [['payload'], { key: 'payload', required: false, holds: 'list' }],
    [['payload', 3, 'name'], { required: true, example: 'battery' }],
    [['payload', 3, 'mass'], { required: false, holds: 'value', example: '410 g' }],
    [['payload', 3, 'fixed'], { words: ['true', 'false'] }],
    [['payload', 3, 'axis'], { words: ['fore-aft', 'athwart', 'vertical'] }],
    [['hull', 'tanks', 0, 'kind'], { required: true, words: ['sealed', 'vented', 'piston', 'bladder'] }],
    [['bays', 0, 'takes'], { required: true, words: ['lead', 'foam'] }],
    [['water'], { required: false, holds: 'value', words: ['fresh', 'sea'] }],
    [['stock', 'lead', 'pieces'], { holds: 'list', example: '[5 g, 10 g]' }],
    [['limits', 'trim', 'surfaced'], { required: false, holds: 'value' }],
  ])('%j', (path, info) => {
    expect(describer.describe(path)).toMatchObject(info);
    expect(describer.describe(path)?.description).toMatch(/^[A-Za-z]/);
  });
  it('null for what is not known, and for the whole file', () => {
    for (const path of [[], ['crew'], ['hull', 'crew'], ['payload', 0, 'crew'], ['boat', 'x']]) {
      expect(describer.describe(path)).toBeNull();
    }
  });
});

it('is, key by key, what the whole schema says', () => {
  const plain = (schema: unknown): unknown =>
    JSON.parse(JSON.stringify(schema, (key, value: unknown) => (key === '$schema' ? undefined : value)));
  const { title: _, additionalProperties: __, ...whole } = boatJsonSchema();
  const { hull, ...rest } = whole.properties as Record<string, Record<string, unknown>>;
  const { additionalProperties: ___, ...ofHull } = hull!;
  expect(plain(boatKeyHelp())).toEqual(plain({ ...whole, properties: { ...rest, hull: ofHull } }));
});
