import { describe, expect, it } from 'vitest';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { PROBE, probe } from '../helpers/probe.ts';

/** Off the file and back, as a reader of the report has it. */
const reportOf = (text: string) => JSON.parse(JSON.stringify(jsonReport(heard(text)))) as ReturnType<typeof jsonReport>;

/*
 * The probe by hand, in the units of the report: 2000 g at 200 mm, G 28.5 mm up; 50 mm deep, B 25 mm up, BM 16.667 and
 * 266.667 mm; 2800 g of hull. Submerged 800 of 990 g of water, B 35 mm up, G (57000 + 24000)/2800 mm.
 */
const near = (value: number) => expect.closeTo(value, 6);
const centred = (station: number, height: number) => ({
  station: near(station),
  offset: near(0),
  height: near(height),
});
const G_UNDER = 81_000 / 2800;

describe('the machine-readable report', () => {
  const report = reportOf(PROBE);
  it('has the boat', () => {
    expect(report).toMatchObject({
      boat: 'Probe',
      water: { density: 1000 },
      hull: { length: near(400) },
      mass: near(2000),
      centroid: centred(200, 28.5),
    });
  });
  it('has every figure of the surfaced boat, and no other', () => {
    expect(report.surfaced).toEqual({
      afloat: true,
      draft: near(50),
      draftBow: near(50),
      draftStern: near(50),
      trim: near(0),
      heel: near(0),
      displacement: near(2000),
      centreOfBuoyancy: centred(200, 25),
      waterplaneArea: near(40_000),
      gramsPerMm: near(40),
      gm: near(25 + 1e4 / 600 - 28.5),
      gmLongitudinal: near(25 + 16e4 / 600 - 28.5),
      momentToTrim1deg: expect.closeTo(2000 * (25 + 16e4 / 600 - 28.5) * Math.sin(Math.PI / 180), 4),
      reserveBuoyancy: near(800),
      byFile: null,
    });
  });
  it('has every figure of the submerged boat, and no other', () => {
    expect(report.submerged).toEqual({
      reachable: true,
      fill: near(800 / 990),
      reserve: null,
      trim: near(0),
      heel: near(0),
      stable: true,
      centreOfBuoyancy: centred(200, 35),
      centreOfMass: centred(200, G_UNDER),
      bg: near(35 - G_UNDER),
      bgEffective: near(35 - G_UNDER),
      bgEffectiveLongitudinal: near(35 - G_UNDER),
      byFile: null,
    });
  });
  it('has the tank in cubic millimetres', () => {
    expect(report.tanks[0]).toMatchObject({ name: 'main tank', capacity: near(990_000), fillNeutral: near(800 / 990) });
  });
  it('tells trim, heel and station with the signs of the file', () => {
    const { surfaced, centroid } = reportOf(
      probe([
        'station: 150 to 250 mm',
        boatText`
          station: 160 to 260 mm
              offset: 1 mm`,
      ]),
    );
    expect(surfaced.trim).toBeGreaterThan(0.5);
    expect(surfaced.heel).toBeGreaterThan(1);
    expect(Number(surfaced.draftStern) - Number(surfaced.draftBow)).toBeCloseTo(
      400 * Math.tan((Number(surfaced.trim) * Math.PI) / 180),
      6,
    );
    expect(centroid?.offset).toBeCloseTo(0.4, 6);
  });
});

/** A hull, and nothing in it. */
const BARE = `boat: B
hull: { length: 300 mm }
`;

describe('figures that cannot be had', () => {
  it.each([
    ['afloat', false, 'sinks', probe(['mass: 800 g', 'mass: 1700 g'])],
    ['afloat', true, 'overturns', probe(['height: 30 mm', 'height: 66 mm'], ['height: 20 mm', 'height: 66 mm'])],
    ['afloat', null, 'nothing-floats', BARE],
  ] as const)('%s %s: %s', (_, afloat, code, text) => {
    const { surfaced, findings } = reportOf(text);
    const { afloat: said, ...figures } = surfaced;
    expect(said).toBe(afloat);
    expect(new Set(Object.values(figures))).toEqual(new Set([null]));
    expect(findings.map(finding => finding.code)).toContain(code);
  });
  it.each([
    [false, 'submerged-heavy', probe(['mass: 800 g', 'mass: 1700 g'])],
    [false, 'submerged-light', probe(['mass: 800 g', 'mass: 500 g'])],
    [null, 'nothing-floats', BARE],
  ] as const)('reachable %s: %s', (reachable, code, text) => {
    const { submerged, findings } = reportOf(text);
    const { reachable: said, ...figures } = submerged;
    expect(said).toBe(reachable);
    expect(new Set(Object.values(figures))).toEqual(new Set([null]));
    expect(findings.map(finding => finding.code)).toContain(code);
  });
});

describe('findings and corrections in it', () => {
  const report = reportOf(probe(['150 to 250', '160 to 260']));
  it('a finding has its path, and its range counted from 0', () => {
    const line = PROBE.split('\n').findIndex(text => text.includes('waterline'));
    expect(report.findings.find(({ code }) => code === 'surfaced-trim')).toEqual({
      code: 'surfaced-trim',
      severity: 'warning',
      message: 'Surfaced, the bow rides 3 mm high: trim 0.9° bow up, limit 0.5°.',
      path: ['hull', 'waterline'],
      range: { start: { line, character: 2 }, end: { line, character: 11 } },
    });
  });
  it('a correction has its entries and what they bring', () => {
    const correction = report.corrections.find(({ kind }) => kind === 'insert');
    expect(correction?.entries[0]).toMatchObject({ material: 'lead', in: 'hold', fixed: 'false' });
    expect(Math.abs(Number(correction!.result.surfaced.trim))).toBeLessThan(0.5);
    const { byFile, ...figures } = report.submerged;
    expect(byFile).toBe(null);
    expect(Object.keys(correction!.result.submerged)).toEqual(Object.keys(figures));
  });
});
