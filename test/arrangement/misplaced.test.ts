import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Path } from '../../schema/path.ts';
import { soundMends } from '../../server/core/analysis/soundMends.ts';
import { placeFindings } from '../../server/core/findings/catalogue/placeFindings.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { analysed } from '../helpers/analysed.ts';
import { boatText, textLines } from '../helpers/boatText.ts';
import { countedFrom } from '../helpers/countedFrom.ts';
import { saidOf } from './placeFindings.ts';

/** A boat in which everything lies where it can: hull and sail, two tubes, tanks, equipment, lead, foam, a collar, bays. */
const WHIMBREL = boatText`
  boat: Whimbrel
  hull:
    length: 900 mm
    waterline: 90 mm
    shells:
      - { name: outer hull, material: fibreglass, mass: 600 g, profile: [[0, 2], [60, 34], [150, 50], [700, 50], [820, 26], [900, 4]], height: 50 mm }
      - { name: sail, material: ABS, mass: 60 g, box: 24 x 50 mm, station: 300 to 380 mm, height: 124 mm }
    compartments:
      - { name: fore tube, mass: 300 g, round: 80 mm, station: 160 to 430 mm, height: 52 mm }
      - { name: aft tube, mass: 280 g, round: 70 mm, station: 445 to 690 mm, height: 52 mm }
    tanks:
      - { name: main ballast, in: fore tube, kind: piston, round: 70 mm, station: 300 to 420 mm, height: 52 mm }
      - { name: trim tank, kind: sealed, box: 24 x 20 mm, station: 100 to 140 mm, height: 40 mm }
  payload:
    - { name: battery, in: fore tube, mass: 300 g, station: 170 to 260 mm, height: 34 mm }
    - { name: valve, in: fore tube, mass: 60 g, station: 280 mm, height: 50 mm }
    - { name: speed control, in: aft tube, mass: 60 g, box: 40 x 20 mm, station: 460 to 520 mm, height: 50 mm }
    - { name: receiver, in: aft tube, mass: 60 g, box: 40 x 20 mm, station: 530 to 580 mm, height: 50 mm }
    - { name: motor, in: aft tube, mass: 120 g, round: 36 mm, station: 600 to 660 mm, height: 46 mm }
    - { name: shaft and propeller, material: brass, mass: 50 g, station: 680 to 905 mm, height: 46 mm }
    - { name: keel lead, material: lead, station: 170 to 670 mm, offset: -10 to 10 mm, height: 1 to 6 mm }
    - { name: stern foam, material: foam, box: 30 x 14 mm, station: 710 to 770 mm, height: 66 mm }
    - { name: sounder, volume: 12 ml, mass: 40 g, station: 80 mm, height: 50 mm }
    - { name: collar, material: foam, mesh: { file: collar 40.1 45.stl, unit: mm, at: [180 mm, 0 mm, 52 mm] } }
  bays:
    - { name: bow bay, takes: lead, station: 100 to 150 mm, offset: -12 to 12 mm, height: 16 to 24 mm }
    - { name: stern bay, takes: lead, station: 700 to 760 mm, offset: -10 to 10 mm, height: 18 to 26 mm }
    - { name: tube bay, in: aft tube, takes: lead, station: 460 to 590 mm, offset: -15 to 15 mm, height: 22 to 30 mm }
`;

const payload = (index: number, key?: string): Path => ['payload', index, ...(key ? [key] : [])];
const hull = (list: string, index: number, key?: string): Path => ['hull', list, index, ...(key ? [key] : [])];

