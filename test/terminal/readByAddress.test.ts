import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readByAddress } from '../../server/terminal/readByAddress.ts';

const root = mkdtempSync(join(tmpdir(), 'boats-'));
const folder = join(root, 'my boats');
const address = (path: string): string => pathToFileURL(path).href;
const read = (name: string, boatUri = address(join(folder, 'a.boat.yaml'))) =>
  readByAddress({ uri: address(join(folder, name)), boatUri });

beforeAll(() => {
  mkdirSync(join(folder, 'meshes'), { recursive: true });
  writeFileSync(join(folder, 'meshes', 'hull ½.stl'), 'solid');
  writeFileSync(join(root, 'secret.stl'), 'solid');
  symlinkSync(join(root, 'secret.stl'), join(folder, 'link.stl'));
});
afterAll(() => rmSync(root, { recursive: true }));

test('a file beside the boat file is read, whatever is in its name', () => {
  expect(read('meshes/hull ½.stl')).toEqual({ status: 'read', bytes: Buffer.from('solid') });
});

test.each([
  ['none.stl', { status: 'missing' }],
  ['../secret.stl', { status: 'outside' }],
  ['link.stl', { status: 'outside' }],
  ['meshes', { status: 'unreadable', problem: expect.stringContaining('no file') }],
])('of %s it is told why it was not read', (name, told) => {
  expect(read(name)).toMatchObject(told);
});

test('a boat file that lies nowhere has nothing beside it', () => {
  expect(read('meshes/hull ½.stl', 'untitled:Untitled-1')).toEqual({ status: 'missing' });
});
