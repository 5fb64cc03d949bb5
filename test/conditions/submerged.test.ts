import { describe, expect, it } from 'vitest';
import { floatSubmerged, type SubmergedNeutral } from '../../server/core/conditions/submerged.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import { barge, bodiesOf, type Plain, roundBar } from '../helpers/bodies.ts';

const degrees = Math.PI / 180;

function neutral(plain: Plain): SubmergedNeutral {
  const submerged = floatSubmerged(bodiesOf(plain));
  if (submerged.status !== 'neutral') throw new Error(`expected to hang neutral, got ${submerged.status}`);
  return submerged;
}

describe('neutral fill', () => {
  it('is the volume of the boat less its mass over the density, in the tank', () => {
    // Archimedes: 10 l of boat, 9.4 kg, so 0.6 l of the 1 l tank.
    const hang = neutral({
      density: 1000,
      solids: [barge(1, 0.1, 0.1)],
      masses: [[9.4, [0.5, 0, 0.03]]],
      tanks: [{ form: boxForm([0.4, -0.05, 0.02], [0.6, 0.05, 0.07]), kind: 'piston' }],
    });
    expect(hang.fill).toBeCloseTo(0.6, 12);
    expect(hang.ballast).toBeCloseTo(0.6, 12);
  });
  it('grows by displacement x (density ratio - 1) in other water', () => {
    // U-04: 5 kg neutral in ITTC fresh water of 20 °C needs 133.254 g more in sea water of 20 °C (derived).
    const boat = (density: number): Plain => ({
      density,
      solids: [boxForm([0, -0.05, 0], [5 / (998.2072 * 0.01), 0.05, 0.1])],
      masses: [[4.8, [0.25, 0, 0.03]]],
      tanks: [{ form: boxForm([0.1, -0.05, 0.02], [0.3, 0.05, 0.07]), kind: 'bladder' }],
    });
    expect((neutral(boat(1024.8103)).ballast - neutral(boat(998.2072)).ballast) * 1e3).toBeCloseTo(133.254, 2);
  });
  it('says how heavy or light the boat is when no fill does', () => {
    const boat = (mass: number) =>
      floatSubmerged(
        bodiesOf({
          density: 1000,
          solids: [barge(1, 0.1, 0.1)],
          masses: [[mass, [0.5, 0, 0.03]]],
          tanks: [{ form: boxForm([0.4, -0.05, 0], [0.6, 0.05, 0.05]) }],
        }),
      );
    const heavy = boat(10.2);
    expect(heavy.status === 'heavy' && heavy.excess).toBeCloseTo(0.2, 9);
    const light = boat(8.7);
    expect(light.status === 'light' && light.lack).toBeCloseTo(0.3, 9);
  });
});

describe('attitude under water', () => {
  it('pitches by w d / (displacement x BG)', () => {
    // U-03: 5 kg, BG 8 mm, 10 g moved 200 mm: tan = 0.05, 2.862405° (derived; formula from memory of Burcher & Rydill ch. 4).
    const hang = neutral({
      density: 1000,
      solids: [boxForm([0, -0.05, 0], [0.5, 0.05, 0.1])],
      masses: [
        [4.99, [0.25, 0, 0.042]],
        [0.01, [0.45, 0, 0.042]],
      ],
    });
    expect(hang.fill).toBe(0);
    // BG along the tilted vertical is the level BG over the cosine of the tilt.
    expect(hang.bg).toBeCloseTo(0.008 / Math.cos(Math.atan(0.05)), 9);
    // Weight moved aft: the stern goes down and the bow up.
    expect(hang.trim / degrees).toBeCloseTo(2.862405, 6);
    expect(hang.heel).toBeCloseTo(0, 9);
    expect(hang.stable).toBe(true);
  });
  it('has one stiffness for trim and heel, BG, when nothing moves', () => {
    const hang = neutral({ density: 1000, solids: [barge(1, 0.1, 0.1)], masses: [[10, [0.5, 0, 0.04]]] });
    expect(hang.bg).toBeCloseTo(0.01, 12);
    expect(hang.bgEffective).toBeCloseTo(0.01, 12);
    expect(hang.bgEffectiveLongitudinal).toBeCloseTo(0.01, 12);
  });
});

