import type { FreeWater } from '../bodies/tankWater.ts';
import { addWhole, type Cuttable, emptyImmersion, type Immersion } from '../geometry/cut/immersion.ts';
import { type Filled, fillTo } from '../geometry/cut/levelCut.ts';
import { addScaled, dot, subtract, type Vec3 } from '../geometry/form/vector.ts';
import { addWater } from './ballastWater.ts';
import { along, centralTensor, NO_TENSOR, type Tensor } from './tensor.ts';

/*
 * Potential energy of a floating or hanging boat against its attitude, gravity divided out (kg·m).
 *
 * Let n be "up" in boat axes. At every n the boat settles to the level where weight = buoyancy; what is left is
 *   E(n) = n·(m·G + ρ·ΣMt - ρ·M)
 * with M the first moment of the immersed volume and Mt that of the water in each tank, level under n. Then
 *   dE/dn = m·G + ρ·ΣMt - ρ·M         (its part square to n vanishes at equilibrium: G over B)
 *   E''(e) = e·(ρ·I - ρ·ΣIt)·e - n·dE/dn
 * with I and It the waterplanes' second moments about their own centroids: displacement x GM in direction e, free
 * surface included. That is the metacentric height of the textbooks without small angles or wall sides.
 * (Energy form of the stability of floating bodies: Gilbert, Am. Math. Monthly 98 (1991) 201-216; from memory.)
 */

/** What weighs and what keeps water out, for one condition. */
export interface Afloat {
  /** Density of the water inside and out, kg/m3. */
  readonly density: number;
  /** Mass and moment of everything that does not move: the boat and still tank water; kg, kg·m. */
  readonly mass: number;
  readonly massMoment: Vec3;
  readonly free: readonly FreeWater[];
  readonly hull: Cuttable;
  /** Wholly under water: the surface is far above and there is no waterplane. */
  readonly submerged: boolean;
}

export interface EnergyState {
  readonly up: Vec3;
  /** The surface is `up·p = level`, m; infinite when submerged. */
  readonly level: number;
  /** kg·m. */
  readonly energy: number;
  /** dE/dn, not projected, kg·m. */
  readonly slope: Vec3;
  /** ρ·I of the waterplane, and ρ·ΣIt of the tanks' free surfaces, kg·m. */
  readonly waterplane: Tensor;
  readonly freeSurface: Tensor;
  /** The immersed hull at this attitude. */
  readonly immersed: Immersion;
  /** The water in each tank, level. */
  readonly waters: readonly (Filled & { readonly space: Cuttable })[];
  /** Of all the volumes here the greatest share that a flat slice stands for in place of another cut. */
  readonly sliceShare: number;
  /** Mass of everything with tank water, kg, and its moment, kg·m. */
  readonly totalMass: number;
  readonly totalMoment: Vec3;
}

export interface EnergyOptions {
  /** A state close by, at another attitude or another load: its surfaces are where the search for the levels begins. */
  readonly before?: EnergyState | undefined;
  /** Where the caller expects the surface, m, if it knows better than the state before. */
  readonly level?: number | undefined;
  /** Share of a volume that may be left to a flat slice; figures are right to its square. */
  readonly near?: number;
}

/** What is left to flat slices where figures are wanted: nothing shows of it in any of them. */
export const EXACT = 1e-10;

/** Energy, slope and curvature at one attitude. */
export function energyAt(boat: Afloat, up: Vec3, { before, level, near = EXACT }: EnergyOptions = {}): EnergyState {
  const { density } = boat;
  const expected = (known: Surface | undefined, volume: number): number | undefined =>
    before && known && movedLevel(known, before.up, up, volume);
  const waters = boat.free.map(({ space, volume }) => ({
    space,
    ...fillTo(space, up, volume, {
      guess: expected(
        before?.waters.find(water => water.space === space),
        volume,
      ),
      near,
    }),
  }));
  const dry = { mass: boat.mass, moment: boat.massMoment, surface: NO_TENSOR };
  const laden = addWater(
    dry,
    waters.map(({ sums }) => sums),
    density,
  );
  const { mass: totalMass, moment: totalMoment } = laden;
  const displaced = totalMass / density;
  const guess = level ?? (before && expected({ level: before.level, sums: before.immersed }, displaced));
  const hull = boat.submerged ? wholly(boat.hull) : fillTo(boat.hull, up, displaced, { guess, near });
  const immersed = hull.sums;
  const slope = addScaled(totalMoment, [immersed.mx, immersed.my, immersed.mz], -density);
  return {
    up,
    level: hull.level,
    energy: dot(up, slope),
    slope,
    waterplane: centralTensor(immersed, density),
    freeSurface: laden.surface,
    immersed,
    waters,
    sliceShare: Math.max(hull.sliceShare, ...waters.map(water => water.sliceShare)),
    totalMass,
    totalMoment,
  };
}

type Surface = Pick<Filled, 'level' | 'sums'>;

/** The whole hull, far below the surface. */
function wholly(hull: Cuttable): Filled {
  const sums = emptyImmersion();
  addWhole(hull, sums);
  return { level: Number.POSITIVE_INFINITY, sums, sliceShare: 0 };
}

/**
 * Where a surface comes to lie, to first order, when the boat turns and the volume below it changes: it turns about the
 * centroid of its area (Euler's theorem) and rises by volume over area.
 */
function movedLevel({ level, sums }: Surface, from: Vec3, to: Vec3, volume: number): number | undefined {
  if (!(sums.area > 0)) return undefined;
  const turned = dot(subtract(to, from), [sums.ax, sums.ay, sums.az]);
  return level + (turned + volume - sums.volume) / sums.area;
}

/** The level of the surface, to first order, after the boat has turned from `state` to `up`, m; infinite when submerged. */
export const turnedLevel = ({ up: from, level, immersed }: EnergyState, up: Vec3): number =>
  movedLevel({ level, sums: immersed }, from, up, immersed.volume) ?? level;

/** E'' along the unit vectors a and b square to up, kg·m; a = b gives displacement x GM in that direction. */
export function curvature(state: EnergyState, a: Vec3, b: Vec3): number {
  const ab = along(state.waterplane, a, b) - along(state.freeSurface, a, b);
  return ab - dot(state.up, state.slope) * dot(a, b);
}
