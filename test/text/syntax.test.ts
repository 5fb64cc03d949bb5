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
      'hull:\n  length:900 mm\n  waterline: 56 mm\n',
      'missing-space: length:',
      { hull: { waterline: '56 mm' } },
    ],
    [
      '... on the last line',
      'hull:\n  waterline: 56 mm\n  length:900 mm\n',
      'missing-space: length:',
      { hull: { waterline: '56 mm' } },
    ],
    ['... alone in its section', 'hull:\n  length:900 mm\n', 'missing-space: length:', { hull: 'length:900 mm' }],
    [
      '... before a comment',
      'payload:\n  - name:a # x\n    # y\n    mass: 3\n',
      'missing-space: name:',
      { payload: [{ mass: 3 }] },
    ],
    [
      'no colon before a comment',
      'hull:\r\n  beam 3 # x\r\n  length: 9\r\n',
      'missing-colon: beam 3',
      { hull: { length: 9 } },
    ],
    [
      '... in a list entry',
      'payload:\n  - name:battery\n    mass: 5 g\n',
      'missing-space: name:',
      { payload: [{ mass: '5 g' }] },
    ],
    ['... in brackets', 'water: { kind:sea }\n', 'missing-space: kind:', { water: { 'kind:sea': null } }],
    ['no space before a bracket', 'water:{ kind: sea }\nboat: T\n', 'missing-space: water:', { boat: 'T' }],
    ['... over several lines', 'bays:[\n  { name: a },\n]\nboat: T\n', 'missing-space: bays:', { boat: 'T' }],
    [
      'no colon before a bracket',
      'limits { trim: { surfaced: 1 }, heel: 2 }\nboat: T\n',
      'missing-colon: limits',
      { boat: 'T' },
    ],
    [
      'no space after a dash between others',
      'payload:\n  - name: a\n    mass: 1\n  -name: b\n    mass: 2\n',
      'missing-space: -name: b',
      { payload: [{ name: 'a', mass: 1 }, { mass: 2 }] },
    ],
    [
      'a dash alone moved',
      'payload:\n  - name: a\n    mass: 1\n   - name: b\n    mass: 2\n',
      'bad-indent: -',
      { payload: [{ name: 'a', mass: 1 }, { mass: 2 }] },
    ],
    [
      'the first dash alone moved',
      'payload:\n   - name: a\n    mass: 1\n    in: x\n  - name: b\n',
      'bad-indent: -',
      { payload: [{ mass: 1, in: 'x' }, { name: 'b' }] },
    ],
    [
      'the first key of a section moved right',
      'hull:\n   a: 1\n  b: 2\n  c: 3\n',
      'bad-indent: a',
      { hull: { b: 2, c: 3 } },
    ],
    [
      'the first key of a section moved left',
      'hull:\n a: 1\n  b: 2\n  c: 3\n',
      'bad-indent: a',
      { hull: { b: 2, c: 3 } },
    ],
    [
      'another key of a section moved left',
      'hull:\n  a: 1\n b: 2\n  c: 3\n',
      'bad-indent: b',
      { hull: { a: 1, c: 3 } },
    ],
    ['no space after a dash', 'payload:\n  -name: battery\n', 'missing-space: -name: battery', { payload: [null] }],
    [
      'no colon',
      'hull:\n  length 900 mm\n  waterline: 5\n',
      'missing-colon: length 900 mm',
      { hull: { waterline: 5 } },
    ],
    [
      'a key half typed',
      'payload:\n  - name: a\n    m\n    station: 3\n',
      'missing-colon: m',
      { payload: [{ name: 'a', station: 3 }] },
    ],
    [
      'a line indented too far',
      'hull:\n  length: 9\n   waterline: 5\n',
      'bad-indent: waterline',
      { hull: { length: 9 } },
    ],
    [
      'a line indented too little',
      'payload:\n  - name: a\n   mass: 1\nbays: []\n',
      'bad-indent: mass',
      { payload: [{ name: 'a' }], bays: [] },
    ],
    [
      'keys under the dash',
      'payload:\n  - name: a\n  mass: 1\n  station: 3\nboat: T\n',
      'bad-indent: mass',
      { payload: [{ name: 'a' }], boat: 'T' },
    ],
    [
      'entries moved sideways',
      'payload:\n  - name: a\n - name: b\n   mass: 2\n - name: c\nboat: T\n',
      'bad-indent: -',
      { payload: [{ name: 'a' }], boat: 'T' },
    ],
    ['tabs', 'hull:\n\tlength: 900\n\twaterline: 5\n', 'tab-indent: \t', { hull: { length: 900, waterline: 5 } }],
    ['tabs after dashes', 'payload:\n  -\tname: x\n  \tmass: 3\n', 'tab-indent: \t', { payload: [{ name: 'x' }] }],
    [
      'no-break spaces',
      'payload:\n\u00a0 - name: x\n    mass:\u00a03 g\n',
      'odd-space: \u00a0',
      { payload: [{ name: 'x', mass: '3 g' }] },
    ],
    ['an open double quote', 'boat: "Tern\nscale: 1:60\n', 'unclosed-quote: "Tern', { boat: null, scale: '1:60' }],
    ['an open single quote', "boat: 'Tern\nscale: 1:60\n", "unclosed-quote: 'Tern", { boat: null, scale: '1:60' }],
    ['text after a quote', 'boat: "Tern" II\n', 'yaml-syntax: II', { boat: 'Tern' }],
    [
      'an open brace',
      'bays:\n  - { name: x, takes: lead\n  - { name: y }\nboat: T\n',
      'unclosed-bracket: {',
      { bays: [{ name: 'x', takes: 'lead' }, { name: 'y' }], boat: 'T' },
    ],
    [
      'an open brace inside brackets',
      'bays: [\n  { name: x,\n  { name: y }\n]\nboat: T\n',
      'unclosed-bracket: {',
      { bays: [{ name: 'y' }], boat: 'T' },
    ],
    [
      'lines in brackets not indented',
      'water: {\nkind: sea,\n}\nboat: T\n',
      'bad-indent: {',
      { water: null, boat: 'T' },
    ],
    [
      'a closing bracket too many',
      'water: { kind: sea }}\nboat: T\n',
      'stray-bracket: }',
      { water: { kind: 'sea' }, boat: 'T' },
    ],
    [
      'no comma',
      'water: { kind: sea temperature: 5 }\nboat: T\n',
      'missing-comma: temperature',
      { water: { kind: 'sea' }, boat: 'T' },
    ],
    ['no comma between points', 'p: [[1, 2] [3, 4]]\nboat: T\n', 'missing-comma: [', { p: [[1, 2]], boat: 'T' }],
    ['a comma too many', 'p: [1,,2]\n', 'missing-comma: ,', { p: [1, 2] }],
    ['a key twice', 'boat: T\nscale: 1:60\nboat: U\n', 'duplicate-key: boat', { boat: 'T', scale: '1:60' }],
    [
      'a colon in a name',
      'boat: Tern: second\nscale: 1:60\n',
      'needs-quotes: Tern: second',
      { boat: null, scale: '1:60' },
    ],
    ['a value that starts with @', 'boat: @tern\n', 'needs-quotes: @tern', { boat: '@tern' }],
    ['a backslash in quotes', 'boat: "a\\q"\n', 'yaml-syntax: \\', { boat: 'a\\q' }],
    ['an alias to nothing', 'boat: T\nscale: *s\n', 'unknown-alias: *s', { boat: 'T' }],
    ['an alias to itself', 'hull: &h { shells: *h, length: 5 }\n', 'circular-alias: *h', { hull: { length: 5 } }],
    ['a second document', 'boat: T\n---\nboat: U\n', 'several-documents: ---', { boat: 'T' }],
    ['an instruction to YAML', '%TERN\nboat: T\n', 'yaml-syntax: %TERN', { boat: 'T' }],
    ['a list on the line of its key', 'payload: - name\nboat: T\n', 'bad-indent: -', { payload: null, boat: 'T' }],
    ['a tag', 'boat: !tern T\n', 'yaml-syntax: !tern', { boat: 'T' }],
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
      payload: [{ name: null, mass: '3 g' }],
      scale: '1:60',
    });
  });

  test('good files raise none, whatever their line endings', () => {
    const good = 'boat: Tern # a note\nbays: [\n  { name: x },\n]\nhull:\n  length: 900 mm\n';
    for (const ending of ['\n', '\r\n', '\r']) {
      const text = good.replaceAll('\n', ending);
      expect(slips(text)).toEqual([]);
      expect(valueAt(readSyntax(text), ['hull', 'length'])).toBe('900 mm');
    }
    expect(slips('')).toEqual([]);
    expect(slips('\ufeffboat: T\n')).toEqual([]);
  });
});

