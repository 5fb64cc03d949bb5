import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Read, readExtent, readQuantity, readRange, readSection, readTaper } from '../../schema/quantity.ts';
import {
  type Dimension,
  dimensions,
  type FileUnits,
  knownUnits,
  spanToSi,
  toSi,
  unitNamed,
} from '../../schema/units.ts';

const METRIC: FileUnits = { length: 'mm', mass: 'g' };
/** Two roundings of a double, with room. */
const ROUNDING = 1e-12;

const anyUnits: fc.Arbitrary<FileUnits> = fc.record({
  length: fc.constantFrom('mm', 'cm', 'm', 'in', 'ft'),
  mass: fc.constantFrom('g', 'kg', 'oz', 'lb'),
});

/** What a builder could mean in SI, well inside what is taken for sane. */
const span: Readonly<Record<Dimension, readonly [least: number, most: number]>> = {
  length: [0.0005, 15],
  mass: [0.0005, 500],
  volume: [1e-7, 0.5],
  density: [5, 20_000],
  temperature: [1, 100],
  angle: [0.001, 6],
  fraction: [0.001, 0.99],
  salinity: [0.01, 300],
  pressure: [10, 9e6],
};

/** A unit with a reading in it, and the SI value: drawn so that the value makes sense. */
const anyReading = fc
  .constantFrom(...dimensions.flatMap(dimension => knownUnits(dimension).map(name => unitNamed(name, dimension)!)))
  .chain(unit => {
    const [least, most] = span[unit.dimension];
    return fc.double({ min: least, max: most, noNaN: true }).map(si => {
      const reading = Number(((si * unit.ratio[1]) / unit.ratio[0] + unit.zero).toPrecision(6));
      return { unit, reading, si: toSi(reading, unit), dimension: unit.dimension };
    });
  });

const closeTo = (value: number, expected: number): boolean =>
  Math.abs(value - expected) <= ROUNDING * Math.max(1, Math.abs(expected));

function valueIn<T>(read: Read<T>, text: string): T {
  if (!read.ok) throw new Error(`${text}: ${read.slip.message}`);
  return read.value;
}

describe('what is written is read back', () => {
  it('in every unit and by every spelling', () => {
    fc.assert(
      fc.property(anyReading, fc.nat(), fc.constantFrom('', ' ', '  ', '\u00a0'), (r, pick, gap) => {
        const spellings = [r.unit.name, ...r.unit.spellings];
        const text = `${r.reading}${gap}${spellings[pick % spellings.length]}`;
        const read = valueIn(readQuantity(text, r.dimension, METRIC), text);
        expect(closeTo(read.value, r.si), text).toBe(true);
        expect(read).toMatchObject({ sigma: null, unit: r.unit.name });
      }),
    );
  });

  it('with a tolerance, in both ways to write its sign', () => {
    fc.assert(
      fc.property(anyReading, fc.integer({ min: 0, max: 25 }), fc.constantFrom('±', '+/-'), (r, percent, sign) => {
        const width = Number(((Math.abs(r.reading) * percent) / 100).toPrecision(6));
        const text = `${r.reading} ${r.unit.name} ${sign} ${width} ${r.unit.name}`;
        const sigma = valueIn(readQuantity(text, r.dimension, METRIC), text).sigma!;
        expect(closeTo(sigma, spanToSi(width, r.unit)), text).toBe(true);
      }),
    );
  });

  it('as whole numbers and fractions of an inch', () => {
    const whole = fc.integer({ min: 0, max: 100 });
    const parts = fc.integer({ min: 1, max: 6 }).chain(power => {
      const bottom = 2 ** power;
      return fc.record({ top: fc.integer({ min: 1, max: bottom - 1 }), bottom: fc.constant(bottom) });
    });
    fc.assert(
      fc.property(whole, parts, fc.constantFrom(' ', '-'), fc.boolean(), (inches, { top, bottom }, gap, isNegative) => {
        const text = `${isNegative ? '-' : ''}${inches > 0 ? inches + gap : ''}${top}/${bottom} in`;
        const expected = (isNegative ? -1 : 1) * (inches + top / bottom) * 0.0254;
        expect(closeTo(valueIn(readQuantity(text, 'length', METRIC), text).value, expected), text).toBe(true);
      }),
    );
  });

  it('as ranges, sections and tapers, with the unit once or twice', () => {
    const size = fc.integer({ min: 1, max: 9000 }).map(tenths => tenths / 10);
    fc.assert(
      fc.property(size, size, fc.boolean(), fc.constantFrom('mm', 'cm', 'in'), (a, b, isTwice, unit) => {
        const si = (n: number) => toSi(n, unitNamed(unit, 'length')!);
        fc.pre(a !== b && Math.max(si(a), si(b)) < 19);
        const join = (joint: string, p: number, q: number) => `${p}${isTwice ? ` ${unit}` : ''} ${joint} ${q} ${unit}`;
        const range = readRange(join('to', Math.min(a, b), Math.max(a, b)), 'length', METRIC);
        expect(range).toMatchObject({ value: { from: si(Math.min(a, b)), to: si(Math.max(a, b)), unit } });
        const pair = { first: si(a), second: si(b), unit };
        expect(readSection(join('x', a, b), 'length', METRIC)).toMatchObject({ value: pair });
        expect(readTaper(join('to', a, b), 'length', METRIC)).toMatchObject({ value: pair });
        const reversed = readRange(join('to', Math.max(a, b), Math.min(a, b)), 'length', METRIC);
        if (reversed.ok) throw new Error('a reversed range was read');
        expect(readRange(reversed.slip.replacement, 'length', METRIC)).toEqual(range);
      }),
    );
  });
});

