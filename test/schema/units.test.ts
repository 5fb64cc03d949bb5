import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closest, slipsBetween } from '../../schema/closest.ts';
import {
  type Dimension,
  dimensionOf,
  dimensions,
  fromSi,
  knownUnits,
  nearestUnit,
  spanToSi,
  toSi,
  type Unit,
  unitAt,
  unitNamed,
} from '../../schema/units.ts';

const unit = (name: string, dimension: Dimension): Unit => unitNamed(name, dimension)!;
const all = dimensions.flatMap(dimension => knownUnits(dimension).map(name => unit(name, dimension)));

// NIST SP 811 (2008) Appendix B.8 and NIST Handbook 44 Appendix C; exact but where a tolerance is given.
describe('factors to SI', () => {
  it.each([
    ['in', 'length', 0.0254, 'exact, seen'],
    ['ft', 'length', 0.3048, 'exact, seen'],
    ['lb', 'mass', 0.45359237, 'exact, seen'],
    ['oz', 'mass', 0.028349523125, 'exact, seen'],
    ['fl oz', 'volume', 29.5735295625e-6, 'exact, seen'],
    ['US gal', 'volume', 3.785411784e-3, 'exact, seen'],
    ['imp fl oz', 'volume', 28.4130625e-6, 'exact, from memory'],
    ['imp gal', 'volume', 4.54609e-3, 'exact, from memory'],
    ['in3', 'volume', 16.387064e-6, 'exact, seen'],
    ['ft3', 'volume', 28.316846592e-3, 'exact, seen'],
    ['psi', 'pressure', 6894.757293168, 'rounded, seen'],
    ['atm', 'pressure', 101325, 'exact, seen'],
    ['lb/ft3', 'density', 16.01846337396, 'rounded, seen'],
    ['lb/in3', 'density', 27679.904710203, 'rounded, from memory'],
    ['oz/in3', 'density', 1729.994044388, 'rounded, from memory'],
  ] as const)('1 %s of %s is %d (%s)', (name, dimension, si, kind) => {
    const rounding = kind.startsWith('exact') ? 2e-16 : 1e-12;
    expect(Math.abs(toSi(1, unit(name, dimension)) / si - 1)).toBeLessThanOrEqual(rounding);
  });

  // From the definitions of the prefixes and of the litre (derived).
  it.each([
    ['mm', 'length', 0.001],
    ['cm', 'length', 0.01],
    ['m', 'length', 1],
    ['thou', 'length', 25.4e-6],
    ['mg', 'mass', 1e-6],
    ['g', 'mass', 0.001],
    ['kg', 'mass', 1],
    ['ml', 'volume', 1e-6],
    ['cm3', 'volume', 1e-6],
    ['mm3', 'volume', 1e-9],
    ['dl', 'volume', 1e-4],
    ['l', 'volume', 0.001],
    ['m3', 'volume', 1],
    ['g/cm3', 'density', 1000],
    ['g/ml', 'density', 1000],
    ['kg/l', 'density', 1000],
    ['kg/m3', 'density', 1],
    ['°', 'angle', Math.PI / 180],
    ['rad', 'angle', 1],
    ['%', 'fraction', 0.01],
    ['%', 'salinity', 10],
    ['‰', 'salinity', 1],
    ['psu', 'salinity', 1],
    ['g/kg', 'salinity', 1],
    ['Pa', 'pressure', 1],
    ['kPa', 'pressure', 1000],
    ['mbar', 'pressure', 100],
    ['bar', 'pressure', 100_000],
    ['K', 'temperature', -272.15],
    ['°C', 'temperature', 1],
    ['°F', 'temperature', -155 / 9],
  ] as const)('1 %s of %s is %d', (name, dimension, si) => {
    expect(toSi(1, unit(name, dimension))).toBeCloseTo(si, 12);
  });

  it('has a check for every unit in the two lists above', () => {
    expect(all).toHaveLength(15 + 31);
  });

  // The naval constants of SP 811 (seen): 64 lb/ft3 is 1025.1817 kg/m3; 62.4 lb/ft3 is 999.5521 kg/m3.
  it.each([
    [64, 1025.1817],
    [62.4, 999.5521],
  ])('%d lb/ft3 is %d kg/m3', (pounds, density) => {
    expect(toSi(pounds, unit('lb/ft3', 'density'))).toBeCloseTo(density, 4);
  });

  // 1 oz·in = 0.720077887375 kg·mm (SP 811, derived).
  it('makes the ounce-inch', () => {
    const moment = toSi(1, unit('oz', 'mass')) * fromSi(toSi(1, unit('in', 'length')), unit('mm', 'length'));
    expect(moment).toBeCloseTo(0.720077887375, 14);
  });

  // Fixed points by definition: ice 32 °F = 0 °C, steam 212 °F = 100 °C, -40 on both, 273.15 K = 0 °C (derived).
  it.each([
    ['°F', 32, 0],
    ['°F', 212, 100],
    ['°F', -40, -40],
    ['K', 273.15, 0],
    ['°C', 18, 18],
  ])('%s: %d is %d °C', (name, reading, celsius) => {
    expect(toSi(reading, unit(name, 'temperature'))).toBeCloseTo(celsius, 12);
  });

  it('turns a difference of temperatures without the zero of its scale', () => {
    expect(spanToSi(9, unit('°F', 'temperature'))).toBeCloseTo(5, 12);
    expect(spanToSi(5, unit('K', 'temperature'))).toBe(5);
  });

  it('keeps decimal lengths and masses exact', () => {
    for (let n = 1; n < 2000; n++) {
      expect(toSi(n, unit('mm', 'length'))).toBe(Number(`${n}e-3`));
      expect(toSi(n, unit('g', 'mass'))).toBe(Number(`${n}e-3`));
    }
  });

  it('comes back from SI to the reading', () => {
    fc.assert(
      fc.property(fc.constantFrom(...all), fc.double({ min: -1e4, max: 1e4, noNaN: true }), (u, reading) => {
        expect(fromSi(toSi(reading, u), u)).toBeCloseTo(reading, 8);
      }),
    );
  });
});

