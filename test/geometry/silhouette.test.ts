import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form, Polyhedron } from '../../server/core/geometry/form/form.ts';
import { loopArea } from '../../server/core/geometry/outline/outline.ts';
import { SEEN, type Sight } from '../../server/core/geometry/outline/sight.ts';
import { silhouetteOf } from '../../server/core/geometry/outline/silhouette.ts';
import { hullMesh } from '../benchmark/hullMesh.ts';
import { ellipsoidMesh } from './helpers/meshes.ts';

const sights: readonly Sight[] = [0, 1, 2];
const area = (form: Form, along: Sight): number =>
  silhouetteOf(form, along).reduce((sum, loop) => sum + loopArea(loop), 0);

const tube: Form = {
  shape: 'revolved',
  origin: [0.2, 0.01, 0.05],
  axis: [1, 0, 0],
  profile: [
    [0, 0.03],
    [0.25, 0.03],
  ],
};

function meshOf(...some: readonly Polyhedron[]): Polyhedron {
  let before = 0;
  const faces = some.flatMap(one => {
    const moved = [...one.faces].map(vertex => vertex + before);
    before += one.vertices.length / 3;
    return moved;
  });
  const vertices = some.flatMap(one => [...one.vertices]);
  return { shape: 'polyhedron', vertices: Float64Array.from(vertices), faces: Uint32Array.from(faces) };
}

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
    const two = meshOf(boxForm([0, -0.01, 0], [0.1, 0.01, 0.02]), boxForm([0.2, -0.01, 0], [0.3, 0.01, 0.02]));
    expect(silhouetteOf(two, 1)).toHaveLength(2);
  });

  it('sees right through a hole, and not through one that something stands behind', () => {
    // A frame of four bars round a window of 0.1 m by 0.04 m.
    const bars = [
      boxForm([0, -0.01, 0], [0.2, 0.01, 0.02]),
      boxForm([0, -0.01, 0.06], [0.2, 0.01, 0.08]),
      boxForm([0, -0.01, 0.02], [0.05, 0.01, 0.06]),
      boxForm([0.15, -0.01, 0.02], [0.2, 0.01, 0.06]),
    ];
    const frame = silhouetteOf(meshOf(...bars), 1);
    expect(frame.map(loopArea).sort((a, b) => a - b)).toEqual([
      expect.closeTo(-0.1 * 0.04, 6),
      expect.closeTo(0.2 * 0.08, 6),
    ]);
    const blind = meshOf(...bars, boxForm([0.02, 0.05, 0.01], [0.18, 0.06, 0.07]));
    expect(silhouetteOf(blind, 1).map(loopArea)).toEqual([expect.closeTo(0.2 * 0.08, 6)]);
  });

  it('goes round what is covered by many boxes at random, as counted by points', () => {
    const within = fc.double({ min: 0, max: 1, noNaN: true });
    const box = fc.tuple(within, within, within, within).map(([x, z, long, tall]) => {
      const at = [x, 0, z] as const;
      return boxForm(at, [x + 0.05 + 0.3 * long, 0.1, z + 0.05 + 0.3 * tall]);
    });
    fc.assert(
      fc.property(fc.array(box, { minLength: 1, maxLength: 8 }), boxes => {
        const loops = silhouetteOf(meshOf(...boxes), 1);
        const bounds = boxes.map(boundsOf);
        const n = 60;
        let covered = 0;
        for (let i = 0; i < n; i++)
          for (let k = 0; k < n; k++) {
            const [x, z] = [((i + 0.5) / n) * 1.4, ((k + 0.5) / n) * 1.4];
            if (bounds.some(({ from, to }) => from[0] < x && x < to[0] && from[2] < z && z < to[2])) covered += 1;
          }
        const area = loops.reduce((sum, loop) => sum + loopArea(loop), 0);
        expect(Math.abs(area - (covered / n ** 2) * 1.4 ** 2)).toBeLessThan(0.03);
      }),
    );
  });
});
