import type { Bodies } from '../bodies/assemble.ts';
import { addImmersed, type Cuttable, type Immersion } from '../geometry/immersion.ts';
import type { Vec3 } from '../geometry/vector.ts';

/** All that keeps water out, cut as one. */
export function hullOf(bodies: Bodies): Cuttable {
  const parts = bodies.displacers.map(displacer => displacer.body);
  return {
    volume: bodies.volume,
    moment: bodies.volumeMoment,
    extent(n: Vec3): readonly [number, number] {
      let lowest = Number.POSITIVE_INFINITY;
      let highest = Number.NEGATIVE_INFINITY;
      for (const part of parts) {
        const [low, high] = part.extent(n);
        if (low < lowest) lowest = low;
        if (high > highest) highest = high;
      }
      return [lowest, highest];
    },
    cut(n: Vec3, h: number, sums: Immersion): void {
      for (const part of parts) addImmersed(part, n, h, sums);
    },
  };
}
