import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../schema/quantity.ts';
import type { Dimension, FileUnits } from '../../schema/units.ts';
import {
  angleText,
  densityText,
  heelWords,
  lengthText,
  massText,
  momentText,
  offsetWords,
  percentText,
  pressureText,
  stationWords,
  tapeText,
  trimWords,
  volumeText,
} from '../../server/core/wording/numbers.ts';

const METRIC: FileUnits = { length: 'mm', mass: 'g' };
const INCHES: FileUnits = { length: 'in', mass: 'oz' };
const FEET: FileUnits = { length: 'ft', mass: 'lb' };
const LARGE: FileUnits = { length: 'm', mass: 'kg' };
const CENTIMETRES: FileUnits = { length: 'cm', mass: 'g' };
const ALL_UNITS = [METRIC, INCHES, FEET, LARGE, CENTIMETRES];

const DEGREE = Math.PI / 180;
/** Exact by definition, NIST SP 811 (2008) Appendix B.8 (seen). */
const INCH = 0.0254;
const OUNCE = 0.028349523125;

describe('lengths', () => {
  it.each([
    [0.0062, METRIC, '6.2 mm'],
    [0.48, METRIC, '480 mm'],
    [0.09996, METRIC, '100 mm'],
    [0.00025, METRIC, '0.25 mm'],
    [0.004, METRIC, '4 mm'],
    [-0.0062, METRIC, '-6.2 mm'],
    [-0.000001, METRIC, '0 mm'],
    [0, METRIC, '0 mm'],
    [0.0062, INCHES, '1/4 in'],
    [1.2 * INCH, INCHES, '1 3/16 in'],
    [9.97 * INCH, INCHES, '9 31/32 in'],
    [0.014 * INCH, INCHES, '0.014 in'],
    [INCH / 64, INCHES, '1/64 in'],
    [-0.9 * INCH, INCHES, '-29/32 in'],
    [18.94 * INCH, INCHES, '18 15/16 in'],
    [0.0062, CENTIMETRES, '0.62 cm'],
    [0.48, CENTIMETRES, '48 cm'],
    [0.0062, LARGE, '6.2 mm'],
    [1.2347, LARGE, '1.235 m'],
    [724.298, METRIC, '724 m'],
    [0.0062, FEET, '1/4 in'],
    [27.5 * INCH, FEET, '2.29 ft'],
  ])('%d m in %o: %s', (metres, units, text) => {
    expect(lengthText(metres, units)).toBe(text);
  });

  it.each([
    [0.14236, METRIC, '142 mm'],
    [0.14236, CENTIMETRES, '14.2 cm'],
    [0.14236, LARGE, '0.142 m'],
    [5.25 * INCH, INCHES, '5 1/4 in'],
    [5.26 * INCH, INCHES, '5 1/4 in'],
    [5.97 * INCH, INCHES, '6 in'],
    [(7 / 16) * INCH, INCHES, '7/16 in'],
    [-0.25 * INCH, INCHES, '-1/4 in'],
    [-5.5 * INCH, INCHES, '-5 1/2 in'],
    [-0.01 * INCH, INCHES, '0 in'],
    [27.5 * INCH, FEET, '27 1/2 in'],
    [-0.0001, METRIC, '0 mm'],
  ])('%d m for a tape in %o: %s', (metres, units, text) => {
    expect(tapeText(metres, units)).toBe(text);
  });
});

describe('masses and what follows from them', () => {
  it.each([
    [0.096, METRIC, '96 g'],
    [0.0064, METRIC, '6.4 g'],
    [0.00025, METRIC, '0.25 g'],
    [6.2, METRIC, '6200 g'],
    [12.345, METRIC, '12.35 kg'],
    [2055.74, METRIC, '2056 kg'],
    [0.096, INCHES, '3.4 oz'],
    [0.5 * OUNCE, INCHES, '0.5 oz'],
    [12 * 16 * OUNCE, INCHES, '12 lb'],
    [0.096, FEET, '3.4 oz'],
    [20 * OUNCE, FEET, '1 lb 4 oz'],
    [15.97 * OUNCE, INCHES, '1 lb'],
    [25.5 * OUNCE, INCHES, '1 lb 9.5 oz'],
    [-25.5 * OUNCE, INCHES, '-1 lb 9.5 oz'],
    [200.3 * OUNCE, INCHES, '12 lb 8 oz'],
    [0.096, LARGE, '96 g'],
    [1.2404, LARGE, '1.24 kg'],
    [-0.096, METRIC, '-96 g'],
    [-0.000001, METRIC, '0 g'],
  ])('%d kg in %o: %s', (kilograms, units, text) => {
    expect(massText(kilograms, units)).toBe(text);
  });

  // 1 kg·m = 1e6 g·mm; 1 oz·in = 0.720077887375 kg·mm (derived from SP 811).
  it.each([
    [0.0124, METRIC, '12\u202f400 g·mm'],
    [0.0042, METRIC, '4200 g·mm'],
    [-1.234567, METRIC, '-1\u202f234\u202f567 g·mm'],
    [-1e-9, METRIC, '0 g·mm'],
    [0.000720077887375 * 17.3, INCHES, '17.3 oz·in'],
    [0.000720077887375 * 12345.6, INCHES, '12\u202f345.6 oz·in'],
  ])('%d kg·m in %o: %s', (moment, units, text) => {
    expect(momentText(moment, units)).toBe(text);
  });

  it.each([
    [360e-6, METRIC, '360 ml'],
    [4.25e-6, METRIC, '4.3 ml'],
    [0.0123, METRIC, '12.3 l'],
    [12.4 * INCH ** 3, INCHES, '12.4 in³'],
    [250 * INCH ** 3, FEET, '250 in³'],
  ])('%d m3 in %o: %s', (volume, units, text) => {
    expect(volumeText(volume, units)).toBe(text);
  });

  it.each([
    [998.2072, '998.2 kg/m³'],
    [32, '32 kg/m³'],
    [11340, '11340 kg/m³'],
    [1238.4, '1238 kg/m³'],
  ])('%d kg/m3: %s', (density, text) => {
    expect(densityText(density)).toBe(text);
  });

  // 1 psi = 6894.757293168 Pa (SP 811, seen).
  it.each([
    [33_775, METRIC, '0.34 bar'],
    [6894.757293168 * 4.9, INCHES, '4.9 psi'],
  ])('%d Pa in %o: %s', (pressure, units, text) => {
    expect(pressureText(pressure, units)).toBe(text);
  });
});

