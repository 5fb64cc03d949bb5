import { describe, expect, it } from 'vitest';
import { wallOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import { unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { cutBelow, expectClose, ROUNDING } from './helpers/close.ts';
import { ball, cylinder, revolved } from './helpers/forms.ts';
import { ellipsoidMesh } from './helpers/meshes.ts';

// Rows G-nn: "Check values", section 3, closed-form geometry; sources as in closedSolids.test.ts, from memory.
const UP: Vec3 = [0, 0, 1];
const OPEN = { endsClosed: false };
const CLOSED = { endsClosed: true };

describe('areas and centroids of walls', () => {
  it('G-09: curved area and centroid of a spherical cap of height 0.5', () => {
    const wall = wallOf(ball(1, [2, 3, 4]), OPEN);
    const wet = cutBelow(wall.withVolume(wall.area), UP, 3.5);
    expectClose(wet.volume, Math.PI, ROUNDING);
    expectClose(4 - wet.mz / wet.volume, 0.75, ROUNDING);
  });

  it('G-10: the centroid of a hemispherical shell is half a radius up', () => {
    const wall = wallOf(ball(1), OPEN);
    const wet = cutBelow(wall.withVolume(wall.area), UP, 0);
    expectClose(wet.volume, 2 * Math.PI, ROUNDING);
    expectClose(-wet.mz / wet.volume, 0.5, ROUNDING);
  });

  it('G-11: lateral area and shell centroid of a cone frustum', () => {
    const frustum = revolved([
      [0, 2],
      [3, 1],
    ]);
    const wall = wallOf(frustum, OPEN);
    expectClose(wall.area, 29.803764797388304, ROUNDING);
    expectClose(wall.centroid[0], 4 / 3, ROUNDING);
  });

  it('G-12: the lateral centroid of a cone lies a third up', () => {
    const cone = revolved([
      [0, 2],
      [3, 0],
    ]);
    expectClose(wallOf(cone, OPEN).centroid[0], 1, ROUNDING);
  });

  it('G-17: a level tube wetted to half its radius', () => {
    const wall = wallOf(cylinder(0.05, 0.4), OPEN);
    const wet = cutBelow(wall.withVolume(wall.area), UP, -0.025);
    expectClose(wet.volume / wall.area, 1 / 3, ROUNDING);
    expectClose(-wet.mz / wet.volume / 0.05, 0.8269933431326881, ROUNDING);
  });

  it('G-18: a tube with one flat end', () => {
    // The profile itself runs in to the axis at the far end; the near end stays open.
    const tube = revolved([
      [0, 0.05],
      [0.4, 0.05],
      [0.4, 0],
    ]);
    const wall = wallOf(tube, OPEN);
    expectClose(wall.area, 0.1256637061435917 + 0.007853981633974483, ROUNDING);
    expectClose(wall.centroid[0], 0.21176470588235294, ROUNDING);
    const bothEnds = wallOf(cylinder(0.05, 0.4), CLOSED);
    expectClose(bothEnds.area, 0.1256637061435917 + 2 * 0.007853981633974483, ROUNDING);
    expectClose(bothEnds.centroid[0], 0.2, ROUNDING);
  });

  it('G-19: surface of a capsule, radius 50 mm, straight 300 mm', () => {
    const area = wallOf(cylinder(0.05, 0.3), OPEN).area + wallOf(ball(0.05), OPEN).area;
    expectClose(area, 0.12566370614359174, ROUNDING);
  });

  it('G-20: a thin wall by area against the exact one, outer radius 50, thickness 2', () => {
    const exact = (4 / 3) * Math.PI * (50 ** 3 - 48 ** 3);
    expectClose(exact, 60352.0892706, 1e-11);
    expectClose(wallOf(ball(49), OPEN).area * 2, 60343.7116902, 1e-11);
    expectClose(wallOf(ball(50), OPEN).area * 2, 62831.8531, 1e-9);
  });

  it('a box has the area and centroid of its six sides', () => {
    const wall = wallOf(boxForm([0, 0, 0], [1, 2, 3]), CLOSED);
    expectClose(wall.area, 22, ROUNDING);
    wall.centroid.forEach((c, i) => {
      expectClose(c, [0.5, 1, 1.5][i]!, ROUNDING);
    });
  });
});

describe('the material is spread by area', () => {
  it('keeps the volume given and takes the centroid of the surface', () => {
    const wall = wallOf(cylinder(0.05, 0.4, [1, 2, 3]), CLOSED);
    const body = wall.withVolume(3e-4);
    expect(body.volume).toBe(3e-4);
    body.moment.forEach((m, i) => {
      expectClose(m / 3e-4, [1.2, 2, 3][i]!, ROUNDING);
    });
  });

  it('has no strip where the plane lies along a face, and a finite one just beside it', () => {
    const body = wallOf(boxForm([0, 0, 0], [1, 1, 1]), CLOSED).withVolume(6);
    expectClose(cutBelow(body, UP, 0.5).area, 4, ROUNDING);
    expectClose(cutBelow(body, UP, 0.5).volume, 3, ROUNDING);
    // A face crossed at the angle t gains length/sin t: the bottom, one end, and both sides square to the plane.
    const n = unit([1e-3, 0, 1]);
    const h = 5e-4;
    const alongSide = Math.hypot(h / n[0], h / n[2]);
    expectClose(cutBelow(body, n, h).area, 1 / n[0] + 1 / n[2] + 2 * alongSide, ROUNDING);
  });
});

describe('a rough wall', () => {
  const fine = ellipsoidMesh([0.4, 0.06, 0.05], 120);
  const wall = wallOf(fine, CLOSED).withVolume(2e-4);

  it('has the volume of the fine one, and is cut much like it', () => {
    const rough = wall.rough!;
    expect(rough.volume).toBe(2e-4);
    for (const n of [UP, unit([0.1, 0.7, -0.7]), unit([1, 0.2, 0.1])]) {
      for (const h of [-0.03, 0, 0.02]) {
        const [ours, plain] = [cutBelow(rough, n, h), cutBelow(wall, n, h)];
        expectClose(ours.volume, plain.volume, 0.05);
        expect(Math.abs(ours.mx - plain.mx)).toBeLessThan(0.02 * 2e-4 * 0.4);
      }
    }
  });

  it('is none for a wall of few triangles, nor for one that would mostly vanish', () => {
    expect(wallOf(ellipsoidMesh([0.4, 0.06, 0.05], 40), CLOSED).withVolume(1).rough).toBeUndefined();
    // Two thousand specks of 0.1 mm, 50 mm apart: joined, each is a point.
    const speck = boxForm([0, 0, 0], [1e-4, 1e-4, 1e-4]);
    const specks = Array.from({ length: 2_000 }, (_, i) => [
      0.05 * (i % 20),
      0.05 * (Math.floor(i / 20) % 10),
      0.05 * Math.floor(i / 200),
    ]);
    const { vertices, faces } = speck;
    const cloud: Polyhedron = {
      shape: 'polyhedron',
      vertices: Float64Array.from(specks.flatMap(at => Array.from(vertices, (value, k) => value + at[k % 3]!))),
      faces: Uint32Array.from(
        specks.flatMap((_, i) => Array.from(faces, vertex => vertex + (i * vertices.length) / 3)),
      ),
    };
    expect(wallOf(cloud, CLOSED).withVolume(1).rough).toBeUndefined();
  });
});
