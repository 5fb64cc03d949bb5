import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../schema/quantity.ts';
import type { Sense } from '../../schema/quantitySense.ts';
import type { Dimension, FileUnits } from '../../schema/units.ts';
import {
  heelWords,
  lengthText,
  massText,
  offsetWords,
  percentText,
  pressureText,
  stationWords,
  tapeText,
  trimWords,
  volumeText,
} from '../../server/core/wording/numbers.ts';
import { plusMinus } from '../../server/core/wording/withUncertainty.ts';

const UNITS: readonly FileUnits[] = [
  { length: 'mm', mass: 'g' },
  { length: 'cm', mass: 'kg' },
  { length: 'in', mass: 'oz' },
  { length: 'ft', mass: 'lb' },
];

const DEGREE = Math.PI / 180;

interface Printed {
  readonly what: string;
  readonly print: (si: number, units: FileUnits) => string;
  readonly dimension: Dimension;
  readonly sense?: Sense;
  readonly least: number;
  readonly most: number;
  /** Half of what is printed last, SI. */
  readonly within: number;
}

const PRINTED: readonly Printed[] = [
  {
    what: 'trim',
    print: trim => trimWords(trim),
    dimension: 'angle',
    sense: 'trim',
    least: -0.5,
    most: 0.5,
    within: 0.06 * DEGREE,
  },
  {
    what: 'heel',
    print: heel => heelWords(heel),
    dimension: 'angle',
    sense: 'heel',
    least: -0.5,
    most: 0.5,
    within: 0.06 * DEGREE,
  },
  { what: 'offset', print: offsetWords, dimension: 'length', sense: 'side', least: -0.2, most: 0.2, within: 0.0016 },
  {
    what: 'station',
    print: stationWords,
    dimension: 'length',
    sense: 'station',
    least: -0.2,
    most: 1.5,
    within: 0.0016,
  },
  {
    what: 'length',
    print: (si, units) => lengthText(si, units),
    dimension: 'length',
    least: 0.001,
    most: 1.5,
    within: 0.0016,
  },
  { what: 'tape', print: tapeText, dimension: 'length', least: -0.2, most: 1.5, within: 0.0009 },
  {
    what: 'mass',
    print: (si, units) => massText(si, units),
    dimension: 'mass',
    least: 0.001,
    most: 4.5,
    within: 0.003,
  },
  // From 10 lb on ounces are whole.
  {
    what: 'great mass',
    print: (si, units) => massText(si, units),
    dimension: 'mass',
    least: 4.6,
    most: 9,
    within: 0.015,
  },
  { what: 'volume', print: volumeText, dimension: 'volume', least: 1e-6, most: 9e-3, within: 9e-6 },
  { what: 'share', print: part => percentText(part), dimension: 'fraction', least: 0.01, most: 1, within: 0.0051 },
  { what: 'pressure', print: pressureText, dimension: 'pressure', least: 1e4, most: 4e5, within: 510 },
];

describe('the program reads its own words', () => {
  it.each(PRINTED)('$what', ({ print, dimension, sense, least, most, within }) => {
    fc.assert(
      fc.property(fc.double({ min: least, max: most, noNaN: true }), fc.constantFrom(...UNITS), (si, units) => {
        const read = readQuantity(print(si, units), dimension, units, sense ? { sense } : {});
        expect(read).toMatchObject({ ok: true });
        if (read.ok) expect(Math.abs(read.value.value - si)).toBeLessThan(within);
      }),
    );
  });

  it('with its uncertainty behind it', () => {
    const [units] = UNITS as [FileUnits];
    const read = readQuantity(plusMinus(trimWords(0.2 * DEGREE), '4.7°'), 'angle', units, { sense: 'trim' });
    expect(read).toEqual({ ok: true, value: { value: 0.2 * DEGREE, sigma: 4.7 * DEGREE, unit: '°' } });
    const upright = readQuantity('upright ± 2.8°', 'angle', units, { sense: 'heel' });
    expect(upright).toEqual({ ok: true, value: { value: 0, sigma: 2.8 * DEGREE, unit: '°' } });
  });

  it.each<[string, Dimension, Sense, number]>([
    ['4° bow up', 'angle', 'trim', 4 * DEGREE],
    ['4° bow down', 'angle', 'trim', -4 * DEGREE],
    ['2° to port', 'angle', 'heel', -2 * DEGREE],
    ['3 mm to port', 'length', 'side', -0.003],
    ['3 to starboard', 'length', 'side', 0.003],
    ['1.5 mm high', 'length', 'height', 0.0015],
    ['30 mm aft of the bow tip', 'length', 'station', 0.03],
    ['level', 'angle', 'trim', 0],
  ])('%s', (text, dimension, sense, si) => {
    const read = readQuantity(text, dimension, { length: 'mm', mass: 'g' }, { sense });
    expect(read).toMatchObject({ ok: true, value: { value: si } });
  });

  it('but not a sign and a word for it together', () => {
    const read = readQuantity('-3 mm to port', 'length', { length: 'mm', mass: 'g' }, { sense: 'side' });
    expect(read).toMatchObject({ ok: false, slip: { replacement: '' } });
  });
});

describe('a bare density by its size', () => {
  it.each<[string, number, string | undefined]>([
    ['1.025', 1025, 'g/ml'],
    ['1.0', 1000, 'g/ml'],
    ['11.34', 11_340, 'g/ml'],
    ['30', 30, undefined],
    ['1025', 1025, undefined],
    ['1.025 kg/l', 1025, undefined],
  ])('%s', (text, si, guessed) => {
    const read = readQuantity(text, 'density', { length: 'mm', mass: 'g' });
    expect(read.ok && read.value.value).toBeCloseTo(si, 6);
    expect(read.ok ? read.value.guessed : null).toBe(guessed);
  });
});