describe('mends', () => {
  test.each([
    ['hull:\n  length:900 mm\n  waterline: 5\n', 'hull:\n  length: 900 mm\n  waterline: 5\n'],
    ['payload:\n  -name: x\n    mass: 3\n', 'payload:\n  - name: x\n    mass: 3\n'],
    ['hull:\n  beam 120\n  length: 9\n', 'hull:\n  beam: 120\n  length: 9\n'],
    [
      'payload:\n  - name: a\n  mass: 1\n  station: 3\nboat: T\n',
      'payload:\n  - name: a\n    mass: 1\n    station: 3\nboat: T\n',
    ],
    ['hull:\n  a: 1\n   b: 2\n', 'hull:\n  a: 1\n  b: 2\n'],
    [
      'payload:\r\n  - name: a\r\n - name: b\r\n   mass: 2\r\n',
      'payload:\r\n  - name: a\r\n  - name: b\r\n    mass: 2\r\n',
    ],
    ['hull:\n\tlength: 900\n\twaterline: 5\n', 'hull:\n  length: 900\n  waterline: 5\n'],
    ['bays:[\n  { name: a },\n]\n', 'bays: [\n  { name: a },\n]\n'],
    ['limits { heel: 2 }\n', 'limits: { heel: 2 }\n'],
    ['p:\n  - n: a\n   - n: b\n    m: 2\n', 'p:\n  - n: a\n  - n: b\n    m: 2\n'],
    ['p:\n   - n: a\n    m: 1\n    i: x\n  - n: b\n', 'p:\n  - n: a\n    m: 1\n    i: x\n  - n: b\n'],
    ['hull:\n   a: 1\n  b: 2\n  c: 3\n', 'hull:\n  a: 1\n  b: 2\n  c: 3\n'],
    ['hull:\n\u00a0 length:\u00a09\n', 'hull:\n  length: 9\n'],
    ['boat: "Tern # x\nscale: 1:60\n', 'boat: "Tern" # x\nscale: 1:60\n'],
    ['boat: "Tern" II\n', 'boat: "Tern\\" II"\n'],
    ["boat: 'it's'\n", 'boat: "it\'s"\n'],
    ['water: { kind: sea # salt\nboat: T\n', 'water: { kind: sea } # salt\nboat: T\n'],
    ['water: { kind: sea ]\nboat: T\n', 'water: { kind: sea }\nboat: T\n'],
    ['p: [1, 2\nboat: T\n', 'p: [1, 2]\nboat: T\n'],
    ['water: { kind: sea }}\n', 'water: { kind: sea }\n'],
    ['water: { kind: sea temperature: 5 }\n', 'water: { kind: sea, temperature: 5 }\n'],
    ['p: [[1, 2] [3, 4]]\n', 'p: [[1, 2], [3, 4]]\n'],
    ['boat: T\nscale: 1\nboat: U # again\nlimits: 3\n', 'boat: T\nscale: 1\nlimits: 3\n'],
    ['boat: Tern: second\n', 'boat: "Tern: second"\n'],
    ['boat: "a\\q"\n', 'boat: "a\\\\q"\n'],
    ['%TERN\nboat: T\n', '# %TERN\nboat: T\n'],
  ])('%j', (text, expected) => {
    expect(mended(text)).toBe(expected);
    expect(readSyntax(expected).findings).toEqual([]);
  });
});
