import { describe, expect, test } from 'vitest';
import type { Path } from '../../schema/path.ts';
import type { Change } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { boatText, textLines } from '../helpers/boatText.ts';

const edited = (text: string, ...changes: readonly Change[]): string | null => {
  const splices = applyChanges(readSyntax(text), changes);
  return splices && splice(text, splices);
};

describe('remove', () => {
  test.each<readonly [name: string, before: string, path: Path, after: string]>([
    [
      'a block entry with its comments',
      boatText`
        payload:
          - name: a # x
            mass: 1
          # kept
          - name: b
      `,
      ['payload', 0],
      boatText`
        payload:
          # kept
          - name: b
      `,
    ],
    [
      'the last entry',
      boatText`
        payload:
          - name: a
          - name: b # x
        # kept
        bays: []
      `,
      ['payload', 1],
      boatText`
        payload:
          - name: a
        # kept
        bays: []
      `,
    ],
    [
      'the last line of a file',
      boatText`
        payload:\r
          - name: a\r
          - name: b`,
      ['payload', 1],
      boatText`
        payload:\r
          - name: a`,
    ],
    [
      'a key',
      boatText`
        hull:
          length: 9
          beam: 3 # x
          # kept
      `,
      ['hull', 'beam'],
      boatText`
        hull:
          length: 9
          # kept
      `,
    ],
    [
      'a section',
      boatText`
        boat: T
        hull:
          length: 9
        bays: []
      `,
      ['hull'],
      boatText`
        boat: T
        bays: []
      `,
    ],
    [
      'the first key of an entry',
      boatText`
        payload:
          - name: a # x
            mass: 1
      `,
      ['payload', 0, 'name'],
      boatText`
        payload:
          - mass: 1
      `,
    ],
    [
      'the first key of an entry, a comment below',
      boatText`
        payload:
          - name: a
            # kept
            mass: 1
      `,
      ['payload', 0, 'name'],
      boatText`
        payload:
          -
            # kept
            mass: 1
      `,
    ],
    [
      'the only key of an entry',
      boatText`
        payload:
          - name: a
          - name: b
      `,
      ['payload', 0, 'name'],
      boatText`
        payload:
          -
          - name: b
      `,
    ],
    ['a key between braces', 'water: { kind: sea, temperature: 5 }', ['water', 'kind'], 'water: { temperature: 5 }'],
    [
      'the last key between braces',
      'water: { kind: sea, temperature: 5 }',
      ['water', 'temperature'],
      'water: { kind: sea }',
    ],
    ['the only key between braces', 'water: {kind: sea}', ['water', 'kind'], 'water: {}'],
    ['an entry in brackets', 'p: [ {a: 1}, {a: 2}, {a: 3} ]', ['p', 1], 'p: [ {a: 1}, {a: 3} ]'],
    [
      'an entry on a line of its own',
      boatText`
        p: [
          {a: 1}, # x
          {a: 2} # y
        ]
      `,
      ['p', 0],
      boatText`
        p: [
          {a: 2} # y
        ]
      `,
    ],
    [
      'the last on a line of its own',
      boatText`
        p: [
          {a: 1}, # x
          {a: 2} # y
        ]
      `,
      ['p', 1],
      boatText`
        p: [
          {a: 1} # x
        ]
      `,
    ],
    ['the last, each with a comma', 'p: [1, 2,]', ['p', 1], 'p: [1,]'],
  ])('%s', (_name, before, path, after) => {
    expect(edited(before, { kind: 'remove', path })).toBe(after);
  });

  test('not what is not there, nor what stands elsewhere', () => {
    expect(
      edited(
        boatText`
          payload:
            - name: a
        `,
        { kind: 'remove', path: ['payload', 3] },
      ),
    ).toBeNull();
    expect(edited('boat: T', { kind: 'remove', path: ['hull', 'length'] })).toBeNull();
    expect(edited('boat: T', { kind: 'remove', path: [] })).toBeNull();
    expect(
      edited(
        boatText`
          a: &a { in: x }
          b: *a
        `,
        { kind: 'remove', path: ['b', 'in'] },
      ),
    ).toBeNull();
  });
});

