import { expect, test } from 'vitest';
import { soundMends } from '../../server/core/analysis/soundMends.ts';
import { analysed, mended } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';

const withBays = (bay: string): string => boatText`
  boat: Tern
  hull:
    length: 900 mm
  bays:
    - ${bay}
`;

const unclosed = (text: string) => {
  const analysis = analysed(text);
  const finding = analysis.file.findings.find(({ code }) => code === 'unclosed-bracket');
  return { analysis, finding };
};

test.each([
  ['{ name: keel, takes: lead', 1],
  ['{ name: keel, station: [1, 2]', 1],
  ['{ name: keel, station: [1, 2', 1],
  ['[[0, 0], [1, 2', 1],
  ['{ name: keel, station: [1, 5}2]', 0],
  ['{ name: keel, 0], station: [1, 2]', 0],
])('closing is offered only where it closes: %s', (bay, offers) => {
  const { analysis, finding } = unclosed(withBays(bay));
  expect(finding?.mends ?? []).toHaveLength(offers);
  if (offers > 0) expect(unclosed(mended(analysis, finding!)).finding).toBeUndefined();
});

test('what only hands the finding on to the next bracket of its line is not offered', () => {
  const { analysis, finding } = unclosed(
    withBays('{ name: keel, outline: [[0, 96], [9, 96], [8: 258 mm, [[0, 6], [1, 4]] }'),
  );
  expect(finding!.mends!.length).toBeGreaterThan(0);
  expect(soundMends(analysis, finding!)).toEqual([]);
});

test.each([
  ['{ name: keel, - takes: lead }', '{ name: keel, takes: lead }'],
  ['{ - name: keel, takes: lead }', '{ name: keel, takes: lead }'],
])('a dash between brackets is taken out: %s', (bay, right) => {
  const analysis = analysed(withBays(bay));
  const finding = analysis.file.findings.find(({ code }) => code === 'yaml-syntax');
  expect(mended(analysis, finding!)).toBe(withBays(right));
});

test('what takes out one of two like keys only hands the finding on to the other, and is not offered', () => {
  const text = boatText`
    boat: Tern
    colour:
      - grey
    hull:
      length: 900 mm
    colour:
      - black
  `;
  const analysis = analysed(text);
  const finding = analysis.file.findings.find(({ code }) => code === 'unknown-key');
  expect(finding!.mends!.length).toBeGreaterThan(0);
  expect(soundMends(analysis, finding!)).toEqual([]);
});
