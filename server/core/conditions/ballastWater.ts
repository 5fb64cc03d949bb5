import { settle, type TankLoad } from '../bodies/tankWater.ts';
import type { Immersion } from '../geometry/cut/immersion.ts';
import { addScaled, scale, type Vec3 } from '../geometry/form/vector.ts';
import { addTensors, centralTensor, NO_TENSOR, type Tensor } from './tensor.ts';

/** Water in tanks as it lies at one attitude. */
export interface BallastWater {
  /** kg. */
  readonly mass: number;
  /** kg·m. */
  readonly moment: Vec3;
  /** Second moments of its free surfaces about their own centroids, kg·m. */
  readonly surface: Tensor;
}

/** All the water of a load, its free part level under the direction `up`; with a density of 1 in m3 and m4. */
export const ballastWater = (load: TankLoad, up: Vec3, density: number): BallastWater =>
  addWater(
    { mass: density * load.stillVolume, moment: scale(load.stillMoment, density), surface: NO_TENSOR },
    load.free.map(water => settle(water, up)),
    density,
  );

/** With waters more that lie level. */
export const addWater = (water: BallastWater, level: readonly Immersion[], density: number): BallastWater =>
  level.reduce<BallastWater>(
    ({ mass, moment, surface }, sums) => ({
      mass: mass + density * sums.volume,
      moment: addScaled(moment, [sums.mx, sums.my, sums.mz], density),
      surface: addTensors(surface, centralTensor(sums, density)),
    }),
    water,
  );
