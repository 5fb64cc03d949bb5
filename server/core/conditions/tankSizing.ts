import type { Bodies } from '../bodies/assemble.ts';
import { shareFills, type TankBody } from '../bodies/tankWater.ts';
import { boundsOf, sliceForeAft, solidOf } from '../geometry/cut/solids.ts';
import type { Form } from '../geometry/form/form.ts';

/** What a tank holds when the boat hangs neutral, and what it should hold. */
export interface TankSizing {
  readonly body: TankBody;
  /** Fill of this tank at the neutral fill, 0..1. */
  readonly fillNeutral: number;
  /** Capacity at which the neutral fill would be `GOOD_FILL`, m3. */
  readonly recommendedCapacity: number;
  /** Length of this tank's form for that, m; null for a form that is not the same all along the boat. */
  readonly recommendedLength: number | null;
  /** Air over the pressure outside at the neutral fill, Pa; null for a tank that is not sealed. */
  readonly gaugePressure: number | null;
}

/**
 * Neutral near 70 % leaves room for colder or saltier water and for static dives (common practice, no source).
 */
export const GOOD_FILL = 0.7;

/** Standard atmosphere, Pa (10th CGPM, exact; NIST SP 811). */
export const ATMOSPHERE = 101_325;

/** Tank sizes for a boat that hangs neutral at `fill` of all its tanks together. */
export function sizeTanks(bodies: Bodies, fill: number): readonly TankSizing[] {
  const fills = shareFills(bodies.tanks, fill);
  return bodies.tanks.map((body, i) => {
    const fillNeutral = fills[i]!;
    return {
      body,
      fillNeutral,
      recommendedCapacity: (fillNeutral * body.capacity) / GOOD_FILL,
      recommendedLength: longer(prismLength(body.tank.form), fillNeutral / GOOD_FILL),
      gaugePressure: body.tank.kind === 'sealed' ? gaugePressure(fillNeutral, body.tank.fill) : null,
    };
  });
}

/**
 * Gauge pressure of the air shut into a sealed tank, Pa, by Boyle's law, isothermal: closed at atmospheric pressure with
 * `fillShut` of water in it, then pumped to `fill`. A fast filling is warmer and higher. Infinite when full.
 */
export function gaugePressure(fill: number, fillShut = 0): number {
  if (fill >= 1) return Number.POSITIVE_INFINITY;
  return Math.max(0, ATMOSPHERE * ((1 - fillShut) / (1 - fill) - 1));
}

const longer = (length: number | null, times: number): number | null => length && length * times;

/** Length of a form that has the same section all along the boat, so that its capacity goes with its length, m; null of any other. */
export function prismLength(form: Form): number | null {
  const { from, to } = boundsOf(form);
  const half = sliceForeAft(form, from[0], (from[0] + to[0]) / 2);
  const quarter = sliceForeAft(form, from[0], from[0] + (to[0] - from[0]) / 4);
  if (!half || !quarter) return null;
  const [whole, a, b] = [form, half, quarter].map(part => solidOf(part).volume) as [number, number, number];
  const isPrism = Math.abs(a / whole - 1 / 2) < 1e-9 && Math.abs(b / whole - 1 / 4) < 1e-9;
  return isPrism ? to[0] - from[0] : null;
}
