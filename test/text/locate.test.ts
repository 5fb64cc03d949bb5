import { describe, expect, test } from 'vitest';
import type { Place } from '../../server/core/findings/finding.ts';
import { pathAt } from '../../server/core/text/reading/pathAt.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { entriesOf, hasSlip, isBroken, keysOf, valueAt } from '../../server/core/text/reading/values.ts';
import { boat, boatText, textLines } from '../helpers/boatText.ts';

const text = boatText`
  boat: Tern
  common: &common { in: cylinder, fixed: true }
  hull:
    length: 900 mm
    waterline:
    tanks: [ { name: main, kind: sealed } ]
    sections: [
      [1, 2],
    ]
  payload:
    - name: battery # heavy
      mass: "310 g"
      balance:
        station: 30 mm
    - mass: 5 g
      <<: *common
    - *common
    -
  notes: |
    some text
    and more
`;
const syntax = readSyntax(text);
const marked = (place: Place): string => text.slice(...rangeOf(syntax, place));

describe('rangeOf', () => {
  test.each<readonly [Place, string]>([
    [{ on: 'value', path: ['boat'] }, 'Tern'],
    [{ on: 'value', path: ['boat'], within: [1, 3] }, 'er'],
    [{ on: 'value', path: ['payload', 0, 'mass'] }, '"310 g"'],
    [{ on: 'value', path: ['payload', 0, 'mass'], within: [4, 5] }, 'g'],
    [{ on: 'value', path: ['hull'] }, 'hull'],
    [{ on: 'value', path: ['hull', 'waterline'] }, 'waterline'],
    [{ on: 'value', path: ['hull', 'tanks'] }, '[ { name: main, kind: sealed } ]'],
    [{ on: 'value', path: ['hull', 'tanks', 0] }, '{ name: main, kind: sealed }'],
    [{ on: 'value', path: ['hull', 'sections'] }, 'sections'],
    [{ on: 'value', path: ['hull', 'sections', 0, 1] }, '2'],
    [{ on: 'value', path: ['payload', 0] }, 'battery'],
    [{ on: 'value', path: ['payload', 1] }, 'mass: 5 g'],
    [{ on: 'value', path: ['payload', 2] }, '*common'],
    [{ on: 'value', path: ['notes'] }, 'notes'],
    [{ on: 'key', path: ['hull', 'tanks', 0, 'kind'] }, 'kind'],
    [{ on: 'key', path: ['payload', 1, 'in'] }, 'in'],
    [{ on: 'value', path: ['payload', 1, 'in'] }, 'cylinder'],
    [{ on: 'entry', path: ['payload'] }, 'payload'],
    [{ on: 'entry', path: ['payload', 0] }, 'battery'],
    [{ on: 'entry', path: ['payload', 0, 'balance'] }, 'balance'],
    [{ on: 'entry', path: ['payload', 1] }, 'mass: 5 g'],
    [{ on: 'entry', path: ['hull', 'tanks', 0] }, 'main'],
    [{ on: 'entry', path: [] }, 'boat: Tern'],
    [{ on: 'value', path: ['hull', 'beam'] }, 'hull'],
    [{ on: 'key', path: ['payload', 0, 'balance', 'height', 'x'] }, 'balance'],
    [{ on: 'value', path: ['payload', 9, 'mass'] }, 'payload'],
    [{ on: 'text', start: 0, end: 4 }, 'boat'],
    [{ on: 'text', start: -5, end: 99_999 }, text],
  ])('%j', (place, expected) => {
    expect(marked(place)).toBe(expected);
  });

  test('an entry of which nothing is written has its place', () => {
    const [start, end] = rangeOf(syntax, { on: 'entry', path: ['payload', 3] });
    expect(start).toBe(end);
    expect(
      text.slice(0, start).endsWith(boatText`
        - *common
          -`),
    ).toBe(true);
  });

  test('characters inside quotes are found past their escapes', () => {
    const cases: readonly (readonly [source: string, within: [number, number], expected: string])[] = [
      ["'it''s 5 q'", [7, 8], 'q'],
      ['"a\\"b\\u00b0 q"', [5, 6], 'q'],
      ['"\\U0001F600 q"', [3, 4], 'q'],
      ['12 q', [3, 4], 'q'],
      ['12', [0, 2], '12'],
      [
        boatText`
          "two
           lines q"`,
        [10, 11],
        'k',
      ],
    ];
    for (const [source, within, expected] of cases) {
      const file = boatText`
        k: ${source}
      `;
      const [start, end] = rangeOf(readSyntax(file), { on: 'value', path: ['k'], within });
      expect(file.slice(start, end)).toBe(expected);
    }
  });
});