describe('how reading goes with arithmetic', () => {
  it('adds up mixed units', () => {
    const mixed = fc.constantFrom(
      { dimension: 'mass', units: ['lb', 'oz'] } as const,
      { dimension: 'mass', units: ['kg', 'g', 'mg'] } as const,
      { dimension: 'length', units: ['ft', 'in', 'thou'] } as const,
      { dimension: 'length', units: ['m', 'cm', 'mm'] } as const,
      { dimension: 'volume', units: ['l', 'ml'] } as const,
    );
    const counts = fc.array(fc.integer({ min: 0, max: 15 }), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(mixed, counts, fc.boolean(), ({ dimension, units }, numbers, isGlued) => {
        const gap = isGlued ? '' : ' ';
        const text = units.map((unit, i) => `${numbers[i]}${gap}${unit}`).join(gap);
        const sum = units.reduce((total, unit, i) => total + toSi(numbers[i]!, unitNamed(unit, dimension)!), 0);
        expect(closeTo(valueIn(readQuantity(text, dimension, METRIC), text).value, sum), text).toBe(true);
      }),
    );
  });

  it('grows with the number, in any one unit', () => {
    fc.assert(
      fc.property(anyReading, fc.double({ min: 0.1, max: 1, noNaN: true }), (r, part) => {
        const less = r.unit.zero + (r.reading - r.unit.zero) * part;
        // What is smaller than makes sense is told as a mistake, not read.
        const smaller = readQuantity(`${less} ${r.unit.name}`, r.dimension, METRIC);
        fc.pre(smaller.ok);
        const read = readQuantity(`${r.reading} ${r.unit.name}`, r.dimension, METRIC);
        expect(valueIn(smaller, String(less)).value).toBeLessThanOrEqual(valueIn(read, String(r.reading)).value);
      }),
    );
  });

  it('scales with the number where zero is zero', () => {
    fc.assert(
      fc.property(anyReading, fc.integer({ min: 2, max: 9 }), (r, times) => {
        fc.pre(r.dimension !== 'temperature');
        const part = readQuantity(`${r.reading / times} ${r.unit.name}`, r.dimension, METRIC);
        fc.pre(part.ok);
        const read = readQuantity(`${r.reading} ${r.unit.name}`, r.dimension, METRIC);
        expect(closeTo(valueIn(part, 'part').value * times, valueIn(read, 'whole').value)).toBe(true);
      }),
    );
  });

  it('mirrors lengths and angles', () => {
    fc.assert(
      fc.property(anyReading, r => {
        fc.pre(r.dimension === 'length' || r.dimension === 'angle');
        const read = (text: string) => valueIn(readQuantity(text, r.dimension, METRIC), text).value;
        expect(read(`-${r.reading} ${r.unit.name}`)).toBe(-read(`${r.reading} ${r.unit.name}`));
      }),
    );
  });

  it('takes a bare number in the unit of the file', () => {
    fc.assert(
      fc.property(
        anyUnits,
        fc.constantFrom('length', 'mass'),
        fc.integer({ min: 1, max: 60 }),
        (units, dimension, n) => {
          fc.pre(toSi(n, unitNamed(units[dimension], dimension)!) < 19);
          const said = valueIn(readQuantity(`${n} ${units[dimension]}`, dimension, units), String(n));
          for (const raw of [n, String(n)]) {
            expect(readQuantity(raw, dimension, units)).toEqual({ ok: true, value: { ...said, unit: null } });
          }
        },
      ),
    );
  });
});

