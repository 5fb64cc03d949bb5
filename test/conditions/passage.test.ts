import { describe, expect, it } from 'vitest';
import { shareFills } from '../../server/core/bodies/tankWater.ts';
import type { Afloat } from '../../server/core/conditions/energy.ts';
import { settleFrom } from '../../server/core/conditions/equilibrium.ts';
import { loadedBoat, surfacedBoat } from '../../server/core/conditions/load.ts';
import { floatSubmerged } from '../../server/core/conditions/submerged.ts';
import { floatSurfaced } from '../../server/core/conditions/surfaced.ts';
import { gaugePressure, sizeTanks } from '../../server/core/conditions/tankSizing.ts';
import { transitOf, worstStep } from '../../server/core/conditions/transit.ts';
import { compoundSolid } from '../../server/core/geometry/cut/compound.ts';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import { dot } from '../../server/core/geometry/form/vector.ts';
import { hullMesh } from '../benchmark/hullMesh.ts';
import { otherEquilibria, rightingCurve } from '../helpers/atOnce.ts';
import { barge, bodiesOf, type Plain, roundBar } from '../helpers/bodies.ts';

const degrees = Math.PI / 180;
const slotAt = (plain: Plain, heel: number) =>
  rightingCurve(surfacedBoat(bodiesOf(plain))).points.find(point => Math.abs(point.heel - heel) < 1e-9)!;

describe('righting lever', () => {
  const vessel: Plain = { density: 1025, solids: [barge(65, 12, 8)], masses: [[3198e3, [32.5, 0, 4]]] };
  it('of a wall-sided box is (GM + BM tan²/2) sin', () => {
    // F-03: GZ at 25° of Derrett p. 130 Example 2(b): 0.560461 m while the section is wall-sided (derived, confirmed).
    expect(slotAt(vessel, 25 * degrees).lever).toBeCloseTo(0.560461, 6);
    expect(slotAt(vessel, -25 * degrees).lever).toBeCloseTo(-0.560461, 6);
    expect(slotAt(vessel, 0).lever).toBeCloseTo(0, 9);
  });
  it('has GM for its slope at the rest', () => {
    const surfaced = floatSurfaced(bodiesOf(vessel), 65);
    const small = slotAt(vessel, 5 * degrees).lever;
    expect(surfaced.status).toBe('afloat');
    // sin and the wall-sided term apart, 5° is small.
    const wallSided = Math.sin(5 * degrees) * (1 + (3 / 2) * Math.tan(5 * degrees) ** 2);
    expect(small).toBeCloseTo(surfaced.status === 'afloat' ? surfaced.gm * wallSided : Number.NaN, 9);
  });
  it('of a submerged boat is BG sin, over 180°', () => {
    const plain: Plain = { density: 1000, solids: [barge(1, 0.1, 0.1)], masses: [[10, [0.5, 0, 0.04]]] };
    const curve = rightingCurve(loadedBoat(bodiesOf(plain), 0, 'submerged'));
    for (const { heel, lever } of curve.points) expect(lever).toBeCloseTo(0.01 * Math.sin(heel), 9);
    expect(curve.range?.[1]).toBeCloseTo(Math.PI, 4);
  });
  it('vanishes where the homogeneous square log of half density balances again', () => {
    // Square log at s = 0.5 rests at 45°; flat (0°, 90°) is a crest by symmetry (Gilbert 1991, from memory).
    const plain: Plain = { density: 1, solids: [barge(10, 1, 1)], masses: [[5, [5, 0, 0.5]]] };
    const { range } = rightingCurve(surfacedBoat(bodiesOf(plain)));
    expect(range).not.toBeNull();
    expect((range![1] - range![0]) / degrees).toBeCloseTo(90, 2);
  });
});

