import { readdirSync, readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSyntax, type Syntax } from '../../server/core/text/reading/syntax.ts';
import { readWhole } from '../helpers/atOnce.ts';
import { arbitrarySub, subText } from '../helpers/boats.ts';
import { boatText, textLines } from '../helpers/boatText.ts';
import { layouts } from '../helpers/layouts.ts';
import { PROBE } from '../helpers/probe.ts';

const samples = readdirSync('samples')
  .filter(name => name.endsWith('.yaml'))
  .map(name => readFileSync(`samples/${name}`, 'utf8'));

/** A file with something of everything that makes it hard to tell where an entry ends. */
const ODD = boatText`
  # a boat
  boat: Tern of the
    two seas

  hull:   # of wood
    # its length
    length: 900 mm
    waterline:
      bow: 80 mm
      stern: 82 mm
    shells:
    - name: outer hull
      note: |
        planked

        # in lime
      profile: [[0, 0],
        [40, 31]]

    # the sail
    - { name: sail,
        box: 1 x 2 mm }
  payload:
  -
    name: battery
  - name: 'lead of
      the keel'
    note: >+
      folded

  - plain
  - null
  -
  - - 1
    - 2
  bays:
  stock: {}
  limits:
    trim: 1°
`;

/** A file of entries so long that each is put together from its own keys. */
const LONG = boatText`
  hull:
    shells:
    -   name: outer hull   # of wood
        # its table
        sections:
        - { station: 0, outline: [[0, 40]] }
        # fuller
        - station: 20
          outline:
            - [0, 4]
            - [12, 40]
        ${textRows(24)}
        note: |
          planked

          # in lime
        mesh:
          file: a.stl

          at: [1, 2,
            3]
    - name: casing
      ${textRows(20, 'profile:')}
  trials:
    - condition: surfaced
      "day": 1
      shifts:
        ${textRows(24)}
`;

/** A file of lists in brackets so long that each is put together from its entries. */
const FLOW = boatText`
  hull:
    shells:
      - name: outer hull
        sections: [
          ${flowRows(90)},

        ]
        profile: [${flowRows(90)}]
    waterline: 9
`;

/** Rows between brackets, several on a line. */
function flowRows(count: number): string {
  const rows = Array.from({ length: count }, (_, i) =>
    i % 7 === 3
      ? `[${i}, name: ${i} mm, 3]`
      : `{ station: ${i}, outline: [[0, ${i}], [4, 5 mm], [7.25, -3]], half: 4 }`,
  );
  return rows.join(',\n          ').replaceAll('3 },\n', '3 }, ');
}

/** Rows of a list, as a text that is put in has its lines. */
function textRows(count: number, key?: string): string {
  const rows = Array.from({ length: count }, (_, i) => `- { station: ${i}, outline: [[0, ${i}], [4, 5]] }`);
  return [...(key === undefined ? [] : [key]), ...rows].join('\n        ');
}

/** Texts that change how what is around them is read. */
const snippets = [
  ...['- ', '-', ': ', ':', '? ', '# ', ' #', '\n', '\n\n', '\n  ', '\n    ', '\r\n', '\r', '\t', ' ', '  '],
  ...['"', "'", '{', '}', '[', ']', ', ', '|', '>', '|+\n', '>-\n', '| # x\n', '|2\n'],
  ...['&a ', '*a', '!!str ', '!x ', '<<: ', '---\n', '...\n', '%YAML 1.2\n', '--- ', '@', '\\'],
  ...['\u00a0', '\u2028', '\ufeff', '\u0000', '\u001f', 'ü', '😀', 'name: x', 'x:y', '-x: y', 'hull:', 'null:'],
  ['[', '{ a: '].map(each => each.repeat(150)).join(''),
  '- '.repeat(210),
  ' '.repeat(220),
  ...[
    boatText`

    - a
  `,
    boatText`

    hull:
  `,
    boatText`

    bays:
      - name: b
  `,
    '\n# note\n',
    '\n    # note\n',
    '\n  x: 1\n',
    textLines(['boat: T']),
  ],
];

interface Edit {
  readonly kind: 'digit' | 'put' | 'delete' | 'cut' | 'repeat' | 'swap' | 'shift' | 'endings';
  readonly at: number;
  readonly count: number;
  readonly snippet: string;
}

