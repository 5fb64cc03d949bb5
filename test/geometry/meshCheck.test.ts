import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solidOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { type CheckedMesh, checkMeshSteps } from '../../server/core/geometry/mesh/meshCheck.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { expectClose, ROUNDING } from './helpers/close.ts';
import { polyhedron } from './helpers/forms.ts';
import { ellipsoidMesh, prismMesh, torusMesh } from './helpers/meshes.ts';

const checkMesh = (raw: Polyhedron) => finish(checkMeshSteps(raw));

// Expected figures follow from the bodies' own shapes: boxes, pyramids, prisms.

/** Every triangle with corners of its own, as STL has them. */
function soup({ vertices, faces }: Polyhedron, shake: (i: number) => number = () => 0): Polyhedron {
  const loose = new Float64Array(3 * faces.length);
  faces.forEach((vertex, i) => {
    for (let k = 0; k < 3; k++) loose[3 * i + k] = vertices[3 * vertex + k]! + shake(3 * i + k);
  });
  return { shape: 'polyhedron', vertices: loose, faces: Uint32Array.from(faces, (_, i) => i) };
}

const joined = (...forms: readonly Polyhedron[]): Polyhedron => {
  const starts = forms.map((_, i) => forms.slice(0, i).reduce((sum, form) => sum + form.vertices.length / 3, 0));
  return {
    shape: 'polyhedron',
    vertices: Float64Array.from(forms.flatMap(form => Array.from(form.vertices))),
    faces: Uint32Array.from(forms.flatMap((form, i) => Array.from(form.faces, vertex => vertex + starts[i]!))),
  };
};

const turned = (form: Polyhedron, which: (face: number) => boolean = () => true): Polyhedron => ({
  ...form,
  faces: form.faces.map((vertex, i) =>
    which(Math.trunc(i / 3)) && i % 3 > 0 ? form.faces[i % 3 === 1 ? i + 1 : i - 1]! : vertex,
  ),
});

const without = (form: Polyhedron, ...faces: readonly number[]): Polyhedron => ({
  ...form,
  faces: form.faces.filter((_, i) => !faces.includes(Math.trunc(i / 3))),
});

const cube = (from: Vec3, side: number): Polyhedron => boxForm(from, [from[0] + side, from[1] + side, from[2] + side]);

function check(form: Polyhedron): CheckedMesh {
  const checked = checkMesh(form);
  if (!checked) throw new Error('The mesh has no extent');
  return checked;
}

const volume = (form: Polyhedron): number => solidOf(form).volume;

describe('a sound mesh', () => {
  it('is put together from loose triangles', () => {
    const { surface, closed, outer, faults } = check(soup(cube([5, 0, 0], 2)));
    expect(surface.vertices).toHaveLength(24);
    expect(closed).toBe(surface);
    expect(outer).toBe(surface);
    expectClose(volume(surface), 8, ROUNDING);
    expect(faults).toEqual({
      triangles: 12,
      tolerance: 1e-6 * Math.sqrt(12),
      joined: 0,
      degenerate: 0,
      repeated: 0,
      openEdges: 0,
      gaps: 0,
      widestGap: 0,
      atStake: 0,
      crowdedEdges: 0,
      twisted: 0,
      turned: 0,
      cavities: 0,
      crossings: { pairs: 0, isPartial: false, at: null },
      countedTwice: null,
    });
  });

  it.each([
    ['an ellipsoid', ellipsoidMesh([450, 60, 50], 40)],
    ['a ring', torusMesh(100, 20, 40)],
    ['a prism', prismMesh(38, 480, 48)],
  ])('%s crosses nothing and keeps its volume', (_, form) => {
    const { faults, surface } = check(soup(form));
    expect(faults).toMatchObject({ openEdges: 0, crowdedEdges: 0, turned: 0, crossings: { pairs: 0 } });
    expectClose(volume(surface), volume(form), ROUNDING);
  });

  it('joins corners that lie apart by less than the tolerance, and only those', () => {
    const side = 100;
    const shaken = (size: number) => check(soup(cube([0, 0, 0], side), i => (i % 7 === 0 ? size : 0)));
    const near = shaken(0.5e-6 * side);
    expect(near.faults.joined).toBeGreaterThan(0);
    expect(near.faults.openEdges).toBe(0);
    const far = shaken(5e-6 * side);
    expect(far.faults.joined).toBe(0);
    expect(far.faults.openEdges).toBeGreaterThan(0);
  });

  it('leaves out triangles with two corners in one spot', () => {
    const box = cube([0, 0, 0], 1);
    const { faults, surface } = check({ ...box, faces: Uint32Array.from([...box.faces, 0, 0, 1, 3, 2, 3]) });
    expect(faults).toMatchObject({ triangles: 14, degenerate: 2, openEdges: 0 });
    expect(surface.faces).toHaveLength(36);
  });
});

