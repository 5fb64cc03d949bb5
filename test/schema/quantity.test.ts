import { describe, expect, it } from 'vitest';
import { type Read, readExtent, readQuantity, readRange, readSection, readTaper } from '../../schema/quantity.ts';
import type { FileUnits } from '../../schema/units.ts';

const METRIC: FileUnits = { length: 'mm', mass: 'g' };
const INCHES: FileUnits = { length: 'in', mass: 'oz' };

// Exact by definition, NIST SP 811 (2008) Appendix B.8 (seen).
const INCH = 0.0254;
const POUND = 0.45359237;
const OUNCE = POUND / 16;
const DEGREE = Math.PI / 180;

/** The value of a reading that must succeed. */
function valueIn<T>(read: Read<T>): T {
  if (!read.ok) throw new Error(read.slip.message);
  return read.value;
}

describe('one quantity', () => {
  it.each([
    ['240 g', 'mass', 0.24, 'g'],
    ['240g', 'mass', 0.24, 'g'],
    ['240 G', 'mass', 0.24, 'g'],
    ['1e3 g', 'mass', 1, 'g'],
    ['1.5E-1 kg', 'mass', 0.15, 'kg'],
    ['1 lb 3 oz', 'mass', 19 * OUNCE, 'oz'],
    ['1lb3oz', 'mass', 19 * OUNCE, 'oz'],
    ['2 lbs.', 'mass', 2 * POUND, 'lb'],
    ['.5 oz', 'mass', OUNCE / 2, 'oz'],
    ['1½ oz', 'mass', 1.5 * OUNCE, 'oz'],
    ['½ oz', 'mass', OUNCE / 2, 'oz'],
    ['2.6 in', 'length', 2.6 * INCH, 'in'],
    ['7/16 in', 'length', (7 / 16) * INCH, 'in'],
    ['5 1/4 in', 'length', 5.25 * INCH, 'in'],
    ['5-1/4 in', 'length', 5.25 * INCH, 'in'],
    ['5 1/4"', 'length', 5.25 * INCH, 'in'],
    ['5 1⁄4 in.', 'length', 5.25 * INCH, 'in'],
    ['-5 1/4 in', 'length', -5.25 * INCH, 'in'],
    ['2 ft 3 1/2 in', 'length', 27.5 * INCH, 'in'],
    [`2' 3 1/2"`, 'length', 27.5 * INCH, 'in'],
    ['2ft3in', 'length', 27 * INCH, 'in'],
    ['-2 ft 3 in', 'length', -27 * INCH, 'in'],
    ['-4 mm', 'length', -0.004, 'mm'],
    ['−4 mm', 'length', -0.004, 'mm'],
    ['+4 mm', 'length', 0.004, 'mm'],
    ['5. mm', 'length', 0.005, 'mm'],
    ['76mm', 'length', 0.076, 'mm'],
    ['20 thou', 'length', 0.02 * INCH, 'thou'],
    ['32 ml', 'volume', 32e-6, 'ml'],
    ['32 cm³', 'volume', 32e-6, 'cm3'],
    ['12 fl oz', 'volume', 12 * 29.5735295625e-6, 'fl oz'],
    ['12 imp fl oz', 'volume', 12 * 28.4130625e-6, 'imp fl oz'],
    ['32 kg/m3', 'density', 32, 'kg/m3'],
    ['1.2 g/cm^3', 'density', 1200, 'g/cm3'],
    ['22 °C', 'temperature', 22, '°C'],
    ['22°C', 'temperature', 22, '°C'],
    ['-1 C', 'temperature', -1, '°C'],
    ['68 °F', 'temperature', 20, '°F'],
    ['-40 °F', 'temperature', -40, '°F'],
    ['295.15 K', 'temperature', 22, 'K'],
    ['2°', 'angle', 2 * DEGREE, '°'],
    ['-2 deg', 'angle', -2 * DEGREE, '°'],
    ['0.1 rad', 'angle', 0.1, 'rad'],
    ['63 %', 'fraction', 0.63, '%'],
    ['63%', 'fraction', 0.63, '%'],
    ['12 g/kg', 'salinity', 12, 'g/kg'],
    ['3.5 %', 'salinity', 35, '%'],
    ['1.5 bar', 'pressure', 150_000, 'bar'],
    ['35 psi', 'pressure', 35 * 6894.757293168, 'psi'],
  ] as const)('%s of %s is %d', (text, dimension, value, unit) => {
    const read = valueIn(readQuantity(text, dimension, METRIC));
    expect(read.value / value).toBeCloseTo(1, 11);
    expect(read).toMatchObject({ sigma: null, unit });
  });

  it.each([
    [240, 'length', METRIC, 0.24],
    ['240', 'length', METRIC, 0.24],
    [2.5, 'length', INCHES, 2.5 * INCH],
    [240, 'mass', METRIC, 0.24],
    ['3 1/2', 'mass', INCHES, 3.5 * OUNCE],
    [2, 'angle', METRIC, 2 * DEGREE],
    [18, 'temperature', INCHES, 18],
    [32, 'density', METRIC, 32],
    [32, 'volume', METRIC, 32e-6],
    [12, 'salinity', METRIC, 12],
    [0.63, 'fraction', METRIC, 0.63],
    [1, 'fraction', METRIC, 1],
    [0, 'length', METRIC, 0],
    [-0.01, 'length', METRIC, -1e-5],
  ] as const)('a bare %s is a %s in the unit of the file', (raw, dimension, units, value) => {
    const read = valueIn(readQuantity(raw, dimension, units));
    expect(read.value).toBeCloseTo(value, 12);
    expect(read).toMatchObject({ sigma: null, unit: null });
  });

  it('has no negative nought', () => {
    for (const text of ['-0 mm', '-0', '-0 ft 0 in']) {
      expect(Object.is(valueIn(readQuantity(text, 'length', METRIC)).value, 0), text).toBe(true);
    }
  });
});

