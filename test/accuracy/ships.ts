import { heelwards, UPRIGHT } from '../../server/core/conditions/attitude.ts';
import { energyAt } from '../../server/core/conditions/energy.ts';
import { surfacedBoat } from '../../server/core/conditions/load.ts';
import { gmAlong } from '../../server/core/conditions/readings.ts';
import { floatSubmerged, type SubmergedNeutral } from '../../server/core/conditions/submerged.ts';
import { floatSurfaced, type SurfacedAfloat } from '../../server/core/conditions/surfaced.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { rightingCurve } from '../helpers/atOnce.ts';
import { bodiesOf, type Plain, roundBar } from '../helpers/bodies.ts';

export const DEGREE = Math.PI / 180;

export function afloat(plain: Plain, length: number): SurfacedAfloat {
  const surfaced = floatSurfaced(bodiesOf(plain), length);
  if (surfaced.status !== 'afloat') throw new Error(`Expected to float, got ${surfaced.status}`);
  return surfaced;
}

export function neutral(plain: Plain): SubmergedNeutral {
  const submerged = floatSubmerged(bodiesOf(plain));
  if (submerged.status !== 'neutral') throw new Error(`Expected to hang neutral, got ${submerged.status}`);
  return submerged;
}

/** Metacentric height of a boat held with `up` upward, m; upright unless said. */
export const gmHeld = (plain: Plain, up: Vec3 = UPRIGHT): number =>
  gmAlong(energyAt(surfacedBoat(bodiesOf(plain)), up), heelwards(up));

export function slotAt(plain: Plain, heel: number): number {
  const point = rightingCurve(surfacedBoat(bodiesOf(plain))).points.find(each => Math.abs(each.heel - heel) < 1e-9);
  return point?.lever ?? Number.NaN;
}

/** Weights aboard: mass, height of its centre, offset to starboard. */
export type Aboard = readonly (readonly [mass: number, height: number, offset?: number])[];

/**
 * A ship whose metacentre stays at the height `km` however it heels, as the worked examples assume: a round bar about an
 * axis at that height, half under water. Masses, lengths and density in any consistent units.
 */
export function shipOfKm(km: number, density: number, aboard: Aboard): Plain & { readonly length: number } {
  const mass = aboard.reduce((sum, [each]) => sum + each, 0);
  const length = mass / density / ((Math.PI / 2) * km ** 2);
  return {
    density,
    length,
    solids: [roundBar(length, km, km)],
    masses: aboard.map(([each, height, offset = 0]) => [each, [length / 2, offset, height]] as const),
  };
}

/** Where `figure` changes sign between two arguments, to the last digit. */
export function rootOf(figure: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  const rises = figure(high) > 0;
  if (figure(low) > 0 === rises) throw new Error('The figure has the same sign at both ends.');
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (figure(middle) > 0 === rises) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
