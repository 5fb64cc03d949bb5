import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assembleBodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { heelwards, trimwards, upFor } from '../../server/core/conditions/attitude.ts';
import { curvature, type EnergyState, energyAt } from '../../server/core/conditions/energy.ts';
import { turn } from '../../server/core/conditions/equilibrium.ts';
import { loadedBoat, totalMassOf } from '../../server/core/conditions/load.ts';
import { addScaled, dot, length, scale, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { service } from '../helpers/analysed.ts';
import { readBoat } from '../helpers/atOnce.ts';
import { arbitrarySub, type Sub, subText } from '../helpers/boats.ts';

const degrees = Math.PI / 180;

interface Tilted {
  readonly sub: Sub;
  readonly fill: number;
  readonly where: 'afloat' | 'submerged';
  readonly trim: number;
  readonly heel: number;
  readonly towards: number;
}

const tilted: fc.Arbitrary<Tilted> = fc.record({
  sub: arbitrarySub({ offset: 4 }),
  fill: fc.double({ min: 0, max: 0.6, noNaN: true }),
  where: fc.constantFrom('afloat', 'submerged'),
  trim: fc.integer({ min: -300, max: 300 }).map(tenths => (tenths / 10) * degrees),
  heel: fc.integer({ min: -600, max: 600 }).map(tenths => (tenths / 10) * degrees),
  towards: fc.double({ min: 0, max: Math.PI, noNaN: true }),
});

/** The energy about an attitude along one direction of tilt; null for a boat that cannot float so deep. */
function around({ sub, fill, where, trim, heel, towards }: Tilted) {
  const { boat } = readBoat(readSyntax(subText(sub)), service.describer);
  const afloat = loadedBoat(assembleBodies(boat, emptyCache()), fill, where);
  if (where === 'afloat' && totalMassOf(afloat) > 0.98 * afloat.density * afloat.hull.volume) return null;
  const up = upFor(trim, heel);
  const a = heelwards(up);
  const raw = addScaled(trimwards(up), a, -dot(trimwards(up), a));
  const b = scale(raw, 1 / length(raw));
  const direction: Vec3 = addScaled(scale(a, Math.cos(towards)), b, Math.sin(towards));
  const at = (angle: number): EnergyState => energyAt(afloat, turn(up, scale(direction, angle)));
  return { state: at(0), at, direction };
}

describe('the potential energy of a boat at any tilt', { timeout: 120_000 }, () => {
  it('falls and rises by its slope', () => {
    let hits = 0;
    fc.assert(
      fc.property(tilted, it => {
        const there = around(it);
        if (!there) return;
        hits++;
        const { state, at, direction } = there;
        const step = 1e-4;
        const measured = (at(step).energy - at(-step).energy) / (2 * step);
        // Beside the moments that the energy is the difference of; central differences leave a term of the step squared.
        expect(Math.abs(measured - dot(state.slope, direction))).toBeLessThan(1e-6 * length(state.totalMoment));
      }),
      { numRuns: 80 },
    );
    expect(hits).toBeGreaterThan(50);
  });

  it('bends by its curvature, which is displacement x GM where it is at rest', () => {
    let hits = 0;
    let kinks = 0;
    fc.assert(
      fc.property(tilted, it => {
        const there = around(it);
        if (!there) return;
        const { state, at, direction } = there;
        const bend = (step: number) => {
          const slopeAt = (angle: number) => {
            const moved = at(angle);
            // The direction turns with the boat, so that it stays square to "up".
            const along = addScaled(scale(direction, Math.cos(angle)), state.up, -Math.sin(angle));
            return dot(moved.slope, along);
          };
          return (slopeAt(step) - slopeAt(-step)) / (2 * step);
        };
        const [near, far] = [bend(1e-4), bend(3e-4)];
        const size = Math.abs(curvature(state, direction, direction)) + 1e-3 * length(state.totalMoment);
        // Where an edge of the hull lies right at the surface the bend itself jumps: no law there.
        if (Math.abs(near - far) > 1e-3 * size) {
          kinks++;
          return;
        }
        hits++;
        expect(Math.abs(near - curvature(state, direction, direction))).toBeLessThan(2e-3 * size);
      }),
      { numRuns: 80 },
    );
    expect(hits).toBeGreaterThan(40);
    expect(kinks).toBeLessThan(hits / 4);
  });
});
