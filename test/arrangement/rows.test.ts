import { describe, expect, it } from 'vitest';
import { effortBetween } from '../../server/core/arrangement/effort.ts';
import type { Occupant } from '../../server/core/arrangement/occupant.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import { silhouetteSteps } from '../../server/core/geometry/outline/silhouette.ts';
import { createShapes } from '../../server/core/geometry/shapes/shapes.ts';
import type { Steps } from '../../server/core/steps/steps.ts';
import { analysed, fileFindings } from '../helpers/analysed.ts';
import { textLines } from '../helpers/boatText.ts';

const HULL = textLines([
  'hull:',
  '  length: 900 mm',
  '  shells:',
  '    - { name: hull, mass: 300 g, material: ABS, profile: [[0, 0], [20, 20], [60, 34], [600, 54], [900, 4]], height: 54 mm }',
  'payload:',
]);

const boat = (count: number, row: (i: number) => string): string =>
  HULL + textLines(Array.from({ length: count }, (_, i) => `  - { name: row ${i}, mass: 1 g, ${row(i)} }`));

const SEVERAL = 'count: 100, spacing: 1 mm, sides: both, offset: 3 mm';
const crowded = (): string => `round: 2 mm, station: 60 to 61 mm, height: 54 mm, ${SEVERAL}`;
const ribs = (i: number): string =>
  `box: 1 x 1 mm, station: ${100 + 10 * i} to ${101 + 10 * i} mm, height: ${40 + 2 * i} mm, count: 20, spacing: 5 mm, sides: both, offset: 3 mm`;

describe('rows as many as they have members', () => {
  it.each([
    ['a row', 1, crowded, []],
    ['two rows in the same place', 2, crowded, []],
    ['many of them', 24, crowded, ['room-not-all-told']],
    ['more of them than are held against the hull', 120, crowded, ['room-not-all-told']],
    ['ribs and rails clear of each other', 12, ribs, []],
  ])('%s: what is not looked at is told once', (_, count, row, expected) => {
    const codes = fileFindings(analysed(boat(count, row))).map(({ code }) => code);
    expect(codes.filter(code => code === 'room-not-all-told')).toEqual(expected);
  });

  it('they are all the same work once there are too many', () => {
    const stepsOf = (count: number): number => {
      const places = analysed(boat(count, crowded)).file.places.found;
      let steps = 0;
      for (; !places.step(); steps++);
      return steps;
    };
    expect(stepsOf(200)).toBeLessThan(1.2 * stepsOf(100) + 200);
  });
});

/** So many blocks of 1 mm one behind the other, each so far from the last, m. */
const row = (count: number, apart: number, height = 0): Form => ({
  shape: 'compound',
  parts: Array.from({ length: count }, (_, i) =>
    boxForm([i * apart, 0, height], [i * apart + 0.001, 0.001, height + 0.001]),
  ),
});
const thing = (form: Form): Occupant => ({ form }) as Occupant;

describe('how long it takes to hold two rows against each other', () => {
  it.each([
    ['two that lie in each other', row(100, 0.002), row(100, 0.002), 110],
    ['a block and one of them', row(1, 0.002), row(100, 0.002), 6.05],
    ['two of which no members meet', row(100, 0.002), row(100, 0.002, 0.01), 10],
    ['two of which each meets each, as far as that is looked at', row(30, 0), row(30, 0), 303],
  ])('%s', (_, one, two, expected) => {
    expect(effortBetween(thing(one), thing(two), createShapes())).toBeCloseTo(expected, 6);
  });
});

describe('what is made of a row', () => {
  const tubes: Form = {
    shape: 'compound',
    parts: Array.from({ length: 200 }, (_, i) => ({
      shape: 'revolved',
      origin: [0.002 * i, 0, 0],
      axis: [1, 0, 0],
      profile: [
        [0, 0.001],
        [0.001, 0.001],
      ],
    })),
  };
  const balls: Form = {
    shape: 'compound',
    parts: Array.from({ length: 200 }, (_, i) => ({ shape: 'ball', centre: [0.002 * i, 0, 0], radius: 0.001 })),
  };
  it.each([
    ['tubes', tubes],
    ['balls', balls],
  ])('fewer places on each of many: %s', (_, form) => {
    const single = form.shape === 'compound' ? form.parts[0]! : form;
    const [all, one] = [createShapes().surfaceOf(form).length, createShapes().surfaceOf(single).length];
    expect(all).toBeLessThan(0.5 * 200 * one);
    expect(all).toBeGreaterThan(200 * 16);
  });
  it('its outline is drawn in steps', () => {
    const stepsOf = (work: Steps<unknown>): number => {
      let steps = 0;
      for (; !work.next().done; steps++);
      return steps;
    };
    expect(stepsOf(silhouetteSteps(row(10, 0.002), 1))).toBe(0);
    expect(stepsOf(silhouetteSteps(row(200, 0.002), 1))).toBe(9);
  });
});
