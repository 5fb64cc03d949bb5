import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Location, TextEdit } from 'vscode-languageserver-types';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { valueAt } from '../../server/core/text/reading/values.ts';
import { createBoatService } from '../../server/service/service.ts';
import { boat, boatText } from '../helpers/boatText.ts';

const uri = 'file:///tern.boat.yaml';
const service = createBoatService();
const nothing = service.analyse('');

const tern = boatText`
  boat: Tern
  hull:
    length: 900 mm
    compartments:
      - name: dry cylinder   # by its tube
        mass: 400 g
        round: 80 mm
        station: 100 to 800 mm
        height: 46 mm
      - { name: sail, mass: 40 g, box: 20 x 40 mm, station: 300 to 380 mm, height: 110 mm }
    tanks:
      - { name: main, in: dry cylinder, round: 60 mm, station: 300 to 500 mm, height: 46 mm, kind: piston }
  payload:
    - name: battery
      in: "dry cylinder"
      mass: 310 g
      station: 260 to 340 mm
      height: 24 mm
    - { name: pump, in: 'dry cylinder', mass: 60 g, station: 640 mm, height: 24 mm }
    - { name: keel lead, material: lead, mass: 20 g, station: 60 to 80 mm, box: 10 x 4 mm, height: 4 mm, fixed: false }
  bays:
    - { name: keel, takes: lead, station: 40 to 190 mm, offset: -10 to 10 mm, height: 2 to 10 mm }
    - { name: floor, in: dry cylinder, takes: lead, station: 540 to 600 mm, offset: -10 to 10 mm, height: 12 to 20 mm }
`;

/** The line (from 0) and text at each location. */
function shown(text: string, locations: readonly Location[]): readonly string[] {
  const lines = text.split('\n');
  return locations.map(({ range: { start, end } }) => {
    expect(end.line).toBe(start.line);
    return `${start.line}: ${lines[start.line]!.slice(start.character, end.character)}`;
  });
}

const definitionOf = (text: string, offset: number) => {
  const location = service.definition(service.analyse(text), offset, uri);
  return location && shown(text, [location])[0];
};

const referencesOf = (text: string, offset: number, withDefinition: boolean) =>
  shown(text, service.references(service.analyse(text), offset, { uri, withDefinition }));

/** The text with the thing at an offset called `name`; or why not. */
function renamed(text: string, offset: number, name: string): string {
  // Names are read off the text alone; the figures of the boat would only take time.
  const analysis = { ...nothing, syntax: readSyntax(text) };
  const result = service.rename(analysis, offset, name, { uri, version: null });
  if (result.status === 'refused') return `refused: ${result.reason}`;
  const edits = result.edit.changes?.[uri] ?? [];
  return applied(text, edits);
}

function applied(text: string, edits: readonly TextEdit[]): string {
  const { lineStarts } = readSyntax(text);
  const at = ({ line, character }: { line: number; character: number }) => lineStarts[line]! + character;
  return [...edits]
    .sort((a, b) => at(b.range.start) - at(a.range.start))
    .reduce((all, { range, newText }) => all.slice(0, at(range.start)) + newText + all.slice(at(range.end)), text);
}

describe('from a name to what it stands for', () => {
  test.each([
    ['a tank’s compartment', 'in: dry cylinder, round', 6, '4: dry cylinder'],
    ['a part’s, in quotes', 'in: "dry cylinder"', 8, '4: dry cylinder'],
    ['a bay’s', 'in: dry cylinder, takes', 4, '4: dry cylinder'],
    ['its own name', 'name: sail', 7, '9: sail'],
    ['a loose piece’s bay', 'name: keel lead', 8, '21: keel'],
    ['a part that stays', 'name: battery', 7, '13: battery'],
  ])('%s', (_, piece, within, place) => {
    expect(definitionOf(tern, tern.indexOf(piece) + within)).toBe(place);
  });

  test.each([
    ['a mass', 'mass: 310', 7],
    ['the boat’s name', 'boat: Tern', 7],
    ['a key', 'in: "dry', 1],
    ['a comment', '# by its tube', 4],
  ])('%s stands for nothing', (_, piece, within) => {
    expect(definitionOf(tern, tern.indexOf(piece) + within)).toBeNull();
    expect(renamed(tern, tern.indexOf(piece) + within, 'x')).toMatch(/^refused: Put the cursor on the name/);
  });

  test('a compartment that does not exist stands for nothing', () => {
    const { text, caret } = boat`
      payload:
        - { name: a, in: dr|y }
    `;
    expect(definitionOf(text, caret)).toBeNull();
  });

  test('through an alias, and from a half-typed file', () => {
    const { text, caret } = boat`
      hull:
        compartments:
          - name: &home dry cylinder
            mass:
      payload:
        - name: battery
          in: *ho|me
        - nam
    `;
    expect(definitionOf(text, caret)).toBe('2: dry cylinder');
  });
});

