import { describe, expect, it, test } from 'vitest';
import type { DocumentSymbol, Position, Range } from 'vscode-languageserver-types';
import { createBoatService } from '../../server/service/service.ts';
import { boatText, textLines } from '../helpers/boatText.ts';

const service = createBoatService();
const symbolsOf = (text: string): readonly DocumentSymbol[] => service.symbols(service.analyse(text));

/** The outline as indented lines: `name (detail)`. */
const outline = (symbols: readonly DocumentSymbol[], indent = ''): readonly string[] =>
  symbols.flatMap(({ name, detail, children = [] }) => [
    `${indent}${name}${detail ? ` (${detail})` : ''}`,
    ...outline(children, `${indent}  `),
  ]);

const text = boatText`
  boat: Tern
  water: { kind: sea }
  hull:
    length: 900 mm
    compartments:
      - { name: dry cylinder, mass: 400 g, round: 80 mm, station: 100 to 800 mm, height: 46 mm }
    tanks:
      - name: main
        in: dry cylinder
        round: 60 mm
        station: 300 to 500 mm
        height: 46 mm
        kind: piston
  payload:
    - name: battery # heavy
      in: dry cylinder
      mass: 310 g
      station: 260 to 340 mm
      height: 24 mm
    - mass: 5 g
  bays:
    - { name: keel, takes: lead, station: 40 to 190 mm, offset: -10 to 10 mm, height: 2 to 10 mm }
`;

test('the outline has every section and entry, with what there is to say of it in a word', () => {
  // The tank holds pi/4 (60 mm)^2 x 200 mm = 565 ml; the others as the text says.
  expect(outline(symbolsOf(text))).toEqual([
    'boat (Tern)',
    'water',
    'hull',
    '  length (900 mm)',
    '  compartments',
    '    dry cylinder (400 g, 450 mm aft of the bow tip)',
    '  tanks',
    '    main (565 ml)',
    'payload',
    '  battery (310 g, 300 mm aft of the bow tip)',
    '  entry 2',
    'bays',
    '  keel (takes lead)',
  ]);
});

test('trials by day and condition', () => {
  const trials = boatText`
    trials:
      - date: 2026-05-02
        condition: surfaced
      - condition: submerged
  `;
  expect(outline(symbolsOf(trials))).toEqual(['trials', '  2026-05-02 (surfaced)', '  entry 2 (submerged)']);
});

test('of a file without an end the outline ends', () => {
  const keys = (count: number): string => textLines(Array.from({ length: count }, (_, i) => `k${i}: 1`));
  const entries = (count: number): string => textLines(['payload:', ...Array<string>(count).fill('  - mass: 1 g')]);
  expect(symbolsOf(keys(1000))).toHaveLength(1000);
  expect(symbolsOf(keys(6000))).toHaveLength(symbolsOf(keys(3000)).length);
  expect(symbolsOf(entries(1000))[0]!.children).toHaveLength(1000);
  expect(symbolsOf(entries(6000))[0]!.children).toHaveLength(symbolsOf(entries(3000))[0]!.children!.length);
});

test('every symbol lies in its parent, and its name in it', () => {
  const before = (a: { line: number; character: number }, b: { line: number; character: number }): boolean =>
    a.line < b.line || (a.line === b.line && a.character <= b.character);
  const check = (symbols: readonly DocumentSymbol[], parent?: DocumentSymbol): number =>
    symbols.reduce((count, symbol) => {
      const { range, selectionRange, children = [] } = symbol;
      expect(before(range.start, selectionRange.start) && before(selectionRange.end, range.end)).toBe(true);
      if (parent) expect(before(parent.range.start, range.start) && before(range.end, parent.range.end)).toBe(true);
      return count + 1 + check(children, symbol);
    }, 0);
  expect(check(symbolsOf(text))).toBe(13);
});

test('a half-typed file has what there is', () => {
  expect(
    outline(
      symbolsOf(boatText`
        boat: Tern
        payload:
          - name: a
            ma
          -
          - nam`),
    ),
  ).toEqual(['boat (Tern)', 'payload', '  a', '  entry 3']);
  expect(symbolsOf('')).toEqual([]);
  expect(symbolsOf('just words')).toEqual([]);
});

describe('ranges', () => {
  it.each([
    [
      'a list for a key',
      boatText`
      [a, b]: 3
      hull:
        [1]: {}
    `,
    ],
    [
      'a map for a key',
      boatText`
      { a: b }: 3
      hull: { ? { c: d } : e }
    `,
    ],
    [
      'a list for a key alone',
      boatText`
      hull:
        shells:
          ? [a]
    `,
    ],
    [
      'a key that is not closed',
      boatText`
      hull:
        shells:
          ? &a "shells`,
    ],
    [
      'no value',
      boatText`
      hull:
        shells:
          -
          - name:
    `,
    ],
    ['an alias for a key', 'a: &a hull\n*a : { length: 3 }\n'],
    [
      'a mark at the head',
      boatText`
      \ufeffboat: Tern
      hull:
        length: 900 mm
    `,
    ],
  ])('end after they begin, and hold what is below them: %s', (_, text) => {
    const check = (symbols: readonly DocumentSymbol[], around?: Range): void => {
      for (const { range, selectionRange, children } of symbols) {
        expect(isWithin(selectionRange, range)).toBe(true);
        if (around) expect(isWithin(range, around)).toBe(true);
        check(children ?? [], range);
      }
    };
    check(service.symbols(service.analyse(text)));
  });
});

const isWithin = (inner: Range, outer: Range): boolean =>
  !isBefore(inner.start, outer.start) && !isBefore(outer.end, inner.end) && !isBefore(inner.end, inner.start);

const isBefore = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);
