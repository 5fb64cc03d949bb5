import { describe, expect, it } from 'vitest';
import {
  type QuantityOptions,
  type Read,
  readExtent,
  readQuantity,
  readRange,
  readSection,
  readTaper,
} from '../../schema/quantity.ts';
import type { Dimension, FileUnits } from '../../schema/units.ts';

const METRIC: FileUnits = { length: 'mm', mass: 'g' };
const INCHES: FileUnits = { length: 'in', mass: 'oz' };

/** The slip of a reading that must fail, with the characters it marks. */
function slipOf(read: Read<unknown>, raw: unknown) {
  if (read.ok) throw new Error(`“${String(raw)}” was read as ${JSON.stringify(read.value)}`);
  const { message, start, end, replacement } = read.slip;
  return { message, marked: typeof raw === 'string' ? raw.slice(start, end) : '', replacement };
}

const POSITIVE: QuantityOptions = { positive: true };
const NON_NEGATIVE: QuantityOptions = { nonNegative: true };

describe('slips in one quantity, on the exact characters', () => {
  it.each<[string, Dimension, string, RegExp, string?]>([
    ['2,6 in', 'length', '2,6', /decimal sign is a point: write 2\.6/, '2.6'],
    [',5 in', 'length', ',5', /write \.5/, '.5'],
    ['1,200 g', 'mass', '1,200', /write 1200 or, if the comma is a decimal one, 1\.200/],
    ['1,200,000 mg', 'mass', '1,200,000', /write 1200000\./],
    ['1,2,3 g', 'mass', '1,2,3', /not a number: use one decimal point/],
    ['1 200 mm', 'length', '1 200', /without spaces inside: 1200/, '1200'],
    ['5 6 mm', 'length', '5 6', /Two numbers without a unit or a word between them/],
    ['1.2.3 mm', 'length', '1.2.3', /not a number/],
    ['7/16.5 in', 'length', '7/16.5', /not a number/],
    ['1/0 in', 'length', '1/0', /divides by zero/],
    ['5 17/16 in', 'length', '5 17/16', /fraction must be less than one/],
    ['–4 mm', 'length', '–', /too long for a minus sign/, '-'],
    ['1e999 g', 'mass', '1e999', /too large/],
    ['240 mmm', 'length', 'mmm', /not a unit of length\. Did you mean mm\? Known are mm, cm, m, in, ft/, 'mm'],
    ['240 gr', 'mass', 'gr', /Did you mean g\?/, 'g'],
    ['240 stone', 'mass', 'stone', /not a unit of mass\. Known are g, kg, oz, lb/],
    ['240 mm', 'mass', 'mm', /Expected a mass, e\.g\. 310 g, but “mm” is a unit of length/],
    ['240 g', 'length', 'g', /Expected a length, e\.g\. 40 mm, but “g” is a unit of mass/],
    ['5 in3', 'length', 'in3', /not a unit that is expected here/],
    ['5 m2', 'length', 'm2', /not a unit that is expected here/],
    ['12 oz', 'volume', 'oz', /is a unit of mass\. Did you mean fl oz\?/, 'fl oz'],
    ['1 gal', 'volume', 'gal', /Which gallon/, 'US gal'],
    ['22 deg', 'temperature', 'deg', /Did you mean °C\?/, '°C'],
    ['1.5', 'pressure', '1.5', /A pressure needs its unit: bar/, '1.5 bar'],
    ['1 lb 3', 'mass', '3', /“3” needs its own unit/],
    [`6'2`, 'length', '2', /“2” needs its own unit/],
    ['3 oz 1 lb', 'mass', '3 oz 1 lb', /the larger unit first/],
    ['5 g 3 g', 'mass', '5 g 3 g', /the larger unit first/],
    ['20 °C 5 °C', 'temperature', '20 °C 5 °C', /Expected one temperature/],
    ['1 lb 3 mm', 'mass', 'mm', /“mm” is a unit of length/],
    ['wet 240 g', 'mass', 'wet', /Expected a number, but this says “wet”/],
    ['about 240 g', 'mass', 'about 240 g', /Write the figure by itself: 240 g\. How sure/, '240 g'],
    ['g 240', 'mass', 'g 240', /Write the figure by itself: 240 g/, '240 g'],
    ['“240 g”', 'mass', '“240 g”', /without quotes: 240 g/, '240 g'],
    ['240 g approx', 'mass', 'approx', /not understood here\. Write the figure by itself: 240 g/, ''],
    ['240 g, wet', 'mass', ', wet', /not understood here/, ''],
    ['240 g each', 'mass', 'each', /not understood here/],
    ['240 g to port', 'mass', 'port', /Expected a number/],
    ['5 and 3/8 in', 'length', '5 and 3/8', /right behind its whole number: 5 3\/8/, '5 3/8'],
    ['240 g plus minus 5 g', 'mass', 'plus minus', /goes behind “±”/, '±'],
    ['120 to 240 g', 'mass', 'to 240 g', /Expected one mass, e\.g\. 310 g, but here are two/],
    ['240 g ± 5 mm', 'mass', 'mm', /“mm” is a unit of length/],
    ['240 g ± -5 g', 'mass', '-5 g', /no sign of its own/, '5 g'],
    ['240 g ±', 'mass', '', /A number is missing here/],
    ['240 g ± 5 g ± 2 g', 'mass', '±', /not understood here/],
    ['1 lb 3 oz ± 5', 'mass', '5', /Which unit has “5”\? Write it out, e\.g\. 5 oz/],
    ['0.63 ± 3 %', 'fraction', '0.63 ± 3 %', /Does the % belong to “0\.63” as well/],
    ['35 ± 2 %', 'salinity', '35 ± 2 %', /Does the % belong to “35” as well/],
    ['20 °C ± 2 %', 'temperature', '2 %', /A percentage of what\?.*± 1 °C/],
    ['63', 'fraction', '63', /between 0 and 1\. Write 63 %, or 0\.63/, '63 %'],
    ['1.2', 'fraction', '1.2', /at most the whole/],
    ['120 %', 'fraction', '120 %', /at most the whole: 100 %/],
    ['-5 %', 'fraction', '-5 %', /not negative/, '5 %'],
    ['-240 g', 'mass', '-240 g', /a mass that is not negative, e\.g\. 310 g/, '240 g'],
    ['-1 bar', 'pressure', '-1 bar', /not negative/, '1 bar'],
    ['900 m', 'length', '900 m', /More than any length of a model \(20 m\): is the unit right/],
    ['-900 m', 'length', '-900 m', /More than any length/],
    ['5000 kg', 'mass', '5000 kg', /More than any mass of a model/],
    ['30 g/ml', 'density', '30 g/ml', /More than any density/],
    ['1e-50 g', 'mass', '1e-50 g', /Smaller than any mass of a model/],
    ['240 g ± 5000 kg', 'mass', '5000 kg', /A tolerance of more than 1000 kg/],
    ['', 'mass', '', /Expected one mass, e\.g\. 310 g, but nothing is given/],
    ['  ', 'mass', '', /nothing is given/],
    ['g', 'mass', 'g', /Expected a number, but this says “g”/],
    ['.inf', 'mass', '.inf', /Expected a number/],
    ['NaN', 'mass', 'NaN', /Expected a number/],
  ])('%s as a %s', (text, dimension, marked, message, replacement) => {
    const slip = slipOf(readQuantity(text, dimension, METRIC), text);
    expect(slip.message).toMatch(message);
    expect(slip).toMatchObject({ marked, replacement });
  });

  it.each<[string, QuantityOptions, string, RegExp]>([
    ['0 mm', POSITIVE, '0 mm', /a length of more than zero, e\.g\. 40 mm/],
    ['-4 mm', POSITIVE, '-4 mm', /a length that is not negative/],
    ['1e-9 mm', POSITIVE, '1e-9 mm', /Smaller than any length of a model/],
    ['-4 mm', NON_NEGATIVE, '-4 mm', /a length that is not negative/],
    ['1e-308 mm', NON_NEGATIVE, '1e-308 mm', /Smaller than any length of a model/],
    ['-1e-9 mm', {}, '-1e-9 mm', /Smaller than any length of a model/],
    ['40 mm ± 1e-50 mm', {}, '1e-50 mm', /A tolerance finer than anything can be read/],
    ['40 mm ± 1e-300 %', {}, '1e-300 %', /A tolerance finer than anything can be read/],
  ])('%s where %o', (text, options, marked, message) => {
    const slip = slipOf(readQuantity(text, 'length', METRIC, options), text);
    expect(slip).toMatchObject({ marked, message: expect.stringMatching(message) });
  });

  it('takes zero where it is not negative that is asked', () => {
    expect(readQuantity('0 mm', 'length', METRIC, NON_NEGATIVE)).toMatchObject({ ok: true, value: { value: 0 } });
  });

  it.each([
    [METRIC, /e\.g\. 40 mm/],
    [INCHES, /e\.g\. 1 5\/8 in/],
    [{ length: 'cm', mass: 'kg' } as const, /e\.g\. 4 cm/],
    [{ length: 'ft', mass: 'lb' } as const, /e\.g\. 2 ft/],
    [{ length: 'm', mass: 'kg' } as const, /e\.g\. 0\.04 m/],
  ])('shows an example in the units of the file, %o', (units, example) => {
    expect(slipOf(readQuantity('6 g', 'length', units), '6 g').message).toMatch(example);
  });
});