describe('a mesh that is inside out', () => {
  it('is turned over whole', () => {
    const { faults, surface } = check(soup(turned(cube([0, 0, 0], 1))));
    expect(faults).toMatchObject({ turned: 12, openEdges: 0 });
    expectClose(volume(surface), 1, ROUNDING);
  });

  it('is turned over where neighbours disagree, whichever they are', () => {
    const form = ellipsoidMesh([3, 2, 1], 10);
    fc.assert(
      fc.property(fc.infiniteStream(fc.boolean()), stream => {
        const flips = Array.from({ length: form.faces.length / 3 }, () => stream.next().value);
        const { faults, surface } = check(soup(turned(form, face => flips[face]!)));
        expect(faults.turned).toBe(flips.filter(flip => flip).length);
        expect(faults.openEdges).toBe(0);
        expectClose(volume(surface), volume(form), ROUNDING);
      }),
      { numRuns: 30 },
    );
  });

  it('faces inward round a hollow, whichever way that was drawn', () => {
    const outer = cube([0, 0, 0], 4);
    const inner = cube([1, 1, 1], 2);
    for (const hollow of [inner, turned(inner)]) {
      const { faults, surface, outer: outside } = check(soup(joined(outer, hollow)));
      expect(faults.cavities).toBe(1);
      expect(faults.turned).toBe(hollow === inner ? 12 : 0);
      expectClose(volume(surface), 64 - 8, ROUNDING);
      // Water meets the outer cube only.
      expectClose(volume(outside), 64, ROUNDING);
    }
  });

  it('takes a solid in a hollow as a solid', () => {
    const { faults, surface, outer } = check(joined(cube([0, 0, 0], 6), cube([1, 1, 1], 4), cube([2, 2, 2], 2)));
    expect(faults.cavities).toBe(1);
    expectClose(volume(surface), 216 - 64 + 8, ROUNDING);
    expectClose(volume(outer), 216, ROUNDING);
  });

  it('lets a piece that only reaches into another be', () => {
    const { faults, surface } = check(joined(cube([0, 0, 0], 4), cube([3, 1, 1], 2)));
    expect(faults.cavities).toBe(0);
    expectClose(volume(surface), 64 + 8, ROUNDING);
  });

  it('has no outside at all on a band with half a twist', () => {
    const turns = 12;
    const edge = (i: number, side: number): Vec3 => {
      const round = (2 * Math.PI * i) / turns;
      const out = 10 + side * Math.cos(round / 2);
      return [out * Math.cos(round), out * Math.sin(round), side * Math.sin(round / 2)];
    };
    const points = Array.from({ length: turns }, (_, i) => [edge(i, -2), edge(i, 2)]).flat();
    const faces = Array.from({ length: turns }, (_, i) => {
      const last = i === turns - 1;
      const [a, b] = [2 * i, 2 * i + 1];
      const [c, d] = last ? [1, 0] : [2 * i + 2, 2 * i + 3];
      return [
        [a, c, b],
        [b, c, d],
      ];
    }).flat();
    expect(check(polyhedron(points, faces)).faults.twisted).toBe(1);
  });
});