describe('a tolerance', () => {
  it.each([
    ['240 g ± 5 g', 'mass', 0.24, 0.005],
    ['240 ± 5 g', 'mass', 0.24, 0.005],
    ['240 g ± 5', 'mass', 0.24, 0.005],
    ['240 ± 5', 'mass', 0.24, 0.005],
    ['240 g±5 g', 'mass', 0.24, 0.005],
    ['240 g +/- 5 g', 'mass', 0.24, 0.005],
    ['240 g +- 5 g', 'mass', 0.24, 0.005],
    ['240 g ± 0.5 oz', 'mass', 0.24, OUNCE / 2],
    ['240 g ±2 %', 'mass', 0.24, 0.0048],
    ['240 ± 2 %', 'mass', 0.24, 0.0048],
    ['-4 mm ± 50 %', 'length', -0.004, 0.002],
    ['1 lb 3 oz ± 1/4 oz', 'mass', 19 * OUNCE, OUNCE / 4],
    ['240 g ± 0 g', 'mass', 0.24, 0],
    ['63 % ± 3 %', 'fraction', 0.63, 0.03],
    ['63 ± 3 %', 'fraction', 0.63, 0.03],
    ['0.63 ± 0.03', 'fraction', 0.63, 0.03],
    ['3.5 % ± 0.1 %', 'salinity', 35, 1],
    ['35 g/kg ± 1 g/kg', 'salinity', 35, 1],
    ['68 °F ± 9 °F', 'temperature', 20, 5],
    ['2° ± 0.5°', 'angle', 2 * DEGREE, 0.5 * DEGREE],
  ] as const)('%s of %s', (text, dimension, value, sigma) => {
    const read = valueIn(readQuantity(text, dimension, METRIC));
    expect(read.value).toBeCloseTo(value, 12);
    expect(read.sigma).toBeCloseTo(sigma, 12);
  });
});

describe('two values', () => {
  it.each([
    ['120 to 480 mm', 0.12, 0.48, 'mm'],
    ['120 mm to 480 mm', 0.12, 0.48, 'mm'],
    ['120mmto480mm', 0.12, 0.48, 'mm'],
    ['120 to 480', 0.12, 0.48, null],
    ['4 1/2 to 6 in', 4.5 * INCH, 6 * INCH, 'in'],
    ['1 ft 2 in to 2 ft 3 1/2 in', 14 * INCH, 27.5 * INCH, 'in'],
    ['-10 to 10 mm', -0.01, 0.01, 'mm'],
    ['4 mm TO 1 in', 0.004, INCH, 'in'],
  ])('range %s', (text, from, to, unit) => {
    const range = valueIn(readRange(text, 'length', METRIC));
    expect(range.from).toBeCloseTo(from, 12);
    expect(range.to).toBeCloseTo(to, 12);
    expect(range).toMatchObject({ sigma: null, unit });
    expect(readExtent(text, 'length', METRIC)).toEqual({ ok: true, value: range });
  });

  it('gives both ends of a range the tolerance', () => {
    expect(valueIn(readRange('120 to 480 mm ± 2 mm', 'length', METRIC)).sigma).toBe(0.002);
  });

  it('reads ranges of other dimensions', () => {
    expect(valueIn(readRange('40 to 85 %', 'fraction', METRIC))).toMatchObject({ from: 0.4, to: 0.85 });
    expect(valueIn(readRange('0.4 to 0.85', 'fraction', METRIC))).toMatchObject({ from: 0.4, to: 0.85 });
    expect(valueIn(readRange('4 to 18', 'temperature', METRIC))).toMatchObject({ from: 4, to: 18 });
  });

  it('reads an extent that is one place', () => {
    expect(valueIn(readExtent('46 mm ± 1 mm', 'length', METRIC))).toEqual({ value: 0.046, sigma: 0.001, unit: 'mm' });
  });

  it.each([
    ['40 x 12 mm', 0.04, 0.012],
    ['40x12mm', 0.04, 0.012],
    ['40 mm x 12 mm', 0.04, 0.012],
    ['40mmx12mm', 0.04, 0.012],
    ['40 × 12 mm', 0.04, 0.012],
    ['12 X 40', 0.012, 0.04],
    ['1/2 x 1/4 in', INCH / 2, INCH / 4],
    ['1/2" x 6 mm', INCH / 2, 0.006],
  ])('section %s', (text, first, second) => {
    const section = valueIn(readSection(text, 'length', METRIC));
    expect(section.first).toBeCloseTo(first, 12);
    expect(section.second).toBeCloseTo(second, 12);
  });

  it.each([
    ['90 to 40 mm', 0.09, 0.04],
    ['40 to 90 mm', 0.04, 0.09],
    ['90 mm', 0.09, 0.09],
    [76, 0.076, 0.076],
    ['90 to 0 mm', 0.09, 0],
    ['3 1/2 to 1 1/2 in', 3.5 * INCH, 1.5 * INCH],
  ])('taper %s', (raw, first, second) => {
    const taper = valueIn(readTaper(raw, 'length', METRIC));
    expect(taper.first).toBeCloseTo(first, 12);
    expect(taper.second).toBeCloseTo(second, 12);
  });
});
