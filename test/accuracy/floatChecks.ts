import type { Form } from '../../server/core/geometry/form/form.ts';
import { revolved } from '../geometry/helpers/forms.ts';
import { barge, type Plain } from '../helpers/bodies.ts';
import { alike, type Section } from './check.ts';
import { afloat, DEGREE, gmHeld, rootOf, shipOfKm, slotAt } from './ships.ts';

const FOOT = 0.3048;

const derrett = alike({ source: 'Derrett', known: 'seen', unit: 'm', within: { relative: 1e-9 } });
const gilbert = alike({ source: 'Gilbert', known: 'derived', unit: '°', within: { absolute: 1e-6 } });
const limit = alike({ source: 'Gilbert', known: 'from memory', unit: '', within: { relative: 1e-8 } });

// Derrett p. 130, Example 2: box vessel of 65 x 12 x 8 m, draft 4 m, KG 4 m, in tonnes and metres.
const vessel: Plain = { density: 1.025, solids: [barge(65, 12, 8)], masses: [[3198, [32.5, 0, 4]]] };
// Derrett p. 130, Example 1: 6000 t, KB 3, KM 6, KG 5.5 m; a box of draft 6 m and BM 3 m has them.
const breadth = Math.sqrt(12 * 6 * 3);
const boxShip = ((): Plain => {
  const length = 6000 / (1.025 * breadth * 6);
  return { density: 1.025, solids: [barge(length, breadth, 14)], masses: [[6000, [length / 2, 0, 5.5]]] };
})();
// Derrett pp. 116-117: what is aboard after loading and discharging, KM 8.70 m.
const loaded = shipOfKm(8.7, 1.025, [
  [8000, 7.6],
  [250, 6.1, 7.6],
  [300, 0.6, -6.1],
  // 50 t taken from 4.6 m to port.
  [-50, 1.2, -4.6],
]);
// Box of B 10, T 4, KG 4.2 m.
const tender: Plain = { density: 1, solids: [barge(40, 10, 12)], masses: [[40 * 10 * 4, [20, 0, 4.2]]] };
const small: Plain = {
  density: 1000,
  solids: [barge(0.5, 0.2, 0.2)],
  masses: [
    [7.9, [0.25, 0, 0.07]],
    [0.1, [0.25, 0.05, 0.07]],
  ],
};

/** Draft of a wall-sided box in inches, for 24 ft 5 in in water of 1025. */
const draftIn = (density: number): number => {
  const draft = (24 + 5 / 12) * FOOT;
  const plain: Plain = { density, solids: [barge(120, 18, 16)], masses: [[1025 * 120 * 18 * draft, [60, 0, 3]]] };
  return afloat(plain, 120).attitude.draft / FOOT;
};

/** A long homogeneous log of square section, side 1, `s` times as dense as the water. */
const log = (s: number): Plain => ({ density: 1, solids: [barge(10, 1, 1)], masses: [[10 * s, [5, 0, 0.5]]] });

/** Its tilt; by symmetry 90° less the angle is the same position. */
const tilt = (s: number) => (): number => {
  const angle = Math.abs(afloat(log(s), 10).attitude.heel) / DEGREE;
  return Math.min(angle, Math.abs(90 - angle));
};

/** Homogeneous body of revolution on end, from the origin up. */
const upended = (profile: readonly (readonly [number, number])[], s: number): Plain => {
  const form: Form = revolved(profile, [0, 0, 0], [0, 0, 1]);
  const solid = homogeneous(profile);
  return { density: 1, solids: [form], masses: [[s * solid.volume, [0, 0, solid.centroid]]] };
};

/** Volume and centroid of frusta, by Simpson's rule, which is exact for them. */
function homogeneous(profile: readonly (readonly [number, number])[]): { volume: number; centroid: number } {
  let [volume, moment] = [0, 0];
  profile.slice(1).forEach(([s1, r1], i) => {
    const [s0, r0] = profile[i]!;
    const areas = [r0, (r0 + r1) / 2, r1].map(r => Math.PI * r ** 2);
    const depth = (s1 - s0) / 6;
    volume += depth * (areas[0]! + 4 * areas[1]! + areas[2]!);
    moment += depth * (areas[0]! * s0 + 2 * areas[1]! * (s0 + s1) + areas[2]! * s1);
  });
  return { volume, centroid: moment / volume };
}

const cylinderOnEnd = (diameter: number): Plain =>
  upended(
    [
      [0, diameter / 2],
      [1, diameter / 2],
    ],
    0.5,
  );
const coneOnTip = (s: number): Plain =>
  upended(
    [
      [0, 0],
      [1, Math.tan(30 * DEGREE)],
    ],
    s,
  );
/** r² = z up to z = 1.5, in stretches even in r. */
const paraboloidOnTip = (s: number): Plain =>
  upended(
    Array.from({ length: 1001 }, (_, i) => [1.5 * (i / 1000) ** 2, Math.sqrt(1.5) * (i / 1000)] as const),
    s,
  );

