import { describe, expect, it } from 'vitest';
import type { Input } from '../../server/core/uncertainty/input.ts';
import { inputsOf } from '../../server/core/uncertainty/inputs.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe, probeWith } from '../helpers/probe.ts';

const inputsIn = (text: string): readonly Input[] => inputsOf(heard(text).source);
const byWords = (text: string) => new Map(inputsIn(text).map(input => [input.words, input]));

/** Uncertainties that a part of the probe has: [noun, one standard uncertainty, how it came about]. mm, g, ml, kg/m3. */
type Known = readonly [noun: string, sigma: number, origin: Input['origin']];

const CENTRE: Known = ['offset', 1, 'assumed'];
const PLACE: readonly Known[] = [['station', 2, 'measured'], CENTRE, ['height', 2, 'measured']];

const unit: Readonly<Record<string, number>> = { mass: 1e3, length: 1e3, volume: 1e6, density: 1, fraction: 1 };

/* The usual uncertainties are those of `schema/usualUncertainties.ts` (common practice, no source), the handbook's range / (2√3) by GUM 4.3.7. */
describe('the uncertainties of one part', { timeout: 60_000 }, () => {
  it.each<readonly [says: string, part: string, known: readonly Known[]]>([
    [
      'a light thing: 1 g',
      '{ name: it, mass: 60 g, station: 100 mm, height: 30 mm, in: hold }',
      [['mass', 1, 'weighed'], ...PLACE],
    ],
    [
      'a heavy one: 0.5 %',
      '{ name: it, mass: 400 g, station: 100 mm, height: 30 mm, in: hold }',
      [['mass', 2, 'weighed'], ...PLACE],
    ],
    [
      'a trifle: a fifth of it',
      '{ name: it, mass: 1 g, station: 100 mm, height: 30 mm, in: hold }',
      [['mass', 0.2, 'weighed'], ...PLACE],
    ],
    [
      'tolerances as written',
      '{ name: it, mass: 60 ± 0.1 g, station: 100 mm ± 0.5 mm, offset: 4 ± 3 mm, height: 30 mm, in: hold }',
      [
        ['mass', 0.1, 'written'],
        ['station', 0.5, 'written'],
        ['offset', 3, 'written'],
        ['height', 2, 'measured'],
      ],
    ],
    [
      'each end of a range by itself: the middle is known √2 better than an end, the length √2 worse',
      '{ name: it, mass: 60 g, material: brass, round: 10 mm ± 0.1 mm, station: 100 to 150 mm ± 1 mm, height: 30 mm }',
      [
        ['mass', 1, 'weighed'],
        ['station', Math.SQRT1_2, 'written'],
        CENTRE,
        ['height', 2, 'measured'],
        ['diameter', 0.1, 'written'],
        ['length', Math.SQRT2, 'written'],
      ],
    ],
    [
      'a block in the water by its ranges: middle, length, breadth, depth; small sizes to 5 %',
      '{ name: it, mass: 60 g, station: 100 to 150 mm, offset: -2 to 2 mm, height: 10 to 30 mm }',
      [
        ['mass', 1, 'weighed'],
        ['station', 2, 'measured'],
        ['offset', 2, 'measured'],
        ['height', 2, 'measured'],
        ['length', 1, 'measured'],
        ['breadth', 0.2, 'measured'],
        ['depth', 0.5, 'measured'],
      ],
    ],
    [
      'a cone: two diameters',
      '{ name: it, mass: 60 g, round: 30 to 8 mm, station: 100 to 150 mm, height: 30 mm }',
      [
        ['mass', 1, 'weighed'],
        ...PLACE,
        ['first diameter', 0.5, 'measured'],
        ['last diameter', 0.4, 'measured'],
        ['length', 1, 'measured'],
      ],
    ],
    [
      'a dunked lump',
      '{ name: it, mass: 60 g, volume: 80 ml, station: 100 mm, height: 30 mm }',
      [['mass', 1, 'weighed'], ...PLACE, ['volume', 1.6, 'dunked']],
    ],
    [
      'weighed by its form and a density of its own: no mass of its own',
      '{ name: it, material: ABS, density: 1000 kg/m3, ball: 20 mm, station: 100 mm, height: 30 mm, in: hold }',
      [['density', 20, 'given'], ...PLACE, ['diameter', 0.5, 'measured']],
    ],
    [
      'inside, its form does not count',
      '{ name: it, mass: 60 g, box: 20 x 10 mm, station: 100 to 150 mm, height: 30 mm, in: hold }',
      [['mass', 1, 'weighed'], ...PLACE],
    ],
    [
      'a balance point instead of the middle of the form',
      '{ name: it, mass: 60 g, station: 100 to 150 mm, height: 30 mm, in: hold, balance: { station: 120 mm } }',
      [['mass', 1, 'weighed'], CENTRE, ['height', 2, 'measured'], ['station of the balance point', 2, 'measured']],
    ],
    [
      'a profile as a whole',
      '{ name: it, mass: 60 g, profile: [[100, 0], [120, 15], [150, 0]], height: 30 mm }',
      [['mass', 1, 'weighed'], ...PLACE, ['greatest breadth', 0.5, 'measured']],
    ],
    [
      'several forms are one thing in one place',
      '{ name: it, mass: 60 g, forms: [{ ball: 10 mm, station: 100 mm, height: 30 mm }, { ball: 20 mm, station: 130 mm, height: 30 mm }] }',
      [
        ['mass', 1, 'weighed'],
        ...PLACE,
        ['diameter of form 1', 0.5, 'measured'],
        ['diameter of form 2', 0.5, 'measured'],
      ],
    ],
  ])('%s', (_, part, known) => {
    const mine = inputsIn(probeWith(part)).filter(({ entryName }) => entryName === 'it');
    expect(mine.map(({ noun, sigma, origin, dimension }) => [noun, sigma * unit[dimension]!, origin])).toEqual(
      known.map(([noun, sigma, origin]) => [noun, expect.closeTo(sigma, 9), origin]),
    );
  });
});

