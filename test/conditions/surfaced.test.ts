import { describe, expect, it } from 'vitest';
import { floatSurfaced, type SurfacedAfloat } from '../../server/core/conditions/surfaced.ts';
import { barge, bodiesOf, type Plain, roundBar } from '../helpers/bodies.ts';

const degrees = Math.PI / 180;

function afloat(plain: Plain, length: number): SurfacedAfloat {
  const surfaced = floatSurfaced(bodiesOf(plain), length);
  if (surfaced.status !== 'afloat') throw new Error(`expected to float, got ${surfaced.status}`);
  return surfaced;
}

describe('box barge', () => {
  // F-01: Derrett, rev. Barrass, Ship Stability for Masters and Mates, p. 130, Example 2 (seen): 65 x 12 x 8 m, KG 4 m.
  const vessel = afloat({ density: 1025, solids: [barge(65, 12, 8)], masses: [[3198e3, [32.5, 0, 4]]] }, 65);
  it('draft, KB, BM and GM as in the worked example', () => {
    expect(vessel.attitude.draft).toBeCloseTo(4, 9);
    expect(vessel.centreOfBuoyancy[2]).toBeCloseTo(2, 9);
    expect(vessel.gm).toBeCloseTo(2 + 3 - 4, 9);
    expect(vessel.attitude.trim).toBeCloseTo(0, 9);
    expect(vessel.attitude.heel).toBeCloseTo(0, 9);
  });
  it('longitudinal metacentric height is KB + L²/12T - KG, and the rest follows', () => {
    // Wall-sided box: BM_L = L²/(12 T); any ship-hydrostatics text (from memory).
    const gmLongitudinal = 2 + 65 ** 2 / 48 - 4;
    expect(vessel.gmLongitudinal).toBeCloseTo(gmLongitudinal, 7);
    expect(vessel.momentToTrimOneDegree / (3198e3 * gmLongitudinal * Math.sin(degrees))).toBeCloseTo(1, 9);
    expect(vessel.waterplaneArea).toBeCloseTo(65 * 12, 7);
    expect(vessel.massPerImmersion).toBeCloseTo(1025 * 65 * 12, 4);
    expect(vessel.reserveBuoyancy / (1025 * 65 * 12 * 4)).toBeCloseTo(1, 9);
  });
});

describe('heel by an off-centre weight', () => {
  it('a small barge heels to the exact wall-sided angle, not the linear one', () => {
    // F-09: instance recomputed from tan(phi)·(GM + BM tan²(phi)/2) = w d/displacement (derived): 3.05104 deg.
    const { attitude } = afloat(
      {
        density: 1000,
        solids: [barge(0.5, 0.2, 0.2)],
        masses: [
          [7.9, [0.25, 0, 0.07]],
          [0.1, [0.25, 0.05, 0.07]],
        ],
      },
      0.5,
    );
    expect(attitude.heel / degrees).toBeCloseTo(3.05104, 5);
    expect(attitude.trim).toBeCloseTo(0, 9);
  });
  it('to port is negative', () => {
    const { attitude } = afloat(
      { density: 1000, solids: [barge(0.5, 0.2, 0.2)], masses: [[8, [0.25, -0.001, 0.07]]] },
      0.5,
    );
    expect(attitude.heel).toBeLessThan(0);
  });
});

describe('loll', () => {
  it('a tender box lies at the angle of loll and not upright', () => {
    // F-08: tan(phi) = sqrt(-2 GM/BM), Derrett p. 229 (seen); instance B 10, T 4, KG 4.2: 18.503539 deg, GM there 0.246053 m.
    const { attitude, gm } = afloat(
      { density: 1, solids: [barge(20, 10, 12)], masses: [[20 * 10 * 4, [10, 0, 4.2]]] },
      20,
    );
    expect(Math.abs(attitude.heel) / degrees).toBeCloseTo(18.503539, 5);
    expect(gm).toBeCloseTo(0.246053, 5);
  });
});

