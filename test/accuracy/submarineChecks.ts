import { DEFAULT_UNITS } from '../../schema/boatFile.ts';
import { readQuantity } from '../../schema/quantity.ts';
import type { Dimension } from '../../schema/units.ts';
import { loadTank } from '../../server/core/bodies/tankWater.ts';
import { floatSubmerged } from '../../server/core/conditions/submerged.ts';
import { ATMOSPHERE, gaugePressure } from '../../server/core/conditions/tankSizing.ts';
import { solidOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import { barge, bodiesOf, type Plain } from '../helpers/bodies.ts';
import { alike, type Section } from './check.ts';
import { afloat, DEGREE, neutral, shipOfKm } from './ships.ts';

const fleet = alike({ source: 'Fleet Type Submarine', known: 'seen', unit: 'lb', within: { absolute: 0.05 } });
const derived = alike({ source: 'closed form', known: 'derived', unit: 'g', within: { absolute: 0.001 } });
const boyle = alike({ source: 'Boyle', known: 'derived', unit: 'kPa', within: { relative: 1e-9 } });
const incline = alike({ source: 'ASTM F1321', known: 'derived', unit: '', within: { absolute: 1e-9 } });

const si = (text: string, dimension: Dimension): number => {
  const result = readQuantity(text, dimension, DEFAULT_UNITS);
  return result.ok ? result.value.value : Number.NaN;
};
const POUND = si('1 lb', 'mass');

const sphere: Form = { shape: 'ball', centre: [0, 0, 0.2], radius: si('10 in', 'length') / 2 };
const freshNaval = si('62.4 lb/ft3', 'density');

/** What a sphere of so many pounds weighs under water, in pounds. */
const heavyBy = (pounds: number): number => {
  const submerged = floatSubmerged(
    bodiesOf({ density: freshNaval, solids: [sphere], masses: [[pounds * POUND, [0, 0, 0.2]]] }),
  );
  return submerged.status === 'heavy' ? submerged.excess / POUND : Number.NaN;
};

/** 5 kg of boat, neutral with empty tanks in water of `density`, with BG and a weight moved aft. */
const hanging = (density: number, capacity: number): Plain => ({
  density,
  solids: [barge(0.5, 0.1, 5 / 998.2072 / 0.05)],
  masses: [[5 * (1 - 1e-15), [0.25, 0, 0.02]]],
  tanks: [{ form: barge(0.2, 0.05, capacity / 0.01, 0.15), kind: 'bladder' }],
});
/** Ballast that a boat of 5 kg, neutral in one water, takes in another, g; with its own water as the heavier one. */
const ballastIn = (first: number, second: number) => (): number => {
  const volume = 5 / first;
  const plain = hanging(second, 0.001);
  return neutral({ ...plain, solids: [barge(0.5, 0.1, volume / 0.05)] }).ballast * 1e3;
};

const depth = 5 / 998.2072 / 0.05;
const pitched: Plain = {
  density: 998.2072,
  solids: [barge(0.5, 0.1, depth)],
  masses: [
    [4.99, [0.25, 0, depth / 2 - 0.008]],
    [0.01, [0.45, 0, depth / 2 - 0.008]],
  ],
};

/** The corners of what three trim tanks can give: mass and moment about amidships with each empty or full. */
function trimPolygon(): {
  readonly corners: number;
  readonly area: number;
  readonly centre: readonly [number, number];
} {
  const density = 1000;
  const tanks = [
    [0.2, 0.4],
    [0.3, 0.02],
    [0.2, -0.4],
  ] as const;
  const bodies = bodiesOf({
    density,
    solids: [barge(2, 0.5, 0.5, -1)],
    masses: [],
    tanks: tanks.map(([mass, at]) => ({
      form: boxForm([at - 0.05, -0.05, 0], [at + 0.05, 0.05, mass / density / 0.01]),
      kind: 'bladder' as const,
    })),
  });
  const loads = Array.from({ length: 8 }, (_, i) => {
    const parts = bodies.tanks.map((tank, j) => loadTank(tank, (i >> j) & 1));
    const mass = density * parts.reduce((sum, load) => sum + load.stillVolume, 0);
    return [mass, density * parts.reduce((sum, load) => sum + load.stillMoment[0], 0)] as const;
  });
  const hull = outline(loads);
  const area = hull.reduce((sum, [x, y], i) => {
    const [x2, y2] = hull[(i + 1) % hull.length]!;
    return sum + (x * y2 - x2 * y) / 2;
  }, 0);
  const centre = [0, 1].map(k => loads.reduce((sum, load) => sum + load[k]!, 0) / 8) as [number, number];
  return { corners: hull.length, area, centre };
}

/** Convex hull, counter-clockwise (Andrew's monotone chain, Inf. Proc. Letters 9 (1979), from memory). */
function outline(points: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (all: readonly (readonly [number, number])[]): (readonly [number, number])[] => {
    const kept: (readonly [number, number])[] = [];
    for (const p of all) {
      while (kept.length > 1 && turn(kept.at(-2)!, kept.at(-1)!, p) <= 1e-12) kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

type Point = readonly [number, number];
const turn = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** A tank outside the hull as main ballast: reserve buoyancy over displacement is its volume over that displaced. */
const ballasted: Plain = {
  density: 1000,
  solids: [barge(1, 0.1, 0.1)],
  masses: [[8, [0.5, 0, 0.02]]],
};

/** Tangent of the heel of a ship of so much GM with a weight moved across it. */
const inclined = (mass: number, gm: number, weight: number, moved: number): number => {
  const ship = shipOfKm(2 * gm + 0.1, 1000, [
    [mass - weight, gm + 0.1],
    [weight, gm + 0.1, moved],
  ]);
  return Math.tan(afloat(ship, ship.length).attitude.heel);
};

export const submarineSections: readonly Section[] = [
  {
    title: 'Submerged balance',
    checks: [
      fleet('10-inch sphere in 62.4 lb/ft3: buoyancy', 18.9, () => (solidOf(sphere).volume * freshNaval) / POUND),
      fleet('of aluminium, 48 lb: weight in water', 29.1, () => heavyBy(48)),
      fleet('of cast iron, 136 lb: weight in water', 117.1, () => heavyBy(136)),
      fleet('density that 48 lb implies', 2537.5, () => (48 * POUND) / solidOf(sphere).volume, {
        known: 'derived',
        unit: 'kg/m³',
        within: { absolute: 0.05 },
      }),
      fleet('density that 136 lb implies', 7189.6, () => (136 * POUND) / solidOf(sphere).volume, {
        known: 'derived',
        unit: 'kg/m³',
        within: { absolute: 0.05 },
      }),
      derived('5 kg, BG 8 mm, 10 g moved 200 mm aft: trim', 2.862405, () => neutral(pitched).trim / DEGREE, {
        source: 'tan = w d/(Δ BG)',
        unit: '°',
        within: { absolute: 1e-6 },
      }),
      derived('its BG', 8, () => neutral({ ...pitched, masses: [[5, [0.25, 0, depth / 2 - 0.008]]] }).bg * 1e3, {
        unit: 'mm',
        within: { absolute: 1e-9 },
      }),
      derived('5 kg from fresh to salt water, 20 °C: ballast', 133.254, ballastIn(998.2072, 1024.8103), {
        source: 'ITTC',
      }),
      derived('5 kg from fresh to salt water, 15 °C: ballast', 134.713, ballastIn(999.1026, 1026.021), {
        source: 'ITTC',
      }),
      derived('5 kg from fresh water of 25 °C to 10 °C: ballast', 13.314, ballastIn(997.0476, 999.7025), {
        source: 'ITTC',
      }),
      derived('trim polygon of three tanks: corners', 6, () => trimPolygon().corners, {
        source: 'Burcher & Rydill',
        unit: '',
        within: { absolute: 0 },
      }),
      derived('its area', 0.08, () => trimPolygon().area, {
        source: 'Burcher & Rydill',
        unit: 'kg² m',
        within: { absolute: 1e-12 },
      }),
      derived('its centre: mass', 0.35, () => trimPolygon().centre[0], {
        source: 'Burcher & Rydill',
        unit: 'kg',
        within: { absolute: 1e-12 },
      }),
      derived('its centre: moment', 0.003, () => trimPolygon().centre[1], {
        source: 'Burcher & Rydill',
        unit: 'kg m',
        within: { absolute: 1e-12 },
      }),
      derived(
        '8 kg boat with a quarter in reserve',
        0.25,
        () => {
          const { reserveBuoyancy, displacement } = afloat(ballasted, 1);
          return reserveBuoyancy / displacement;
        },
        { source: 'Submarine design notes', unit: '', within: { absolute: 1e-12 } },
      ),
    ],
  },
  {
    title: 'Sealed tanks',
    checks: [
      ...(
        [
          [0.25, 33.775],
          [0.5, 101.325],
          [2 / 3, 202.65],
          [0.75, 303.975],
          [0.9, 911.925],
        ] as const
      ).map(([fill, pressure]) =>
        boyle(`${(fill * 100).toFixed(0)} % full: gauge pressure`, pressure, () => gaugePressure(fill) / 1e3),
      ),
      boyle(
        'his own air from 48 to 24 parts: pressure ratio',
        58.8125 / 29.125,
        () => gaugePressure(0.5) / ATMOSPHERE + 1,
        {
          known: 'from memory',
          unit: '',
          within: { relative: 0.01 },
        },
      ),
      boyle('his own air from 48 to 12 parts', 117.5625 / 29.125, () => gaugePressure(0.75) / ATMOSPHERE + 1, {
        known: 'from memory',
        unit: '',
        within: { relative: 0.01 },
      }),
    ],
  },
  {
    title: 'Inclining',
    checks: [
      incline(
        '8000 t of GM 0.42672 m, 3 t moved 12 m: 5.5 m pendulum',
        58,
        () => inclined(8000e3, 0.42672, 3e3, 12) * 5500,
        {
          source: 'India MMD',
          known: 'seen',
          unit: 'mm',
          within: { absolute: 0.05 },
        },
      ),
      incline(
        '6.2 kg of GM 18.470779 mm, 50 g moved 100 mm: heel',
        2.5,
        () => Math.atan(inclined(6.2, 18.470779e-3, 0.05, 0.1)) / DEGREE,
        { unit: '°', within: { absolute: 1e-6 } },
      ),
      incline('6.2 kg of GM 18.5 mm, 5 g m: tangent', 0.0435919791, () => inclined(6.2, 0.0185, 0.05, 0.1)),
      incline('the same to port', -0.0435919791, () => inclined(6.2, 0.0185, 0.05, -0.1)),
      incline('10 g m: tangent', 0.0871839582, () => inclined(6.2, 0.0185, 0.1, 0.1)),
    ],
  },
];
