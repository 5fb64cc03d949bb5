import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '../../schema/limits.ts';
import type { Limits } from '../../server/core/boat/boat.ts';
import { conditionFindings } from '../../server/core/findings/catalogue/conditionFindings.ts';
import { analysed, fileFindings, marked } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { PROBE, probe } from '../helpers/probe.ts';

const degrees = Math.PI / 180;
const WATER = 'water: { density: 1000 kg/m3 }';

describe('water', () => {
  // ITTC 7.5-02-01-03 (2011), Tables 1 and 3 (seen): 15 °C fresh 999.1026, sea 1026.021 kg/m3. EOS-80 is 0.043 to
  // 0.049 below the latter at its salinity of 35.16504 g/kg absolute, 35 practical; cross-check bands 0.005 and 0.08.
  it.each([
    ['water: { kind: fresh, temperature: 15 °C }', 999.1026, 0.005],
    ['water: { temperature: 59 °F }', 999.1026, 0.005],
    ['water: fresh', 998.2072, 0.005],
    ['water: sea', 1024.8103, 0.08],
    ['water: { kind: sea, temperature: 15 °C }', 1026.021, 0.08],
    ['water: { salinity: 35 g/kg, temperature: 15 }', 1026.021, 0.08],
    // Table 4 (seen): 15 °C, 20 g/kg absolute: 1014.4192, to 0.10 with practical = absolute x 35/35.16504.
    ['water: { kind: fresh, salinity: 19.906 g/kg, temperature: 15 °C }', 1014.4192, 0.1],
    ['water: { density: 1004 kg/m3, kind: sea, temperature: 4 °C }', 1004, 1e-9],
  ])('%s', (line, density, within) => {
    const analysis = analysed(probe([WATER, line]));
    expect(fileFindings(analysis)).toEqual([]);
    expect(Math.abs(analysis.boat.water.density - density)).toBeLessThan(within);
    // It is what the boat floats in: 2 kg in a box of 400 cm2.
    const { surfaced } = analysis;
    expect(surfaced.status === 'afloat' && surfaced.attitude.draft).toBeCloseTo(
      2 / (0.04 * analysis.boat.water.density),
      9,
    );
  });
  it.each([
    ['water: { temperature: 44 °C }', '44 °C'],
    ['water: { temperature: -2 °C }', '-2 °C'],
    ['water: { salinity: 60 g/kg }', '60 g/kg'],
  ])('%s is beyond the equation of state', (line, marks) => {
    const analysis = analysed(probe([WATER, line]));
    const told = fileFindings(analysis);
    expect(told.map(finding => [finding.code, finding.message])).toEqual([
      [
        'water-out-of-range',
        'Densities are known for water of 0 to 40 °C with 0 to 42 g/kg of salt. Outside that give the density itself, such as “density: 1004 kg/m3”.',
      ],
    ]);
    expect(marked(analysis, told[0]!)).toBe(marks);
    expect(Math.abs(analysis.boat.water.density - 998.2072)).toBeLessThan(0.005);
  });
  it.each([
    [
      'water: brackish',
      'brackish',
      'Expected “fresh” or “sea”, but this says “brackish”. Brackish water is anything between: measure its salinity or density, such as { salinity: 12 g/kg }.',
    ],
    ['water: freesh', 'freesh', 'Expected “fresh” or “sea”, but this says “freesh”. Did you mean “fresh”?'],
    ['water: { salt: 3 g/kg }', 'salt', 'There is no key “salt” in the water. Did you mean “salinity”?'],
    [
      'water: { kind: sea, temperature: 15 kg }',
      'kg',
      'Expected a temperature, e.g. 18 °C, but “kg” is a unit of mass.',
    ],
  ])('%s', (line, marks, says) => {
    const analysis = analysed(probe([WATER, line]));
    const [told, ...more] = fileFindings(analysis);
    expect(more).toEqual([]);
    expect([told?.message, marked(analysis, told!)]).toEqual([says, marks]);
  });
  it('a fault in one of its keys leaves the others', () => {
    const { boat } = analysed(probe([WATER, 'water: { kind: sea, temperature: 15 kg }']));
    expect(Math.abs(boat.water.density - 1024.8103)).toBeLessThan(0.08);
  });
});

describe('units that cannot be read', () => {
  const boat = (units: string) =>
    boatText`
      boat: B
      ${units}
      hull:
        length: 16
        waterline: 2
        compartments:
          - { name: c, mass: 7, station: 0 to 16, offset: -2 to 2, height: 0 to 4 }
    `;
  it.each(['units: { length: inch }', 'units: [in, oz]', 'units { length: in }'])(
    '%s: nothing is said of figures until they are',
    units => {
      const analysis = analysed(boat(units));
      expect(analysis.file.isFaulty).toBe(true);
      expect(analysis.boat.leftOut).toContain('units');
      const told = analysis.findings.filter(({ code }) => code in conditionFindings);
      expect(told).toEqual([]);
    },
  );
  it.each(['units: { length: in }', 'scale 1:60', ''])('“%s” leaves no doubt of them', other => {
    expect(analysed(boat(other)).boat.leftOut).not.toContain('units');
  });
});

