import { expect, test } from 'vitest';
import { learnedJson } from '../../server/core/report/learnedJson.ts';
import { toldWords } from '../../server/core/trials/pool/words.ts';
import { readText } from '../builder/arrange.ts';
import { analyse, toldBy, withTrials } from '../builder/desk.ts';
import { familyBoat } from '../builder/family.ts';
import { figureOf, floatByCode } from '../builder/figures.ts';
import { readInWater } from '../builder/readings.ts';
import { swollen } from '../builder/reshape.ts';
import type { Seeded } from '../helpers/seeded.ts';

/** A hand that never errs. */
const steady: Seeded = { even: () => 0.5, normal: () => 0 };

/** A boat whose hull or cylinders displace more than its file has them by a part, read once in either condition. */
function readOnce(seed: number, more: number) {
  const { text } = familyBoat(seed);
  const { boat } = readText(text);
  const truth = { ...boat, compartments: boat.compartments.map(each => swollen(each, 1 + more)) };
  const floated = floatByCode(truth);
  const asFiled = analyse(text);
  const analysis = analyse(withTrials(asFiled, readInWater(floated, truth, 1, steady)), asFiled);
  const settled = analysis.settled.all();
  return { floated, told: toldBy(analysis), settled, verdict: settled.learned!.verdict! };
}

/* So far from their files that straight lines about those mislead: the bow is nearly awash. */
test.each([
  [530, -0.057],
  [523, -0.061],
  [519, -0.06],
])('boat %i, which displaces %f more, is told as that and has the figures that were read', (seed, more) => {
  const { floated, told, verdict } = readOnce(seed, more);
  expect(verdict.told[0]!.causes).toMatchObject([{ kind: 'displaces' }]);
  expect(verdict.slips).toEqual([]);
  for (const figure of ['draft', 'trim', 'fill', 'underTrim'] as const) {
    const { value, sigma } = told.get(figure)!;
    expect(Math.abs(value - figureOf(floated, figure)!) / sigma).toBeLessThan(2);
  }
});

test('it is told in words and to machines', () => {
  const { verdict, settled } = readOnce(530, -0.057);
  expect(toldWords(verdict.told[0]!, settled.boat.units)).toMatch(
    /^“hull” displaces [56]\.\d ± 0\.\d+ % less than written \(greatest breadth \d+ mm, written as \d+ mm\)$/,
  );
  // That cannot be written down; what is much less likely is not offered instead.
  for (const { odds } of verdict.offers) expect(odds).toBeGreaterThan(verdict.told[0]!.odds / 2);
  const { causes } = learnedJson(settled).explanations[0]!;
  expect(causes).toMatchObject([{ kind: 'displaces', what: 'hull', path: ['hull', 'compartments', 0] }]);
  const { percent } = causes[0] as { percent: { value: number; uncertainty: number } };
  expect(Math.abs(percent.value + 5.7)).toBeLessThan(2 * percent.uncertainty);
});

test('a boat that displaces what is written is not told otherwise', () => {
  expect(readOnce(530, 0).verdict.told[0]!.causes).toEqual([]);
});
