import { describe, expect, it } from 'vitest';
import { analysed, fileFindings, marked } from '../helpers/analysed.ts';

const rows = (count: number, row: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => row(i)).join('');

const boat = (inHull: string, more = ''): string => `
boat: Many
hull:
  length: 900 mm
  waterline: 56 mm
  compartments:
    - { name: dry, mass: 400 g, round: 76 mm, station: 100 to 680 mm, height: 46 mm }
${inHull}${more}`;

describe('more than any boat has', () => {
  it.each([
    [
      'tanks',
      boat(
        `  tanks:\n${rows(30, i => `    - { name: tank ${i}, in: dry, round: 10 mm, station: ${110 + 15 * i} to ${120 + 15 * i} mm, height: 46 mm, kind: bladder }\n`)}`,
      ),
      'tank 24',
    ],
    [
      'parts',
      boat(
        'payload:\n',
        rows(1001, i => `  - { name: part ${i}, mass: 1 g, station: 300 mm, height: 40 mm, in: dry }\n`),
      ),
      'part 1000',
    ],
  ])('%s: the first are read, and the rest is told once', (_, text, first) => {
    const analysis = analysed(text);
    const told = fileFindings(analysis).filter(({ code }) => code === 'too-many');
    expect(told.map(finding => marked(analysis, finding))).toEqual([first]);
    expect(analysis.boat.leftOut).toHaveLength(1);
    expect(analysis.boat.tanks.length + analysis.boat.payload.length).toBe(first === 'tank 24' ? 24 : 1000);
  });

  it.each([
    ['profile', `profile: [${rows(501, i => `[${i}, 20], `)}], height: 46 mm`, 'points of a profile'],
    ['sections', `sections: [${rows(101, i => `{ station: ${i}, outline: [[0, 0], [9, 9]] }, `)}]`, 'sections'],
    [
      'outline',
      `sections: [{ station: 0, outline: [${rows(101, i => `[9, ${i}], `)}] }, { station: 9, outline: [[0, 1]] }]`,
      'points of an outline',
    ],
    ['forms', `forms: [${rows(51, i => `{ ball: 1, station: ${i * 9}, height: 46 }, `)}]`, 'forms of one thing'],
  ])('points and forms: %s', (_, form, words) => {
    const text = boat(`  shells:\n    - { name: hull, material: PETG, mass: 90 g, ${form} }\n`);
    const messages = fileFindings(analysed(text)).map(({ message }) => message);
    expect(messages).toContainEqual(
      expect.stringMatching(new RegExp(`^More than \\d+ ${words} are more than any boat needs`)),
    );
  });
});