export const floatSections: readonly Section[] = [
  {
    title: 'Floating: worked examples',
    about:
      'Ships whose metacentre the examples hold fixed are round bars about an axis at KM, half under water; the others are boxes.',
    checks: [
      derrett('box vessel 65 x 12 x 8 m: draft', 4, () => afloat(vessel, 65).attitude.draft, {
        source: 'Derrett p. 130, Ex. 2',
      }),
      derrett('its KB', 2, () => afloat(vessel, 65).centreOfBuoyancy[2], { source: 'Derrett p. 130, Ex. 2' }),
      derrett('its GM', 1, () => afloat(vessel, 65).gm, { source: 'Derrett p. 130, Ex. 2' }),
      derrett(
        'its righting moment at 5°, as GM sin',
        278.9,
        () => 3198 * afloat(vessel, 65).gm * Math.sin(5 * DEGREE),
        {
          source: 'Derrett p. 130, Ex. 2(a)',
          unit: 't m',
          within: { absolute: 0.3 },
        },
      ),
      derrett('its lever at 25°', 0.560461, () => slotAt(vessel, 25 * DEGREE), {
        source: 'Derrett p. 130, Ex. 2(b)',
        known: 'derived',
        within: { absolute: 1e-6 },
      }),
      derrett('ship of 6000 t, KB 3, KM 6, KG 5.5 m: lever at 25°', 0.35, () => slotAt(boxShip, 25 * DEGREE), {
        source: 'Derrett p. 130, Ex. 1',
        within: { absolute: 0.005 },
      }),
      derrett('the same unrounded', 0.349152, () => slotAt(boxShip, 25 * DEGREE), {
        source: 'Derrett p. 130, Ex. 1',
        known: 'derived',
        within: { absolute: 1e-6 },
      }),
      derrett(
        'list after loading and discharging, 8500 t: KG',
        7.35,
        () => afloat(loaded, loaded.length).centreOfMass[2],
        {
          source: 'Derrett pp. 116-117',
          within: { absolute: 0.005 },
        },
      ),
      derrett('its GM', 1.35, () => 8.7 - afloat(loaded, loaded.length).centreOfMass[2], {
        source: 'Derrett pp. 116-117',
        within: { absolute: 0.005 },
      }),
      derrett('its list to starboard', 1.494, () => afloat(loaded, loaded.length).attitude.heel / DEGREE, {
        source: 'Derrett pp. 116-117',
        known: 'derived',
        unit: '°',
        within: { absolute: 0.02 },
      }),
      derrett(
        'angle of loll of a box, B 10, T 4, KG 4.2 m',
        18.503539,
        () => Math.abs(afloat(tender, 40).attitude.heel) / DEGREE,
        {
          source: 'Derrett p. 229, formula',
          known: 'derived',
          unit: '°',
          within: { absolute: 1e-6 },
        },
      ),
      derrett('its GM there', 0.246053, () => afloat(tender, 40).gm, {
        source: 'Derrett p. 229, formula',
        known: 'derived',
        within: { absolute: 1e-6 },
      }),
      derrett('its GM upright', -0.1166667, () => gmHeld(tender), {
        source: 'Derrett p. 229, formula',
        known: 'derived',
        within: { absolute: 1e-7 },
      }),
      derrett('small barge, 0.1 of 8 kg moved 50 mm: heel', 3.05104, () => afloat(small, 0.5).attitude.heel / DEGREE, {
        source: 'wall-sided formula',
        known: 'derived',
        unit: '°',
        within: { absolute: 1e-5 },
      }),
      derrett('24 ft 5 in in 1025, moved to 1005: draft', 24 + 10.8 / 12, () => draftIn(1005), {
        source: 'Nicholls p. 374',
        unit: 'ft',
        within: { absolute: 0.05 / 12 },
      }),
    ],
  },
  {
    title: 'Floating: homogeneous bodies',
    about:
      's is the body’s density over the water’s. Limits are where the metacentric height of the held body vanishes.',
    checks: [
      limit('square log: flat up to s', 0.2113248654, () => rootOf(s => gmHeld(log(s)), 0.15, 0.27)),
      limit('square log: flat again from s', 0.7886751346, () => rootOf(s => gmHeld(log(s)), 0.73, 0.85)),
      limit('square log: on edge (45°) from s', 9 / 32, () =>
        rootOf(s => gmHeld(log(s), [0, -Math.SQRT1_2, Math.SQRT1_2]), 0.26, 0.3),
      ),
      limit('square log: on edge up to s', 23 / 32, () =>
        rootOf(s => gmHeld(log(s), [0, -Math.SQRT1_2, Math.SQRT1_2]), 0.7, 0.74),
      ),
      gilbert('square log, s 0.23, three sides wet: tilt', 19.485619, tilt(0.23)),
      gilbert('square log, s 0.25, through a corner: tilt', 26.565051, tilt(0.25)),
      gilbert('square log, s 0.27, two sides wet: tilt', 33.690068, tilt(0.27)),
      gilbert('square log, s 0.73, the dual: tilt', 33.690068, tilt(0.73), { known: 'seen' }),
      gilbert('square log, s 0.28: tilt', 41.185925, tilt(0.28)),
      gilbert('square log, s 0.5: tilt', 45, tilt(0.5)),
      limit('cylinder on end, s 0.5: diameter over height', Math.SQRT2, () =>
        rootOf(d => gmHeld(cylinderOnEnd(d)), 1, 2),
      ),
      limit('cone on its tip, half angle 30°: s', 0.421875, () => rootOf(s => gmHeld(coneOnTip(s)), 0.3, 0.6), {
        source: 'cos⁶ of the half angle',
      }),
      limit(
        'paraboloid r² = z on its tip, height 1.5: s',
        0.25,
        () => rootOf(s => gmHeld(paraboloidOnTip(s)), 0.1, 0.5),
        {
          source: 'Archimedes',
          within: { relative: 1e-5 },
        },
      ),
      limit(
        'ball, s 0.25: depth over radius',
        1 - 2 * Math.cos(80 * DEGREE),
        () =>
          afloat(
            {
              density: 1,
              solids: [{ shape: 'ball', centre: [0, 0, 1], radius: 1 }],
              masses: [[Math.PI / 3, [0, 0, 0.5]]],
            },
            2e-9,
          ).attitude.draft,
        { source: 'closed form', known: 'derived' },
      ),
    ],
  },
];
