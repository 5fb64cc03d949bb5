import { eos80, freshWaterDensity, seawaterDensity } from '../../server/core/boat/waterDensity.ts';
import { alike, type Section } from './check.ts';

const unit = 'kg/m³';

const printed = alike({
  source: 'UNESCO 44; Millero & Poisson, Table 1',
  known: 'seen',
  unit,
  within: { absolute: 0.00001 },
});
const fresh = alike({ source: 'ITTC, Table 1 (IAPWS)', known: 'seen', unit, within: { absolute: 0.005 } });
const sea = alike({ source: 'ITTC, Table 3 (TEOS-10)', known: 'seen', unit, within: { absolute: 0.05 } });
const brackish = alike({ source: 'ITTC, Table 4 (TEOS-10)', known: 'seen', unit, within: { absolute: 0.1 } });
const tanaka = alike({ source: 'Tanaka', known: 'seen', unit, within: { absolute: 0.004 } });
const kell = alike({ source: 'Kell', known: 'derived', unit, within: { absolute: 0.006 } });

/** Temperatures in °C. Practical salinity of standard seawater is 35 at 35.16504 g/kg absolute (TEOS-10). */
const practical = (absolute: number): number => (absolute * 35) / 35.16504;
const ofFresh = (celsius: number) => () => freshWaterDensity(celsius) ?? Number.NaN;
const ofSea = (celsius: number, salinity: number) => () => seawaterDensity(celsius, salinity) ?? Number.NaN;

const FRESH_TABLE = [
  [10, 999.7025],
  [15, 999.1026],
  [20, 998.2072],
  [25, 997.0476],
  [30, 995.6495],
  [40, 992.2164],
] as const;

const SEA_TABLE = [
  [1, 1028.0941],
  [5, 1027.7225],
  [10, 1027.0],
  [15, 1026.021],
  [20, 1024.8103],
  [25, 1023.3873],
  [30, 1021.7694],
] as const;

const SALINITY_TABLE = [
  [10, 1006.795],
  [20, 1014.4192],
  [30, 1022.0628],
  [35, 1025.8944],
  [40, 1029.7328],
] as const;

const TANAKA_VALUES = [
  [0, 999.8428, 'seen'],
  [4, 999.9749, 'derived'],
  [10, 999.7027, 'seen'],
  [15, 999.1026, 'seen'],
  [20, 998.2067, 'seen'],
  [25, 997.047, 'derived'],
  [30, 995.6488, 'seen'],
] as const;

const KELL_VALUES = [
  [0, 999.8395],
  [4, 999.972],
  [10, 999.6996],
  [15, 999.0996],
  [20, 998.2041],
  [25, 997.0449],
  [30, 995.6473],
] as const;

/** Temperature of greatest density, °C, by golden section. */
function warmestDense(): number {
  let [low, high] = [3, 5];
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let i = 0; i < 60; i++) {
    const [left, right] = [high - golden * (high - low), low + golden * (high - low)];
    if (ofFresh(left)() > ofFresh(right)()) high = right;
    else low = left;
  }
  return (low + high) / 2;
}

export const waterSections: readonly Section[] = [
  {
    title: 'Water: the equation of state against its own check values',
    about: 'EOS-80 at one atmosphere; temperatures on IPTS-68 except where ITS-90 is said.',
    checks: [
      printed('fresh, 5 °C', 999.96675, () => eos80(5, 0)),
      printed('fresh, 25 °C', 997.04796, () => eos80(25, 0)),
      printed('35 g/kg, 5 °C', 1027.67547, () => eos80(5, 35)),
      printed('35 g/kg, 25 °C', 1023.34306, () => eos80(25, 35)),
      printed('5 g/kg, 5 °C', 1003.94935, () => eos80(5, 5), { known: 'derived' }),
      printed('5 g/kg, 25 °C', 1000.80925, () => eos80(25, 5), { known: 'derived' }),
      printed('fresh, 0 °C: the leading term', 999.842594, () => eos80(0, 0), { within: { relative: 1e-15 } }),
      printed('35 g/kg, 15 °C on ITS-90', 1025.97196, ofSea(15, 35), { known: 'derived' }),
      printed('35 g/kg, 20 °C on ITS-90', 1024.76174, ofSea(20, 35), { known: 'derived' }),
    ],
  },
  {
    title: 'Water: against the towing tanks’ tables',
    about: 'Between formulations: fresh ±0.005, standard seawater 0.043 to 0.049 kg/m³ apart, other salinities ±0.10.',
    checks: [
      ...FRESH_TABLE.map(([celsius, density]) => fresh(`fresh, ${celsius} °C`, density, ofFresh(celsius))),
      ...SEA_TABLE.map(([celsius, density]) => sea(`standard seawater, ${celsius} °C`, density, ofSea(celsius, 35))),
      ...SALINITY_TABLE.map(([absolute, density]) =>
        brackish(`${absolute} g/kg absolute, 15 °C`, density, ofSea(15, practical(absolute))),
      ),
      ...([15, 20] as const).map((celsius, i) =>
        sea(
          `salt over fresh, ${celsius} °C`,
          [1.026942, 1.026651][i]!,
          () => ofSea(celsius, 35)() / ofFresh(celsius)(),
          {
            unit: '',
            within: { absolute: 0.0001 },
          },
        ),
      ),
    ],
  },
  {
    title: 'Water: against two other formulas for pure water',
    about: 'Their isotopic bases differ, by up to 0.003 kg/m³, and Kell’s temperatures are on IPTS-68.',
    checks: [
      ...TANAKA_VALUES.map(([celsius, density, known]) =>
        tanaka(`pure, ${celsius} °C`, density, ofFresh(celsius), { known }),
      ),
      ...KELL_VALUES.map(([celsius, density]) =>
        kell(`pure, ${celsius} °C on IPTS-68`, density, () => eos80(celsius, 0)),
      ),
      tanaka('temperature of greatest density', 3.983, warmestDense, { unit: '°C', within: { absolute: 0.01 } }),
      tanaka('greatest density', 999.97495, () => freshWaterDensity(warmestDense()) ?? Number.NaN),
    ],
  },
];
