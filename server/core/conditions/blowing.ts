import type { Blowing, Tank } from '../boat/boat.ts';
import { ATMOSPHERE } from './tankSizing.ts';

/** A tank emptied under water by air or gas. SI; pressures absolute unless they say otherwise. */
export interface Blow {
  readonly tank: Tank;
  readonly depth: number;
  /** What the air or gas must have over the air outside, Pa: that of the water there. */
  readonly gauge: number;
  /** Water to be driven out, m3. */
  readonly water: number;
  /** Air or gas for that, m3 as it would be at the surface. */
  readonly free: number;
  /** The same by its mass, kg; null where the gas is not said. */
  readonly mass: number | null;
  /** How many of them the charge gives, the last in part; null without a charge. */
  readonly times: number | null;
}

/** Standard gravity, m/s2 (3rd CGPM, exact; NIST SP 811). */
const GRAVITY = 9.80665;
/** Molar gas constant, J/(mol·K) (CODATA, exact since 2019). */
const GAS_CONSTANT = 8.314462618;
const KELVIN = 273.15;

/**
 * What it takes to blow a tank of `water` (m3) at its depth: hydrostatic pressure ρ·g·h, and an ideal gas that keeps the
 * temperature of the water, °C (Boyle's law). Gas that cools as it expands, dissolves or is spilled asks for more.
 */
export function blowOf(
  tank: Tank,
  { depth, bottle, gas }: Blowing,
  water: number,
  at: { readonly density: number; readonly temperature: number },
): Blow {
  const gauge = at.density * GRAVITY * depth;
  // A sealed tank has kept the air that it was shut with: only what that lacks is to be added.
  const needed = tank.kind === 'sealed' ? gauge * (1 - tank.fill) * tank.capacity : (ATMOSPHERE + gauge) * water;
  const perKilogram = gas ? (GAS_CONSTANT * (at.temperature + KELVIN)) / gas.molarMass : null;
  const held =
    gas && perKilogram !== null
      ? gas.mass * perKilogram
      : // A bottle gives gas only as long as it is above the pressure there.
        bottle && Math.max(0, bottle.pressure - gauge) * bottle.volume;
  return {
    tank,
    depth,
    gauge,
    water,
    free: needed / ATMOSPHERE,
    mass: perKilogram === null ? null : needed / perKilogram,
    times: held === null || needed <= 0 ? null : held / needed,
  };
}
