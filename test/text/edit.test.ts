import { describe, expect, test } from 'vitest';
import type { Path } from '../../schema/path.ts';
import type { Change } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';

const edited = (text: string, ...changes: readonly Change[]): string | null => {
  const splices = applyChanges(readSyntax(text), changes);
  return splices && splice(text, splices);
};

describe('remove', () => {
  test.each<readonly [name: string, before: string, path: Path, after: string]>([
    [
      'a block entry with its comments',
      'payload:\n  - name: a # x\n    mass: 1\n  # kept\n  - name: b\n',
      ['payload', 0],
      'payload:\n  # kept\n  - name: b\n',
    ],
    [
      'the last entry',
      'payload:\n  - name: a\n  - name: b # x\n# kept\nbays: []\n',
      ['payload', 1],
      'payload:\n  - name: a\n# kept\nbays: []\n',
    ],
    ['the last line of a file', 'payload:\r\n  - name: a\r\n  - name: b', ['payload', 1], 'payload:\r\n  - name: a'],
    ['a key', 'hull:\n  length: 9\n  beam: 3 # x\n  # kept\n', ['hull', 'beam'], 'hull:\n  length: 9\n  # kept\n'],
    ['a section', 'boat: T\nhull:\n  length: 9\nbays: []\n', ['hull'], 'boat: T\nbays: []\n'],
    [
      'the first key of an entry',
      'payload:\n  - name: a # x\n    mass: 1\n',
      ['payload', 0, 'name'],
      'payload:\n  - mass: 1\n',
    ],
    [
      'the first key of an entry, a comment below',
      'payload:\n  - name: a\n    # kept\n    mass: 1\n',
      ['payload', 0, 'name'],
      'payload:\n  -\n    # kept\n    mass: 1\n',
    ],
    [
      'the only key of an entry',
      'payload:\n  - name: a\n  - name: b\n',
      ['payload', 0, 'name'],
      'payload:\n  -\n  - name: b\n',
    ],
    [
      'a key between braces',
      'water: { kind: sea, temperature: 5 }\n',
      ['water', 'kind'],
      'water: { temperature: 5 }\n',
    ],
    [
      'the last key between braces',
      'water: { kind: sea, temperature: 5 }\n',
      ['water', 'temperature'],
      'water: { kind: sea }\n',
    ],
    ['the only key between braces', 'water: {kind: sea}\n', ['water', 'kind'], 'water: {}\n'],
    ['an entry in brackets', 'p: [ {a: 1}, {a: 2}, {a: 3} ]\n', ['p', 1], 'p: [ {a: 1}, {a: 3} ]\n'],
    ['an entry on a line of its own', 'p: [\n  {a: 1}, # x\n  {a: 2} # y\n]\n', ['p', 0], 'p: [\n  {a: 2} # y\n]\n'],
    ['the last on a line of its own', 'p: [\n  {a: 1}, # x\n  {a: 2} # y\n]\n', ['p', 1], 'p: [\n  {a: 1} # x\n]\n'],
    ['the last, each with a comma', 'p: [1, 2,]\n', ['p', 1], 'p: [1,]\n'],
  ])('%s', (_name, before, path, after) => {
    expect(edited(before, { kind: 'remove', path })).toBe(after);
  });

  test('not what is not there, nor what stands elsewhere', () => {
    expect(edited('payload:\n  - name: a\n', { kind: 'remove', path: ['payload', 3] })).toBeNull();
    expect(edited('boat: T\n', { kind: 'remove', path: ['hull', 'length'] })).toBeNull();
    expect(edited('boat: T\n', { kind: 'remove', path: [] })).toBeNull();
    expect(edited('a: &a { in: x }\nb: *a\n', { kind: 'remove', path: ['b', 'in'] })).toBeNull();
  });
});