describe('the uses of a name', () => {
  test('everything in a compartment', () => {
    const inside = ['11: dry cylinder', '14: "dry cylinder"', "18: 'dry cylinder'", '22: dry cylinder'];
    expect(referencesOf(tern, tern.indexOf('dry cylinder'), false)).toEqual(inside);
    expect(referencesOf(tern, tern.indexOf('"dry'), true)).toEqual(['4: dry cylinder', ...inside]);
  });

  test('the loose pieces in a bay', () => {
    expect(referencesOf(tern, tern.indexOf('name: keel,') + 7, false)).toEqual(['19: keel lead']);
    expect(referencesOf(tern, tern.indexOf('name: floor') + 7, false)).toEqual([]);
  });

  test('are lit, the one that gives the name apart from the others', () => {
    const lit = service.highlights(service.analyse(tern), tern.indexOf('"dry') + 2);
    expect(lit.map(({ range, kind }) => [range.start.line, kind])).toEqual([
      [4, 3],
      [11, 2],
      [14, 2],
      [18, 2],
      [22, 2],
    ]);
  });
});

test('trials mean tanks, shells and compartments by their names', () => {
  const text = boatText`
    hull:
      shells:
        - { name: outer hull }
      compartments:
        - { name: sail }
      tanks:
        - { name: main }
    payload:
      - { name: main battery }
    trials:
      - condition: surfaced
        freeboard:
          - { station: 60 mm, height: 31 mm, of: outer hull }
          - { station: 90 mm, height: 31 mm, of: sail }
        aboard:
          - { name: lead, mass: 1 g, in: sail }
      - condition: submerged
        tank: main
  `;
  expect(referencesOf(text, text.indexOf('outer'), false)).toEqual(['12: outer hull']);
  expect(referencesOf(text, text.indexOf('sail'), false)).toEqual(['13: sail', '15: sail']);
  expect(referencesOf(text, text.indexOf('main'), false)).toEqual(['17: main']);
  expect(renamed(text, text.lastIndexOf('main'), 'ballast')).toBe(
    text.replace('name: main }', 'name: ballast }').replace('tank: main', 'tank: ballast'),
  );
});

