import { settle } from '../../server/core/bodies/tankWater.ts';
import { UPRIGHT } from '../../server/core/conditions/attitude.ts';
import { solidOf } from '../../server/core/geometry/cut/solids.ts';
import { cylinder } from '../geometry/helpers/forms.ts';
import { barge, type Plain } from '../helpers/bodies.ts';
import { alike, type Section } from './check.ts';
import { type Aboard, afloat, shipOfKm } from './ships.ts';

const derived = alike({ source: 'Derrett ch. 20, i/V', known: 'derived', unit: 'mm', within: { relative: 1e-6 } });
const seen = alike({ source: 'Derrett ch. 20, i/V', known: 'seen', unit: 'm', within: { absolute: 1e-4 } });

/** A rectangular tank across a ship amidships, from the keel up. */
interface BoxTank {
  readonly length: number;
  readonly breadth: number;
  readonly depth: number;
  readonly fill: number;
}

/** A ship of fixed KM with its tanks' water counted apart: `aboard` is everything else. */
function withTanks(km: number, density: number, aboard: Aboard, tanks: readonly BoxTank[]): Plain & { length: number } {
  const waters: Aboard = tanks.map(tank => [
    density * tank.fill * tank.length * tank.breadth * tank.depth,
    (tank.fill * tank.depth) / 2,
  ]);
  const { solids, length } = shipOfKm(km, density, [...aboard, ...waters]);
  return {
    density,
    length,
    solids,
    masses: aboard.map(([mass, height]) => [mass, [length / 2, 0, height]] as const),
    tanks: tanks.map(({ length: l, breadth, depth, fill }) => ({
      form: barge(l, breadth, depth, (length - l) / 2),
      fill,
    })),
  };
}

const MODEL_WATER = 998.2072;
const model = (cells: number): Plain => ({
  density: MODEL_WATER,
  solids: [barge(0.5, 0.2, 0.2)],
  masses: [[5 - MODEL_WATER * 0.2 * 0.1 * 0.015, [0.25, 0, 0.02]]],
  tanks: [{ form: barge(0.2, 0.1, 0.03, 0.15), fill: 0.5, cells }],
});
const lossAlong = (cells: number): number => afloat(model(cells), 0.5).freeSurfaceLossLongitudinal;

// Derrett p. 195, Example 1: full tank of salt water pumped out to half, 8153.75 t with it, KM 8, KG 7.5 m.
const pumped = withTanks(
  8,
  1.025,
  [
    [8153.75, 7.5],
    [-307.5, 1],
  ],
  [{ length: 15, breadth: 10, depth: 2, fill: 0.5 }],
);
// Solid GM 1.02 m, free-surface moment 1250 t m: a tank of l b³/12 = 1250, all but empty so that its water weighs nothing.
const wide = withTanks(6, 1, [[7600, 4.98]], [{ length: 15, breadth: 10, depth: 1, fill: 1e-6 }]);
// 40 t hung from a derrick head at 15 m, tank of 1200 m4.
const derrick = withTanks(
  6.5,
  1,
  [
    [8000 - 40, (8000 * 5.7 - 40 * 3) / 7960],
    [40, 15],
  ],
  [{ length: 14.4, breadth: 10, depth: 1, fill: 1e-6 }],
);
// Feet and tons of 35 ft3; palm oil of 0.86 in sea water of 1.025: the tanks shortened in that ratio, as ours hold the sea.
const OIL_TANK: BoxTank = { length: (40 * 0.86) / 1.025, breadth: 30, depth: 1, fill: 1e-6 };
const oil = withTanks(20, 1 / 35, [[9000, 15]], [OIL_TANK, OIL_TANK]);

const lying = settle({ space: solidOf(cylinder(0.05, 0.4)), volume: 447.295218e-6 }, UPRIGHT);
const standing = settle({ space: solidOf(cylinder(0.05, 0.4, [0, 0, 0], [0, 0, 1])), volume: 1e-3 }, UPRIGHT);

export const tankSections: readonly Section[] = [
  {
    title: 'Free surface',
    about: 'The program does not use i/V: the water in its tanks lies level as the boat tilts. The examples do.',
    checks: [
      derived(
        'tank 0.2 x 0.1 m in a 5 kg model: loss of GM',
        3.327357,
        () => afloat(model(1), 0.5).freeSurfaceLoss * 1e3,
      ),
      ...[2, 3, 4].map(cells =>
        derived(
          `${cells} cells fore and aft: share of the loss in trim`,
          1 / cells ** 2,
          () => lossAlong(cells) / lossAlong(1),
          {
            known: 'seen',
            unit: '',
            within: { relative: 1e-9 },
          },
        ),
      ),
      seen('1250 t m of free surface in 7600 t: loss', 0.16447, () => afloat(wide, wide.length).freeSurfaceLoss, {
        source: 'Singapore Maritime Academy, Q1',
        within: { absolute: 0.00001 },
      }),
      seen('its fluid GM', 0.856, () => afloat(wide, wide.length).gm, {
        source: 'Singapore Maritime Academy, Q1',
        within: { absolute: 0.0005 },
      }),
      seen('weight on a derrick and a slack tank: GM', 0.59, () => afloat(derrick, derrick.length).gm, {
        source: 'Singapore Maritime Academy, Q3',
        within: { absolute: 0.001 },
      }),
      seen('two slack oil tanks in 9000 tons: loss', 0.48, () => afloat(oil, oil.length).freeSurfaceLoss, {
        source: 'USCG',
        unit: 'ft',
        within: { absolute: 0.005 },
      }),
      seen('the same unrounded', 0.47944, () => afloat(oil, oil.length).freeSurfaceLoss, {
        source: 'USCG',
        unit: 'ft',
        within: { absolute: 0.00001 },
      }),
      seen(
        'double-bottom tank pumped to half: rise of G',
        0.115313,
        () => afloat(pumped, pumped.length).centreOfMass[2] - 7.5,
        {
          source: 'Derrett p. 195, Ex. 1',
          known: 'derived',
          within: { absolute: 1e-6 },
        },
      ),
      seen('its free-surface loss', 0.160156, () => afloat(pumped, pumped.length).freeSurfaceLoss, {
        source: 'Derrett p. 195, Ex. 1',
        known: 'derived',
        within: { absolute: 1e-6 },
      }),
      seen('its GM', 0.224531, () => afloat(pumped, pumped.length).gm, {
        source: 'Derrett p. 195, Ex. 1',
        known: 'derived',
        within: { absolute: 1e-6 },
      }),
      derived('lying cylinder 50 x 400 mm, 20 mm deep: i', 1.7066667e-5, () => lying.yy - lying.ay ** 2 / lying.area, {
        source: 'segment, c³/12A',
        unit: 'm⁴',
        within: { absolute: 1e-12 },
      }),
      derived('the same as volume x depth of its centroid', 1.7066667e-5, () => -lying.mz, {
        source: 'segment, c³/12A',
        unit: 'm⁴',
        within: { absolute: 1e-12 },
      }),
      derived('standing cylinder r 50 mm: i', 4.9087385e-6, () => standing.yy, {
        source: 'CRC',
        known: 'from memory',
        unit: 'm⁴',
        within: { absolute: 1e-12 },
      }),
    ],
  },
];
