import { describe, expect, test } from 'vitest';
import { createBoatService } from '../../server/service/service.ts';
import { boatText } from '../helpers/boatText.ts';

const service = createBoatService();

/** Water of 1000 kg/m3, a box that displaces 4 kg and weighs 2 kg, hull 1 m long: figures that one can add up by hand. */
const box = boatText`
  # A box, for figures that
  # one can add up by hand.
  boat: Tern

  water: { kind: fresh, density: 1000 kg/m3 }
  hull:
    length: 1000 mm
    waterline: 50 mm
    compartments:
      - name: box # plain
        mass: 2 kg
        box: 100 x 100 mm
        station: 300 to 700 mm
        height: 50 mm
    tanks:
      - { name: main, in: box, box: 50 x 50 mm, station: 400 to 600 mm, height: 50 mm, kind: piston }

  payload:
    - name: battery
      in: box
      mass: 500 g
      station: 480 to 500 mm
      height: 20 mm
    - { name: foam, density: 100 kg/m3, material: foam, box: 20 x 50 mm, station: 100 to 200 mm, height: 10 mm } # light
  # the end
`;

const lines = (text: string) => text.split('\n');

describe('hints behind the entries', () => {
  const hints = service.inlayHints(service.analyse(box), [0, box.length]);

  test('stand behind the name, or behind the entry where it is on one line', () => {
    expect(hints.map(({ position: { line, character } }) => lines(box)[line]!.slice(0, character).trim())).toEqual([
      '- name: box',
      '- name: battery',
      '- { name: foam, density: 100 kg/m3, material: foam, box: 20 x 50 mm, station: 100 to 200 mm, height: 10 mm }',
    ]);
  });

  test('say weight less buoyancy, and its moment about midships', () => {
    // Box: 2 kg less 1000 x 0.1 x 0.1 x 0.4 = 4 kg, at midships. Battery: 500 g, 490 mm aft, so 10 mm forward of
    // midships. Foam: 0.1 l weighs 10 g, less 100 g, lifts 90 g at 150 mm: 350 mm forward x 90 g lifts the bow.
    expect(hints.map(({ label }) => label)).toEqual([
      'lifts 2000 g',
      '500 g in water, 5000 g·mm bow down',
      'lifts 90 g, 31\u202f500 g·mm bow up',
    ]);
  });

  test('only those that are asked for', () => {
    const from = box.indexOf('payload:');
    expect(service.inlayHints(service.analyse(box), [from, box.length])).toHaveLength(2);
    expect(service.inlayHints(service.analyse(box), [0, 10])).toEqual([]);
  });

  test('none for what cannot be read, and the others stay', () => {
    const broken = box.replace('mass: 500 g', 'mass: 500 gg');
    expect(service.inlayHints(service.analyse(broken), [0, broken.length])).toHaveLength(2);
  });
});

describe('lines over the sections', () => {
  test('one condition over the hull, the other over the payload', () => {
    const lenses = service.codeLenses(service.analyse(box), 'file:///tern.boat.yaml');
    expect(lenses.map(({ range }) => range.start)).toEqual([
      { line: 5, character: 0 },
      { line: 17, character: 0 },
    ]);
    const titles = lenses.map(({ command }) => command?.title);
    // 2 kg + 500 g + 10 g weigh 2510 g; all of it displaces 4100 ml, the tank takes 500 ml: 1090 g too light.
    expect(titles[0]).toMatch(/^Surfaced: draft [\d.]+ mm, [^·]*$/);
    expect(titles[1]).toBe('Submerged: 1090 g too light');
  });

  test('with the tank’s fill where the boat can hang neutral', () => {
    const heavier = box.replace('mass: 2 kg', 'mass: 3.39 kg');
    // 3900 g of 4100 ml: 200 g of water in a tank for 500 ml.
    expect(service.codeLenses(service.analyse(heavier), 'file:///x')[1]?.command?.title).toMatch(
      /Submerged: tank 40 %, .*upright$/,
    );
  });

  test('a new one over the trials', () => {
    const [lens] = service.codeLenses(
      service.analyse(boatText`
        trials:
          - condition: surfaced
      `),
      'file:///x',
    );
    expect(lens?.command).toMatchObject({
      title: 'New trial',
      command: 'trimwright.newTrial',
      arguments: ['file:///x'],
    });
  });

  test('none where there is no such section', () => {
    expect(service.codeLenses(service.analyse('boat: Tern'), 'file:///x')).toEqual([]);
    expect(service.codeLenses(service.analyse('- ['), 'file:///x')).toEqual([]);
  });
});

describe('folding', () => {
  const folded = (text: string): readonly string[] =>
    service
      .foldingRanges(service.analyse(text))
      .map(({ startLine, endLine, kind }) => `${startLine}-${endLine}${kind ? ` ${kind}` : ''}`);

  test('sections and entries without the blank lines and comments after them, and comments', () => {
    expect(folded(box)).toEqual(['0-1 comment', '5-15', '8-13', '9-13', '14-15', '17-23', '18-22']);
  });

  test('values in brackets over several lines, either line ending, half-typed lines', () => {
    expect(
      folded(boatText`
        hull:\r
          shells:\r
            - profile: [[0, 0],\r
                [1, 2]]\r
      `),
    ).toEqual(['0-3', '1-3', '2-3']);
    expect(
      folded(boatText`
        payload:
          - name: a
            mass: 1
            ma`),
    ).toContain('1-2');
    expect(folded('')).toEqual([]);
  });
});

describe('a new trial', () => {
  const added = (text: string): string | null => {
    const trial = service.newTrial(service.analyse(text));
    return trial && text.slice(0, trial.start) + trial.text + text.slice(trial.end);
  };

  test('stands below the others, in their layout, its readings blank', () => {
    const text = boatText`
      boat: T
      trials:
      - condition: submerged # once
        fill: 60 %
      # the end
    `;
    expect(added(text)).toBe(
      [
        'boat: T',
        'trials:',
        '- condition: submerged # once',
        '  fill: 60 %',
        `- date: \${1:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE}`,
        `  condition: \${2|surfaced,submerged,inclining,bench,hung|}`,
        `  marks: [{ station: \${3:}, height: $4 \\}, { station: \${5:}, height: $6 \\}]`,
        '# the end',
        '',
      ].join('\n'),
    );
  });

  test.each([
    ['near each end of the boat', 'hull: { length: 860 mm }', ['72 mm', '788 mm']],
    [
      'in the unit of the file',
      boatText`
        units: { length: in, mass: oz }
        hull: { length: 13.5 in }
      `,
      ['1 in', '12 1/2 in'],
    ],
    [
      'where it was read the last time',
      boatText`
        hull: { length: 860 mm }
        trials:
        - condition: surfaced
          marks: [{ station: 61 mm, height: 1 mm }, { station: 840 mm, height: 1 mm }]
        - condition: submerged
      `,
      ['61 mm', '840 mm'],
    ],
  ])('has the water read %s', (_, text, stations) => {
    expect([...added(text)!.matchAll(/station: \$\{\d:([^}]*)\}/g)].map(([, station]) => station)).toEqual(stations);
  });

  test('makes the section where there is none, and is none where trials are something else', () => {
    expect(added('boat: T')).toMatch(/^boat: T\ntrials:\n {2}- date: \$\{1:/);
    expect(added('trials: later')).toBeNull();
  });
});
