import {
  chmodSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readBoatFile, readPage, rewriteBoatFile } from '../../server/terminal/boatFiles.ts';
import { writeOutput } from '../../server/terminal/outputFiles.ts';
import { boatText, textLines } from '../helpers/boatText.ts';

let folder = '';
const at = (name: string): string => join(folder, name);
const put = (name: string, text: string | Uint8Array): string => {
  writeFileSync(at(name), text);
  return at(name);
};
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'boats-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

describe('a boat file is rewritten', () => {
  it('whole, with its byte order mark and line ends, and nothing is left beside it', () => {
    const file = put(
      'tern.boat.yaml',
      boatText`
      \uFEFFboat: Tern\r
      note: žluť\r
    `,
    );
    rewriteBoatFile(
      file,
      readBoatFile(file),
      boatText`
      boat: Tern\r
      note: žluť\r
      scale: 1:60\r
    `,
    );
    expect(readFileSync(file, 'utf8')).toBe(boatText`
      \uFEFFboat: Tern\r
      note: žluť\r
      scale: 1:60\r
    `);
    expect(readdirSync(folder)).toEqual(['tern.boat.yaml']);
  });

  it('with its mode', () => {
    const file = put('tern.boat.yaml', textLines(['boat: Tern']));
    chmodSync(file, 0o640);
    rewriteBoatFile(file, textLines(['boat: Tern']), textLines(['boat: Arctic tern']));
    expect(statSync(file).mode & 0o777).toBe(0o640);
  });

  it('where a link leads, and the link stays', () => {
    mkdirSync(at('harbour'));
    const file = put('harbour/tern.boat.yaml', textLines(['boat: Tern']));
    symlinkSync(file, at('link.boat.yaml'));
    rewriteBoatFile(at('link.boat.yaml'), textLines(['boat: Tern']), textLines(['boat: Arctic tern']));
    expect(lstatSync(at('link.boat.yaml')).isSymbolicLink()).toBe(true);
    expect(readFileSync(file, 'utf8')).toBe(textLines(['boat: Arctic tern']));
  });

  it('whatever was left beside it by one that was killed, and however long its name is', () => {
    const name = `${'t'.repeat(240)}.boat.yaml`;
    const file = put(name, textLines(['boat: Tern']));
    for (const left of [name.slice(0, 200), 'tern.boat.yaml']) put(`.${left}.${process.pid}.new`, 'half');
    rewriteBoatFile(file, textLines(['boat: Tern']), textLines(['boat: Arctic tern']));
    expect(readFileSync(file, 'utf8')).toBe(textLines(['boat: Arctic tern']));
    expect(readdirSync(folder)).toHaveLength(3);
  });

  it('under each of its names', () => {
    const file = put('tern.boat.yaml', textLines(['boat: Tern']));
    linkSync(file, at('other.boat.yaml'));
    rewriteBoatFile(file, textLines(['boat: Tern']), textLines(['boat: Arctic tern']));
    expect(readFileSync(at('other.boat.yaml'), 'utf8')).toBe(textLines(['boat: Arctic tern']));
    expect(readdirSync(folder).sort()).toEqual(['other.boat.yaml', 'tern.boat.yaml']);
  });
});