describe('what several entries have in common is one input', () => {
  const two = probeWith(
    '{ name: one, material: brass, mass: 60 g, station: 100 mm, height: 30 mm }',
    '{ name: two, material: brass, round: 8 mm, station: 100 to 150 mm, height: 30 mm }',
    // Weighed and measured: its density follows from both, the handbook's has no part in it.
    '{ name: three, material: brass, mass: 85 g, box: 20 x 10 mm, station: 200 to 250 mm, height: 30 mm }',
  );

  it('the density of a material from the handbook', () => {
    const densities = inputsIn(two).filter(({ dimension }) => dimension === 'density');
    const brass = densities.find(({ id }) => id === 'handbook brass')!;
    // EN 1991-1-1 and Copper Development Association, from memory: 8400 to 8730; GUM 4.3.7: range over 2√3.
    expect(brass).toMatchObject({ words: 'density of brass', value: 8500, origin: 'handbook' });
    expect(brass.sigma).toBeCloseTo((8730 - 8400) / Math.sqrt(12), 9);
    expect(brass.places).toEqual([
      ['payload', 2, 'material'],
      ['payload', 3, 'material'],
    ]);
  });

  it('the density of the stock', () => {
    const text = probeWith('{ name: float, material: foam, ball: 30 mm, station: 100 mm, height: 30 mm }').replace(
      'stock:',
      boatText`
        stock:
          foam: { density: 30 kg/m3 ± 3 kg/m3 }`,
    );
    expect(byWords(text).get('density of the foam in stock')).toMatchObject({
      path: ['stock', 'foam', 'density'],
      value: 30,
      sigma: 3,
      origin: 'written',
    });
  });
});

describe('the uncertainties of the water', () => {
  it.each<readonly [water: string, words: string, value: number, sigma: number, origin: string]>([
    ['{ density: 1004 kg/m3 }', 'density of the water', 1004, 0.5, 'measured'],
    ['{ density: 1004 kg/m3 ± 2 kg/m3 }', 'density of the water', 1004, 2, 'written'],
    ['fresh', 'temperature of the water', 20, 5, 'assumed'],
    ['{ kind: fresh, temperature: 14 °C }', 'temperature of the water', 14, 1, 'measured'],
    ['sea', 'salinity of the water', 35, 1, 'assumed'],
    ['{ salinity: 12 g/kg ± 3 g/kg }', 'salinity of the water', 12, 3, 'written'],
  ])('%s', (water, words, value, sigma, origin) => {
    const text = probe(['{ density: 1000 kg/m3 }', water]);
    expect(byWords(text).get(words)).toMatchObject({ value, sigma, origin });
  });

  it('fresh water is fresh', () => {
    expect(byWords(probe(['{ density: 1000 kg/m3 }', 'fresh'])).has('salinity of the water')).toBe(false);
  });
});

describe('what all else is measured from is exact', () => {
  it('a hull that begins at the bow tip and reaches down to the baseline', () => {
    const words = [...byWords(probe()).keys()].filter(word => word.endsWith('“hold”'));
    expect(words).toEqual([
      'mass of “hold”',
      // Its offset range is written, so that it may lie aside.
      'offset of “hold”',
      'length of “hold”',
      'breadth of “hold”',
      'depth of “hold”',
    ]);
  });

  it('but not one that begins aft of it', () => {
    const words = [...byWords(probe(['station: 0 to 400 mm', 'station: 10 to 400 mm'])).keys()];
    expect(words).toContain('station of “hold”');
    expect(words).toContain('height of “hold”');
  });
});

it('ids are unique, and places are in the file where something stands there', () => {
  const text = boatText`
    boat: Wren
    hull:
      length: 400 mm
      shells:
        - { name: fin, material: ABS, mass: 20 g, box: 20 x 40 mm, station: 100 to 180 mm, height: 90 mm }
      compartments:
        - { name: tube, mass: 300 g, round: 80 to 60 mm, station: 20 to 380 mm, height: 40 mm }
    payload:
      - { name: battery, mass: 300 g, station: 100 mm, height: 20 mm, in: tube }
      - { name: keel, material: lead, mass: 300 g, station: 100 to 300 mm, height: 2 to 8 mm }
  `;
  const inputs = inputsIn(text);
  expect(new Set(inputs.map(({ id }) => id)).size).toBe(inputs.length);
  expect(inputs.length).toBeGreaterThan(20);
});
