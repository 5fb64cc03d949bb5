import { addImmersed, type Cuttable, emptyImmersion } from '../../server/core/geometry/cut/immersion.ts';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import { dot, scale, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import type { Check, Section } from './check.ts';
import { type Below, type CutFrustum, solidBelow, wallBelow } from './quadrature.ts';

/*
 * Bodies cut by tilted planes. The expected figures of round bodies come from the quadrature of quadrature.ts, those of
 * balls, boxes and corners from closed forms.
 */

const DEGREE = Math.PI / 180;
/** Of the point that all the planes pass through, m. */
const ABOVE_AXIS = 0.012;
const TILTS = [5, 20, 45, 70, 80];

/** Up for a plane that rises towards the bow by `tilt` degrees. */
const upAt = (tilt: number): Vec3 => [Math.sin(tilt * DEGREE), 0, Math.cos(tilt * DEGREE)];

/** Amount below the plane, and how deep below it the centroid lies. */
function below(body: Cuttable, up: Vec3, level: number): { readonly amount: number; readonly depth: number } {
  const sums = emptyImmersion();
  addImmersed(body, up, level, sums);
  return { amount: sums.volume, depth: level - dot(up, [sums.mx, sums.my, sums.mz]) / sums.volume };
}

interface RoundBody {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly length: number;
}

const ROUND_BODIES: readonly RoundBody[] = [
  { name: 'cylinder', from: 0.038, to: 0.038, length: 0.48 },
  { name: 'frustum', from: 0.045, to: 0.02, length: 0.2 },
  { name: 'cone', from: 0.05, to: 0, length: 0.25 },
];

const formOf = ({ from, to, length }: RoundBody): Form => ({
  shape: 'revolved',
  origin: [0, 0, 0],
  axis: [1, 0, 0],
  profile: [
    [0, from],
    [length, to],
  ],
});

/** The plane passes `ABOVE_AXIS` over the axis at 0.4 of the length, so that it leaves by the ends or by the side as it tilts. */
function roundChecks(
  body: RoundBody,
  cuttable: Cuttable,
  reference: (cut: CutFrustum) => Below,
  words: { readonly amount: string; readonly unit: string; readonly per: number; readonly within: number },
): readonly Check[] {
  return TILTS.flatMap(tilt => {
    const up = upAt(tilt);
    const pivot = 0.4 * body.length;
    const level = up[0] * pivot + up[2] * ABOVE_AXIS;
    const rise = Math.tan(tilt * DEGREE);
    const expected = reference({ ...body, rise, level: rise * pivot + ABOVE_AXIS });
    const depth = level - (up[0] * expected.x + up[2] * expected.z) / expected.amount;
    const shared = { source: 'quadrature', known: 'computed', within: { relative: words.within } } as const;
    return [
      {
        ...shared,
        what: `${body.name} at ${tilt}°: ${words.amount} below`,
        unit: words.unit,
        expected: expected.amount * words.per,
        got: () => below(cuttable, up, level).amount * words.per,
      },
      {
        ...shared,
        what: `${body.name} at ${tilt}°: depth of its centroid`,
        unit: 'mm',
        expected: depth * 1e3,
        got: () => below(cuttable, up, level).depth * 1e3,
      },
    ];
  });
}

/** The bare surface, with one cubic metre of wall a square metre, so that its volume is its area. */
const surfaceOf = (form: Form): Cuttable => {
  const wall = wallOf(form, { endsClosed: false });
  return wall.withVolume(wall.area);
};

/** Ball of radius R cut at t above its centre; spherical segment, CRC. */
function ballChecks(): readonly Check[] {
  const radius = 0.04;
  const t = 0.011;
  const up = upAt(80);
  const form: Form = { shape: 'ball', centre: [0.3, 0.01, 0.05], radius };
  const level = dot(up, form.centre) + t;
  const cap = (Math.PI / 3) * (radius + t) ** 2 * (2 * radius - t);
  const capDepth = t + (Math.PI / 4) * ((radius ** 2 - t ** 2) ** 2 / cap);
  const shared = { source: 'CRC, spherical segment', known: 'from memory', within: { relative: 1e-12 } } as const;
  return [
    {
      ...shared,
      what: 'ball at 80°: volume below',
      unit: 'ml',
      expected: cap * 1e6,
      got: () => below(solidOf(form), up, level).amount * 1e6,
    },
    {
      ...shared,
      what: 'ball at 80°: depth of its centroid',
      unit: 'mm',
      expected: capDepth * 1e3,
      got: () => below(solidOf(form), up, level).depth * 1e3,
    },
    {
      ...shared,
      what: 'ball’s wall at 80°: area below',
      unit: 'cm²',
      expected: 2 * Math.PI * radius * (radius + t) * 1e4,
      got: () => below(surfaceOf(form), up, level).amount * 1e4,
    },
    {
      ...shared,
      what: 'ball’s wall at 80°: depth of its centroid',
      unit: 'mm',
      expected: ((radius + t) / 2) * 1e3,
      got: () => below(surfaceOf(form), up, level).depth * 1e3,
    },
  ];
}

/** A box of breadth B under a plane at `tilt` through the middle of depth T, and its corners. */
function boxChecks(): readonly Check[] {
  const box = solidOf(boxForm([0, -1, 0], [1, 1, 3]));
  const heeled = (tilt: number): readonly [Vec3, number] => {
    const up: Vec3 = [0, -Math.sin(tilt * DEGREE), Math.cos(tilt * DEGREE)];
    return [up, up[2]];
  };
  const shared = { source: 'closed form', known: 'derived', within: { relative: 1e-12 } } as const;
  // Wall-sided (Scribanti): T = 1, y = BM tan, z = T/2 + BM tan²/2 with BM = B²/12T; the corners stay dry to 45°.
  const wallSided = [10, 30, 44].flatMap(tilt => {
    const [up, level] = heeled(tilt);
    const tan = Math.tan(tilt * DEGREE);
    const centroid: Vec3 = [0.5, tan / 3, 0.5 + tan ** 2 / 6];
    return [
      {
        ...shared,
        what: `box at ${tilt}°: volume below`,
        unit: 'm³',
        expected: 2,
        got: () => below(box, up, level).amount,
      },
      {
        ...shared,
        what: `box at ${tilt}°: depth of its centroid`,
        unit: 'm',
        expected: level - dot(up, centroid),
        got: () => below(box, up, level).depth,
      },
    ];
  });
  // A plane that cuts the corner at the origin off by a, b, c: volume abc/6, centroid a quarter of each away.
  const corner = solidOf(boxForm([0, 0, 0], [1, 1, 1]));
  const corners = [
    [0.3, 0.5, 0.9],
    [0.9, 0.02, 0.4],
  ].flatMap(([a, b, c]) => {
    const normal: Vec3 = [1 / a!, 1 / b!, 1 / c!];
    const size = Math.hypot(...normal);
    const up = scale(normal, 1 / size);
    return [
      {
        ...shared,
        what: `corner ${a} x ${b} x ${c} m off a box: volume`,
        unit: 'm³',
        expected: (a! * b! * c!) / 6,
        got: () => below(corner, up, 1 / size).amount,
      },
      {
        ...shared,
        what: `corner ${a} x ${b} x ${c} m off a box: depth of its centroid`,
        unit: 'm',
        expected: 0.25 / size,
        got: () => below(corner, up, 1 / size).depth,
      },
    ];
  });
  return [...wallSided, ...corners];
}

export const cutSections: readonly Section[] = [
  {
    title: 'Solids cut by tilted planes',
    about: 'Round bodies along the boat, cut 12 mm over their axis at 0.4 of their length.',
    checks: [
      ...ROUND_BODIES.flatMap(body =>
        roundChecks(body, solidOf(formOf(body)), solidBelow, { amount: 'volume', unit: 'ml', per: 1e6, within: 1e-9 }),
      ),
      ...ballChecks().slice(0, 2),
      ...boxChecks(),
    ],
  },
  {
    title: 'Walls cut by tilted planes',
    about: 'The curved side alone, by area: what a free-flooding shell displaces is its area times its thickness.',
    checks: [
      ...ROUND_BODIES.flatMap(body =>
        roundChecks(body, surfaceOf(formOf(body)), wallBelow, { amount: 'area', unit: 'cm²', per: 1e4, within: 1e-9 }),
      ),
      ...ballChecks().slice(2),
    ],
  },
];