describe('a new name', () => {
  test('is asked for with the old one, without its quotes', () => {
    const analysis = service.analyse(tern);
    expect(service.renaming(analysis, tern.indexOf('"dry') + 3)).toMatchObject({
      placeholder: 'dry cylinder',
      range: { start: { line: 14, character: 8 }, end: { line: 14, character: 22 } },
    });
    expect(service.renaming(analysis, tern.indexOf('310'))).toBeNull();
  });

  test('goes everywhere, in the quotes that stand there; nothing else changes', () => {
    const result = renamed(tern, tern.indexOf('in: dry cylinder, takes') + 5, 'main tube');
    expect(result).toBe(tern.replaceAll('dry cylinder', 'main tube'));
  });

  test('is quoted only where it must be', () => {
    const result = renamed(tern, tern.indexOf('dry cylinder'), 'tube, dry');
    expect(result).toMatch(/- name: tube, dry {3}# by its tube$/m);
    expect(result).toContain('{ name: main, in: "tube, dry", round');
    expect(renamed(tern, tern.indexOf('battery'), 'battery: 2S')).toMatch(/- name: "battery: 2S"$/m);
    expect(renamed(tern, tern.indexOf('battery'), '12')).toMatch(/- name: "12"$/m);
    expect(renamed(tern, tern.indexOf('battery'), '[old]')).toMatch(/- name: "\[old\]"$/m);
  });

  test.each([
    ['of another part', 'pump', 'Something else is called “pump” already'],
    ['of a compartment', 'sail', 'Something else is called “sail” already'],
    ['of nothing', '  ', 'at least one letter'],
    ['over two lines', 'a\nb', 'on one line'],
    ['turned about', 'a\u202eb', 'cannot be seen'],
    ['half a character', 'a\ud800', 'cannot be seen'],
    ['of a poem', 'a'.repeat(500), '200 characters at most, and this has 500'],
  ])('is refused when it is that %s', (_, name, reason) => {
    expect(renamed(tern, tern.indexOf('battery'), name)).toContain(`refused: `);
    expect(renamed(tern, tern.indexOf('battery'), name)).toContain(reason);
  });

  test('a bay may be called what a part is called, but not what a bay is', () => {
    const bay = tern.indexOf('name: floor') + 7;
    expect(renamed(tern, bay, 'pump')).toContain('{ name: pump, in: dry cylinder, takes: lead');
    expect(renamed(tern, bay, 'keel')).toContain('refused:');
  });

  test('of one of two that share a name reaches only that one', () => {
    const text = boatText`
      payload:
        - { name: pump, mass: 1 g }
        - { name: pump, mass: 2 g }
    `;
    expect(renamed(text, text.lastIndexOf('pump'), 'valve')).toBe(text.replace('pump, mass: 2', 'valve, mass: 2'));
  });

  test('an anchor is written once and its aliases follow; what only borrowed the words keeps them', () => {
    const text = boatText`
      boat: &name Heron
      hull:
        compartments:
          - name: &home dry cylinder   # kept
            note: *home
          - { name: *name }
        tanks:
          - { in: *home }
      payload:
        - in: *name
        - <<: { in: dry cylinder }
    `;
    expect(renamed(text, text.indexOf('dry'), 'tube')).toBe(boatText`
      boat: &name Heron
      hull:
        compartments:
          - name: &home tube   # kept
            note: dry cylinder
          - { name: *name }
        tanks:
          - { in: *home }
      payload:
        - in: *name
        - <<: { in: tube }
    `);
    expect(renamed(text, text.lastIndexOf('*name'), 'sail')).toBe(
      text.replace('{ name: *name }', '{ name: sail }').replace('in: *name', 'in: sail'),
    );
  });

  test('over several lines before, on one after', () => {
    const text = boatText`
      payload:
        - name: >-
            big
            battery
          # kept
          mass: 3 g
    `;
    expect(renamed(text, text.indexOf('big'), 'battery')).toBe(
      boatText`
        payload:
          - name: battery
            # kept
            mass: 3 g
      `,
    );
  });
});

describe('any new name in any file', () => {
  const written = fc.constantFrom<(name: string) => string>(
    name => JSON.stringify(name),
    name => `'${name.replaceAll("'", "''")}'`,
    name => `!!str ${JSON.stringify(name)}`,
    name => `&n${name.length} ${JSON.stringify(name)}`,
  );
  const letters = fc.string({ unit: fc.constantFrom('a', 'B', '1', ' ', ':', '#', '"', "'", ',', '{', '[', '-', 'é') });
  const names = letters.map(text => text.trim()).filter(text => text !== '');

  test('reads back as typed, at its place and its uses, and every other byte stays', () => {
    let done = 0;
    fc.assert(
      fc.property(
        names,
        names,
        fc.array(fc.tuple(written, fc.boolean()), { minLength: 1, maxLength: 5 }),
        written,
        fc.constantFrom('\n', '\r\n'),
        (from, to, uses, give, ending) => {
          fc.pre(from !== to);
          const others = ['other #1', 'other #2'].filter(name => name !== from && name !== to);
          const entry = (quoted: string, isFlow: boolean, i: number) =>
            isFlow ? [`  - { name: p${i}, in: ${quoted}  , mass: 1 } # ${from}`] : [`  -   in: ${quoted}   # ${from}`];
          const write = (name: string, isOld: boolean): string =>
            [
              'hull: # the hull',
              '  compartments:',
              `    -   name: ${isOld ? give(name) : '\u0001'}   # tube`,
              ...others.map(other => `    - { name: ${JSON.stringify(other)}, note: ${JSON.stringify(from)} }`),
              'payload:',
              ...uses.flatMap(([quote, isFlow], i) => entry(isOld ? quote(name) : '\u0001', isFlow, i)),
              '',
            ].join(ending);
          // The same anchor twice is fine: each use is its own scalar.
          const text = write(from, true);
          const offset = text.indexOf('name: ') + 6 + give(from).indexOf(give(from).at(-1)!);
          const result = renamed(text, offset, to);
          expect(result).not.toMatch(/^refused/);
          const frame = write(from, false).split('\u0001');
          let at = 0;
          for (const piece of frame) {
            const found = result.indexOf(piece, at);
            expect(found).toBeGreaterThanOrEqual(at);
            at = found + piece.length;
          }
          expect(at).toBe(result.length);
          const read = readSyntax(result);
          expect(valueAt(read, ['hull', 'compartments', 0, 'name'])).toBe(to);
          expect(uses.map((_, i) => valueAt(read, ['payload', i, 'in']))).toEqual(uses.map(() => to));
          done += 1;
        },
      ),
      { numRuns: 150 },
    );
    expect(done).toBeGreaterThan(100);
  });
});
