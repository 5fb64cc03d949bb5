import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../server/core/geometry/cut/solids.ts';
import { crossSectionsOf } from '../../server/core/geometry/shapes/crossSection.ts';
import { ellipsoidMesh } from './helpers/meshes.ts';

const [A, B, C] = [0.4, 0.05, 0.06] as const;

/** Half-breadth of the ellipsoid at a station. */
const halfBreadth = (x: number): number => B * Math.sqrt(Math.max(0, 1 - (x / A) ** 2));

describe('how far a place lies outside a form at its station', () => {
  // A coarse mesh is cut where it is asked, a fine one at the nearest of 128 stations: half a stretch, by the run of the side.
  it.each([
    ['few', 14],
    ['many', 40],
  ])('of an ellipsoid in %s triangles', (_, cells) => {
    const mesh = ellipsoidMesh([A, B, C], cells);
    const [section] = crossSectionsOf(mesh, boundsOf);
    const facets = B * (1 - Math.cos(Math.PI / (2 * cells)));
    for (let i = -16; i <= 16; i++) {
      const x = (i / 20) * A;
      const run = Math.abs(halfBreadth(x + A / 128) - halfBreadth(x - A / 128));
      const outside = section!(x)!([halfBreadth(x) + 0.01, 0]);
      expect(Math.abs(outside - 0.01)).toBeLessThan(2 * facets + run + 1e-6);
      expect(section!(x)!([0.9 * halfBreadth(x) - 2 * facets - run, 0])).toBe(0);
    }
    expect(section!(1.01 * A)).toBeNull();
  });
});