describe('add a key', () => {
  const addTo = (path: Path, key = 'mass', text = '5 g'): Change => ({ kind: 'add-key', path, key, text });
  test.each<readonly [name: string, before: string, change: Change, after: string]>([
    [
      'to a block entry',
      'payload:\n  - name: a # x\n  # y\n  - name: b\n',
      addTo(['payload', 0]),
      'payload:\n  - name: a # x\n    mass: 5 g\n  # y\n  - name: b\n',
    ],
    ['between braces', 'payload:\n  - { name: a }\n', addTo(['payload', 0]), 'payload:\n  - { name: a, mass: 5 g }\n'],
    [
      'between braces on lines',
      'water: {\n  kind: sea # x\n}\n',
      addTo(['water'], 'temperature', '5 °C'),
      'water: {\n  kind: sea, # x\n  temperature: 5 °C\n}\n',
    ],
    ['to empty braces', 'water: {}\n', addTo(['water'], 'kind', 'sea'), 'water: { kind: sea }\n'],
    ['to the file', 'boat: T', addTo([], 'scale', '1:60'), 'boat: T\nscale: 1:60'],
    ['to an empty file', '', addTo([], 'boat', 'T'), 'boat: T\n'],
    [
      'to a section without keys',
      'water: # to do\nboat: T\n',
      addTo(['water'], 'kind', 'sea'),
      'water: # to do\n  kind: sea\nboat: T\n',
    ],
    [
      'to a missing section',
      'hull:\n    length: 9\n',
      addTo(['water'], 'kind', 'sea'),
      'hull:\n    length: 9\nwater:\n    kind: sea\n',
    ],
    ['quoted where it must be', 'a:\n  b: 1\n', addTo(['a'], 'c', 'x: y'), 'a:\n  b: 1\n  c: "x: y"\n'],
  ])('%s', (_name, before, change, after) => {
    expect(edited(before, change)).toBe(after);
  });

  test('not to what is no map', () => {
    expect(edited('water: sea\n', addTo(['water']))).toBeNull();
    expect(edited('a: &a { in: x }\nb: *a\n', addTo(['b']))).toBeNull();
  });
});

describe('replace', () => {
  test.each<readonly [name: string, before: string, change: Change, after: string | null]>([
    ['a value', 'a: 1 # x\n', { kind: 'replace', place: { on: 'value', path: ['a'] }, text: '2 g' }, 'a: 2 g # x\n'],
    [
      'characters of a quoted value',
      'a: "5 q" # x\n',
      { kind: 'replace', place: { on: 'value', path: ['a'], within: [2, 3] }, text: 'g' },
      'a: "5 g" # x\n',
    ],
    [
      'a value that is not there yet',
      'a: # x\n',
      { kind: 'replace', place: { on: 'value', path: ['a'] }, text: '2 g' },
      'a: 2 g # x\n',
    ],
    [
      'a key',
      'p: [{ nmae: x }]\n',
      { kind: 'replace', place: { on: 'key', path: ['p', 0, 'nmae'] }, text: 'name' },
      'p: [{ name: x }]\n',
    ],
    ['brackets', 'a: [1, 2]\n', { kind: 'replace', place: { on: 'value', path: ['a'] }, text: '5' }, 'a: 5\n'],
    ['characters', 'a: 1\n', { kind: 'replace', place: { on: 'text', start: 1, end: 2 }, text: ' :' }, 'a : 1\n'],
    ['but no block', 'a:\n  b: 1\n', { kind: 'replace', place: { on: 'value', path: ['a'] }, text: '5' }, null],
    ['nor what is not there', 'a: 1\n', { kind: 'replace', place: { on: 'value', path: ['b'] }, text: '5' }, null],
    ['nor a whole entry', 'a: 1\n', { kind: 'replace', place: { on: 'entry', path: ['a'] }, text: '5' }, null],
  ])('%s', (_name, before, change, after) => {
    expect(edited(before, change)).toBe(after);
  });

  test('several at once, but not of the same characters', () => {
    const place = (path: Path): Change => ({ kind: 'replace', place: { on: 'value', path }, text: '9' });
    expect(edited('a: 1\nb: 2\n', place(['b']), place(['a']))).toBe('a: 9\nb: 9\n');
    expect(edited('a: { b: 1 }\n', place(['a']), place(['a', 'b']))).toBeNull();
  });
});