describe('square log of unit section', () => {
  // F-15 to F-19: Gilbert, Am. Math. Monthly 98 (1991) 201-216 (limits from memory, instances derived).
  it.each([
    [0.1, 0],
    [0.23, 19.485619],
    [0.25, 26.565051],
    [0.27, 33.690068],
    [0.28, 41.185925],
    [0.5, 45],
    [0.73, 33.690068],
    [0.9, 0],
  ])('of density %f tilts by %f°', (density, tilt) => {
    // Long enough that it does not stand on end.
    const { attitude } = afloat({ density: 1, solids: [barge(10, 1, 1)], masses: [[10 * density, [5, 0, 0.5]]] }, 10);
    const angle = Math.abs(attitude.heel) / degrees;
    // By symmetry a tilt of 90° less the angle is the same position of the log.
    expect(Math.min(angle, Math.abs(90 - angle))).toBeCloseTo(tilt, 4);
  });
});

describe('bodies of revolution', () => {
  it('a round bar of half the density of water floats at its axis with GM = height of the axis over G', () => {
    // Every normal to a circle passes through its centre: M lies on the axis (from memory).
    const { attitude, gm } = afloat(
      { density: 1000, solids: [roundBar(1, 0.05, 0.05)], masses: [[1000 * Math.PI * 0.0025 * 0.5, [0.5, 0, 0.03]]] },
      1,
    );
    expect(attitude.draft).toBeCloseTo(0.05, 10);
    expect(gm).toBeCloseTo(0.02, 9);
  });
  it('a ball of a quarter of the density of water sinks to 0.6527 of its radius', () => {
    // F-24: trigonometric root of h²(3-h) = 1: h = 1 - 2 cos 80° (derived).
    const { attitude } = afloat(
      {
        density: 1,
        solids: [{ shape: 'ball', centre: [0, 0, 1], radius: 1 }],
        masses: [[Math.PI / 3, [0, 0, 0.5]]],
      },
      2e-9,
    );
    expect(attitude.draft).toBeCloseTo(1 - 2 * Math.cos(80 * degrees), 8);
  });
});

describe('free surface', () => {
  it('a slack rectangular tank takes i/V off GM', () => {
    // S-08: tank 0.2 x 0.1 m in a 5 kg model in fresh water of 20 °C: 3.327357 mm (derived from i/V, Derrett ch. 20, seen).
    const density = 998.2072;
    const tank = { form: barge(0.2, 0.1, 0.03, 0.15), fill: 0.5 } as const;
    const water = density * 0.2 * 0.1 * 0.015;
    const plain = (tanks: Plain['tanks']): Plain => ({
      density,
      solids: [barge(0.5, 0.2, 0.2)],
      masses: [[5 - water, [0.25, 0, 0.02]]],
      ...(tanks ? { tanks } : {}),
    });
    const slack = afloat(plain([tank]), 0.5);
    const held = afloat(plain([{ ...tank, kind: 'bladder' }]), 0.5);
    expect(slack.displacement).toBeCloseTo(5, 9);
    expect(slack.freeSurfaceLoss * 1e3).toBeCloseTo(3.327357, 5);
    expect(held.freeSurfaceLoss).toBe(0);
    // Cells are cut fore and aft, so they divide the loss in trim by n² and leave that in heel (1/n² rule, Derrett, seen).
    const cells = afloat(plain([{ ...tank, cells: 2 }]), 0.5);
    expect(cells.freeSurfaceLoss / slack.freeSurfaceLoss).toBeCloseTo(1, 6);
    expect(cells.freeSurfaceLossLongitudinal / slack.freeSurfaceLossLongitudinal).toBeCloseTo(1 / 4, 6);
  });
});

describe('what does not float', () => {
  it('says by how much it sinks', () => {
    const surfaced = floatSurfaced(
      bodiesOf({ density: 1000, solids: [barge(1, 0.1, 0.1)], masses: [[10.25, [0.5, 0, 0.05]]] }),
      1,
    );
    expect(surfaced).toMatchObject({ status: 'sinks' });
    expect(surfaced.status === 'sinks' && surfaced.excess).toBeCloseTo(0.25, 9);
  });
  it('says when it turns over', () => {
    const topHeavy = bodiesOf({
      density: 1000,
      solids: [roundBar(1, 0.05, 0.05)],
      masses: [[4, [0.5, 0.0001, 0.09]]],
    });
    const surfaced = floatSurfaced(topHeavy, 1);
    expect(surfaced.status).toBe('overturns');
    expect(surfaced.status === 'overturns' && Math.abs(surfaced.heel) / degrees).toBeCloseTo(180, 0);
  });
  it('has nothing to say of an empty file', () => {
    expect(floatSurfaced(bodiesOf({ density: 1000, solids: [], masses: [] }), 1).status).toBe('empty');
  });
});