describe('pathAt', () => {
  const at = ({ text, caret }: { text: string; caret: number }) => {
    const { path, on } = pathAt(readSyntax(text), caret);
    return `${on} ${path.join('/')}`;
  };
  test.each([
    [boat`bo|at: Tern`, 'key boat'],
    [boat`boat: Te|rn`, 'value boat'],
    [boat`boat: |`, 'value boat'],
    [boat`boat:| Tern`, 'value boat'],
    [boat`boat: Tern |`, 'value boat'],
    [boat`boat: Tern # no|te`, 'between '],
    [
      boat`
        a: 1
        |
        b: 2`,
      'between ',
    ],
    [
      boat`
        hull:
          |`,
      'between hull',
    ],
    [
      boat`
        hull:
          length: 5
          |
        payload:`,
      'between hull',
    ],
    [
      boat`
        hull:
          length: 5
        |
        payload:`,
      'between ',
    ],
    [
      boat`
        hull:
          length: 5
            |`,
      'between hull/length',
    ],
    [
      boat`
        payload:
          - name: a
            |
          - name: b`,
      'between payload/0',
    ],
    [
      boat`
        payload:
          - name: a
          |
          - name: b`,
      'between payload',
    ],
    [
      boat`
        payload:
        - name: a
          |
        - name: b`,
      'between payload/0',
    ],
    [
      boat`
        payload:
        - name: a
        - |`,
      'between payload/1',
    ],
    [
      boat`
        payload:
          - name:bat|tery
            mass: 3`,
      'between payload/0',
    ],
    [
      boat`
        payload:
          - name: a
          - na|`,
      'value payload/1',
    ],
    [
      boat`
        payload:
          - name: a
            ma|ss: 3`,
      'key payload/0/mass',
    ],
    [
      boat`
        payload:
          - name: a
            ma|`,
      'between payload/0',
    ],
    [
      boat`
        payload:
          - name: a
            balance: { station: 3, | }`,
      'between payload/0/balance',
    ],
    [
      boat`
        payload:
          - name: a
            balance: { stat|ion: 3 }`,
      'key payload/0/balance/station',
    ],
    [boat`bays: [ { name: a, in: | } ]`, 'value bays/0/in'],
    [boat`bays: [ { name: a }, | ]`, 'between bays'],
    [
      boat`
        bays:
          - { name: a, in: |
          - { name: b }`,
      'value bays/0/in',
    ],
    [
      boat`
        bays:
          - { name: a, |
          - { name: b }`,
      'between bays/0',
    ],
    [boat`pieces: [5 g, 1|0 g]`, 'value pieces/1'],
    [boat`|`, 'between '],
  ])('%j', (marked, expected) => {
    expect(at(marked)).toBe(expected);
  });
});

