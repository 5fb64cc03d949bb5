import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { longestLine, longestText, mostLines } from '../../server/core/text/reading/bound.ts';
import { deepestNesting } from '../../server/core/text/reading/nesting.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { valueAt } from '../../server/core/text/reading/values.ts';
import { readWhole } from '../helpers/atOnce.ts';
import { boatText, textLines } from '../helpers/boatText.ts';

describe('texts that are not read at all', () => {
  test('deep nesting, in every way YAML has to nest', () => {
    const deep = 400;
    const texts = [
      '['.repeat(deep),
      `a: ${'{ a: '.repeat(deep)}`,
      '- '.repeat(deep),
      '? '.repeat(deep),
      Array.from({ length: deep }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
      Array.from({ length: deep }, (_, i) => `${' '.repeat(i)}-`).join('\n'),
      'a: '.repeat(deep),
      'a: !t &x '.repeat(deep),
      '"a": '.repeat(deep),
      '? a: '.repeat(deep),
      // What the text is changed to before it is parsed: odd blanks made even, a lone CR a line end, slips blanked out.
      '-\u00a0'.repeat(deep),
      Array.from({ length: deep }, (_, i) => `${' '.repeat(i)}-`).join('\r'),
      `# \r${'['.repeat(deep)}`,
      `a: "x\r\n" y\n${'['.repeat(deep)}`,
    ];
    for (const text of texts) {
      const { findings, isRefused } = readSyntax(text);
      expect(
        findings.map(finding => finding.code),
        text.slice(0, 30),
      ).toEqual(['file-too-deep']);
      expect(isRefused).toBe(true);
    }
  });

  test.each([
    ['before the first key', (far: string) => [`${far}# note`, 'boat: T']],
    ['between keys', (far: string) => ['hull:', `${far}# note`, '  length: 9 mm']],
    ['of blanks alone', (far: string) => ['hull:', far, '  length: 9 mm', far]],
  ])('a line that stands for nothing is not too deep: %s', (_, lines) => {
    const far = textLines(lines(' '.repeat(deepestNesting + 50)));
    expect(readSyntax(far).findings).toEqual([]);
    expect(readWhole(far).findings).toEqual([]);
  });

  test('many brackets side by side and long texts indented far are read', () => {
    const flow = `bays: [${'{ a: [1] }, '.repeat(500)}]`;
    const indented = `${' '.repeat(deepestNesting + 50)}x`;
    const block = boatText`
      boat: |
      ${indented}
      ${indented}
      ${indented}
      scale: "[[[${'['.repeat(300)}"
      # ${'['.repeat(300)}
    `;
    expect(readSyntax(flow).findings).toEqual([]);
    expect(readSyntax(block).findings).toEqual([]);
  });

  test('keys given twice are told, however many in however long a line', () => {
    const row = ` ${'a,'.repeat(longestLine / 2 - 1)}`;
    const { findings } = readSyntax(
      textLines(['boat: T', 'limits: {', ...Array.from({ length: 14 }, () => row), ' }']),
    );
    expect(findings.map(finding => finding.code)).toContain('duplicate-key');
    for (const { message } of findings) expect(message.length).toBeLessThan(200);
  });

  test.each([
    ['characters', textLines(['note: |']).padEnd(longestText + 1, '  abc\n')],
    ['lines', '\n'.repeat(mostLines)],
    ['lines that end as on an old Macintosh', '\r'.repeat(mostLines)],
    [
      'characters in a line',
      boatText`
      boat: T
      note: ${'x'.repeat(longestLine)}`,
    ],
  ])('a text of too many %s', (_, text) => {
    const { findings } = readSyntax(text);
    expect(findings.map(finding => finding.code)).toEqual(['file-too-large']);
  });

  test('the largest text that is read', () => {
    expect(readSyntax('\n'.repeat(mostLines - 1)).findings).toEqual([]);
    expect(readSyntax(`note: ${'x'.repeat(longestLine - 6)}`).findings).toEqual([]);
  });

  test('slips all through: some are said, and nothing is sure', () => {
    const { findings, isGivenUp } = readSyntax(boatText`
      payload:
      ${textLines(['- name:a']).repeat(2000)}`);
    expect(findings).toHaveLength(100);
    expect(isGivenUp).toBe(true);
  });

  test('a key twice is said as before, where it is', () => {
    const text = boatText`
      boat: T
      hull: { length: 1, length: 2 }
      boat: U
      "boat": V
    `;
    const { findings } = readSyntax(text);
    expect(findings.map(({ code, place }) => [code, place])).toEqual([
      ['duplicate-key', expect.objectContaining({ start: text.indexOf('length: 2') })],
      ['duplicate-key', expect.objectContaining({ start: text.indexOf('boat: U') })],
      ['duplicate-key', expect.objectContaining({ start: text.indexOf('"boat"') })],
    ]);
  });

  test('aliases that multiply', () => {
    const levels = Array.from(
      { length: 9 },
      (_, i) => boatText`
        a${i + 1}: &a${i + 1} [${`*a${i}, `.repeat(9)}]
      `,
    );
    const text = boatText`
      a0: &a0 [x]
      ${levels.join('')}boat: T
    `;
    expect(readSyntax(text).findings.map(finding => finding.code)).toEqual(['alias-too-large']);
    expect(valueAt(readSyntax(text), ['boat'])).toBe('T');
  });
});

describe('aliases of aliases', () => {
  const chain = (length: number) =>
    boatText`
      a0: &a0 [x]
      ${Array.from({ length }, (_, i) => `a${i + 1}: &a${i + 1} [*a${i}]\n`).join('')}boat: T
    `;

  test('a long chain is refused, a short one is followed', () => {
    expect(readSyntax(chain(5000)).findings.map(({ code }) => code)).toEqual(['alias-too-large']);
    expect(valueAt(readSyntax(chain(5000)), ['boat'])).toBe('T');
    expect(readSyntax(chain(200)).findings).toEqual([]);
    expect(JSON.stringify(valueAt(readSyntax(chain(200)), ['a200']))).toContain('x');
  });

  test('thousands of one long list', () => {
    const text = boatText`
      a: &a [${'x,'.repeat(3000)}]
      b: [${'*a,'.repeat(3000)}]
      boat: T
    `;
    expect(readSyntax(text).findings.map(({ code }) => code)).toEqual(['alias-too-large']);
  });

  test('circles of several stand for nothing, one by one', () => {
    const text = boatText`
      a: &a { b: &b { c: *a, d: *b }, e: &e [*e, *a] }
      boat: T
    `;
    const { findings } = readSyntax(text);
    expect(findings.map(({ code }) => code)).toEqual(new Array(4).fill('circular-alias'));
    expect(valueAt(readSyntax(text), ['boat'])).toBe('T');
  });
});

const sample = boatText`
  boat: Tern                     # free name
  units: { length: mm, mass: g }
  common: &common { in: dry cylinder, fixed: true }
  hull:
    length: 900 mm
    shells:
      - name: "outer hull"
        profile: [[0, 0], [40, 31]]
  payload:
  - name: 'battery'
    <<: *common
    mass: 310 g ± 2 g
  bays: [ { name: keel, takes: lead },
          { name: deck, takes: foam } ]
`;

describe('never throws', { timeout: 60_000 }, () => {
  const read = (text: string): void => {
    const syntax = readSyntax(text);
    valueAt(syntax, []);
    for (const finding of syntax.findings) {
      const [start, end] = rangeOf(syntax, finding.place);
      expect(start).toBeGreaterThanOrEqual(0);
      expect(end).toBeGreaterThanOrEqual(start);
      expect(end).toBeLessThanOrEqual(text.length);
    }
  };

  test('any text', () => {
    const yamlish = fc.array(
      fc.constantFrom(
        ...[
          '- ',
          ': ',
          '\n',
          '  ',
          '\t',
          '"',
          "'",
          '{',
          '}',
          '[',
          ']',
          ',',
          '#',
          '&a',
          '*a',
          '? ',
          '|',
          '>',
          '!t',
          '%',
          '---',
          '<<',
          'a',
          'b:',
          '\r\n',
          '\\',
          '@',
          '...\n',
          '\u00a0',
          '\ufeff',
        ],
      ),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          yamlish.map(pieces => pieces.join('')),
        ),
        read,
      ),
      { numRuns: 1500 },
    );
  });

  test('any prefix of a file, and any file with one character gone or doubled', () => {
    for (let i = 0; i <= sample.length; i += 1) {
      read(sample.slice(0, i));
      read(sample.slice(0, i) + sample.slice(i + 1));
      read(sample.slice(0, i) + sample.slice(Math.max(0, i - 1)));
    }
  });
});