/** What is replaced, what is said of it, where. */
const MISPLACED: readonly (readonly [kind: string, was: string, is: string, code: string, path: Path])[] = [
  [
    'a shell 200 mm longer than the hull',
    '[820, 26], [900, 4]]',
    '[820, 26], [1100, 4]]',
    'beyond-hull',
    hull('shells', 0, 'profile'),
  ],
  [
    'a shell that begins ahead of the bow tip',
    '[[0, 2], [60',
    '[[-40, 2], [60',
    'beyond-hull',
    hull('shells', 0, 'profile'),
  ],
  [
    'a shell by its axis 20 mm too low',
    '[900, 4]], height: 50 mm',
    '[900, 4]], height: 30 mm',
    'below-keel',
    hull('shells', 0, 'height'),
  ],
  [
    'a shell of too small a height by a digit',
    '[900, 4]], height: 50 mm',
    '[900, 4]], height: 500 mm',
    'outside-hull',
    hull('shells', 0, 'height'),
  ],
  [
    'a tube half out of the stern',
    '445 to 690 mm, height',
    '745 to 990 mm, height',
    'beyond-hull',
    hull('compartments', 1, 'station'),
  ],
  [
    'a tube too broad for its hull',
    'round: 70 mm, station: 445',
    'round: 120 mm, station: 445',
    'below-keel',
    hull('compartments', 1, 'height'),
  ],
  [
    'a tube out through the deck',
    'round: 80 mm, station: 160 to 430 mm, height: 52 mm',
    'round: 80 mm, station: 160 to 430 mm, height: 72 mm',
    'outside-hull',
    hull('compartments', 0, 'height'),
  ],
  [
    'a tube to the side',
    'round: 70 mm, station: 445',
    'round: 70 mm, offset: 40 mm, station: 445',
    'outside-hull',
    hull('compartments', 1, 'offset'),
  ],
  [
    'two tubes in each other',
    '445 to 690 mm, height',
    '405 to 690 mm, height',
    'compartments-overlap',
    hull('compartments', 1, 'station'),
  ],
  [
    'a tank longer than its tube',
    'station: 300 to 420 mm',
    'station: 300 to 460 mm',
    'sticks-out',
    hull('tanks', 0, 'station'),
  ],
  [
    'a tank broader than its tube',
    'kind: piston, round: 70 mm',
    'kind: piston, round: 94 mm',
    'sticks-out',
    hull('tanks', 0),
  ],
  [
    'a tank in the water that sticks out of the hull',
    'box: 24 x 20 mm, station: 100',
    'box: 24 x 20 mm, offset: 50 mm, station: 100',
    'outside-hull',
    hull('tanks', 1, 'offset'),
  ],
  [
    'a tank in the water that is half in a tube',
    'station: 100 to 140 mm, height: 40',
    'station: 130 to 200 mm, height: 40',
    'same-room',
    hull('tanks', 1, 'station'),
  ],
  [
    'a battery in the tank',
    '170 to 260 mm, height: 34',
    '330 to 410 mm, height: 34',
    'same-room',
    payload(0, 'station'),
  ],
  [
    'a battery before the tube',
    '170 to 260 mm, height: 34',
    '120 to 210 mm, height: 34',
    'sticks-out',
    payload(0, 'station'),
  ],
  ['a battery below the tube', '260 mm, height: 34', '260 mm, height: 3.4', 'sticks-out', payload(0, 'height')],
  [
    'a point outside its tube',
    'station: 280 mm, height: 50',
    'station: 580 mm, height: 50',
    'sticks-out',
    payload(1, 'station'),
  ],
  ['a box in its neighbour', '530 to 580 mm', '500 to 550 mm', 'same-room', payload(3, 'station')],
  [
    'a box through the wall of its tube',
    'box: 40 x 20 mm, station: 530',
    'box: 40 x 20 mm, offset: 25 mm, station: 530',
    'sticks-out',
    payload(3, 'offset'),
  ],
  [
    'a box too broad for its tube',
    'box: 40 x 20 mm, station: 530',
    'box: 90 x 20 mm, station: 530',
    'sticks-out',
    payload(3),
  ],
  [
    'a motor out of the end of its tube',
    '600 to 660 mm, height: 46',
    '650 to 710 mm, height: 46',
    'sticks-out',
    payload(4, 'station'),
  ],
  ['a motor in another tube', 'motor, in: aft tube', 'motor, in: fore tube', 'sticks-out', payload(4, 'station')],
  ['lead under the keel', 'height: 1 to 6 mm', 'height: -30 to -21 mm', 'below-keel', payload(6, 'height')],
  [
    'lead to the side of the hull',
    'offset: -10 to 10 mm, height: 1 to 6 mm',
    'offset: 50 to 70 mm, height: 1 to 6 mm',
    'outside-hull',
    payload(6, 'offset'),
  ],
  ['foam above the deck', 'to 770 mm, height: 66', 'to 770 mm, height: 120', 'outside-hull', payload(7, 'height')],
  ['foam astern of the hull', '710 to 770 mm', '870 to 930 mm', 'beyond-hull', payload(7, 'station')],
  [
    'a point far above the hull',
    'station: 80 mm, height: 50',
    'station: 80 mm, height: 150',
    'outside-hull',
    payload(8, 'height'),
  ],
  [
    'a point ahead of the bow',
    'station: 80 mm, height: 50',
    'station: -80 mm, height: 50',
    'beyond-hull',
    payload(8, 'station'),
  ],
  [
    'a collar that does not lie round its tube',
    '[180 mm, 0 mm, 52 mm]',
    '[180 mm, 20 mm, 52 mm]',
    'outside-hull',
    payload(9),
  ],
  [
    'a bay to the side of the hull',
    'offset: -12 to 12 mm',
    'offset: 100 to 124 mm',
    'outside-hull',
    ['bays', 0, 'offset'],
  ],
  ['a bay under the keel', 'height: 16 to 24 mm', 'height: -60 to -52 mm', 'below-keel', ['bays', 0, 'height']],
  [
    'a bay in a tube that it does not name',
    '700 to 760 mm, offset',
    '640 to 700 mm, offset',
    'same-room',
    ['bays', 1, 'station'],
  ],
  ['a bay past the end of its tube', '460 to 590 mm', '460 to 730 mm', 'sticks-out', ['bays', 2, 'station']],
  ['a hull by a digit too short', 'length: 900 mm', 'length: 90 mm', 'hull-too-short', ['hull', 'length']],
];