describe('values', () => {
  test('aliases and merged keys are followed', () => {
    expect(valueAt(syntax, ['payload'])).toEqual([
      { name: 'battery', mass: '310 g', balance: { station: '30 mm' } },
      { mass: '5 g', in: 'cylinder', fixed: true },
      { in: 'cylinder', fixed: true },
      null,
    ]);
    expect(keysOf(syntax, ['payload', 1])).toEqual(['mass', 'in', 'fixed']);
    expect(keysOf(syntax, ['boat'])).toEqual([]);
    expect(valueAt(syntax, ['hull', 'beam'])).toBeUndefined();
    expect(valueAt(syntax, ['hull', 'waterline'])).toBeNull();
  });

  test('entries come by their places, with their values', () => {
    expect(entriesOf(syntax, ['payload']).map(({ path, value }) => [path, value])).toEqual(
      [0, 1, 2, 3].map(i => [['payload', i], valueAt(syntax, ['payload', i])]),
    );
    expect(entriesOf(syntax, ['hull', 'tanks']).map(entry => entry.value)).toEqual([{ name: 'main', kind: 'sealed' }]);
    expect(entriesOf(syntax, ['hull'])).toEqual([]);
  });

  test('a figure that no machine can hold is what is written', () => {
    expect(valueAt(readSyntax(textLines(['boat: .nan', 'scale: -.INF', 'note: 1e999'])), [])).toEqual({
      boat: '.nan',
      scale: '-.INF',
      note: '1e999',
    });
  });

  test('a key named as parts of every object are is plain data', () => {
    const value = valueAt(
      readSyntax(boatText`
        __proto__: { a: 1 }
        boat: T
      `),
      [],
    ) as Record<string, unknown>;
    expect(Object.keys(value)).toEqual(['__proto__', 'boat']);
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype);
  });

  test('aliases to nothing, and maps merged into themselves, give what there is', () => {
    expect(
      valueAt(
        readSyntax(boatText`
          a: &a
            <<: *a
            b: 1
          c: [*nope, 2]
        `),
        [],
      ),
    ).toEqual({
      a: { b: 1 },
      c: [undefined, 2],
    });
  });
});

describe('isBroken', () => {
  const broken = boatText`
    hull:
      length:900 mm
      waterline: 5 mm
      shells:
        - name: outer
          mass 3 g
        - name: inner
    water: { kind:sea, temperature: 5 }
    payload:
      - name: "battery
        mass: 3 g
    bays: []
  `;
  const read = readSyntax(broken);
  test.each([
    ['the map that a slip is in', ['hull'], true],
    ['a key that the slip may have meant', ['hull', 'length'], true],
    ['a value beside it', ['hull', 'waterline'], false],
    ['the list below', ['hull', 'shells'], false],
    ['the entry with a slip', ['hull', 'shells', 0], true],
    ['what that entry lacks', ['hull', 'shells', 0, 'mass'], true],
    ['what that entry has', ['hull', 'shells', 0, 'name'], false],
    ['the next entry', ['hull', 'shells', 1], false],
    ['what the next entry lacks', ['hull', 'shells', 1, 'mass'], false],
    ['the glued key', ['water', 'kind:sea'], true],
    ['the map in brackets around it', ['water'], true],
    ['a value beside that', ['water', 'temperature'], false],
    ['a value with an open quote', ['payload', 0, 'name'], true],
    ['the entry around that', ['payload', 0], false],
    ['a section elsewhere', ['bays'], false],
    ['the whole file', [], false],
    ['what the file lacks', ['boat'], false],
  ])('%s', (_name, path, expected) => {
    expect(isBroken(read, path)).toBe(expected);
  });

  test('a list knows of slips below it, and of one that may have swallowed it', () => {
    expect(hasSlip(read, ['hull', 'shells'])).toBe(true);
    expect(hasSlip(read, ['hull', 'tanks'])).toBe(true);
    expect(hasSlip(read, ['hull', 'waterline'])).toBe(false);
    expect(hasSlip(read, ['bays'])).toBe(false);
  });

  test('an entry whose dash slipped is in uncertainty', () => {
    const entry = readSyntax(boatText`
      payload:
        - name: a
        -name: b
          mass: 2
    `);
    expect(isBroken(entry, ['payload', 1])).toBe(true);
    expect(isBroken(entry, ['payload', 1, 'name'])).toBe(true);
    expect(isBroken(entry, ['payload', 1, 'mass'])).toBe(false);
    expect(isBroken(entry, ['payload', 0])).toBe(false);
  });

  test('a second key of one name leaves no doubt', () => {
    expect(
      isBroken(
        readSyntax(boatText`
          boat: T
          boat: U
        `),
        [],
      ),
    ).toBe(false);
  });

  test('nothing is certain in a text that is not read', () => {
    expect(isBroken(readSyntax('['.repeat(500)), ['boat'])).toBe(true);
  });
});