describe('units', () => {
  const bare = (units: string) =>
    boatText`
      boat: B
      units: ${units}
      hull:
        length: 16
        waterline: 2
        compartments:
          - { name: c, mass: 7 1/2, station: 0 to 16, offset: -2 to 2, height: 0 to 4 }
    `;
  it.each([
    ['{ length: in, mass: oz }', 16 * 0.0254, 7.5 * 0.028349523125],
    ['{ length: cm, mass: lb }', 0.16, 7.5 * 0.45359237],
    ['{ length: ft, mass: kg }', 16 * 0.3048, 7.5],
    ['{ mass: kg }', 0.016, 7.5],
  ])('%s are those of bare numbers', (units, length, mass) => {
    // Factors: NIST SP 811, Appendix B.8 (seen).
    const analysis = analysed(bare(units));
    expect(fileFindings(analysis)).toEqual([]);
    expect(analysis.boat.length).toBeCloseTo(length, 12);
    expect(analysis.boat.compartments[0]?.mass).toBeCloseTo(mass, 12);
    expect(analysis.boat.waterline?.bow).toBeCloseTo(length / 8, 12);
  });
  it('a wrong one is told and its neighbour kept', () => {
    const analysis = analysed(bare('{ length: inch, mass: oz }'));
    expect(fileFindings(analysis).map(finding => finding.message)).toEqual([
      'Expected one of “mm”, “cm”, “m”, “in” or “ft”, but this says “inch”. Did you mean “in”?',
    ]);
    // As it is plainly meant, so that no bare number is read in millimetres.
    expect(analysis.boat.units).toEqual({ length: 'in', mass: 'oz' });
  });
});

describe('the painted waterline', () => {
  it.each([
    ['waterline: 50 mm', 0.05, 0.05],
    ['waterline: 2 in', 0.0508, 0.0508],
    ['waterline: { bow: 48 mm, stern: 52 mm }', 0.048, 0.052],
  ])('%s', (line, bow, stern) => {
    const { boat } = analysed(probe(['waterline: 50 mm', line]));
    expect(boat.waterline?.bow).toBeCloseTo(bow, 12);
    expect(boat.waterline?.stern).toBeCloseTo(stern, 12);
  });
  it('need not be', () => {
    expect(analysed(probe(['  waterline: 50 mm', ''])).boat.waterline).toBeNull();
  });
});

describe('limits', () => {
  const limitsOf = (line: string): Limits => {
    const analysis = analysed(probe([/^limits: .*$/m.exec(PROBE)![0], line]));
    expect(fileFindings(analysis)).toEqual([]);
    return analysis.boat.limits;
  };
  it('have defaults, each by itself', () => {
    expect(limitsOf('')).toEqual(DEFAULT_LIMITS);
    expect(limitsOf('limits: { gm: 6 mm }')).toEqual({
      ...DEFAULT_LIMITS,
      surfaced: { ...DEFAULT_LIMITS.surfaced, gm: 0.006 },
    });
  });
  it.each([
    ['limits: { trim: 0.7° }', 0.7, 0.7],
    ['limits: { trim: { surfaced: 0.7° } }', 0.7, 1],
    ['limits: { trim: { submerged: 2° } }', 0.5, 2],
    ['limits: { trim: { surfaced: 0.7°, submerged: 2 } }', 0.7, 2],
  ])('%s', (line, surfaced, submerged) => {
    const limits = limitsOf(line);
    expect(limits.surfaced.trim / degrees).toBeCloseTo(surfaced, 12);
    expect(limits.submerged.trim / degrees).toBeCloseTo(submerged, 12);
  });
  it('heel may differ between conditions too', () => {
    const limits = limitsOf('limits: { heel: { surfaced: 2°, submerged: 3°, transit: 9° } }');
    expect(
      [limits.surfaced.heel, limits.submerged.heel, limits.transit.heel].map(h => Math.round(h / degrees)),
    ).toEqual([2, 3, 9]);
  });
  it('the rest in their own kinds', () => {
    const { surfaced, submerged } = limitsOf('limits: { draft: 1/16 in, fill: 50 to 90 %, bg: 7, gm: 5 mm }');
    expect(surfaced.draft).toBeCloseTo(0.0015875, 12);
    expect([surfaced.gm, submerged.bg, ...submerged.fill]).toEqual([0.005, 0.007, 0.5, 0.9]);
  });
  it('one that cannot be read has its default, the others stand', () => {
    const { boat } = analysed(probe(['trim: 0.5°', 'trim: 5 mm'], ['gm: 3 mm', 'gm: 9 mm']));
    expect(boat.limits.surfaced).toMatchObject({ trim: DEFAULT_LIMITS.surfaced.trim, gm: 0.009 });
  });
});

describe('the scale', () => {
  it.each([
    ['scale: 1:48', 1 / 48],
    ['scale: 1/72', 1 / 72],
    ['scale: "1 : 96"', 1 / 96],
    ['scale: 1:22.5', 1 / 22.5],
  ])('%s', (line, scale) => {
    expect(
      analysed(boatText`
        boat: B
        ${line}
      `).boat.scale,
    ).toBeCloseTo(scale, 15);
  });
});

it.each(['limits: { heel: much }', 'stock: { lead: { density: much } }', 'water: { temperature: much }'])(
  'what is wrong in %s is told beside what is wrong elsewhere',
  section => {
    const text = boatText`
      hull: { length: 500 mm, colour: red }
      ${section}
    `;
    const told = fileFindings(analysed(text));
    expect(told.map(({ code }) => code)).toEqual(expect.arrayContaining(['unknown-key', 'wrong-quantity']));
  },
);