describe('slips of whole values that are not text', () => {
  it.each([
    [null, /nothing is given/],
    [undefined, /nothing is given/],
    [true, /this says true/],
    [new Date(0), /this is a date/],
    [[120], /this is a list/],
    [{ from: 120 }, /this is a group of keys/],
  ])('%s', (raw, message) => {
    const read = readQuantity(raw, 'length', METRIC);
    expect(read).toMatchObject({ ok: false, slip: { start: 0, end: 0 } });
    expect(slipOf(read, raw).message).toMatch(/^Expected one length, e\.g\. 40 mm, but /);
    expect(slipOf(read, raw).message).toMatch(message);
  });

  it('replaces a YAML number as a whole', () => {
    expect(readQuantity(63, 'fraction', METRIC)).toMatchObject({ slip: { start: 0, end: 0, replacement: '63 %' } });
    expect(readQuantity(1.5, 'pressure', METRIC)).toMatchObject({ slip: { start: 0, end: 0, replacement: '1.5 bar' } });
  });

  it('offers a list of two as a range, section or taper', () => {
    expect(slipOf(readRange([120, 480], 'length', METRIC), []).replacement).toBe('120 to 480 mm');
    expect(slipOf(readSection([40, 12], 'length', INCHES), []).replacement).toBe('40 x 12 in');
    expect(slipOf(readTaper([90, 40], 'length', METRIC), []).replacement).toBe('90 to 40 mm');
    expect(slipOf(readRange([120, 'x'], 'length', METRIC), []).replacement).toBeUndefined();
  });
});

