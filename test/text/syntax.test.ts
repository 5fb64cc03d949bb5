import { describe, expect, test } from 'vitest';
import type { Finding } from '../../server/core/findings/finding.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { valueAt } from '../../server/core/text/reading/values.ts';
import { boatText } from '../helpers/boatText.ts';

/** The findings of a text as `code: marked characters`. */
const slips = (text: string): readonly string[] => {
  const syntax = readSyntax(text);
  return syntax.findings.map(finding => `${finding.code}: ${text.slice(...rangeOf(syntax, finding.place))}`);
};

const only = (text: string): Finding => {
  const { findings } = readSyntax(text);
  expect(findings).toHaveLength(1);
  return findings[0]!;
};

/** The text after the first mend of its only finding. */
const mended = (text: string): string => {
  const changes = only(text).mends?.[0]?.changes ?? [];
  return changes.toReversed().reduce((result, change) => {
    if (change.kind !== 'replace' || change.place.on !== 'text')
      throw new Error('expected a replacement of characters');
    return result.slice(0, change.place.start) + change.text + result.slice(change.place.end);
  }, text);
};

describe('one slip makes one complaint, on the exact characters', () => {
  const cases: readonly (readonly [name: string, text: string, slip: string, read: unknown])[] = [
    [
      'no space after a colon',
      boatText`
        hull:
          length:900 mm
          waterline: 56 mm
      `,
      'missing-space: length:',
      { hull: { waterline: '56 mm' } },
    ],
    [
      '... on the last line',
      boatText`
        hull:
          waterline: 56 mm
          length:900 mm
      `,
      'missing-space: length:',
      { hull: { waterline: '56 mm' } },
    ],
    [
      '... alone in its section',
      boatText`
        hull:
          length:900 mm
      `,
      'missing-space: length:',
      { hull: 'length:900 mm' },
    ],
    [
      '... before a comment',
      boatText`
        payload:
          - name:a # x
            # y
            mass: 3
      `,
      'missing-space: name:',
      { payload: [{ mass: 3 }] },
    ],
    [
      'no colon before a comment',
      boatText`
        hull:\r
          beam 3 # x\r
          length: 9\r
      `,
      'missing-colon: beam 3',
      { hull: { length: 9 } },
    ],
    [
      '... in a list entry',
      boatText`
        payload:
          - name:battery
            mass: 5 g
      `,
      'missing-space: name:',
      { payload: [{ mass: '5 g' }] },
    ],
    ['... in brackets', 'water: { kind:sea }', 'missing-space: kind:', { water: { 'kind:sea': null } }],
    [
      'no space before a bracket',
      boatText`
        water:{ kind: sea }
        boat: T
      `,
      'missing-space: water:',
      { boat: 'T' },
    ],
    [
      '... over several lines',
      boatText`
        bays:[
          { name: a },
        ]
        boat: T
      `,
      'missing-space: bays:',
      { boat: 'T' },
    ],
    [
      'no colon before a bracket',
      boatText`
        limits { trim: { surfaced: 1 }, heel: 2 }
        boat: T
      `,
      'missing-colon: limits',
      { boat: 'T' },
    ],
    [
      'no space after a dash between others',
      boatText`
        payload:
          - name: a
            mass: 1
          -name: b
            mass: 2
      `,
      'missing-space: -name: b',
      { payload: [{ name: 'a', mass: 1 }, { mass: 2 }] },
    ],
    [
      'a dash alone moved',
      boatText`
        payload:
          - name: a
            mass: 1
           - name: b
            mass: 2
      `,
      'bad-indent: -',
      { payload: [{ name: 'a', mass: 1 }, { mass: 2 }] },
    ],
    [
      'the first dash alone moved',
      boatText`
        payload:
           - name: a
            mass: 1
            in: x
          - name: b
      `,
      'bad-indent: -',
      { payload: [{ mass: 1, in: 'x' }, { name: 'b' }] },
    ],
    [
      'the first key of a section moved right',
      boatText`
        hull:
           a: 1
          b: 2
          c: 3
      `,
      'bad-indent: a',
      { hull: { b: 2, c: 3 } },
    ],
    [
      'the first key of a section moved left',
      boatText`
        hull:
         a: 1
          b: 2
          c: 3
      `,
      'bad-indent: a',
      { hull: { b: 2, c: 3 } },
    ],
    [
      'another key of a section moved left',
      boatText`
        hull:
          a: 1
         b: 2
          c: 3
      `,
      'bad-indent: b',
      { hull: { a: 1, c: 3 } },
    ],
    [
      'no space after a dash',
      boatText`
        payload:
          -name: battery
      `,
      'missing-space: -name: battery',
      { payload: [null] },
    ],
    [
      'no colon',
      boatText`
        hull:
          length 900 mm
          waterline: 5
      `,
      'missing-colon: length 900 mm',
      { hull: { waterline: 5 } },
    ],
    [
      'a key half typed',
      boatText`
        payload:
          - name: a
            m
            station: 3
      `,
      'missing-colon: m',
      { payload: [{ name: 'a', station: 3 }] },
    ],
    [
      'a line indented too far',
      boatText`
        hull:
          length: 9
           waterline: 5
      `,
      'bad-indent: waterline',
      { hull: { length: 9 } },
    ],
    [
      'a line indented too little',
      boatText`
        payload:
          - name: a
           mass: 1
        bays: []
      `,
      'bad-indent: mass',
      { payload: [{ name: 'a' }], bays: [] },
    ],
    [
      'keys under the dash',
      boatText`
        payload:
          - name: a
          mass: 1
          station: 3
        boat: T
      `,
      'bad-indent: mass',
      { payload: [{ name: 'a' }], boat: 'T' },
    ],
    [
      'entries moved sideways',
      boatText`
        payload:
          - name: a
         - name: b
           mass: 2
         - name: c
        boat: T
      `,
      'bad-indent: -',
      { payload: [{ name: 'a' }], boat: 'T' },
    ],
    [
      'tabs',
      boatText`
        hull:
        \tlength: 900
        \twaterline: 5
      `,
      'tab-indent: \t',
      { hull: { length: 900, waterline: 5 } },
    ],
    [
      'tabs after dashes',
      boatText`
        payload:
          -\tname: x
          \tmass: 3
      `,
      'tab-indent: \t',
      { payload: [{ name: 'x' }] },
    ],
    [
      'no-break spaces',
      boatText`
        payload:
        \u00a0 - name: x
            mass:\u00a03 g
      `,
      'odd-space: \u00a0',
      { payload: [{ name: 'x', mass: '3 g' }] },
    ],
    [
      'an open double quote',
      boatText`
        boat: "Tern
        scale: 1:60
      `,
      'unclosed-quote: "Tern',
      { boat: 'Tern', scale: '1:60' },
    ],
    [
      'an open single quote',
      boatText`
        boat: 'Tern
        scale: 1:60
      `,
      "unclosed-quote: 'Tern",
      { boat: 'Tern', scale: '1:60' },
    ],
    ['text after a quote', 'boat: "Tern" II', 'yaml-syntax: II', { boat: 'Tern' }],
    [
      'an open brace',
      boatText`
        bays:
          - { name: x, takes: lead
          - { name: y }
        boat: T
      `,
      'unclosed-bracket: {',
      { bays: [{ name: 'x', takes: 'lead' }, { name: 'y' }], boat: 'T' },
    ],
    [
      'an open brace inside brackets',
      boatText`
        bays: [
          { name: x,
          { name: y }
        ]
        boat: T
      `,
      'unclosed-bracket: {',
      { bays: [{ name: 'y' }], boat: 'T' },
    ],
    [
      'lines in brackets not indented',
      boatText`
        water: {
        kind: sea,
        }
        boat: T
      `,
      'bad-indent: {',
      { water: null, boat: 'T' },
    ],
    [
      'a closing bracket too many',
      boatText`
        water: { kind: sea }}
        boat: T
      `,
      'stray-bracket: }',
      { water: { kind: 'sea' }, boat: 'T' },
    ],
    [
      'no comma',
      boatText`
        water: { kind: sea temperature: 5 }
        boat: T
      `,
      'missing-comma: temperature',
      { water: { kind: 'sea', temperature: 5 }, boat: 'T' },
    ],
    [
      'no comma between points',
      boatText`
        p: [[1, 2] [3, 4]]
        boat: T
      `,
      'missing-comma: [',
      {
        p: [
          [1, 2],
          [3, 4],
        ],
        boat: 'T',
      },
    ],
    ['a comma too many', 'p: [1,,2]', 'missing-comma: ,', { p: [1, 2] }],
    [
      'a key twice',
      boatText`
        boat: T
        scale: 1:60
        boat: U
      `,
      'duplicate-key: boat',
      { boat: 'T', scale: '1:60' },
    ],
    [
      'a colon in a name',
      boatText`
        boat: Tern: second
        scale: 1:60
      `,
      'needs-quotes: Tern: second',
      { boat: null, scale: '1:60' },
    ],
    ['a value that starts with @', 'boat: @tern', 'needs-quotes: @tern', { boat: '@tern' }],
    ['a backslash in quotes', 'boat: "a\\q"', 'yaml-syntax: \\', { boat: 'a\\q' }],
    [
      'an alias to nothing',
      boatText`
        boat: T
        scale: *s
      `,
      'unknown-alias: *s',
      { boat: 'T' },
    ],
    ['an alias to itself', 'hull: &h { shells: *h, length: 5 }', 'circular-alias: *h', { hull: { length: 5 } }],
    [
      'a second document',
      boatText`
        boat: T
        ---
        boat: U
      `,
      'several-documents: ---',
      { boat: 'T' },
    ],
    [
      'an instruction to YAML',
      boatText`
        %TERN
        boat: T
      `,
      'yaml-syntax: %TERN',
      { boat: 'T' },
    ],
    [
      'a list on the line of its key',
      boatText`
        payload: - name
        boat: T
      `,
      'bad-indent: -',
      { payload: null, boat: 'T' },
    ],
    ['a tag', 'boat: !tern T', 'yaml-syntax: !tern', { boat: 'T' }],
  ];
  test.each(cases)('%s', (_name, text, slip, read) => {
    expect(slips(text)).toEqual([slip]);
    expect(valueAt(readSyntax(text), [])).toEqual(read);
  });

  test('slips in different places are all said', () => {
    const text = boatText`
      boat:Tern
      hull:
        length: 900 mm
        waterline 56 mm
      payload:
        - name: "battery
          mass: 3 g
      scale: 1:60
    `;
    expect(slips(text)).toEqual(['missing-space: boat:', 'missing-colon: waterline 56 mm', 'unclosed-quote: "battery']);
    expect(valueAt(readSyntax(text), [])).toEqual({
      hull: { length: '900 mm' },
      payload: [{ name: 'battery', mass: '3 g' }],
      scale: '1:60',
    });
  });

  test('good files raise none, whatever their line endings', () => {
    const good = boatText`
      boat: Tern # a note
      bays: [
        { name: x },
      ]
      hull:
        length: 900 mm
    `;
    for (const ending of ['\n', '\r\n', '\r']) {
      const text = good.replaceAll('\n', ending);
      expect(slips(text)).toEqual([]);
      expect(valueAt(readSyntax(text), ['hull', 'length'])).toBe('900 mm');
    }
    expect(slips('')).toEqual([]);
    expect(slips('\ufeffboat: T')).toEqual([]);
  });
});