describe('a boat file is left as it is', () => {
  it.each([
    ['when it was changed meanwhile', textLines(['boat: Gull']), /changed meanwhile/],
    ['when it is not UTF-8', Uint8Array.of(...new TextEncoder().encode('boat: T'), 0xe9, 0x0a), /not UTF-8/],
  ])('%s', (_, bytes, sentence) => {
    const file = put('tern.boat.yaml', bytes);
    const before = readFileSync(file);
    expect(() => rewriteBoatFile(file, textLines(['boat: Tern']), textLines(['boat: New']))).toThrow(sentence);
    expect(readFileSync(file)).toEqual(before);
    expect(readdirSync(folder)).toEqual(['tern.boat.yaml']);
  });

  it('when it was taken away meanwhile', () => {
    expect(() => rewriteBoatFile(at('gone'), textLines(['boat: Tern']), textLines(['boat: New']))).toThrow(
      'there is no such file or folder',
    );
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe('what is no boat file is not read', () => {
  it.each([
    ['/dev/zero', /no file/],
    ['/proc/self/fd', /a folder/],
    ['', /no such file/],
    ['a\0b', /no name of a file/],
  ])('%j', (name, sentence) => {
    expect(() => readBoatFile(name)).toThrow(sentence);
  });

  it('nor what is far too large for one; a page of one is longer', () => {
    const huge = put('huge.boat.yaml', '#'.repeat(5e6));
    expect(() => readBoatFile(huge)).toThrow(/more than 2 MB/);
    expect(readPage(huge)).toHaveLength(5e6);
  });

  it.each([
    ['Latin-1', [0x62, 0x3a, 0x20, 0xe9, 0x0a]],
    ['UTF-16', [0xff, 0xfe, 0x62, 0x00]],
    ['cut short', [0x62, 0xc3]],
  ])('nor what is not UTF-8: %s', (_, bytes) => {
    const file = put('tern.boat.yaml', Uint8Array.from(bytes));
    for (const read of [readBoatFile, readPage]) expect(() => read(file)).toThrow(/not UTF-8, which would be lost/);
  });

  it('nor what has a name that came in pieces', () => {
    expect(() => readBoatFile('b\ufffd.boat.yaml')).toThrow(/its name is not in UTF-8/);
  });
});

describe('a sheet goes to a file of its own', () => {
  const options = (overwrite: boolean) => ({ from: at('tern.boat.yaml'), overwrite });

  it.each([
    ['the boat file', 'tern.boat.yaml', /this is a boat file/],
    ['another boat file', 'gull.boat.yml', /this is a boat file/],
    ['the boat file by a link', 'linked.html', /this is a boat file/],
    ['a boat file by another name', 'same.html', /this is a boat file/],
    ['a boat file that is called otherwise', 'notes.txt', /this is a boat file/],
  ])('never %s', (_, name, sentence) => {
    put('tern.boat.yaml', textLines(['boat: Tern']));
    put('gull.boat.yml', textLines(['boat: Gull']));
    symlinkSync(at('gull.boat.yml'), at('linked.html'));
    linkSync(at('tern.boat.yaml'), at('same.html'));
    put('notes.txt', textLines(['# mine', 'hull :', '  length: 900 mm']));
    const before = readFileSync(at(name), 'utf8');
    for (const overwrite of [true, false]) {
      expect(() => writeOutput(at(name), () => '<html>', options(overwrite))).toThrow(sentence);
    }
    expect(readFileSync(at(name), 'utf8')).toBe(before);
  });

  it('replaces another file only when told', () => {
    const file = put('thesis.html', 'years of work');
    expect(() => writeOutput(file, () => '<html>', options(false))).toThrow(/such a file already/);
    expect(readFileSync(file, 'utf8')).toBe('years of work');
    writeOutput(file, () => '<html>', options(true));
    expect(readFileSync(file, 'utf8')).toBe('<html>');
  });

  it('keeps the mode, the other names and the links of the one that it replaces', () => {
    const file = put('sheet.html', 'a long sheet, years of work');
    chmodSync(file, 0o640);
    symlinkSync(file, at('link.html'));
    writeOutput(at('link.html'), () => '<html>', options(true));
    expect(lstatSync(at('link.html')).isSymbolicLink()).toBe(true);
    expect([readFileSync(file, 'utf8'), statSync(file).mode & 0o777]).toEqual(['<html>', 0o640]);
    linkSync(file, at('second.html'));
    writeOutput(file, () => '<svg>', options(true));
    expect(readFileSync(at('second.html'), 'utf8')).toBe('<svg>');
    expect(readdirSync(folder).sort()).toEqual(['link.html', 'second.html', 'sheet.html']);
  });

  it('never takes the place of what it is made from, nor the name of a boat file', () => {
    const page = put('page.html', '<html>');
    const from = { from: page, overwrite: true };
    expect(() => writeOutput(page, () => textLines(['boat: T']), from)).toThrow(/the file that it is made from/);
    expect(() => writeOutput(at('new.boat.yaml'), () => '<html>', from)).toThrow(/a name for a boat file/);
    writeOutput(at('new.boat.yaml'), () => textLines(['boat: T']), from);
    expect(readdirSync(folder).sort()).toEqual(['new.boat.yaml', 'page.html']);
  });

  it('is made only where it may be written', () => {
    const file = put('sheet.html', '<html>');
    const make = vi.fn(() => '<html>');
    expect(() => writeOutput(file, make, options(false))).toThrow(/such a file already/);
    expect(make).not.toHaveBeenCalled();
  });

  it('and says why it cannot', () => {
    expect(() => writeOutput(at('no such/sheet.html'), () => '<html>', options(false))).toThrow(
      'there is no such file or folder',
    );
    expect(() => writeOutput(folder, () => '<html>', options(true))).toThrow('this is a folder');
    expect(() => writeOutput('/dev/full', () => '<html>', options(false))).toThrow('the disk is full');
  });
});
