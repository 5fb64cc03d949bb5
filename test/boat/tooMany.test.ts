import { describe, expect, it } from 'vitest';
import { analysed, fileFindings, marked } from '../helpers/analysed.ts';
import { boatText, textLines } from '../helpers/boatText.ts';

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
        boatText`
            tanks:
          ${rows(30, i => textLines([`    - { name: tank ${i}, in: dry, round: 10 mm, station: ${110 + 15 * i} to ${120 + 15 * i} mm, height: 46 mm, kind: bladder }`]))}`,
      ),
      'tank 24',
    ],
    [
      'parts',
      boat(
        textLines(['payload:']),
        rows(1001, i => textLines([`  - { name: part ${i}, mass: 1 g, station: 300 mm, height: 40 mm, in: dry }`])),
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
    ['as many as are heard', 6, 50, 0],
    ['one trial of too many', 7, 50, 1],
    ['small trials in great number', 40, 9, 7],
  ])('readings of all trials together: %s', (_, trials, marks, left) => {
    const mark = (i: number) => `{ station: ${10 + 15 * i} mm, height: 56 mm }, `;
    const text = boat(
      '',
      textLines([
        'trials:',
        ...Array.from({ length: trials }, () => `  - { condition: surfaced, marks: [${rows(marks, mark)}] }`),
      ]),
    );
    const analysis = analysed(text);
    const told = fileFindings(analysis).filter(({ code }) => code === 'too-many');
    expect(told.map(({ place }) => place)).toEqual(
      left === 0 ? [] : [{ on: 'entry', path: ['trials', trials - left] }],
    );
    const heard = analysis.trials.filter(({ readings }) => readings.length > 0);
    expect(heard).toHaveLength(trials - left);
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
    const text = boat(textLines(['  shells:', `    - { name: hull, material: PETG, mass: 90 g, ${form} }`]));
    const messages = fileFindings(analysed(text)).map(({ message }) => message);
    expect(messages).toContainEqual(
      expect.stringMatching(new RegExp(`^More than \\d+ ${words} are more than any boat needs`)),
    );
  });
});