describe('a mesh with holes', () => {
  it('a cube without a side is closed straight across, and a sixth of it hangs on that', () => {
    const box = cube([0, 0, 0], 1);
    const { faults, closed, surface } = check(soup(without(box, 0, 1)));
    expect(faults).toMatchObject({ openEdges: 4, gaps: 1, widestGap: 1 });
    expectClose(faults.atStake, 1 / 6, ROUNDING);
    expectClose(volume(closed), 1, ROUNDING);
    expect(surface.faces).toHaveLength(30);
  });

  it('a tube without both ends hangs on them for a third', () => {
    const tube = prismMesh(0.04, 0.5, 24);
    const ends = Array.from({ length: 24 }, (_, i) => [4 * i, 4 * i + 1]).flat();
    const { faults, closed } = check(soup(without(tube, ...ends)));
    expect(faults).toMatchObject({ openEdges: 48, gaps: 2 });
    expectClose(faults.widestGap, 0.08, ROUNDING);
    expectClose(faults.atStake, 1 / 3, ROUNDING);
    expectClose(volume(closed), volume(tube), ROUNDING);
  });

  it('closes an open mesh that was inside out as well', () => {
    const { faults, closed } = check(without(turned(cube([0, 0, 0], 1)), 5));
    expect(faults).toMatchObject({ turned: 11, gaps: 1, openEdges: 3 });
    expectClose(volume(closed), 1, ROUNDING);
  });

  it('edges that do not meet corner to corner are seams, not gaps', () => {
    const box = cube([0, 0, 0], 1);
    // The first triangle parts at the middle of a side; its neighbour across knows nothing of the new corner.
    const [a, b, c] = box.faces;
    const middle = [0, 1, 2].map(axis => (box.vertices[3 * a! + axis]! + box.vertices[3 * b! + axis]!) / 2);
    const split: Polyhedron = {
      shape: 'polyhedron',
      vertices: Float64Array.from([...box.vertices, ...middle]),
      faces: Uint32Array.from([a!, 8, c!, 8, b!, c!, ...box.faces.slice(3)]),
    };
    const { faults, closed } = check(soup(split));
    expect(faults).toMatchObject({ openEdges: 3, gaps: 0, widestGap: 0, atStake: 0 });
    expectClose(volume(closed), 1, ROUNDING);
  });

  it('a seam that ends at the corners of a side is no hole of its size', () => {
    // A cube whose top is four triangles about its middle, each of them halved again from the middle of its rim.
    const box = cube([0, 0, 0], 1);
    const top = (x: number, y: number): Vec3 => [x, y, 1];
    const rim = [top(0, 0), top(0.5, 0), top(1, 0), top(1, 0.5), top(1, 1), top(0.5, 1), top(0, 1), top(0, 0.5)];
    const lid = polyhedron(
      [top(0.5, 0.5), ...rim],
      rim.map((_, i) => [0, 1 + i, 1 + ((i + 1) % 8)]),
    );
    const { faults, closed } = check(soup(joined(without(box, 10, 11), lid)));
    expect(faults).toMatchObject({ openEdges: 12, gaps: 0, atStake: 0 });
    expectClose(volume(closed), 1, ROUNDING);
  });

  it('a sheet without any inside is all gap', () => {
    const { faults } = check(
      polyhedron(
        [
          [0, 0, 0],
          [1, 0, 0],
          [1, 1, 0],
          [0, 1, 0],
        ],
        [
          [0, 1, 2],
          [0, 2, 3],
        ],
      ),
    );
    expect(faults).toMatchObject({ openEdges: 4, gaps: 1, atStake: 1 });
  });
});

describe('a mesh that is not a surface everywhere', () => {
  it('two cubes along one edge have it in common, four triangles to it', () => {
    const { faults, closed } = check(soup(joined(cube([0, 0, 0], 1), cube([1, 1, 0], 1))));
    expect(faults).toMatchObject({ crowdedEdges: 1, openEdges: 0, gaps: 0 });
    expectClose(volume(closed), 2, ROUNDING);
  });

  it('a bulkhead drawn as a single sheet takes nothing from the volume', () => {
    const wall = polyhedron(
      [
        [1, 0, 0],
        [1, 1, 0],
        [1, 1, 1],
        [1, 0, 1],
      ],
      [
        [0, 1, 2],
        [0, 2, 3],
      ],
    );
    // Two cubes side by side without the sides between them, and the sheet there instead.
    const shell = joined(without(cube([0, 0, 0], 1), 2, 3), without(cube([1, 0, 0], 1), 0, 1), wall);
    const { faults, closed } = check(soup(shell));
    expect(faults.crowdedEdges).toBe(4);
    expectClose(volume(closed), 2, ROUNDING);
  });
});