const say = (text: string) =>
  saidOf(text).map(({ code, place }) => [code, 'path' in place ? place.path : null] as const);

describe('thirty and some ways to lie where nothing can', () => {
  it('are as many', () => {
    expect(new Set(MISPLACED.map(([kind]) => kind)).size).toBeGreaterThanOrEqual(30);
  });
  it('the boat itself raises nothing', () => {
    expect(saidOf(WHIMBREL).map(({ message }) => message)).toEqual([]);
  });
  it.each(MISPLACED)('%s is told once, on the figure', (_, was, is, code, path) => {
    expect(WHIMBREL.split(was)).toHaveLength(2);
    const said = saidOf(WHIMBREL.replace(was, () => is));
    expect(said.map(({ code: found, place }) => [found, 'path' in place ? place.path : null])).toEqual([[code, path]]);
    expect(said[0]?.message).toMatch(/ by | by up to |reach| deep/);
  });
  it('what stands outside by its name or by its own word is not told', () => {
    expect(say(WHIMBREL.replace('height: 1 to 6 mm', 'height: -30 to -21 mm, outside: true'))).toEqual([]);
    expect(
      say(
        WHIMBREL.replace('name: sounder', 'name: periscope mast').replace(
          'station: 80 mm, height: 50',
          'station: 80 mm, height: 150',
        ),
      ),
    ).toEqual([]);
  });
});

describe('what is carried at times only', () => {
  const withMore = (more: string) => WHIMBREL.concat(more);
  it.each([
    [
      'condition',
      boatText`
      conditions:
        - name: awash
          aboard: [{ name: lamp, in: fore tube, mass: 20 g, station: 400 to 470 mm, height: 60 mm }]
    `,
      ['conditions', 0, 'aboard', 0, 'station'],
      'sticks-out',
    ],
    [
      'condition',
      boatText`
      conditions:
        - name: awash
          aboard: [{ name: camera, mass: 60 g, box: 30 x 30 mm, station: 480 to 520 mm, offset: 90 mm, height: 60 mm }]
    `,
      ['conditions', 0, 'aboard', 0, 'offset'],
      'outside-hull',
    ],
    [
      'condition',
      boatText`
      conditions:
        - name: awash
          aboard: [{ name: second battery, in: fore tube, mass: 60 g, box: 30 x 30 mm, station: 200 to 240 mm, height: 34 mm }]
    `,
      ['conditions', 0, 'aboard', 0, 'station'],
      'same-room',
    ],
    [
      'trial',
      boatText`
      trials:
        - date: 2026-05-02
          condition: surfaced
          aboard: [{ name: sheet lead, material: lead, mass: 16 g, box: 20 x 2 mm, station: 920 to 955 mm, height: 50 mm }]
          heel: 0°
    `,
      ['trials', 0, 'aboard', 0, 'station'],
      'beyond-hull',
    ],
  ] as const)('in a %s is held against the hull and what is in it', (_, more, path, code) => {
    const told = saidOf(withMore(more));
    expect(told.map(({ code, place }) => ({ code, path: 'path' in place ? place.path : null }))).toEqual([
      { code, path },
    ]);
  });
  it('lies where something else is left ashore', () => {
    const text = withMore(boatText`
      conditions:
        - name: awash
          without: [battery]
          aboard: [{ name: second battery, in: fore tube, mass: 60 g, box: 30 x 30 mm, station: 200 to 240 mm, height: 34 mm }]
    `);
    expect(saidOf(text)).toEqual([]);
  });
});

