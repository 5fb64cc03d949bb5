import type { Bodies } from '../bodies/assemble.ts';
import { shareFills, type TankBody } from '../bodies/tankWater.ts';

/** What a tank holds when the boat hangs neutral, and what it should hold. */
export interface TankSizing {
  readonly body: TankBody;
  /** Fill of this tank at the neutral fill, 0..1. */
  readonly fillNeutral: number;
  /** Capacity at which the neutral fill would be `GOOD_FILL`, m3. */
  readonly recommendedCapacity: number;
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
