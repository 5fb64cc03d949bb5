import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import { loopArea } from '../../server/core/geometry/outline/outline.ts';
import { SEEN, type Sight, silhouetteOf } from '../../server/core/geometry/outline/silhouette.ts';
import { hullMesh } from '../benchmark/hullMesh.ts';
import { ellipsoidMesh } from './helpers/meshes.ts';

const sights: readonly Sight[] = [0, 1, 2];
const area = (form: Form, along: Sight): number =>
  silhouetteOf(form, along).reduce((sum, loop) => sum + Math.abs(loopArea(loop)), 0);

const tube: Form = {
  shape: 'revolved',
  origin: [0.2, 0.01, 0.05],
  axis: [1, 0, 0],
  profile: [
    [0, 0.03],
    [0.25, 0.03],
  ],
};

describe('what is seen along an axis of the boat', () => {
  it.each<readonly [string, Form, readonly [number, number, number]]>([
    ['a box: its three faces', boxForm([0.1, -0.02, 0.03], [0.3, 0.04, 0.08]), [0.06 * 0.05, 0.2 * 0.05, 0.2 * 0.06]],
    ['a tube: a disk and two rectangles', tube, [Math.PI * 0.03 ** 2, 0.25 * 0.06, 0.25 * 0.06]],
    // An ellipse of semi-axes a and b has the area πab.
    [
      'an ellipsoid of triangles: three ellipses',
      ellipsoidMesh([0.3, 0.1, 0.05], 64),
      [Math.PI * 0.1 * 0.05, Math.PI * 0.3 * 0.05, Math.PI * 0.3 * 0.1],
    ],
  ])('%s', (_, form, areas) => {
    for (const along of sights) expect(Math.abs(area(form, along) / areas[along] - 1)).toBeLessThan(0.005);
  });

  it('reaches as far as the form itself', () => {
    for (const form of [tube, ellipsoidMesh([0.3, 0.1, 0.05], 24), hullMesh(5000)]) {
      const { from, to } = boundsOf(form);
      const size = Math.max(...to.map((high, axis) => high - from[axis]!));
      for (const along of sights) {
        for (const seen of [0, 1] as const) {
          const all = silhouetteOf(form, along).flatMap(loop => loop.map(point => point[seen]));
          expect(Math.abs(Math.min(...all) - from[SEEN[along][seen]])).toBeLessThan(0.001 * size);
          expect(Math.abs(Math.max(...all) - to[SEEN[along][seen]])).toBeLessThan(0.001 * size);
        }
      }
    }
  });

  it('shows a tilted spindle by its hull: as long as its slope and its disks make it', () => {
    const axis = [Math.SQRT1_2, 0, Math.SQRT1_2] as const;
    const spindle: Form = {
      shape: 'revolved',
      origin: [0, 0, 0],
      axis,
      profile: [
        [0, 0.02],
        [0.2, 0.02],
      ],
    };
    const [loop] = silhouetteOf(spindle, 2);
    const lengths = loop!.map(point => point[0]);
    // Seen from above: the axis by the cosine of 45° and the end disks by its sine.
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeCloseTo(0.24 * Math.SQRT1_2, 3);
  });

  it('draws a mesh of 100,000 triangles by a few hundred points', () => {
    const points = silhouetteOf(hullMesh(100_000), 1).flat();
    expect(points.length).toBeGreaterThan(40);
    expect(points.length).toBeLessThan(400);
  });

  it('keeps apart what stands apart along the line', () => {
    const one = boxForm([0, -0.01, 0], [0.1, 0.01, 0.02]);
    const other = boxForm([0.2, -0.01, 0], [0.3, 0.01, 0.02]);
    const vertices = Float64Array.from([...one.vertices, ...other.vertices]);
    const faces = Uint32Array.from([...one.faces, ...other.faces.map(vertex => vertex + 8)]);
    expect(silhouetteOf({ shape: 'polyhedron', vertices, faces }, 1)).toHaveLength(2);
  });
});