describe('free surface under water', () => {
  // A box tank 0.4 x 0.06 x 0.05 m, half full, in a boat of 10 kg: i = b l³/12 and l b³/12 (Derrett ch. 20, seen).
  const withTank = (length: number, cells: number, kind: 'vented' | 'piston' = 'vented'): Plain => ({
    density: 1000,
    solids: [barge(1, 0.1, 0.1)],
    masses: [[10 - 1000 * length * 0.06 * 0.025, [0.5, 0, 0.03]]],
    tanks: [{ form: boxForm([0.5 - length / 2, -0.03, 0.03], [0.5 + length / 2, 0.03, 0.08]), kind, cells }],
  });
  it('takes i/V from BG on each axis', () => {
    const hang = neutral(withTank(0.2, 1));
    expect(hang.fill).toBeCloseTo(0.5, 12);
    expect(hang.bg - hang.bgEffective).toBeCloseTo((0.2 * 0.06 ** 3) / 12 / 0.01, 10);
    expect(hang.bg - hang.bgEffectiveLongitudinal).toBeCloseTo((0.06 * 0.2 ** 3) / 12 / 0.01, 10);
    expect(hang.stable).toBe(true);
  });
  it('a long tank takes all of it: the boat does not stay level', () => {
    const hang = neutral(withTank(0.4, 1));
    expect((0.06 * 0.4 ** 3) / 12 / 0.01).toBeGreaterThan(hang.bg);
    expect(hang.stable).toBe(false);
    expect(hang.bgEffectiveLongitudinal).toBeLessThan(0);
    expect(Math.abs(hang.trim) / degrees).toBeGreaterThan(1);
  });
  it('cells or a piston give it back', () => {
    expect(neutral(withTank(0.4, 4)).stable).toBe(true);
    const piston = neutral(withTank(0.4, 1, 'piston'));
    expect(piston.bgEffectiveLongitudinal).toBeCloseTo(piston.bg, 12);
  });
  it('in a round tank the water acts as if it hung at the axis, at every angle', () => {
    // S-06: i = V x depth of the water's centroid below the axis, so heel stiffness is that of the weight at the axis (derived).
    const tank = { form: roundBar(0.2, 0.03, 0.06, 0.4), fill: 0 } as const;
    const capacity = Math.PI * 0.0009 * 0.2;
    const boat = (fill: number): Plain => ({
      density: 1000,
      solids: [barge(1, 0.1, 0.1)],
      masses: [[10 - 1000 * capacity * fill, [0.5, 0, 0.03]]],
      tanks: [tank],
    });
    const hang = neutral(boat(0.3));
    const asIfAtAxis = 0.05 - ((10 - 1000 * capacity * 0.3) * 0.03 + 1000 * capacity * 0.3 * 0.06) / 10;
    expect(hang.bgEffective).toBeCloseTo(asIfAtAxis, 10);
  });
});

describe('a piston', () => {
  it('fills from the end that it is told to', () => {
    const boat = (fillsFrom: 'forward' | 'aft'): Plain => ({
      density: 1000,
      solids: [barge(1, 0.1, 0.1)],
      masses: [[9.75, [0.5, 0, 0.03]]],
      tanks: [{ form: boxForm([0.4, -0.05, 0], [0.6, 0.05, 0.05]), kind: 'piston', fillsFrom }],
    });
    expect(neutral(boat('forward')).trim).toBeLessThan(0);
    expect(neutral(boat('aft')).trim).toBeGreaterThan(0);
    expect(neutral(boat('aft')).trim).toBeCloseTo(-neutral(boat('forward')).trim, 9);
  });
});
