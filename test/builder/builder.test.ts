import { describe, expect, test } from 'vitest';
import type { Part } from '../../server/core/boat/boat.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import { boatText } from '../helpers/boatText.ts';
import type { Seeded } from '../helpers/seeded.ts';
import { seeded } from '../helpers/seeded.ts';
import { readText } from './arrange.ts';
import { chanceToNear } from './calibration.ts';
import { bestAim, conditioned, shareWithin, weighed } from './conditioning.ts';
import { analyse, withTrials } from './desk.ts';
import { familyBoat } from './family.ts';
import { type Floated, floatByCode, isInTrim, missesOf } from './figures.ts';
import { addUnder, momentOf, plainSolid, plainWall, volumeOf } from './plainBody.ts';
import { floatPlainly } from './plainFloater.ts';
import { readInWater } from './readings.ts';
import { canBeTrimmed } from './told.ts';
import { drawTruth, follow } from './truth.ts';
import { workByTheBook } from './work.ts';

/* The harness itself: whether it floats, reads and fits as it says. What it measures is printed by `print.ts`. */

/** A hand that never errs. */
const steady: Seeded = { even: () => 0.5, normal: () => 0 };

const tube: Form = {
  shape: 'revolved',
  origin: [0, 0, 0.05],
  axis: [1, 0, 0],
  profile: [
    [0.1, 0.04],
    [0.5, 0.04],
  ],
};

describe('slices', () => {
  test.each([
    ['nothing', 0.005, 0, 0],
    ['half', 0.05, 0.5, (2 / 3) * 0.04 ** 3],
    ['all', 0.095, 1, Math.PI * 0.04 ** 2 * 0.045],
  ])('of a tube, %s under: closed form', (_, level, share, depth) => {
    const sums = { volume: 0, depth: 0 };
    addUnder(plainSolid(tube), [0, 0, 1], level, sums);
    expect(sums.volume).toBeCloseTo(share * Math.PI * 0.04 ** 2 * 0.4, 12);
    expect(sums.depth).toBeCloseTo(depth * 0.4, 12);
  });

  test('of the wall of a cone: its material spread evenly, centroid at a third from the base', () => {
    const cone: Form = {
      ...tube,
      profile: [
        [0, 0],
        [0.3, 0.04],
      ],
    };
    const wall = plainWall(cone, 3e-5);
    const slant = Math.PI * 0.04 * Math.hypot(0.3, 0.04);
    const base = Math.PI * 0.04 ** 2;
    expect(volumeOf(wall)).toBeCloseTo(3e-5, 12);
    expect(momentOf(wall)[0] / 3e-5).toBeCloseTo((slant * 0.2 + base * 0.3) / (slant + base), 9);
  });
});

/** Nobody knows it by a name under which it could be slid. */
const lashed = (part: Part): Part => ({ ...part, name: `lashed ${part.name}` });

const SEEDS = [1, 2, 4, 5];

/** mm, degrees and percent of the tank. */
const comparable = ({ afloat, hanging }: Floated) => [
  ...[afloat!.draft, afloat!.gm, hanging!.bg, hanging!.bgLeft].map(metres => metres * 1e3),
  ...[afloat!.trim, afloat!.heel, hanging!.trim, hanging!.heel].map(angle => (angle * 180) / Math.PI),
  hanging!.fill * 100,
];

describe('two ways of floating', () => {
  test.each(SEEDS)('agree on boat %i as filed and on one that differs from its file', seed => {
    const boat = familyBoat(seed);
    const real = drawTruth(boat, seeded(seed)).boat;
    for (const each of [readText(boat.text).boat, real]) {
      const [code, plain] = [floatByCode(each), floatPlainly(each)].map(comparable);
      for (const [i, value] of code!.entries()) expect(Math.abs(plain![i]! - value)).toBeLessThan(5e-3);
    }
  });
});

test('a family boat is out of trim by its file, and its reading raises no error', () => {
  for (const seed of SEEDS) {
    const { boat, findings } = readText(familyBoat(seed).text);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(missesOf(floatByCode(boat), boat).some(({ by }) => Math.abs(by) > 0.01)).toBe(true);
  }
});

test('a boat as filed can be trimmed with its bays, and one that is out cannot without anything', () => {
  const { boat } = readText(familyBoat(1).text);
  expect(isInTrim(missesOf(floatByCode(boat), boat))).toBe(false);
  expect(canBeTrimmed(boat, floatPlainly)).toBe(true);
  expect(canBeTrimmed({ ...boat, bays: [], payload: boat.payload.map(lashed) }, floatPlainly)).toBe(false);
});