describe('other rests', () => {
  it('a low plank floats as well keel up', () => {
    const plain: Plain = { density: 1000, solids: [barge(1, 0.4, 0.05)], masses: [[8, [0.5, 0, 0.02]]] };
    const equilibria = otherEquilibria(surfacedBoat(bodiesOf(plain)), [0, 0, 1]);
    expect(equilibria.some(rest => Math.abs(Math.abs(rest.heel) / degrees - 180) < 1)).toBe(true);
  });
  it('a round bar with weight at the keel has only one', () => {
    const plain: Plain = { density: 1000, solids: [roundBar(1, 0.05, 0.05)], masses: [[4, [0.5, 0, 0.02]]] };
    const surfaced = floatSurfaced(bodiesOf(plain), 1);
    const up = surfaced.status === 'afloat' ? surfaced.up : ([0, 0, 1] as const);
    expect(otherEquilibria(surfacedBoat(bodiesOf(plain)), up)).toEqual([]);
  });
  it.each([
    { name: 'one that comes back', height: 0.035, count: 0 },
    { name: 'one as happy keel up', height: 0.051, count: 1 },
    { name: 'one that turns over', height: 0.062, count: 0 },
  ])('of a hull of many triangles are found by a rough one: $name', ({ height, count }) => {
    const wall = wallOf(hullMesh(24_000), { endsClosed: true }).withVolume(5e-4);
    const hull = compoundSolid([wall, solidOf(boxForm([0.2, -0.03, 0.03], [0.7, 0.03, 0.07]))]);
    const boat = {
      density: 1000,
      mass: 1.5,
      massMoment: [0.66, 0, 1.5 * height],
      free: [],
      hull,
      submerged: false,
    } as const;
    expect(wall.rough).toBeDefined();
    const found = settleFrom(boat, [0, 0, 1]);
    const restsOf = (afloat: Afloat) => otherEquilibria(afloat, found.state.up).map(({ up }) => up);
    const rough = restsOf(boat);
    const full = restsOf({ ...boat, hull: { ...hull, rough: undefined } });
    expect([rough.length, full.length]).toEqual([count, count]);
    for (const up of full) expect(Math.max(...rough.map(each => dot(each, up)))).toBeGreaterThan(Math.cos(degrees / 2));
  });
});

describe('transit', () => {
  const plain: Plain = {
    density: 1000,
    solids: [roundBar(1, 0.05, 0.05), boxForm([0.4, -0.01, 0.1], [0.6, 0.01, 0.13])],
    masses: [[7.4, [0.5, 0, 0.03]]],
    tanks: [{ form: boxForm([0.42, -0.04, 0.02], [0.58, 0.04, 0.09]), kind: 'piston' }],
  };
  const bodies = bodiesOf(plain);
  const submerged = floatSubmerged(bodies);
  const fill = submerged.status === 'neutral' ? submerged.fill : Number.NaN;
  const surfaced = floatSurfaced(bodies, 1);
  if (surfaced.status !== 'afloat') throw new Error('The boat must float.');
  const steps = transitOf(bodies, surfaced, { fill, heldDown: null }, 1);
  it('goes from the surfaced condition to the submerged one', () => {
    expect(surfaced.attitude.draft).toBeCloseTo(steps[0]!.draft!, 9);
    expect(steps.at(-1)).toMatchObject({ fill, afloat: false, draft: null });
    expect(submerged.status === 'neutral' && submerged.bgEffective).toBeCloseTo(steps.at(-1)!.gm, 9);
    expect(submerged.status === 'neutral' && submerged.trim).toBeCloseTo(steps.at(-1)!.trim, 7);
  });
  it('sinks deeper with every step', () => {
    const drafts = steps.slice(0, -1).map(step => step.draft!);
    expect(drafts.every((draft, i) => i === 0 || draft > drafts[i - 1]!)).toBe(true);
  });
  it('finds the worst of a figure', () => {
    const worst = worstStep(steps, step => -step.gm)!;
    expect(worst.gm).toBe(Math.min(...steps.map(step => step.gm)));
  });
});

describe('tank sizes', () => {
  it('sealed air follows Boyle', () => {
    // B-01: Boyle (1662), standard atmosphere 101325 Pa (10th CGPM; SP 811), gauge in kPa (derived).
    for (const [fill, kilopascals] of [
      [0.25, 33.775],
      [0.5, 101.325],
      [2 / 3, 202.65],
      [0.75, 303.975],
      [0.9, 911.925],
    ] as const) {
      expect(gaugePressure(fill) / 1e3).toBeCloseTo(kilopascals, 6);
    }
    expect(gaugePressure(0.5, 0.5)).toBe(0);
  });
  it('recommends the capacity at which neutral is 70 %', () => {
    const bodies = bodiesOf({
      density: 1000,
      solids: [barge(1, 0.1, 0.1)],
      masses: [[9.65, [0.5, 0, 0.03]]],
      tanks: [{ form: boxForm([0.4, -0.05, 0], [0.6, 0.05, 0.05]) }],
    });
    const [sizing] = sizeTanks(bodies, 0.35);
    expect(sizing!.recommendedCapacity).toBeCloseTo(0.0005, 12);
  });
  it('tanks fill by their shares and never over', () => {
    const form = boxForm([0, 0, 0], [0.1, 0.1, 0.1]);
    const { tanks } = bodiesOf({ density: 1000, solids: [], masses: [], tanks: [{ form }, { form, share: 2 }] });
    expect(shareFills(tanks, 0)).toEqual([0, 0]);
    expect(shareFills(tanks, 0.3)).toEqual([expect.closeTo(0.2, 12), expect.closeTo(0.4, 12)]);
    expect(shareFills(tanks, 0.9)).toEqual([expect.closeTo(0.8, 12), 1]);
    expect(shareFills(tanks, 1)).toEqual([1, 1]);
  });
});