describe('add a key', () => {
  const addTo = (path: Path, key = 'mass', text = '5 g'): Change => ({ kind: 'add-key', path, key, text });
  test.each<readonly [name: string, before: string, change: Change, after: string]>([
    [
      'to a block entry',
      boatText`
        payload:
          - name: a # x
          # y
          - name: b
      `,
      addTo(['payload', 0]),
      boatText`
        payload:
          - name: a # x
            mass: 5 g
          # y
          - name: b
      `,
    ],
    [
      'between braces',
      boatText`
        payload:
          - { name: a }
      `,
      addTo(['payload', 0]),
      boatText`
        payload:
          - { name: a, mass: 5 g }
      `,
    ],
    [
      'between braces on lines',
      boatText`
        water: {
          kind: sea # x
        }
      `,
      addTo(['water'], 'temperature', '5 °C'),
      boatText`
        water: {
          kind: sea, # x
          temperature: 5 °C
        }
      `,
    ],
    ['to empty braces', 'water: {}', addTo(['water'], 'kind', 'sea'), 'water: { kind: sea }'],
    [
      'to the file',
      'boat: T',
      addTo([], 'scale', '1:60'),
      boatText`
        boat: T
        scale: 1:60`,
    ],
    ['to an empty file', '', addTo([], 'boat', 'T'), textLines(['boat: T'])],
    [
      'to a section without keys',
      boatText`
        water: # to do
        boat: T
      `,
      addTo(['water'], 'kind', 'sea'),
      boatText`
        water: # to do
          kind: sea
        boat: T
      `,
    ],
    [
      'to a missing section',
      boatText`
        hull:
            length: 9
      `,
      addTo(['water'], 'kind', 'sea'),
      boatText`
        hull:
            length: 9
        water:
            kind: sea
      `,
    ],
    [
      'quoted where it must be',
      boatText`
        a:
          b: 1
      `,
      addTo(['a'], 'c', 'x: y'),
      boatText`
        a:
          b: 1
          c: "x: y"
      `,
    ],
  ])('%s', (_name, before, change, after) => {
    expect(edited(before, change)).toBe(after);
  });

  test('not to what is no map', () => {
    expect(edited('water: sea', addTo(['water']))).toBeNull();
    expect(
      edited(
        boatText`
          a: &a { in: x }
          b: *a
        `,
        addTo(['b']),
      ),
    ).toBeNull();
  });
});

describe('a key of the last entry together with new entries', () => {
  test.each([[['append', 'add-key']], [['add-key', 'append']]] as const)('goes before them: said %j', order => {
    const text = boatText`
      payload:
        - name: battery
          mass: 1 g
    `;
    const all: Readonly<Record<(typeof order)[number], Change>> = {
      append: { kind: 'append', path: ['payload'], entry: { fields: [['name', 'lead']] } },
      'add-key': { kind: 'add-key', path: ['payload', 0], key: 'removed', text: 'trial 1' },
    };
    const splices = applyChanges(
      readSyntax(text),
      order.map(kind => all[kind]),
    )!;
    expect(splice(text, splices).replaceAll(/\s+/g, ' ')).toBe(
      'payload: - name: battery mass: 1 g removed: trial 1 - name: lead ',
    );
  });
});

describe('replace', () => {
  test.each<readonly [name: string, before: string, change: Change, after: string | null]>([
    ['a value', 'a: 1 # x', { kind: 'replace', place: { on: 'value', path: ['a'] }, text: '2 g' }, 'a: 2 g # x'],
    [
      'characters of a quoted value',
      'a: "5 q" # x',
      { kind: 'replace', place: { on: 'value', path: ['a'], within: [2, 3] }, text: 'g' },
      'a: "5 g" # x',
    ],
    [
      'a value that is not there yet',
      'a: # x',
      { kind: 'replace', place: { on: 'value', path: ['a'] }, text: '2 g' },
      'a: 2 g # x',
    ],
    [
      'a key',
      'p: [{ nmae: x }]',
      { kind: 'replace', place: { on: 'key', path: ['p', 0, 'nmae'] }, text: 'name' },
      'p: [{ name: x }]',
    ],
    ['brackets', 'a: [1, 2]', { kind: 'replace', place: { on: 'value', path: ['a'] }, text: '5' }, 'a: 5'],
    ['characters', 'a: 1', { kind: 'replace', place: { on: 'text', start: 1, end: 2 }, text: ' :' }, 'a : 1'],
    [
      'but no block',
      boatText`
        a:
          b: 1
      `,
      { kind: 'replace', place: { on: 'value', path: ['a'] }, text: '5' },
      null,
    ],
    ['nor what is not there', 'a: 1', { kind: 'replace', place: { on: 'value', path: ['b'] }, text: '5' }, null],
    ['nor a whole entry', 'a: 1', { kind: 'replace', place: { on: 'entry', path: ['a'] }, text: '5' }, null],
  ])('%s', (_name, before, change, after) => {
    expect(edited(before, change)).toBe(after);
  });

  test('several at once, but not of the same characters', () => {
    const place = (path: Path): Change => ({ kind: 'replace', place: { on: 'value', path }, text: '9' });
    expect(
      edited(
        boatText`
          a: 1
          b: 2
        `,
        place(['b']),
        place(['a']),
      ),
    ).toBe(boatText`
      a: 9
      b: 9
    `);
    expect(edited('a: { b: 1 }', place(['a']), place(['a', 'b']))).toBeNull();
  });
});
