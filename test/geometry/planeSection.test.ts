import { describe, expect, it } from 'vitest';
import { emptyImmersion } from '../../server/core/geometry/cut/immersion.ts';
import { solidOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import { cross, dot, scale, subtract, unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { type Loop3, planeSection } from '../../server/core/geometry/outline/planeSection.ts';

/** Area of a closed flat line, m2 (Stokes: half the sum of the cross products along it). */
function areaOf(loop: Loop3, n: Vec3): number {
  const first = loop[0]!;
  return Math.abs(
    loop.slice(1).reduce((sum, point, i) => sum + dot(n, cross(subtract(loop[i]!, first), subtract(point, first))), 0) /
      2,
  );
}

const spindle: Form = {
  shape: 'revolved',
  origin: [0.1, 0.02, 0.05],
  axis: [1, 0, 0],
  profile: [
    [0, 0],
    [0.1, 0.04],
    [0.4, 0.05],
    [0.4, 0.03],
    [0.7, 0.01],
  ],
};
const ball: Form = { shape: 'ball', centre: [0.2, 0, 0.1], radius: 0.06 };
const box = boxForm([0.1, -0.03, 0.01], [0.3, 0.05, 0.09]);
const both: Form = { shape: 'compound', parts: [ball, boxForm([0.5, -0.03, 0.05], [0.6, 0.05, 0.15])] };

const directions: readonly Vec3[] = [[0, 0, 1], [1, 0, 0], unit([-0.1, 0.05, 1]), unit([0.6, -0.5, 0.7])];

describe.each<readonly [string, Form]>([
  ['a spindle', spindle],
  ['a ball', ball],
  ['a box', box],
  ['a ball and a box', both],
])('the section of %s', (_, form) => {
  it.each(directions)('has the area that the hydrostatics cut there, and lies in the plane: %j %j %j', (...n) => {
    const body = solidOf(form);
    const [low, high] = body.extent(n);
    for (const share of [0.23, 0.5, 0.81]) {
      const h = low + share * (high - low);
      const sums = emptyImmersion();
      body.cut(n, h, sums);
      const loops = planeSection(form, n, h);
      for (const point of loops.flat()) expect(Math.abs(dot(n, point) - h)).toBeLessThan(1e-9);
      const area = loops.reduce((sum, loop) => sum + areaOf(loop, n), 0);
      // A polygon of 72 corners in a circle has 0.13 % less than it: 1 - sin(2π/72)/(2π/72).
      expect(Math.abs(area - sums.area)).toBeLessThanOrEqual(0.01 * sums.area);
    }
    expect(planeSection(form, n, high + 0.01)).toEqual([]);
    expect(planeSection(form, scale(n, -1), -(low - 0.01))).toEqual([]);
  });
});