describe('angles, fractions and sign words', () => {
  it.each([
    [0.8, '0.8°'],
    [1, '1°'],
    [0.25, '0.25°'],
    [12.34, '12.3°'],
    [-2.5, '-2.5°'],
    [-0.001, '0°'],
  ])('%d degrees: %s', (degrees, text) => {
    expect(angleText(degrees * DEGREE)).toBe(text);
  });

  it.each([
    [0.63, '63 %'],
    [0.025, '2.5 %'],
    [1, '100 %'],
    [0, '0 %'],
  ])('%d of the whole: %s', (part, text) => {
    expect(percentText(part)).toBe(text);
  });

  it.each([
    [0.8, '0.8° bow up'],
    [-2, '2° bow down'],
    [0.04, 'level'],
    [-0.04, 'level'],
    [0, 'level'],
    [0.06, '0.1° bow up'],
  ])('trim %d degrees: %s', (degrees, words) => {
    expect(trimWords(degrees * DEGREE)).toBe(words);
  });

  it.each([
    [1.2, '1.2° to starboard'],
    [-1.2, '1.2° to port'],
    [-0.01, 'upright'],
  ])('heel %d degrees: %s', (degrees, words) => {
    expect(heelWords(degrees * DEGREE)).toBe(words);
  });

  it.each([
    [-0.004, METRIC, '4 mm to port'],
    [0.004, METRIC, '4 mm to starboard'],
    [-0.000001, METRIC, 'on the centreline'],
    [-0.5 * INCH, INCHES, '1/2 in to port'],
  ])('offset %d m: %s', (offset, units, words) => {
    expect(offsetWords(offset, units)).toBe(words);
  });

  it.each([
    [0.31, METRIC, '310 mm aft of the bow tip'],
    [-0.005, METRIC, '5 mm ahead of the bow tip'],
    [0, METRIC, 'at the bow tip'],
  ])('station %d m: %s', (station, units, words) => {
    expect(stationWords(station, units)).toBe(words);
  });
});

/** Figures are rounded to a step; half of the coarsest one for each reader, SI. */
const WRITERS: readonly {
  readonly name: string;
  readonly dimension: Dimension;
  readonly write: (si: number, units: FileUnits) => string;
  readonly least: number;
  readonly most: number;
  /** Absolute half step and relative one, whichever is greater. */
  readonly halfStep: number;
  readonly relative: number;
}[] = [
  {
    name: 'lengthText',
    dimension: 'length',
    write: lengthText,
    least: -19,
    most: 19,
    halfStep: 0.005 * INCH,
    relative: 0.006,
  },
  { name: 'tapeText', dimension: 'length', write: tapeText, least: -19, most: 19, halfStep: INCH / 32, relative: 0 },
  { name: 'massText', dimension: 'mass', write: massText, least: 0, most: 900, halfStep: 0.00015, relative: 0.051 },
  { name: 'volumeText', dimension: 'volume', write: volumeText, least: 0, most: 0.9, halfStep: 1e-7, relative: 0.051 },
  { name: 'densityText', dimension: 'density', write: densityText, least: 1, most: 20000, halfStep: 0.5, relative: 0 },
  {
    name: 'angleText',
    dimension: 'angle',
    write: angleText,
    least: -3,
    most: 3,
    halfStep: 0.051 * DEGREE,
    relative: 0,
  },
  {
    name: 'percentText',
    dimension: 'fraction',
    write: part => percentText(part),
    least: 0,
    most: 1,
    halfStep: 0.0051,
    relative: 0,
  },
  { name: 'pressureText', dimension: 'pressure', write: pressureText, least: 0, most: 9e6, halfStep: 510, relative: 0 },
];

describe('what is written for people can stand in the file', () => {
  it.each(WRITERS)('$name reads back within half a step and never says -0', writer => {
    const value = fc.double({ min: writer.least, max: writer.most, noNaN: true });
    const small = value.map(v => v / 1000).filter(v => v >= writer.least);
    fc.assert(
      fc.property(fc.oneof(value, small), fc.constantFrom(...ALL_UNITS), (si, units) => {
        const text = writer.write(si, units);
        expect(text).not.toMatch(/^-0(?:\.0*)?(?![.\d])/);
        const read = readQuantity(text, writer.dimension, units);
        expect(read, text).toMatchObject({ ok: true });
        if (!read.ok) return;
        const allowed = Math.max(writer.halfStep, writer.relative * Math.abs(si)) * (1 + 1e-9) + 1e-12;
        expect(Math.abs(read.value.value - si), text).toBeLessThanOrEqual(allowed);
      }),
    );
  });
});
