import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { createBoatService } from '../../server/service/service.ts';
import { type BoatText, boatText } from '../helpers/boatText.ts';
import { chosen } from '../helpers/chosen.ts';

const service = createBoatService();

/** The file once an item is chosen at the caret. */
const after = ({ text, caret }: BoatText, label: string): string =>
  chosen(text, service.completions(service.analyse(text), caret), label);

/** What is written at the caret, on one line. */
function written(marked: BoatText, label: string): string {
  const now = after(marked, label);
  const rest = marked.text.length - marked.caret;
  return now
    .slice(marked.caret, now.length - rest)
    .trim()
    .replace(/\n\s*/g, ', ');
}

const marked = (text: string): BoatText => ({ text: text.replace('|', ''), caret: text.indexOf('|') });

const METRIC = boatText`
  boat: Tern
  hull:
    length: 600 mm
    shells:
      - { name: outer hull, material: fibreglass, mass: 300 g, profile: [[0, 0], [40, 22], [120, 40], [520, 40], [600, 4]], height: 40 mm }
    compartments:
      - { name: WTC, mass: 260 g, round: 64 mm, station: 150 to 450 mm, height: 41 mm }
      - { name: stern box, mass: 30 g, round: 30 mm, station: 460 to 520 mm, height: 41 mm }
`;

const INCHES = boatText`
  boat: Tern
  units: { length: in, mass: oz }
  hull:
    length: 24 in
    origin: { stations: stern }
    shells:
      - { name: outer hull, material: fibreglass, mass: 10 oz, profile: [[0, 0], [2, 1], [5, 1 5/8], [21, 1 5/8], [24, 1/4]], station: 24 in, height: 1 5/8 in }
    compartments:
      - { name: dry box, mass: 9 oz, round: 2 1/2 in, station: 6 to 18 in, height: 1 5/8 in }
`;

describe('a new entry lies where this boat has room for it', () => {
  test.each<[name: string, boat: string, lines: string, label: string, expected: string]>([
    [
      'behind the last thing, at its height and in its compartment',
      METRIC,
      boatText`
        payload:
          - { name: accumulator, mass: 180 g, station: 170 to 240 mm, height: 30 mm, in: WTC }
          - |`,
      'part in a compartment',
      'name: battery, mass: 310 g, station: 245 to 300 mm, height: 30 mm, in: WTC',
    ],
    [
      'shorter where there is less room, by a name that nobody has',
      METRIC,
      boatText`
        payload:
          - { name: battery, mass: 80 g, station: 462 to 485 mm, height: 41 mm, in: stern box }
          - |`,
      'part in a compartment',
      'name: battery 2, mass: 310 g, station: 490 to 515 mm, height: 41 mm, in: stern box',
    ],
    [
      'beside what stands before the caret, not at the end of the list',
      METRIC,
      boatText`
        payload:
          - { name: servo, mass: 40 g, station: 470 mm, height: 41 mm, in: stern box }
          - |
          - { name: receiver, mass: 20 g, station: 200 mm, height: 30 mm, in: WTC }
      `,
      'part in a compartment',
      'name: battery, mass: 310 g, station: 485 to 510 mm, height: 41 mm, in: stern box',
    ],
    [
      'lead clear of other lead',
      METRIC,
      boatText`
        payload:
          - { name: keel lead, material: lead, mass: 300 g, station: 120 to 300 mm, height: 2 to 8 mm }
          - |`,
      'lead',
      'name: keel lead 2, material: lead, mass: 120 g, station: 90 to 140 mm, height: 9 to 15 mm',
    ],
    [
      'in inches, counted from the stern',
      INCHES,
      boatText`
        payload:
          - { name: accumulator, mass: 6 oz, station: 14 to 17 in, height: 1 1/4 in, in: dry box }
          - |`,
      'part in a compartment',
      'name: battery, mass: 10.9 oz, station: 11 3/4 to 13 3/4 in, height: 1 1/4 in, in: dry box',
    ],
    [
      'a tank in the middle of its compartment',
      METRIC,
      boatText`
        # Below the compartments.
          tanks:
            - |
      `,
      'tank',
      'name: main ballast, in: WTC, round: 55 mm, station: 240 to 375 mm, height: 41 mm, kind: sealed',
    ],
    [
      'a tank clear of what lies there',
      METRIC,
      boatText`
        # Below the compartments.
          tanks:
            - |
        payload:
          - { name: battery, mass: 180 g, box: 40 x 20 mm, station: 170 to 300 mm, height: 30 mm, in: WTC }
      `,
      'tank',
      'name: main ballast, in: WTC, round: 55 mm, station: 305 to 440 mm, height: 41 mm, kind: sealed',
    ],
    [
      'a bay where no other is',
      METRIC,
      boatText`
        bays:
          - { name: keel forward, takes: lead, station: 130 to 300 mm, offset: -10 to 10 mm, height: 2 to 8 mm }
          - |`,
      'bay',
      'name: keel forward 2, takes: lead, station: 35 to 110 mm, offset: -10 to 10 mm, height: 20 to 28 mm',
    ],
    [
      'as in the example, where the compartment has no form yet',
      boatText`
        boat: Tern
        hull:
          length: 600 mm
          compartments:
            - { name: WTC }
      `,
      boatText`
        payload:
          - |`,
      'part in a compartment',
      'name: battery, mass: 310 g, station: 173 to 227 mm, height: 24 mm, in: WTC',
    ],
  ])('%s', (_, boat, lines, label, expected) => {
    expect(written(marked(boat + lines), label)).toBe(expected);
  });
});

/** What the arrangement has to say of things that lie wrong. */
const ARRANGEMENT = ['same-room', 'outside-hull', 'sticks-out', 'beyond-hull', 'below-keel', 'compartments-overlap'];

const misplaced = (text: string) =>
  service.analyse(text).findings.flatMap(({ code }) => (ARRANGEMENT.includes(code) ? [code] : []));

describe('in a sample nothing new lies wrong', () => {
  test.each([
    ['petrel', ['part in a compartment', 'part in the water', 'lead', 'foam']],
    ['sprat', ['part in a compartment', 'foam']],
  ] as const)('%s', (sample, labels) => {
    const text = readFileSync(`samples/${sample}.boat.yaml`, 'utf8');
    const lines = text.split('\n');
    const first = lines.findIndex(line => line.startsWith('payload:')) + 1;
    const caret = lines.slice(0, first).join('\n').length + 5;
    const begun = lines.toSpliced(first, 0, '  - ').join('\n');
    for (const label of labels) expect(misplaced(after({ text: begun, caret }, label)), label).toEqual(misplaced(text));
  });
});
