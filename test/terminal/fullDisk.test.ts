import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { rewriteBoatFile } from '../../server/terminal/boatFiles.ts';
import { writeOutput } from '../../server/terminal/outputFiles.ts';
import { textLines } from '../helpers/boatText.ts';

const WAS = textLines(['boat: Tern', 'note: as it was']);
const OTHER = textLines(['boat: Gull']);
const NOW = textLines(['boat: Tern', 'note: as it shall be']);

/** A sheet that is written over, and the one that is written. */
const PAGE = '<html>a sheet that was there</html>';
const NEW_PAGE = '<html>a sheet that shall be</html>';
const REPLACING = { from: 'tern.boat.yaml', overwrite: true };

let folder = '';
beforeEach(() => {
  folder = fs.mkdtempSync(join(tmpdir(), 'boats-'));
});
afterEach(() => {
  vi.restoreAllMocks();
  syncBuiltinESMExports();
  fs.rmSync(folder, { recursive: true });
});

/** A disk that has no more room at one of the calls, the `nth` of its kind; of a text half is written by then. */
function fills(call: 'openSync' | 'writeFileSync' | 'fsyncSync' | 'renameSync', nth: number): void {
  let count = 0;
  const { writeFileSync } = fs;
  const real = fs[call] as (...given: readonly unknown[]) => never;
  vi.spyOn(fs, call).mockImplementation((...given: readonly unknown[]) => {
    count += 1;
    if (count !== nth) return real(...given);
    const [file, text] = given;
    if (call === 'writeFileSync') writeFileSync(file as number, String(text).slice(0, 15));
    throw Object.assign(new Error('ENOSPC: no'), { code: 'ENOSPC' });
  });
  syncBuiltinESMExports();
}

/** Where the disk fills, by the call and which of its kind. */
const MOMENTS = [
  ['when the new one is begun', 'openSync', 2],
  ['half-way in the new one', 'writeFileSync', 1],
  ['when the new one is brought to the disk', 'fsyncSync', 1],
  ['when it is put in place', 'renameSync', 1],
] as const;

describe.each([
  ['a boat file', 'tern.boat.yaml', `\uFEFF${WAS}`, (file: string) => rewriteBoatFile(file, WAS, NOW)],
  ['a sheet', 'tern.html', PAGE, (file: string) => writeOutput(file, () => NEW_PAGE, REPLACING)],
])('%s is whole, and nothing lies beside it, where the disk is full', (_, name, was, write) => {
  it.each(MOMENTS)('%s', (_when, call, nth) => {
    const file = join(folder, name);
    fs.writeFileSync(file, was);
    fills(call, nth);
    expect(() => write(file)).toThrow('the disk is full');
    expect(fs.readFileSync(file, 'utf8')).toBe(was);
    expect(fs.readdirSync(folder)).toEqual([name]);
  });

  it('half-way in a file of two names, that cannot be put in place whole', () => {
    const [file, other] = [join(folder, name), join(folder, 'other')];
    fs.writeFileSync(file, was);
    fs.linkSync(file, other);
    fills('writeFileSync', 2);
    expect(() => write(file)).toThrow('the disk is full');
    expect(fs.readFileSync(other, 'utf8')).toBe(was);
    expect(fs.readdirSync(folder).sort()).toEqual(['other', name]);
  });
});

it('half a sheet is not left behind', () => {
  fills('writeFileSync', 1);
  const name = join(folder, 'sheet.html');
  expect(() => writeOutput(name, () => '<html>of many words</html>', { from: 'tern', overwrite: false })).toThrow(
    'the disk is full',
  );
  expect(fs.readdirSync(folder)).toEqual([]);
});

describe('a boat file that changes while the new one is written', () => {
  it.each([
    ['is kept as the other program left it', (file: string) => fs.writeFileSync(file, OTHER), 'changed meanwhile'],
    ['stays away where it was taken away', (file: string) => fs.rmSync(file), 'there is no such file'],
  ])('%s', (_, meanwhile, sentence) => {
    const file = join(folder, 'tern.boat.yaml');
    fs.writeFileSync(file, WAS);
    const { fsyncSync } = fs;
    vi.spyOn(fs, 'fsyncSync').mockImplementation(of => {
      fsyncSync(of);
      meanwhile(file);
    });
    syncBuiltinESMExports();
    expect(() => rewriteBoatFile(file, WAS, NOW)).toThrow(sentence);
    expect(fs.readdirSync(folder)).toEqual(fs.existsSync(file) ? ['tern.boat.yaml'] : []);
    if (fs.existsSync(file)) expect(fs.readFileSync(file, 'utf8')).toBe(OTHER);
  });
});