describe('a station counted from elsewhere', () => {
  it.each([
    ['the stern', '320 to 370 mm'],
    ['midships, aft', '80 to 130 mm'],
    ['midships, forward', '-130 to -80 mm'],
  ])('from %s: the mend offers it from the bow', (_, written) => {
    const [said] = saidOf(WHIMBREL.replace('530 to 580 mm', written));
    const changes = said?.mends?.flatMap(mend => mend.changes) ?? [];
    expect(changes.flatMap(change => (change.kind === 'replace' ? [change.text] : []))).toContain('530 to 580 mm');
  });
  it('all of them: the key that says it once is offered, and clears them', () => {
    const bowed = WHIMBREL.replace(/.*collar.*\n/, '');
    const origin = { stations: 'aft of midships', heights: 'baseline', length: 0.9, waterline: 0 } as const;
    const midships = countedFrom(bowed, { length: 'mm', mass: 'g' }, origin).replace(/ {2}origin: .*\n/, '');
    const analysis = analysed(midships);
    const mends = analysis.findings.flatMap(finding => soundMends(analysis, finding));
    const mend = mends.find(({ changes: [change] }) => change?.kind === 'add-key');
    expect(mend?.changes).toEqual([
      { kind: 'add-key', path: ['hull'], key: 'origin', text: '{ stations: aft of midships }' },
    ]);
    const after = analysed(splice(midships, applyChanges(analysis.syntax, mend!.changes)!));
    const filed = analysed(bowed);
    expect(after.findings.filter(({ code }) => code in placeFindings)).toEqual([]);
    expect(after.bodies.massMoment[0]).toBeCloseTo(filed.bodies.massMoment[0], 9);
  });
  it('several of them at once', () => {
    const text = WHIMBREL.replace('460 to 520 mm', '380 to 440 mm')
      .replace('530 to 580 mm', '320 to 370 mm')
      .replace('600 to 660 mm', '240 to 300 mm');
    const all = saidOf(text).flatMap(({ mends }) => mends ?? []);
    expect(all.some(({ changes }) => changes.length === 3)).toBe(true);
  });
  it('a mend that leaves what was found is not offered', () => {
    const grebe = readFileSync('samples/grebe.boat.yaml', 'utf8').replace(
      'station: 285 to 375 mm',
      'station: 28 to 375 mm',
    );
    const half = analysed(grebe.slice(0, grebe.indexOf('receiver') + 'receiver a'.length));
    const found = half.findings.find(({ code }) => code === 'sticks-out')!;
    // Two other things would lie in the tube from the stern as well, and the tank would go on sticking out.
    expect(found.mends?.map(({ changes }) => changes.length)).toEqual([2]);
    expect(soundMends(half, found)).toEqual([]);
  });
});

it('of more things in each other’s room than any boat has the first are told, and that the others wait', () => {
  const codesOf = (count: number) => {
    const things = Array.from(
      { length: count },
      (_, i) =>
        `  - { name: block ${i}, mass: 80 g, box: 30 x 30 mm, station: ${300 + i} to ${340 + i} mm, height: 40 mm }`,
    );
    const { file } = analysed(textLines(['hull: { length: 700 mm }', 'payload:', ...things]));
    return file.findings.map(({ code }) => code);
  };
  expect(codesOf(60)).toContain('same-room');
  expect(codesOf(60).filter(code => code === 'room-not-all-told')).toHaveLength(1);
  expect(codesOf(20)).not.toContain('room-not-all-told');
});
