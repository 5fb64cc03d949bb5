import { addImmersed, type Cuttable } from './immersion.ts';
import { add, scale, type Vec3 } from './vector.ts';
import type { Wall } from './wall.ts';

const NOWHERE: Vec3 = [0, 0, 0];

/** Several bodies as one: their sums. */
export function compoundSolid(bodies: readonly Cuttable[]): Cuttable {
  return {
    volume: bodies.reduce((sum, body) => sum + body.volume, 0),
    moment: bodies.reduce<Vec3>((sum, body) => add(sum, body.moment), NOWHERE),
    extent(n) {
      let lowest = Infinity;
      let highest = -Infinity;
      for (const body of bodies) {
        const [low, high] = body.extent(n);
        if (low < lowest) lowest = low;
        if (high > highest) highest = high;
      }
      return [lowest, highest];
    },
    cut(n, h, sums) {
      for (const body of bodies) addImmersed(body, n, h, sums);
    },
  };
}

/** Several walls as one, of one thickness all over: each takes material by its share of the area. */
export function compoundWall(walls: readonly Wall[]): Wall {
  const area = walls.reduce((sum, wall) => sum + wall.area, 0);
  const moment = walls.reduce<Vec3>((sum, wall) => add(sum, scale(wall.centroid, wall.area)), NOWHERE);
  return {
    area,
    centroid: scale(moment, 1 / area),
    withVolume: volume => compoundSolid(walls.map(wall => wall.withVolume((volume * wall.area) / area))),
  };
}
