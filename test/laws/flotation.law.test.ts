import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Boat } from '../../server/core/boat/boat.ts';
import { assembleBodies, type Bodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { floatSubmerged } from '../../server/core/conditions/submerged.ts';
import { floatSurfaced, type SurfacedAfloat } from '../../server/core/conditions/surfaced.ts';
import { addImmersed, type Cuttable, emptyImmersion } from '../../server/core/geometry/cut/immersion.ts';
import { add, addScaled, cross, dot, length, scale, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { service } from '../helpers/analysed.ts';
import { readBoat } from '../helpers/atOnce.ts';
import { arbitrarySub, mirrored, type Sub, subText } from '../helpers/boats.ts';
import { textLines } from '../helpers/boatText.ts';
import { runsOf } from '../helpers/long.ts';

interface Floating {
  readonly boat: Boat;
  readonly bodies: Bodies;
}

function launch(text: string): Floating {
  const { boat, findings } = readBoat(readSyntax(text), service.describer);
  expect(findings.filter(finding => finding.severity === 'error')).toEqual([]);
  return { boat, bodies: assembleBodies(boat, emptyCache()) };
}

function afloat(text: string): SurfacedAfloat | null {
  const { boat, bodies } = launch(text);
  const surfaced = floatSurfaced(bodies, boat.length);
  return surfaced.status === 'afloat' ? surfaced : null;
}

/** Volume (m3) and first moment (m4) of a body below the plane `up·p = level`. */
function below(body: Cuttable, up: Vec3, level: number): { readonly volume: number; readonly moment: Vec3 } {
  const sums = emptyImmersion();
  addImmersed(body, up, level, sums);
  return { volume: sums.volume, moment: [sums.mx, sums.my, sums.mz] };
}

const sum = (points: readonly Vec3[]): Vec3 => points.reduce<Vec3>((all, point) => add(all, point), [0, 0, 0]);

/** Moment of a tank's water at a fill, its level found by halving. */
function waterMoment(cells: readonly Cuttable[], fill: number, up: Vec3): Vec3 {
  return sum(
    cells.map(cell => {
      let [low, high] = cell.extent(up);
      for (let i = 0; i < 200; i++) {
        const level = (low + high) / 2;
        if (below(cell, up, level).volume < fill * cell.volume) low = level;
        else high = level;
      }
      return below(cell, up, (low + high) / 2).moment;
    }),
  );
}

/** How far G lies from the vertical through B, m. */
const aside = (up: Vec3, g: Vec3, b: Vec3): number => length(cross(up, addScaled(g, b, -1)));

/** The settled lever is a ten-millionth of a millimetre; halving the tank's level adds no more. */
const ON_ONE_VERTICAL = 1e-8;
const runs = runsOf(20, 60);

describe('a floating boat', { timeout: 120_000 }, () => {
  it('weighs what it displaces, and G and B lie on one vertical, by the surface that the attitude says', () => {
    let hits = 0;
    let slack = 0;
    fc.assert(
      fc.property(arbitrarySub({ offset: 3 }), sub => {
        const { boat, bodies } = launch(subText(sub));
        const found = floatSurfaced(bodies, boat.length);
        if (found.status !== 'afloat') return;
        hits++;
        const { draft, trim, heel } = found.attitude;
        // The surface in boat axes: z = draft + (x - L/2)·tan(trim) + y·tan(heel).
        const raw: Vec3 = [-Math.tan(trim), -Math.tan(heel), 1];
        const up = scale(raw, 1 / length(raw));
        const level = dot(up, [boat.length / 2, 0, draft]);
        const wet = bodies.displacers.map(({ body }) => below(body, up, level));
        const volume = wet.reduce((all, each) => all + each.volume, 0);
        const weights = [...boat.shells, ...boat.compartments, ...boat.payload];
        const tank = boat.tanks[0]!;
        const water = tank.fill * tank.capacity * boat.water.density;
        if (water > 0) slack++;
        const mass = weights.reduce((all, each) => all + each.mass, water);
        expect(boat.water.density * volume).toBeCloseTo(mass, 9);
        const ballast = water > 0 ? waterMoment(bodies.tanks[0]!.cells, tank.fill, up) : ([0, 0, 0] as const);
        const moments = weights.map(each => scale(each.centroid, each.mass));
        const g = scale(sum([...moments, scale(ballast, boat.water.density)]), 1 / mass);
        const b = scale(sum(wet.map(each => each.moment)), 1 / volume);
        expect(aside(up, g, b)).toBeLessThan(ON_ONE_VERTICAL);
      }),
      runs,
    );
    expect([hits > 0.6 * runs.numRuns, slack > 0]).toEqual([true, true]);
  });

  it('mirrored, heels as far to the other side', () => {
    let heeled = 0;
    fc.assert(
      fc.property(arbitrarySub({ offset: 3 }), sub => {
        const one = afloat(subText(sub));
        const other = afloat(subText(mirrored(sub)));
        expect(other === null).toBe(one === null);
        if (!one || !other || Math.abs(one.attitude.heel) < 1e-6) return;
        heeled++;
        expect(other.attitude.heel).toBeCloseTo(-one.attitude.heel, 8);
        expect(other.attitude.trim).toBeCloseTo(one.attitude.trim, 8);
        expect(other.attitude.draft).toBeCloseTo(one.attitude.draft, 9);
        expect(other.gm).toBeCloseTo(one.gm, 8);
      }),
      runs,
    );
    expect(heeled).toBeGreaterThan(0.4 * runs.numRuns);
  });

  it('with nothing off its centreline stays upright where GM is positive', () => {
    let hits = 0;
    fc.assert(
      fc.property(arbitrarySub({ offset: 0 }), sub => {
        const found = afloat(subText(sub));
        if (!found || !(found.gm > 1e-4)) return;
        hits++;
        expect(Math.abs(found.attitude.heel)).toBeLessThan(1e-6);
      }),
      runs,
    );
    expect(hits).toBeGreaterThan(0.5 * runs.numRuns);
  });
});

/** The boat with a weight (g) at a station (mm) on the centreline, at the tube's axis. */
const withWeight = (sub: Sub, grams: number, station: number): string =>
  subText(
    sub,
    textLines([
      `  - { name: weight, mass: ${grams} g, station: ${station.toFixed(4)} mm, height: ${sub.radius.toFixed(4)} mm, in: tube }`,
    ]),
  );

describe('a weight put aboard', { timeout: 120_000 }, () => {
  it('over the centre of flotation sinks it there by the mass over what a millimetre takes', () => {
    let hits = 0;
    fc.assert(
      fc.property(arbitrarySub({ offset: 0, kinds: ['piston'] }), sub => {
        const before = afloat(subText(sub));
        if (!before?.centreOfFlotation || before.gm < 1e-4) return;
        const cf = before.centreOfFlotation;
        if (cf[0] * 1e3 < sub.tube.from || cf[0] * 1e3 > sub.tube.to) return;
        const after = afloat(withWeight(sub, 0.05, cf[0] * 1e3));
        if (!after) return;
        hits++;
        // How deep the place of the old centre of flotation now lies, square to the water.
        const sunk = after.level - dot(after.up, cf);
        const expected = 0.05e-3 / (before.massPerImmersion / before.up[2]);
        // Within the curvature of the hull at the surface over a few thousandths of a millimetre.
        expect(sunk / expected).toBeGreaterThan(0.97);
        expect(sunk / expected).toBeLessThan(1.03);
        expect(after.attitude.draft).toBeGreaterThan(before.attitude.draft);
      }),
      runs,
    );
    expect(hits).toBeGreaterThan(0.5 * runs.numRuns);
  });

  it('and moved along trims it by what the moment to trim one degree says', () => {
    let hits = 0;
    fc.assert(
      fc.property(arbitrarySub({ offset: 0, kinds: ['piston', 'vented'] }), sub => {
        const middle = (sub.tube.from + sub.tube.to) / 2;
        const at = (station: number) => afloat(withWeight(sub, 2, station));
        const rest = at(middle);
        if (!rest || !(rest.gmLongitudinal > 0.005) || rest.gm < 1e-4) return;
        // So far that it trims by a fiftieth of a degree either way.
        const reach = Math.min((rest.momentToTrimOneDegree * 1e6 * 0.02) / 2, (sub.tube.to - sub.tube.from) / 2);
        const [forward, aft] = [at(middle - reach), at(middle + reach)];
        if (!forward || !aft) return;
        hits++;
        const measured = (aft.attitude.trim - forward.attitude.trim) / 2;
        const moment = 0.002 * (reach / 1e3) * Math.cos(rest.attitude.trim);
        const expected = ((moment / rest.momentToTrimOneDegree) * Math.PI) / 180;
        // A kink of the hull right at the surface may cost a little within that trim.
        expect(measured / expected).toBeGreaterThan(0.985);
        expect(measured / expected).toBeLessThan(1.015);
      }),
      runs,
    );
    expect(hits).toBeGreaterThan(0.5 * runs.numRuns);
  });
});

describe('a boat hanging under water', { timeout: 120_000 }, () => {
  it('weighs what it displaces at its neutral fill, and G and B lie on one vertical, B above', () => {
    let hits = 0;
    fc.assert(
      fc.property(arbitrarySub({ offset: 3, kinds: ['vented', 'sealed'] }), sub => {
        const { boat, bodies } = launch(subText(sub));
        const found = floatSubmerged(bodies);
        if (found.status !== 'neutral') return;
        hits++;
        const { up } = found;
        const tank = bodies.tanks[0]!;
        const water = found.fill * tank.capacity * boat.water.density;
        expect(bodies.mass + water).toBeCloseTo(boat.water.density * bodies.volume, 9);
        expect(found.ballast).toBeCloseTo(water, 9);
        const ballast = scale(waterMoment(tank.cells, found.fill, up), boat.water.density);
        const g = scale(add(bodies.massMoment, ballast), 1 / (bodies.mass + water));
        const b = scale(bodies.volumeMoment, 1 / bodies.volume);
        expect(aside(up, g, b)).toBeLessThan(ON_ONE_VERTICAL);
        expect(dot(up, b) - dot(up, g)).toBeGreaterThan(-1e-9);
      }),
      runs,
    );
    expect(hits).toBeGreaterThan(0.5 * runs.numRuns);
  });
});
