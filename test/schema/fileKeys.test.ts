import { describe, expect, test } from 'vitest';
import { isFileKey, isListKey, isSectionKey } from '../../schema/fileKeys.ts';
import { boatJsonSchema } from '../helpers/atOnce.ts';

interface Level {
  readonly properties?: Readonly<Record<string, Level>>;
  readonly items?: Level | readonly Level[];
  readonly anyOf?: readonly Level[];
}

/** Every key of the published schema, with what stands under it. */
function keysOf({ properties = {}, items = [], anyOf = [] }: Level): readonly (readonly [string, Level])[] {
  const below = [...Object.values(properties), ...[items].flat(), ...anyOf] as readonly Level[];
  return [...Object.entries(properties), ...below.flatMap(keysOf)];
}

const published = boatJsonSchema() as Level;
const keys = keysOf(published);
const isOfEntries = ({ items }: Level): boolean => items !== undefined && 'properties' in items;

describe('the keys of the boat file', () => {
  test('are those of the published schema', () => {
    expect(new Set(keys.map(([key]) => key)).size).toBeGreaterThan(100);
    expect(keys.filter(([key]) => !isFileKey(key))).toEqual([]);
    for (const word of ['wheel', 'properties', 'constructor', '']) expect(isFileKey(word)).toBe(false);
  });

  test('lists of entries are so in the schema, at the margin or in the hull', () => {
    const { properties = {} } = published;
    const near = [...Object.entries(properties), ...Object.entries(properties.hull!.properties!)];
    for (const [key, level] of near) expect([key, isListKey(key)]).toEqual([key, isOfEntries(level)]);
    expect(isListKey('payload')).toBe(true);
  });

  test('sections stand at the margin', () => {
    expect(keys.map(([key]) => key).filter(isSectionKey).length).toBeGreaterThanOrEqual(11);
    for (const [key] of Object.entries(published.properties!)) expect(isSectionKey(key)).toBe(true);
    expect(isSectionKey('shells')).toBe(false);
  });
});