test('names in a list in brackets may be those of keys: the comma behind one is the list’s', () => {
  const text = boatText`
    conditions:
      - { name: bare, without: [lead, battery, in], aboard: [mass = 3 g, foam] }
      - name: bare too
        without:
          [lead,
          battery]
  `;
  expect(slips(text)).toEqual(['missing-colon: mass = 3 g']);
});

describe('mends', () => {
  test.each([
    [
      boatText`
        hull:
          length:900 mm
          waterline: 5
      `,
      boatText`
        hull:
          length: 900 mm
          waterline: 5
      `,
    ],
    [
      boatText`
        payload:
          -name: x
            mass: 3
      `,
      boatText`
        payload:
          - name: x
            mass: 3
      `,
    ],
    [
      boatText`
        hull:
          beam 120
          length: 9
      `,
      boatText`
        hull:
          beam: 120
          length: 9
      `,
    ],
    [
      boatText`
        payload:
          - name: a
          mass: 1
          station: 3
        boat: T
      `,
      boatText`
        payload:
          - name: a
            mass: 1
            station: 3
        boat: T
      `,
    ],
    [
      boatText`
        hull:
          a: 1
           b: 2
      `,
      boatText`
        hull:
          a: 1
          b: 2
      `,
    ],
    [
      boatText`
        payload:\r
          - name: a\r
         - name: b\r
           mass: 2\r
      `,
      boatText`
        payload:\r
          - name: a\r
          - name: b\r
            mass: 2\r
      `,
    ],
    [
      boatText`
        hull:
        \tlength: 900
        \twaterline: 5
      `,
      boatText`
        hull:
          length: 900
          waterline: 5
      `,
    ],
    [
      boatText`
        bays:[
          { name: a },
        ]
      `,
      boatText`
        bays: [
          { name: a },
        ]
      `,
    ],
    ['limits { heel: 2 }', 'limits: { heel: 2 }'],
    [
      boatText`
        p:
          - n: a
           - n: b
            m: 2
      `,
      boatText`
        p:
          - n: a
          - n: b
            m: 2
      `,
    ],
    [
      boatText`
        p:
           - n: a
            m: 1
            i: x
          - n: b
      `,
      boatText`
        p:
          - n: a
            m: 1
            i: x
          - n: b
      `,
    ],
    [
      boatText`
        hull:
           a: 1
          b: 2
          c: 3
      `,
      boatText`
        hull:
          a: 1
          b: 2
          c: 3
      `,
    ],
    [
      boatText`
        hull:
        \u00a0 length:\u00a09
      `,
      boatText`
        hull:
          length: 9
      `,
    ],
    [
      boatText`
        boat: "Tern # x
        scale: 1:60
      `,
      boatText`
        boat: "Tern" # x
        scale: 1:60
      `,
    ],
    ['boat: "Tern" II', 'boat: "Tern\\" II"'],
    ["boat: 'it's'", 'boat: "it\'s"'],
    [
      boatText`
        water: { kind: sea # salt
        boat: T
      `,
      boatText`
        water: { kind: sea } # salt
        boat: T
      `,
    ],
    [
      boatText`
        water: { kind: sea ]
        boat: T
      `,
      boatText`
        water: { kind: sea }
        boat: T
      `,
    ],
    [
      boatText`
        p: [1, 2
        boat: T
      `,
      boatText`
        p: [1, 2]
        boat: T
      `,
    ],
    ['water: { kind: sea }}', 'water: { kind: sea }'],
    ['water: { kind: sea temperature: 5 }', 'water: { kind: sea, temperature: 5 }'],
    ['p: [[1, 2] [3, 4]]', 'p: [[1, 2], [3, 4]]'],
    [
      boatText`
        boat: T
        scale: 1
        boat: U # again
        limits: 3
      `,
      boatText`
        boat: T
        scale: 1
        # boat: U # again
        limits: 3
      `,
    ],
    ['boat: Tern: second', 'boat: "Tern: second"'],
    ['boat: "a\\q"', 'boat: "a\\\\q"'],
    [
      boatText`
        %TERN
        boat: T
      `,
      boatText`
        # %TERN
        boat: T
      `,
    ],
  ])('%j', (text, expected) => {
    expect(mended(text)).toBe(expected);
    expect(readSyntax(expected).findings).toEqual([]);
  });
});
