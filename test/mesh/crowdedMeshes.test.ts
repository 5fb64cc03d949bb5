import { describe, expect, it } from 'vitest';
import { solidOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import { type CheckedMesh, checkMeshSteps } from '../../server/core/geometry/mesh/meshCheck.ts';
import { inSteps } from '../../server/core/steps/steps.ts';
import { expectClose, ROUNDING } from '../geometry/helpers/close.ts';
import { ellipsoidMesh } from '../geometry/helpers/meshes.ts';

/** Each of so many triangles with corners of its own. */
function triangles(count: number, cornersOf: (i: number) => readonly number[]): Polyhedron {
  const vertices = new Float64Array(9 * count);
  for (let i = 0; i < count; i++) vertices.set(cornersOf(i), 9 * i);
  return { shape: 'polyhedron', vertices, faces: Uint32Array.from({ length: 3 * count }, (_, i) => i) };
}

function bodies(count: number, bodyOf: (i: number) => Polyhedron): Polyhedron {
  const corners: number[] = [];
  for (let i = 0; i < count; i++) {
    const { vertices, faces } = bodyOf(i);
    for (const vertex of faces) corners.push(...vertices.subarray(3 * vertex, 3 * vertex + 3));
  }
  return triangles(corners.length / 9, i => corners.slice(9 * i, 9 * i + 9));
}

function checked(form: Polyhedron): { readonly mesh: CheckedMesh; readonly steps: number } {
  const work = inSteps(() => checkMeshSteps(form));
  let steps = 0;
  // Ends: the mesh does.
  while (!work.step()) steps += 1;
  return { mesh: work.all()!, steps };
}

/** A turn each, so that no two are the same. */
const tip = (i: number): readonly number[] => [50, 40 * Math.cos(i), 45 + 40 * Math.sin(i)];

const KINDS = {
  'on one spot': () => [0, 0, 0, 100, 0, 0, 0, 50, 50],
  'on one edge': (i: number) => [0, 0, 0, 100, 0, 0, ...tip(i)],
  'round one corner': (i: number) => [0, 0, 0, ...tip(i), ...tip(i + 0.001)],
} as const;

describe('triangles that crowd', () => {
  // As many made one call of a function with each of them an argument, and more than it takes.
  it.each(Object.entries(KINDS))('%s are read, however many', { timeout: 60_000 }, (_, cornersOf) => {
    const { mesh } = checked(triangles(140_000, cornersOf));
    expect(mesh.faults).toMatchObject({ triangles: 140_000, turned: 0 });
  });

  it('on one edge are told, and each is a gap of its own', () => {
    const { mesh, steps } = checked(triangles(5000, KINDS['on one edge']));
    expect(mesh.faults).toMatchObject({ openEdges: 15_000, gaps: 5000, crowdedEdges: 1, repeated: 0 });
    // All that is held against each other is done in steps.
    expect(steps).toBeGreaterThan(200);
  });

  it('on one spot count once, and those that face the other way once too', () => {
    expect(checked(triangles(5000, KINDS['on one spot'])).mesh.faults).toMatchObject({
      repeated: 4999,
      openEdges: 3,
      gaps: 1,
      crowdedEdges: 0,
    });
    const both = triangles(5000, i => (i % 2 === 0 ? [0, 0, 0, 9, 0, 0, 0, 9, 0] : [0, 0, 0, 0, 9, 0, 9, 0, 0]));
    expect(checked(both).mesh.faults).toMatchObject({ repeated: 4998, openEdges: 0, crowdedEdges: 0 });
  });

  it('which corner they begin with makes no difference', () => {
    const again = [0, 0, 0, 9, 0, 0, 0, 9, 0];
    const form = triangles(3, i => [...again.slice(3 * i), ...again.slice(0, 3 * i)]);
    expect(checked(form).mesh.faults.repeated).toBe(2);
  });
});

describe('bodies in one place', () => {
  it('that are the same are one', () => {
    const box = boxForm([0, 0, 0], [3, 2, 1]);
    const { mesh } = checked(bodies(3, () => box));
    expect(mesh.faults).toMatchObject({ triangles: 36, repeated: 24, openEdges: 0, crowdedEdges: 0 });
    expectClose(solidOf(mesh.closed).volume, 6, ROUNDING);
  });

  it.each([
    { count: 300, told: expect.any(Number) },
    { count: 5000, told: null },
  ])('$count that go through each other: how much counts twice is told while that takes no age', ({ count, told }) => {
    const leaning = (i: number) => boxForm([i / 1e3, i / 1e3, i / 1e3], [99, 99 + i / 1e3, 99]);
    const { mesh, steps } = checked(bodies(count, leaning));
    expect(mesh.faults).toMatchObject({ gaps: 0, crossings: { isPartial: true }, countedTwice: told });
    expect(steps).toBeGreaterThan(30);
  });

  it('one in the other are held against each other in steps', () => {
    const cells = 60;
    const shells = bodies(2, i => ellipsoidMesh([400 - 50 * i, 90 - 20 * i, 80 - 20 * i], cells));
    const { mesh, steps } = checked(shells);
    expect(mesh.faults).toMatchObject({ cavities: 1, openEdges: 0 });
    expect(steps).toBeGreaterThan(20);
  });
});
