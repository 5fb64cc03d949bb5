import { addImmersed, emptyImmersion, type Immersion } from '../../server/core/geometry/cut/immersion.ts';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import type { Form, Polyhedron } from '../../server/core/geometry/form/form.ts';
import { revolved } from '../geometry/helpers/forms.ts';
import { refined } from '../geometry/helpers/meshes.ts';
import * as suboff from '../geometry/helpers/suboff.ts';
import { alike, type Section } from './check.ts';

const FOOT = 0.3048;

/*
 * The bare hull of revolution, from its equations, tabulated in 3000 straight stretches a segment: what a builder's table
 * of radii would be, only finer. Straight stretches lie inside the curve, by 1e-7 of the volume here.
 */
const parts = suboff.segments(3000);
const hull = revolved([...parts.bow, ...parts.mid, ...parts.after, ...parts.cap]);
const volumeOf = (form: Form): number => solidOf(form).volume;
const areaOf = (form: Form): number => wallOf(form, { endsClosed: false }).area;

const published = alike({
  source: 'Groves et al., Table 1',
  known: 'derived',
  unit: 'ft³',
  within: { relative: 1e-6 },
});

/**
 * The Wigley hull below a wall-sided topside, L 100, B 10, T 5 (or its slim version): a mesh of `cells` stations and
 * waterlines a side, with a flat deck. Facets of a smooth surface err in even powers of their size.
 */
function wigleyMesh(length: number, breadth: number, draft: number, cells: number): Polyhedron {
  const vertices: number[] = [];
  const faces: number[] = [];
  const rows = cells + 1;
  const columns = 2 * cells + 3;
  for (let i = 0; i < rows; i++) {
    const x = (2 * i) / cells - 1;
    for (let j = 0; j < columns; j++) {
      // Round the section from the starboard deck edge under the keel to the port one.
      const k = j - cells - 1;
      const depth = Math.abs(k) > cells ? -0.5 : 1 - Math.abs(k) / cells;
      const half = (breadth / 2) * (1 - x ** 2) * (depth > 0 ? 1 - depth ** 2 : 1);
      vertices.push((length * (1 + x)) / 2, k < 0 ? half : -half, -depth * draft);
    }
  }
  const number = (i: number, j: number): number => i * columns + j;
  for (let i = 0; i < cells; i++) {
    for (let j = 0; j < columns; j++) {
      const [a, b] = [number(i, j), number(i, (j + 1) % columns)];
      const [c, d] = [number(i + 1, j), number(i + 1, (j + 1) % columns)];
      faces.push(a, c, d, a, d, b);
    }
  }
  return { shape: 'polyhedron', vertices: Float64Array.from(vertices), faces: Uint32Array.from(faces) };
}

const floating = (cells: number): Immersion => {
  const sums = emptyImmersion();
  addImmersed(solidOf(wigleyMesh(100, 10, 5, cells)), [0, 0, 1], 0, sums);
  return sums;
};
const inTheLimit = (figure: (sums: Immersion) => number) => (): number => refined(cells => figure(floating(cells)), 24);
const middle = (s: Immersion): number => s.xx - s.ax ** 2 / s.area;

const wettedArea = (): number =>
  refined(cells => {
    const wall = wallOf(wigleyMesh(1, 0.1, 0.0625, cells), { endsClosed: false });
    const sums = emptyImmersion();
    addImmersed(wall.withVolume(wall.area), [0, 0, 1], 0, sums);
    return sums.volume;
  }, 24);

const wigley = alike({ source: 'Wigley', known: 'from memory', unit: 'm', within: { relative: 1e-6 } });

export const hullSections: readonly Section[] = [
  {
    title: 'A published hull of revolution',
    about: 'From its equations, in 3000 straight stretches a segment; tolerances are those of the published digits.',
    checks: [
      published('displaced volume', 0.699, () => volumeOf(hull) * FOOT ** 3, {
        source: 'arXiv:2503.19674, Table 1',
        known: 'seen',
        unit: 'm³',
        within: { absolute: 0.0005 },
      }),
      published('displaced volume, equations integrated', 24.6924, () => volumeOf(hull)),
      published('wetted area', 5.988, () => areaOf(hull) * FOOT ** 2, {
        source: 'Crook',
        known: 'seen',
        unit: 'm²',
        within: { absolute: 0.0005 },
      }),
      published('wetted area, equations integrated', 64.45714, () => areaOf(hull), { unit: 'ft²' }),
      published('centre of buoyancy from the nose', 2.00861, () => (solidOf(hull).moment[0] / volumeOf(hull)) * FOOT, {
        unit: 'm',
        within: { absolute: 0.00001 },
      }),
      published('bow: volume', 5.2254275, () => volumeOf(revolved(parts.bow))),
      published('mid-body: volume', 15.9534002, () => volumeOf(revolved(parts.mid))),
      published('afterbody: volume', 3.5072951, () => volumeOf(revolved(parts.after))),
      published('cap: volume', 0.0062751, () => volumeOf(revolved(parts.cap)), { within: { relative: 1e-5 } }),
      published('bow: area', 14.8750108, () => areaOf(revolved(parts.bow)), { unit: 'ft²' }),
      published('mid-body: area', 38.2881605, () => areaOf(revolved(parts.mid)), { unit: 'ft²' }),
      published('afterbody: area', 11.1371022, () => areaOf(revolved(parts.after)), { unit: 'ft²' }),
      published('cap: area', 0.156866, () => areaOf(revolved(parts.cap)), { unit: 'ft²', within: { relative: 1e-5 } }),
      published(
        'prismatic coefficient',
        0.791941,
        () => volumeOf(hull) / (Math.PI * suboff.MAX_RADIUS ** 2 * suboff.LENGTH),
        { unit: '' },
      ),
    ],
  },
  {
    title: 'The Wigley hull',
    about:
      'As a mesh of 24, 48 and 96 stations and waterlines, taken to the limit of fine facets (Richardson); L 100, B 10, T 5 m.',
    checks: [
      wigley(
        'displaced volume, 4/9 LBT',
        20_000 / 9,
        inTheLimit(s => s.volume),
        { unit: 'm³' },
      ),
      wigley(
        'KB, 5T/8',
        3.125,
        inTheLimit(s => 5 + s.mz / s.volume),
      ),
      wigley(
        'BM, 3B²/35T',
        12 / 7,
        inTheLimit(s => s.yy / s.volume),
      ),
      wigley(
        'longitudinal BM, 3L²/40T',
        150,
        inTheLimit(s => middle(s) / s.volume),
      ),
      wigley(
        'waterplane area, 2/3 LB',
        2000 / 3,
        inTheLimit(s => s.area),
        { unit: 'm²' },
      ),
      wigley(
        'block coefficient',
        4 / 9,
        inTheLimit(s => s.volume / 5000),
        { unit: '' },
      ),
      wigley('wetted area over L², B 0.1, T 0.0625', 0.148791, wettedArea, { unit: '', within: { absolute: 0.0005 } }),
    ],
  },
];
