import { describe, expect, it } from 'vitest';
import { levelFor } from '../../server/core/geometry/cut/levelCut.ts';
import { boundsOf, solidOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import { unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { centroidOf, cutBelow, expectClose, ROUNDING, wetCentroid } from './helpers/close.ts';
import { ball, cylinder, polyhedron, revolved } from './helpers/forms.ts';

// Rows G-nn: "Check values", section 3, closed-form geometry. Sources, all from memory: Zwillinger, CRC Standard
// Mathematical Tables and Formulae; Harris & Stocker, Handbook of Mathematics and Computational Science (1998);
// Avallone & Baumeister, Marks' Standard Handbook for Mechanical Engineers. Each was recomputed by quadrature.
const UP: Vec3 = [0, 0, 1];

describe('parts of a level cylinder (axis fore-and-aft)', () => {
  const unitCylinder = solidOf(cylinder(1, 1));

  it('G-01: circular segment of sagitta 0.5', () => {
    const wet = cutBelow(unitCylinder, UP, -0.5);
    expectClose(wet.volume, 0.6141848493043784, ROUNDING);
    expectClose(-wet.mz / wet.volume, 0.705020161898566, ROUNDING);
    expectClose(wet.area, 1.7320508075688772, ROUNDING); // the chord
  });

  it('G-02: half circle', () => {
    const wet = cutBelow(unitCylinder, UP, 0);
    expectClose(wet.volume, Math.PI / 2, ROUNDING);
    expectClose(-wet.mz / wet.volume, 4 / (3 * Math.PI), ROUNDING);
  });

  it('G-03: tank of radius 50 mm, 400 mm long, filled 20 mm deep', () => {
    const wet = cutBelow(solidOf(cylinder(0.05, 0.4)), UP, -0.03);
    expectClose(wet.volume * 1e6, 447.2952180016, ROUNDING);
    expectClose((-wet.mz / wet.volume) * 1e3, 38.15526296685, ROUNDING);
  });

  it.each([
    [0.1, 0.3129511738674],
    [0.25, 0.5960272467005],
    [0.75, 1.4039727532995],
  ])('G-04: filled to %f of its section, the depth is %f radii', (fill, depth) => {
    const tank = solidOf(cylinder(0.05, 0.4, [0.1, 0, 0.3]));
    const level = levelFor(tank, UP, fill * tank.volume);
    expectClose((level - 0.25) / 0.05, depth, ROUNDING);
  });
});

describe('wedges of an upright cylinder', () => {
  const upright = solidOf(cylinder(1, 5, [0, 0, 0], UP));

  it('G-05: hoof through the diameter, 45 degrees', () => {
    const wet = cutBelow(upright, unit([-1, 0, 1]), 0);
    const [x, , z] = wetCentroid(wet);
    expectClose(wet.volume, 2 / 3, ROUNDING);
    expectClose(x, (3 * Math.PI) / 16, ROUNDING);
    expectClose(z, (3 * Math.PI) / 32, ROUNDING);
  });

  it('G-06: ungula of base sagitta 0.5 and height 1', () => {
    // Water z <= (x - 0.5)·2: it leaves the base at x = R - b and stands 1 high at the far wall.
    const n = unit([-2, 0, 1]);
    expectClose(cutBelow(upright, n, -1 / Math.hypot(2, 1)).volume, 0.25184055448006, ROUNDING);
  });
});

describe('boxes and tetrahedra', () => {
  it('G-08: a box of breadth 2 and depth 1 heeled by tan 0.2', () => {
    const box = solidOf(boxForm([0, -1, 0], [3, 1, 2]));
    const wet = cutBelow(box, unit([0, -0.2, 1]), 1 / Math.hypot(0.2, 1));
    const [, y, z] = wetCentroid(wet);
    expectClose(y, 0.06666666666666667, ROUNDING);
    expectClose(z, 0.5066666666666667, ROUNDING);
  });

  it('a box has its own volume, centroid and corners', () => {
    const form = boxForm([1, -2, 3], [2, 5, 7]);
    const box = solidOf(form);
    expectClose(box.volume, 28, ROUNDING);
    centroidOf(box).forEach((c, i) => {
      expectClose(c, [1.5, 1.5, 5][i]!, ROUNDING);
    });
    expect(boundsOf(form)).toEqual({ from: [1, -2, 3], to: [2, 5, 7] });
  });

  it('G-22: the unit tetrahedron', () => {
    const corner = polyhedron(
      [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      [
        [0, 2, 1],
        [0, 1, 3],
        [0, 3, 2],
        [1, 2, 3],
      ],
    );
    const body = solidOf(corner);
    expectClose(body.volume, 1 / 6, ROUNDING);
    for (const c of centroidOf(body)) expectClose(c, 1 / 4, ROUNDING);
    // Integral of x² over the volume: the waterplanes x = h have area (1 - h)²/2; Simpson's rule with 200
    // strips is 4e-11 off for this quartic (1/180 of the fourth derivative by the strip to the fourth).
    let sum = 0;
    for (let i = 1; i < 200; i++) {
      const x = i / 200;
      sum += (i % 2 ? 4 : 2) * x * x * cutBelow(body, [1, 0, 0], x).area;
    }
    expectClose(sum / 600, 1 / 60, 4e-9);
  });
});

describe('balls and cones', () => {
  it('G-09: spherical cap of height 0.5', () => {
    const wet = cutBelow(solidOf(ball(1, [2, 3, 4])), UP, 3.5);
    expectClose(wet.volume, 0.6544984694978736, ROUNDING);
    expectClose(4 - wet.mz / wet.volume, 0.675, ROUNDING);
  });

  it('G-10: hemisphere', () => {
    const wet = cutBelow(solidOf(ball(1)), unit([1, 2, 3]), 0);
    expectClose(wet.volume, 2.0943951023931953, ROUNDING);
    const [x, y, z] = wetCentroid(wet);
    expectClose(Math.hypot(x, y, z), 0.375, ROUNDING);
  });

  it('G-11: cone frustum', () => {
    const frustum = solidOf(
      revolved([
        [0, 2],
        [3, 1],
      ]),
    );
    expectClose(frustum.volume, 21.991148575128552, ROUNDING);
    expectClose(centroidOf(frustum)[0], 1.1785714285714286, ROUNDING);
  });

  it('G-12: the centroid of a cone lies a quarter up', () => {
    const cone = solidOf(
      revolved([
        [0, 2],
        [3, 0],
      ]),
    );
    expectClose(centroidOf(cone)[0] / 3, 1 / 4, ROUNDING);
  });

  it('G-19: capsule, radius 50 mm, straight 300 mm: cylinder and ball', () => {
    const volume = solidOf(cylinder(0.05, 0.3)).volume + solidOf(ball(0.05)).volume;
    expectClose(volume, 0.0028797932657906437, ROUNDING);
  });
});