describe('a mesh that crosses itself', () => {
  it.each([
    { apart: 0.5, shared: 0.5 },
    { apart: 0.9, shared: 0.1 },
  ])('two cubes $apart apart count $shared of a cube twice', ({ apart, shared }) => {
    // Turned a little, so that no faces lie in one plane.
    const lean = (form: Polyhedron): Polyhedron => ({
      ...form,
      vertices: form.vertices.map((value, i) => value + 1e-4 * form.vertices[i - (i % 3) + ((i + 1) % 3)]!),
    });
    const { faults } = check(soup(joined(cube([0, 0, 0], 1), lean(cube([apart, 0, 0], 1)))));
    expect(faults.crossings.pairs).toBeGreaterThan(0);
    expect(faults.crossings.at?.[0]).toBeGreaterThanOrEqual(apart - 0.001);
    // Off by 64 lines a side: a per cent of what is there.
    expectClose(faults.countedTwice!, shared / (2 - shared), 0.02);
  });

  it('bodies that only touch do not cross', () => {
    const faces = soup(joined(cube([0, 0, 0], 1), cube([1, 0.25, 0.25], 0.5)));
    expect(check(faces).faults.crossings.pairs).toBe(0);
  });

  it('finds what trying all pairs finds', () => {
    const form = soup(joined(ellipsoidMesh([3, 2, 1], 9), ellipsoidMesh([1, 1.5, 2.5], 8)));
    const side = (p: readonly number[], q: readonly number[], r: readonly number[], s: readonly number[]): number => {
      const [u, v, w] = [q, r, s].map(end => end.map((value, axis) => value - p[axis]!)) as [
        number[],
        number[],
        number[],
      ];
      return (
        u[0]! * (v[1]! * w[2]! - v[2]! * w[1]!) +
        u[1]! * (v[2]! * w[0]! - v[0]! * w[2]!) +
        u[2]! * (v[0]! * w[1]! - v[1]! * w[0]!)
      );
    };
    const corner = (i: number) => Array.from(form.vertices.subarray(3 * i, 3 * i + 3));
    const pierces = (p: number[], q: number[], t: number[][]): boolean => {
      const [a, b, c] = t as [number[], number[], number[]];
      if (side(a, b, c, p) > 0 === side(a, b, c, q) > 0) return false;
      const signs = [side(p, q, a, b) > 0, side(p, q, b, c) > 0, side(p, q, c, a) > 0];
      return signs.every(sign => sign === signs[0]);
    };
    const count = form.faces.length / 3;
    const triangle = (f: number) => [corner(3 * f), corner(3 * f + 1), corner(3 * f + 2)];
    const shares = (a: number[][], b: number[][]) =>
      a.some(p => b.some(q => p.every((value, axis) => value === q[axis])));
    let pairs = 0;
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++) {
        const [a, b] = [triangle(i), triangle(j)];
        if (shares(a, b)) continue;
        const goes = (s: number[][], t: number[][]) => s.some((p, k) => pierces(p, s[(k + 1) % 3]!, t));
        if (goes(a, b) || goes(b, a)) pairs++;
      }
    }
    expect(pairs).toBeGreaterThan(20);
    expect(check(form).faults.crossings).toMatchObject({ pairs, isPartial: false });
  });
});

describe('nothing to check', () => {
  it('a mesh without extent is none', () => {
    expect(checkMesh(polyhedron([[1, 2, 3]], [[0, 0, 0]]))).toBeNull();
    expect(checkMesh({ shape: 'polyhedron', vertices: new Float64Array(), faces: new Uint32Array() })).toBeNull();
  });
});
