import { expect, test } from 'vitest';
import { roomOf, tallied } from './rooms.ts';

test.each([
  ['schema/units.ts', 'schema'],
  ['schema/handbook/metals.ts', 'schema/handbook'],
  ['server/cli.ts', 'server'],
  ['server/core/text/reading/pieces.ts', 'server/core/text'],
  ['server/editor/answers/hover.ts', 'server/editor'],
  ['client\\panel\\panel.ts', 'client/panel'],
])('%s is in %s', (file, room) => {
  expect(roomOf(file)).toBe(room);
});

test('a room has what its files have together', () => {
  const files = [
    { total: 10, covered: 9 },
    { total: 90, covered: 0 },
  ];
  expect(tallied(files)).toEqual({ total: 100, covered: 9 });
});
