import { scale, type Vec3 } from '../form/vector.ts';
import { boxOf, type Cuttable, type Immersion } from './immersion.ts';

/** The wall of a free-flooding shell before its thickness is known. */
export interface Wall {
  /** Of the whole surface, m2. */
  readonly area: number;
  /** Of the surface by area, m. */
  readonly centroid: Vec3;
  /** The wall with this much material (m3) spread evenly over it: thickness is volume over area. */
  withVolume(volume: number): Cuttable;
}

/** A surface that a plane can cut. */
export interface Surface {
  /** m2. */
  readonly area: number;
  /** First moment of the area about the origin, m3. */
  readonly moment: Vec3;
  extent(n: Vec3): readonly [lowest: number, highest: number];
  /** Adds `thickness` (m) times the area below n·p = h, and times the strip that the plane crosses, to `sums`. */
  cut(n: Vec3, h: number, thickness: number, sums: Immersion): void;
  /** A wall much like it that is cheaper to cut; null where there is none. */
  rough?(): Wall | null;
}

export function wallOfSurface(surface: Surface): Wall {
  const { area, extent } = surface;
  const centroid = scale(surface.moment, 1 / area);
  const box = boxOf(extent);
  return {
    area,
    centroid,
    withVolume(volume) {
      const thickness = volume / area;
      let rough: Cuttable | undefined;
      return {
        volume,
        moment: scale(centroid, volume),
        box,
        extent,
        cut: (n, h, sums) => surface.cut(n, h, thickness, sums),
        get rough() {
          rough ??= surface.rough?.()?.withVolume(volume);
          return rough;
        },
      };
    },
  };
}