/** Things that quantities are made of, in any order: closer to real slips than random characters. */
const scraps = fc.constantFrom(
  ...['1', '5', '12', '240', '.5', '1.', '1e3', '1/4', '5 1/4', '5-1/4', '/', ',', '2,6', '½', '-', '−', '–', '+', '±'],
  ...[
    '+/-',
    'to',
    'x',
    '×',
    '*',
    'by',
    '..',
    'mm',
    'in',
    '"',
    "'",
    'ft',
    'g',
    'lb',
    'oz',
    'kg/m3',
    '°',
    '°C',
    '%',
    'bar',
  ],
  ...[' ', '  ', '\t', 'e', 'foo', '³', '^3', '.', '(', ')', '\u00a0', '💧', '\ud83d', 'İ', 'ſ', 'K'],
);
const soup = fc.array(scraps, { maxLength: 9 }).map(parts => parts.join(''));
const anything = fc.oneof(soup, fc.string({ unit: 'binary' }), fc.anything({ withDate: true, withBigInt: true }));
const readers = [readQuantity, readRange, readExtent, readSection, readTaper] as const;

describe('any input', () => {
  it('is read to finite numbers or gives one slip whose marks lie in the text', () => {
    let good = 0;
    fc.assert(
      fc.property(
        anything,
        fc.constantFrom(...readers),
        fc.constantFrom(...dimensions),
        anyUnits,
        (raw, reader, d, units) => {
          const read = reader(raw, d, units);
          if (read.ok) {
            good++;
            const numbers = Object.values(read.value).filter(v => typeof v === 'number');
            expect(numbers.every(Number.isFinite)).toBe(true);
            return;
          }
          const { start, end, message } = read.slip;
          const length = typeof raw === 'string' ? raw.length : 0;
          expect(0 <= start && start <= end && end <= length).toBe(true);
          expect(message).toMatch(/^\S.*[.?]$/su);
          expect(message).not.toMatch(/undefined|NaN|null/);
        },
      ),
      { numRuns: 3000 },
    );
    // About one in a hundred means something; a handful shows that the first branch was tried.
    expect(good).toBeGreaterThan(3);
  });

  it('does not change by spaces between its parts', () => {
    const parts = fc.constantFrom(
      { parts: ['5', '1/4', 'in'], glue: [' ', ''] },
      { parts: ['-', '5', '1', '/', '4', '"'], glue: ['', ' ', '', '', ''] },
      { parts: ['1', 'lb', '3', 'oz', '±', '1', '/', '4', 'oz'], glue: ['', '', '', '', '', '', '', ''] },
      { parts: ['120', 'to', '480', 'mm', '+/-', '2', 'mm'], glue: ['', '', '', '', '', ''] },
      { parts: ['40', 'mm', 'x', '12', 'mm'], glue: ['', '', '', ''] },
      { parts: ['32', 'kg', '/', 'm3'], glue: ['', '', ''] },
      { parts: ['12', 'fl', 'oz'], glue: ['', ''] },
      { parts: ['22', '°', 'C'], glue: ['', ''] },
    );
    const spaces = fc.array(fc.constantFrom('', ' ', '   ', '\t', '\u00a0', '\u2009'), {
      minLength: 10,
      maxLength: 10,
    });
    let good = 0;
    fc.assert(
      fc.property(parts, spaces, fc.constantFrom(...readers), fc.constantFrom(...dimensions), (of, gaps, reader, d) => {
        const join = (between: (i: number) => string) => of.parts.map((part, i) => part + between(i)).join('');
        const tight = reader(
          join(i => of.glue[i] ?? ''),
          d,
          METRIC,
        );
        const loose = reader(gaps[9] + join(i => (of.glue[i] ?? '') + gaps[i]), d, METRIC);
        expect(loose.ok).toBe(tight.ok);
        if (tight.ok) good++;
        if (tight.ok) expect(loose).toEqual(tight);
      }),
      { numRuns: 1000 },
    );
    expect(good).toBeGreaterThan(20);
  });
});
