import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readBeside } from '../../server/terminal/readBeside.ts';

const folder = mkdtempSync(join(tmpdir(), 'boats-'));
const [shed, harbour] = [join(folder, 'shed'), join(folder, 'harbour')];
mkdirSync(join(harbour, 'forms'), { recursive: true });
mkdirSync(shed);
const boat = join(harbour, 'tern.boat.yaml');
writeFileSync(join(harbour, 'forms', 'hull.stl'), 'solid hull');
writeFileSync(join(shed, 'other.stl'), 'solid other');
symlinkSync(join(shed, 'other.stl'), join(harbour, 'linked.stl'));
symlinkSync(shed, join(harbour, 'linked'));
symlinkSync(join(harbour, 'forms', 'hull.stl'), join(harbour, 'within.stl'));
// The boat's folder may be reached by a link itself.
symlinkSync(harbour, join(folder, 'berth'));
afterAll(() => rmSync(folder, { recursive: true }));

const textOf = (found: ReturnType<typeof readBeside>) =>
  found === null || found === 'outside' ? found : new TextDecoder().decode(found);

test.each([
  ['forms/hull.stl', 'solid hull'],
  ['within.stl', 'solid hull'],
  ['linked.stl', 'outside'],
  ['linked/other.stl', 'outside'],
  ['../shed/other.stl', 'outside'],
  ['nothing.stl', null],
])('%s', (name, found) => {
  expect(textOf(readBeside(boat, name))).toBe(found);
  expect(textOf(readBeside(join(folder, 'berth', 'tern.boat.yaml'), name))).toBe(found);
});

test('a file beside one that is named from its own folder', () => {
  expect(readBeside('tern.boat.yaml', 'package.json')).toBeInstanceOf(Uint8Array);
});

test('too large a file is refused unread', () => {
  const large = join(harbour, 'large.stl');
  writeFileSync(large, '');
  truncateSync(large, 64 * 1024 * 1024 + 1);
  expect(() => readBeside(boat, 'large.stl')).toThrow('it has 65 MB, more than 64 MB.');
});

test('what is no file is refused, not waited for', () => {
  mkdirSync(join(harbour, 'folder.stl'));
  expect(() => readBeside(boat, 'folder.stl')).toThrow('no file at all');
});