describe('slips in two values', () => {
  const range = (text: string) => readRange(text, 'length', METRIC);
  const extent = (text: string) => readExtent(text, 'length', METRIC);
  const section = (text: string) => readSection(text, 'length', METRIC);
  const taper = (text: string) => readTaper(text, 'length', METRIC);

  it.each<[string, (text: string) => Read<unknown>, string, RegExp, string?]>([
    ['480 to 120 mm', range, '480 to 120 mm', /from the lesser to the greater: write 120 to 480 mm/, '120 to 480 mm'],
    ['480 mm to 120', range, '480 mm to 120', /lesser to the greater/, '120 to 480 mm'],
    ['480 mm to 120 mm', range, '480 mm to 120 mm', /lesser to the greater/, '120 mm to 480 mm'],
    ['480 to 120', range, '480 to 120', /lesser to the greater/, '120 to 480'],
    ['10 to -10 mm', extent, '10 to -10 mm', /lesser to the greater/, '-10 to 10 mm'],
    ['2 in to 5 mm', range, '2 in to 5 mm', /lesser to the greater/, '5 mm to 2 in'],
    ['120–480 mm', range, '–', /a range, e\.g\. 12 to 40 mm: write “to” between the two/, ' to '],
    ['120-480 mm', extent, '-', /write “to”/, ' to '],
    ['120 - 480 mm', range, '-', /write “to”/, 'to'],
    ['120..480 mm', range, '..', /write “to”/, ' to '],
    ['120 x 480 mm', range, 'x', /write “to”/, 'to'],
    ['5 to 5 mm', range, '5 to 5 mm', /Both ends are the same/],
    ['70 to 70 mm', extent, '70 to 70 mm', /For one place write 70 mm/, '70 mm'],
    ['120 mm', range, '120 mm', /Expected a range, e\.g\. 12 to 40 mm, but this is one value/],
    ['120 to', range, '', /A number is missing here/],
    ['120 to 480 to 500 mm', range, 'to 500 mm', /two values already/],
    ['120 mm ± 1 mm to 480 mm', range, 'to 480 mm', /tolerance goes last/],
    ['120 to 480 mm ± 2 %', range, '2 %', /percentage of what\?.*± 1 mm/],
    ['10 to 2 ft 3 in', range, '10', /Which unit has “10”\? Write it out, e\.g\. 10 in/],
    ['120 bis 480 mm', range, 'bis', /“bis” is not a unit of length/],
    ['120 to 480 g', range, 'g', /“g” is a unit of mass/],
    ['40 * 12 mm', section, '*', /two sizes, e\.g\. 40 x 12 mm: write “x” between the two/, 'x'],
    ['40 by 12 mm', section, 'by', /write “x”/, 'x'],
    ['40 to 12 mm', section, 'to', /write “x”/, 'x'],
    ['40 mm', section, '40 mm', /Expected two sizes, e\.g\. 40 x 12 mm, but this is one value/],
    ['40 x 12 x 300 mm', section, 'x 300 mm', /two values already\. Write it like 40 x 12 mm/],
    ['0 x 12 mm', section, '0', /more than zero/],
    ['40 x -12 mm', section, '-12 mm', /not negative/, '12 mm'],
    ['0 mm', taper, '0 mm', /a diameter of more than zero/],
    ['0 to 0 mm', taper, '0 to 0 mm', /One of the two diameters/],
    ['-9 to 4 mm', taper, '-9', /not negative/, '9'],
    ['90 x 40 mm', taper, 'x', /one diameter, or the first and last, e\.g\. 40 to 12 mm: write “to”/, 'to'],
  ])('%s', (text, read, marked, message, replacement) => {
    const slip = slipOf(read(text), text);
    expect(slip).toMatchObject({ marked, message: expect.stringMatching(message), replacement });
  });

  it('is mended by its own replacement', () => {
    for (const text of ['480 to 120 mm', '480 mm to 120', '120–480 mm', '120-480 mm', '120..480 mm', '2 in to 5 mm']) {
      const read = range(text);
      if (read.ok) throw new Error(text);
      const { start, end, replacement } = read.slip;
      expect(range(text.slice(0, start) + replacement + text.slice(end)), text).toMatchObject({ ok: true });
    }
  });
});