describe('names of units', () => {
  it('knows every spelling, in any case, whole and at the start of a text', () => {
    for (const u of all) {
      for (const spelling of [u.name, ...u.spellings]) {
        for (const word of [spelling, spelling.toUpperCase(), spelling.toLowerCase()]) {
          expect(unitNamed(word, u.dimension), word).toBe(u);
          expect(unitAt(`${word} x`, 0, u.dimension), word).toEqual({ unit: u, end: word.length });
        }
      }
    }
  });

  it('has no spelling with two meanings within a dimension', () => {
    for (const dimension of dimensions) {
      const words = all
        .filter(u => u.dimension === dimension)
        .flatMap(u => [u.name, ...u.spellings])
        .map(word => word.toLowerCase().replace(/\s/g, ''));
      expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
    }
  });

  it.each([
    ['cm³', 'volume', 'cm3'],
    ['cm^3', 'volume', 'cm3'],
    ['kg / m³', 'density', 'kg/m3'],
    ['fl. oz.', 'volume', 'fl oz'],
    ['US  fl oz', 'volume', 'fl oz'],
    ['° C', 'temperature', '°C'],
    ['in.', 'length', 'in'],
    ['LBS', 'mass', 'lb'],
  ] as const)('reads “%s” of %s as %s', (word, dimension, name) => {
    expect(unitAt(word, 0, dimension)).toEqual({ unit: unit(name, dimension), end: word.length });
  });

  it.each([
    ['mmm', 'length'],
    ['kg/m3', 'mass'],
    ['inx', 'length'],
    ['m³', 'length'],
    ['°C', 'angle'],
    ['', 'length'],
  ] as const)('does not take the start of “%s” for a %s', (text, dimension) => {
    expect(unitAt(text, 0, dimension)).toBeNull();
  });

  it.each([
    ['mm', 'length'],
    ['oz', 'mass'],
    ['°', 'angle'],
    ['%', 'fraction'],
    ['psi', 'pressure'],
    ['kg/m3', 'density'],
    ['furlong', null],
  ])('“%s” is a unit of %s', (word, dimension) => {
    expect(dimensionOf(word)).toBe(dimension);
  });

  it.each([
    ['mmm', 'length', 'mm'],
    ['inhc', 'length', 'in'],
    ['milimeter', 'length', 'mm'],
    ['gr', 'mass', 'g'],
    ['kgm3', 'density', 'kg/m3'],
    ['kg/m2', 'density', 'kg/m3'],
    ['oz', 'volume', 'fl oz'],
    ['gallon', 'volume', 'US gal'],
    ['deg', 'temperature', '°C'],
    ['g/l', 'salinity', 'g/kg'],
    ['barr', 'pressure', 'bar'],
    ['furlong', 'length', null],
    ['q', 'mass', null],
    ['mm', 'mass', null],
  ] as const)('takes “%s” of %s for %s', (word, dimension, name) => {
    expect(nearestUnit(word, dimension)).toBe(name);
  });
});

describe('the closest word', () => {
  // Counted by hand: changes, additions, omissions, swaps of neighbours.
  it.each([
    ['hull', 'hull', 0],
    ['hul', 'hull', 1],
    ['hulll', 'hull', 1],
    ['hall', 'hull', 1],
    ['uhll', 'hull', 1],
    ['', 'hull', 4],
    ['sitting', 'kitten', 3],
  ])('%s -> %s: %d', (a, b, slips) => {
    expect(slipsBetween(a, b)).toBe(slips);
    expect(slipsBetween(b, a)).toBe(slips);
  });

  it.each([
    ['payolad', ['hull', 'payload', 'bays'], 'payload'],
    ['HULL', ['hull', 'bull'], 'hull'],
    ['dry  cylinder', ['dry cylinder', 'wet cylinder'], 'dry cylinder'],
    ['wull', ['hull', 'bull'], 'hull'],
    ['rudder', ['hull', 'payload'], null],
    ['x', ['y'], null],
    ['', ['hull'], null],
    ['hull', [], null],
  ])('%s of %o: %s', (word, candidates, found) => {
    expect(closest(word, candidates)).toBe(found);
  });

  it('forgives any one slip in a word of four letters or more', () => {
    const word = fc.stringMatching(/^[a-z]{4,12}$/);
    fc.assert(
      fc.property(word, fc.nat(), fc.constantFrom('drop', 'double', 'change'), (right, at, slip) => {
        const i = at % right.length;
        const middle = { drop: '', double: right.charAt(i).repeat(2), change: '-' }[slip];
        expect(closest(right.slice(0, i) + middle + right.slice(i + 1), ['?'.repeat(20), right])).toBe(right);
      }),
    );
  });
});