test.each([11, 57])(
  'boat %i, its file the truth and the hand steady, is in trim at the first try once it is weighed',
  seed => {
    const boat = familyBoat(seed);
    const truth = drawTruth(boat, steady, false);
    const means = { floater: floatByCode, random: steady, weighs: true, mostTries: 1, calibrates: false };
    const { inTrimAt, tries } = workByTheBook(boat, truth, means);
    expect(inTrimAt).toBe(1);
    expect(tries[0]!.correction).not.toBeNull();
  },
);

test('what is read without error off a boat like its file, its trials foretell', () => {
  const boat = familyBoat(5);
  const truth = drawTruth(boat, steady, false);
  const analysis = analyse(boat.text);
  const entries = readInWater(floatPlainly(truth.boat), truth.boat, 1, steady);
  const { trials, learned } = analyse(withTrials(analysis, entries)).settled.all();
  expect(trials.map(({ readings }) => readings.length)).toEqual([3, 3]);
  const scores = learned!.comparisons.flatMap(({ readings }) => readings.map(({ score }) => score));
  // Readings are written to a tenth of a millimetre or degree, and a percent of the tank.
  for (const score of scores) expect(Math.abs(score)).toBeLessThan(0.2);
});

test('a piece that is fitted weighs on the true boat as it does in the file', () => {
  const boat = familyBoat(2);
  const truth = drawTruth(boat, seeded(7));
  const filed = readText(boat.text).boat;
  const piece = '{ name: lead, material: lead, mass: 40 g, box: 12 x 6 mm, station: 300 to 349 mm, height: 30 mm }';
  const after = readText(
    boat.text.replace(
      /^bays:$/m,
      boatText`
      - ${piece}
    bays:`,
    ),
  ).boat;
  const followed = follow(truth, filed, after, steady).boat;
  const added = followed.payload.filter(part => !truth.boat.payload.includes(part));
  expect(added.map(({ name }) => name)).toEqual(['lead']);
  expect(added[0]!.mass).toBeCloseTo(0.04, 9);
  expect(added[0]!.volume).toBeCloseTo(after.payload.at(-1)!.volume / truth.densities.lead!, 12);
  expect(volumeOf(plainSolid(added[0]!.form!))).toBeCloseTo(added[0]!.volume, 9);
  const gone = follow({ ...truth, boat: followed }, after, filed, steady).boat;
  expect(gone.payload).toEqual(truth.boat.payload);
});

test('a lost boat is not in trim', () => {
  const { boat } = readText(familyBoat(2).text);
  expect(isInTrim(missesOf({ afloat: null, hanging: null }, boat))).toBe(false);
});

describe('what could be had', () => {
  /** A figure of no uncertainty but its own, 3 ± 2, and a reading of it that is good for 1. */
  const random = seeded(3);
  const draws = Array.from({ length: 4000 }, () => {
    const value = 3 + 2 * random.normal();
    return { at: [value], shown: [{ value, sigma: 1 }] };
  });

  test('draws go where the reading has them: mean and spread of two normals multiplied, closed form', () => {
    const moved = conditioned(draws, [{ value: 6, sigma: 1 }], random).map(({ at }) => at[0]!);
    const mean = moved.reduce((sum, value) => sum + value, 0) / moved.length;
    const variance = moved.reduce((sum, value) => sum + (value - mean) ** 2, 0) / moved.length;
    // Precisions add up: 1/4 of the file and 1 of the reading.
    expect(mean).toBeCloseTo((3 / 4 + 6) / (1 / 4 + 1), 1);
    expect(variance).toBeCloseTo(1 / (1 / 4 + 1), 1);
  });

  test('how often a narrowed figure comes nearer to the truth is as it is drawn', () => {
    for (const after of [0.15, 0.5, 0.9]) {
      const nearer = Array.from({ length: 20_000 }, () => {
        const left = after * random.normal();
        return Math.abs(left) < Math.abs(left + Math.sqrt(1 - after ** 2) * random.normal());
      }).filter(isNearer => isNearer).length;
      expect(Math.abs(chanceToNear(1, after) - nearer / 20_000)).toBeLessThan(0.015);
    }
    expect(chanceToNear(1, 1)).toBe(0.5);
    expect(chanceToNear(1, 0)).toBe(1);
  });

  test('readings that no draw comes near leave the weights beside each other as they are', () => {
    const points = weighed(conditioned(draws, [{ value: 3000, sigma: 1 }], random));
    expect(points.every(({ weight }) => weight === 1)).toBe(true);
  });

  test('the best aim of a normal figure is its mean, and one limit about it holds what the tables say', () => {
    const points = weighed(conditioned(draws, [], random));
    const aim = bestAim(points);
    expect(Math.abs(aim[0]! - 3)).toBeLessThan(0.5);
    // Half a standard deviation to either side: 38.29 % (tables of the normal distribution, from memory).
    expect(shareWithin(points, aim)).toBeCloseTo(0.3829, 1);
  });
});