const editsOf = (kinds: readonly Edit['kind'][]): fc.Arbitrary<Edit> =>
  fc.record({
    kind: fc.constantFrom(...kinds),
    at: fc.double({ min: 0, max: 0.9999, noNaN: true }),
    count: fc.integer({ min: 0, max: 9 }),
    snippet: fc.constantFrom(...snippets),
  });

const tame = editsOf(['digit', 'digit', 'repeat', 'cut', 'endings']);
const wild = editsOf(['digit', 'put', 'put', 'put', 'delete', 'cut', 'repeat', 'swap', 'shift', 'endings']);

function edited(text: string, { kind, at, count, snippet }: Edit): string {
  const offset = Math.floor(at * (text.length + 1));
  if (kind === 'put') return text.slice(0, offset) + snippet + text.slice(offset);
  if (kind === 'delete') return text.slice(0, offset) + text.slice(offset + 1 + count);
  if (kind === 'digit') {
    const digit = [...text.matchAll(/\d/g)].find(({ index }) => index >= offset)?.index;
    return digit === undefined
      ? text
      : text.slice(0, digit) + String(count).repeat(1 + (count % 3)) + text.slice(digit + 1);
  }
  if (kind === 'endings') return count % 2 ? text.replace(/\r?\n/g, '\r\n') : text.replaceAll('\r\n', '\n');
  const lines = text.split('\n');
  const line = Math.floor(at * lines.length);
  const some = lines.slice(line, line + 1 + (count % 4));
  if (kind === 'cut') lines.splice(line, some.length);
  if (kind === 'repeat') lines.splice(line, 0, ...some);
  if (kind === 'swap') lines.splice(line, some.length, ...some.toReversed());
  if (kind === 'shift') lines.splice(line, 1, count % 2 ? ` ${lines[line]}` : (lines[line] ?? '').slice(1));
  return lines.join('\n');
}

/** All that a reading says of a text: whatever is asked of it, places, paths and edits, is a function of this. */
const said = ({ pieces: _, isPieced: _how, ...rest }: Syntax) => rest;

/** Reads a text, then what each edit makes of it; how often from pieces, and how often as a whole. */
function follow(text: string, edits: readonly Edit[], ways: { pieced: number; whole: number; kept: number }): void {
  let current = text;
  let syntax: Syntax | undefined;
  for (const edit of [null, ...edits]) {
    if (edit) current = edited(current, edit);
    const before = syntax;
    syntax = readSyntax(current, before);
    if (!syntax.isPieced) {
      ways.whole += 1;
      continue;
    }
    const [found, wanted] = [said(syntax), said(readWhole(current))];
    if (!isDeepStrictEqual(found, wanted)) expect(found).toEqual(wanted);
    ways.pieced += 1;
    if (before) ways.kept += [...syntax.pieces.keys()].filter(key => before.pieces.has(key)).length;
  }
}

const texts = fc.oneof(
  fc.constantFrom(PROBE, ODD, LONG, LONG, FLOW, ...samples),
  arbitrarySub({ offset: 2 }).map(sub => subText(sub)),
  layouts.map(({ text }) => text),
);

describe('a text put together from pieces', { timeout: 240_000 }, () => {
  it('is what the whole text would be, places and all, while figures and lines change', () => {
    const ways = { pieced: 0, whole: 0, kept: 0 };
    fc.assert(
      fc.property(texts, fc.array(tame, { maxLength: 4 }), (text, edits) => follow(text, edits, ways)),
      { numRuns: 200 },
    );
    expect(ways.pieced).toBeGreaterThan(200);
    expect(ways.whole).toBeGreaterThan(50);
    expect(ways.kept).toBeGreaterThan(1500);
  });

  it('and whatever is typed, half or wrong', () => {
    const ways = { pieced: 0, whole: 0, kept: 0 };
    fc.assert(
      fc.property(texts, fc.array(wild, { maxLength: 5 }), (text, edits) => follow(text, edits, ways)),
      { numRuns: 150 },
    );
    expect(ways.pieced).toBeGreaterThan(100);
    expect(ways.whole).toBeGreaterThan(100);
    expect(ways.kept).toBeGreaterThan(500);
  });
});
