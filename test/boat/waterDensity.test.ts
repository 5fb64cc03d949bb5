import { describe, expect, it } from 'vitest';
import { eos80, freshWaterDensity, seawaterDensity, WATER_RANGE } from '../../server/core/boat/waterDensity.ts';

// UNESCO Technical Papers in Marine Science 44 (1983, Fofonoff & Millard); Millero & Poisson (1981), Table 1.
// Tolerance: the last printed digit.
describe('EOS-80 at one atmosphere, temperatures on IPTS-68', () => {
  it.each([
    { t68: 5, salinity: 0, density: 999.96675, known: 'seen' },
    { t68: 25, salinity: 0, density: 997.04796, known: 'seen' },
    { t68: 5, salinity: 35, density: 1027.67547, known: 'seen' },
    { t68: 25, salinity: 35, density: 1023.34306, known: 'seen' },
    { t68: 5, salinity: 5, density: 1003.94935, known: 'derived from the polynomial' },
    { t68: 25, salinity: 5, density: 1000.80925, known: 'derived from the polynomial' },
  ])('$t68 °C, $salinity g/kg: $density kg/m3 ($known)', ({ t68, salinity, density }) => {
    expect(Math.abs(eos80(t68, salinity) - density)).toBeLessThanOrEqual(0.00001);
  });

  it('is 999.842594 kg/m3 for pure water at 0 °C, the leading coefficient (seen)', () => {
    expect(eos80(0, 0)).toBe(999.842594);
  });

  // The polynomial at T68 = 1.00024 T90 (derived); without the change of scale 15 °C is off by 0.0008 kg/m3.
  it.each([
    { t90: 15, density: 1025.97196 },
    { t90: 20, density: 1024.76174 },
  ])('takes today’s thermometers: $t90 °C at 35 g/kg is $density kg/m3', ({ t90, density }) => {
    expect(Math.abs(seawaterDensity(t90, 35)! - density)).toBeLessThanOrEqual(0.00001);
    expect(Math.abs(eos80(t90, 35) - density)).toBeGreaterThan(0.0005);
  });
});

// ITTC Recommended Procedure 7.5-02-01-03 Rev 02 (2011), Table 1, IAPWS (seen). Between formulations ±0.005 kg/m3.
describe('fresh water against the ITTC table', () => {
  it.each([
    [10, 999.7025],
    [15, 999.1026],
    [20, 998.2072],
    [25, 997.0476],
    [30, 995.6495],
    [40, 992.2164],
  ])('%d °C: %d kg/m3', (celsius, density) => {
    expect(Math.abs(freshWaterDensity(celsius)! - density)).toBeLessThanOrEqual(0.005);
  });
});

// ITTC 7.5-02-01-03 Rev 02 (2011), Table 3, TEOS-10 at 35.16504 g/kg absolute = 35 practical (seen). EOS-80 lies
// 0.043 to 0.049 kg/m3 lower; the cross-check band is ±0.08.
describe('standard seawater against the ITTC table', () => {
  it.each([
    [1, 1028.0941],
    [5, 1027.7225],
    [10, 1027.0],
    [15, 1026.021],
    [20, 1024.8103],
    [25, 1023.3873],
    [30, 1021.7694],
  ])('%d °C: %d kg/m3', (celsius, density) => {
    const lower = density - seawaterDensity(celsius, 35)!;
    expect(lower).toBeGreaterThan(0.04);
    expect(lower).toBeLessThan(0.055);
  });

  // Table 4 (seen), absolute salinity S_A; practical = S_A · 35/35.16504; ±0.10 against EOS-80.
  it.each([
    [10, 1006.795],
    [20, 1014.4192],
    [30, 1022.0628],
    [35, 1025.8944],
    [40, 1029.7328],
  ])('15 °C, %d g/kg absolute: %d kg/m3', (absolute, density) => {
    const practical = (absolute * 35) / 35.16504;
    expect(Math.abs(seawaterDensity(15, practical)! - density)).toBeLessThanOrEqual(0.1);
  });

  // Same tables (seen): salt over fresh. Each density may be off by the bands above, so ±0.0001.
  it.each([
    [15, 1.026942],
    [20, 1.026651],
  ])('%d °C: salt over fresh is %d', (celsius, ratio) => {
    expect(Math.abs(seawaterDensity(celsius, 35)! / freshWaterDensity(celsius)! - ratio)).toBeLessThan(0.0001);
  });
});

/** Tanaka, Girard, Davis, Peuto & Bignell, Metrologia 38 (2001) 301-309; air-free SMOW, t on ITS-90. */
const tanaka = (t: number): number =>
  999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)));

/** Kell, J. Chem. Eng. Data 20 (1975) 97-105; air-free water, t on IPTS-68; denominator 16.879850e-3 (memory). */
const kell = (t: number): number =>
  (999.83952 +
    16.945176 * t -
    7.9870401e-3 * t ** 2 -
    46.170461e-6 * t ** 3 +
    105.56302e-9 * t ** 4 -
    280.54253e-12 * t ** 5) /
  (1 + 16.87985e-3 * t);

describe('two other formulations of pure water', () => {
  // Published figures that show the two formulas above are copied right; ±0.0001 kg/m3 (rounding).
  it.each([
    [0, 999.8428, 'seen'],
    [4, 999.9749, 'derived'],
    [10, 999.7027, 'seen'],
    [15, 999.1026, 'seen'],
    [20, 998.2067, 'seen'],
    [25, 997.047, 'derived'],
    [30, 995.6488, 'seen'],
  ])('Tanaka at %d °C: %d kg/m3 (%s)', (celsius, density) => {
    expect(Math.abs(tanaka(celsius) - density)).toBeLessThanOrEqual(0.0001);
  });

  it.each([
    [0, 999.8395],
    [4, 999.972],
    [10, 999.6996],
    [15, 999.0996],
    [20, 998.2041],
    [25, 997.0449],
    [30, 995.6473],
  ])('Kell at %d °C: %d kg/m3 (derived)', (celsius, density) => {
    expect(Math.abs(kell(celsius) - density)).toBeLessThanOrEqual(0.0001);
  });

  it('agree with ours to 0.005 kg/m3 from 0 to 40 °C', () => {
    for (let celsius = 0; celsius <= 40; celsius += 0.5) {
      const ours = freshWaterDensity(celsius)!;
      expect(Math.abs(ours - tanaka(celsius))).toBeLessThan(0.005);
      expect(Math.abs(ours - kell(1.00024 * celsius))).toBeLessThan(0.005);
    }
  });

  // Tanaka (seen): 999.97495 kg/m3 at 3.983 °C.
  it('has its greatest density near 4 °C', () => {
    const steps = Array.from({ length: 2001 }, (_, i) => 3 + i / 1000);
    const densest = steps.reduce((a, b) => (freshWaterDensity(b)! > freshWaterDensity(a)! ? b : a));
    expect(Math.abs(densest - 3.983)).toBeLessThan(0.02);
    expect(Math.abs(freshWaterDensity(densest)! - 999.97495)).toBeLessThan(0.005);
  });
});

describe('what the equation is not made for', () => {
  it('gives null outside its range and a figure on its ends', () => {
    const [coldest, warmest] = WATER_RANGE.temperature;
    const saltiest = WATER_RANGE.salinity[1];
    expect(seawaterDensity(coldest, saltiest)).toBeGreaterThan(1030);
    expect(seawaterDensity(warmest, 0)).toBeLessThan(993);
    for (const [celsius, salinity] of [
      [-0.1, 0],
      [40.1, 0],
      [20, -0.1],
      [20, 42.1],
      [Number.NaN, 0],
      [20, Number.NaN],
    ] as const) {
      expect(seawaterDensity(celsius, salinity)).toBeNull();
    }
    expect(freshWaterDensity(-1)).toBeNull();
  });
});
