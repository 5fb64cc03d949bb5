import {
  addImmersed,
  type Cuttable,
  emptyImmersion,
  type Immersion,
} from '../../server/core/geometry/cut/immersion.ts';
import { levelFor } from '../../server/core/geometry/cut/levelCut.ts';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import { unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import { ball, cylinder, polyhedron, revolved } from '../geometry/helpers/forms.ts';
import { ellipsoidMesh, refined, torusMesh } from '../geometry/helpers/meshes.ts';
import { barge } from '../helpers/bodies.ts';
import { alike, type Section } from './check.ts';

const UP: Vec3 = [0, 0, 1];
const exact = alike({ source: 'CRC', known: 'from memory', unit: '', within: { relative: 1e-9 } });
/** Curved forms made of 4000 straight stretches, or of facets refined to the limit. */
const tabulated = alike({ source: 'CRC', known: 'from memory', unit: '', within: { relative: 1e-6 } });

function cutOf(body: Cuttable, n: Vec3, h: number): Immersion {
  const sums = emptyImmersion();
  addImmersed(body, n, h, sums);
  return sums;
}

const areaOf = (form: Form, endsClosed = false): number => wallOf(form, { endsClosed }).area;
const centroid = (body: Cuttable, axis: 0 | 1 | 2): number => body.moment[axis] / body.volume;

const STRETCHES = 4000;
/** Profile points at s(t), r(t), t from 0 to 1. */
const curve = (s: (t: number) => number, r: (t: number) => number): Form =>
  revolved(Array.from({ length: STRETCHES + 1 }, (_, i) => [s(i / STRETCHES), Math.max(0, r(i / STRETCHES))] as const));

const bar = cylinder(1, 1);
const half = cutOf(solidOf(bar), UP, 0);
const segment = cutOf(solidOf(bar), UP, -0.5);
const tank = cylinder(0.05, 0.4);
const tankWater = cutOf(solidOf(tank), UP, -0.03);

/** Round bar on end, radius 1, cut by a plane that rises from the base at `near` to 1 m at the far side. */
const hoof = (near: number): Immersion => {
  const n = unit([-1 / (1 - near), 0, 1]);
  return cutOf(solidOf(cylinder(1, 2, [0, 0, 0], [0, 0, 1])), n, (n[0] * near * 1) / 1);
};

const fillDepth = (fraction: number) => (): number => {
  const body = solidOf(bar);
  return levelFor(body, UP, fraction * body.volume) + 1;
};

const globe = ball(1);
const cap = cutOf(solidOf(globe), UP, -0.5);
const hemisphere = cutOf(solidOf(globe), UP, 0);
const skin = wallOf(globe, { endsClosed: false });
const wallCut = (h: number): Immersion => cutOf(skin.withVolume(skin.area), UP, h);

const frustum = revolved([
  [0, 2],
  [3, 1],
]);
const cone = revolved([
  [0, 1],
  [1, 0],
]);
const spheroid = curve(
  t => -2 * Math.cos(Math.PI * t),
  t => Math.sin(Math.PI * t),
);
const paraboloid = curve(
  t => 3 * t ** 2,
  t => 2 * t,
);
const capsule = curve(
  t => (t < 0.5 ? 0.05 * (1 - Math.cos(Math.PI * t)) : 0.35 - 0.05 * Math.cos(Math.PI * t)),
  t => 0.05 * Math.sin(Math.PI * t),
);
const cappedTube = revolved([
  [0, 0.05],
  [0.4, 0.05],
  [0.4, 0],
]);
const tetrahedron = polyhedron(
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
const tube = wallOf(tank, { endsClosed: false });
const tubeWet = cutOf(tube.withVolume(tube.area), UP, -0.025);
const heeledBox = ((): Immersion => {
  const n = unit([0, -0.2, 1]);
  return cutOf(solidOf(barge(1, 2, 3)), n, n[2]);
})();

export const solidSections: readonly Section[] = [
  {
    title: 'Solids and surfaces in closed form',
    checks: [
      exact('circular segment, R 1, sagitta 0.5: area', 0.6141848493, () => segment.volume),
      exact('its centroid from the centre', 0.7050201619, () => -segment.mz / segment.volume),
      exact('its chord', 1.7320508076, () => segment.area),
      exact('half circle: centroid', 0.4244131816, () => -half.mz / half.volume),
      exact('lying cylindrical tank 50 x 400 mm, 20 mm deep: volume', 447.295218, () => tankWater.volume * 1e6, {
        unit: 'ml',
      }),
      exact('its liquid’s centroid below the axis', 38.15526297, () => (-tankWater.mz / tankWater.volume) * 1e3, {
        unit: 'mm',
      }),
      exact('lying cylinder 10 % full: depth over radius', 0.3129511739, fillDepth(0.1)),
      exact('lying cylinder 25 % full: depth over radius', 0.5960272467, fillDepth(0.25)),
      exact('lying cylinder 75 % full: depth over radius', 1.4039727533, fillDepth(0.75)),
      exact('cylinder hoof through the diameter: volume', 2 / 3, () => hoof(0).volume, { source: 'Archimedes' }),
      exact('its centroid from the axis', 0.5890486225, () => hoof(0).mx / hoof(0).volume, {
        source: 'Harris & Stocker',
      }),
      exact('its centroid over the base', 0.2945243113, () => hoof(0).mz / hoof(0).volume, {
        source: 'Harris & Stocker',
      }),
      exact('ungula of base sagitta 0.5, height 1: volume', 0.2518405545, () => hoof(0.5).volume, {
        source: 'Harris & Stocker',
      }),
      exact('box 2 wide, 1 deep, tan 0.2: B to the low side', 0.0666666667, () => heeledBox.my / heeledBox.volume, {
        source: 'wall-sided formula',
      }),
      exact('its B over the base', 0.5066666667, () => heeledBox.mz / heeledBox.volume, {
        source: 'wall-sided formula',
      }),
      exact('spherical cap, R 1, height 0.5: volume', 0.6544984695, () => cap.volume),
      exact('its centroid from the centre', 0.675, () => -cap.mz / cap.volume),
      exact('its curved area', Math.PI, () => wallCut(-0.5).volume),
      exact('centroid of that area', 0.75, () => -wallCut(-0.5).mz / wallCut(-0.5).volume),
      exact('hemisphere: volume', 2.0943951024, () => hemisphere.volume),
      exact('its centroid', 0.375, () => -hemisphere.mz / hemisphere.volume),
      exact('its shell’s centroid', 0.5, () => -wallCut(0).mz / wallCut(0).volume),
      exact('frustum R 2, r 1, h 3: volume', 21.9911485751, () => solidOf(frustum).volume),
      exact('its centroid from the large end', 1.1785714286, () => centroid(solidOf(frustum), 0)),
      exact('its lateral area', 29.8037647974, () => areaOf(frustum)),
      exact('centroid of that area', 4 / 3, () => wallOf(frustum, { endsClosed: false }).centroid[0]),
      exact('cone: centroid at a quarter of its height', 0.25, () => centroid(solidOf(cone), 0)),
      exact('its side’s centroid at a third', 1 / 3, () => wallOf(cone, { endsClosed: false }).centroid[0]),
      exact('tube wetted to half its radius: share of the wall', 1 / 3, () => tubeWet.volume / tube.area),
      exact('its arc’s centroid over the radius', 0.8269933431, () => -tubeWet.mz / tubeWet.volume / 0.05),
      exact('tube with one flat end: area', 0.1256637061 + 0.0078539816, () => areaOf(cappedTube), { unit: 'm²' }),
      exact('its centroid', 0.2117647059, () => wallOf(cappedTube, { endsClosed: false }).centroid[0], { unit: 'm' }),
      exact('tetrahedron of three unit edges: volume', 1 / 6, () => solidOf(tetrahedron).volume),
      exact('its centroid', 0.25, () => centroid(solidOf(tetrahedron), 1)),
      tabulated('capsule R 0.05, straight 0.3: volume', 2.8797932658e-3, () => solidOf(capsule).volume, { unit: 'm³' }),
      tabulated('its area', 0.1256637061, () => areaOf(capsule), { unit: 'm²' }),
      tabulated('prolate spheroid 2, 1: area', 21.4784353279, () => areaOf(spheroid)),
      tabulated('paraboloid R 2, h 3: volume', 18.8495559215, () => solidOf(paraboloid).volume),
      tabulated('its centroid from the vertex', 2, () => centroid(solidOf(paraboloid), 0)),
      tabulated('ellipsoid 3, 2, 1 as a mesh: volume', 25.1327412287, () =>
        refined(cells => solidOf(ellipsoidMesh([3, 2, 1], cells)).volume, 32),
      ),
      tabulated('half of it: centroid', 1.125, () =>
        refined(cells => {
          const sums = cutOf(solidOf(ellipsoidMesh([3, 2, 1], cells)), [1, 0, 0], 0);
          return -sums.mx / sums.volume;
        }, 32),
      ),
      tabulated('ring R 0.1, bar 0.02 as a mesh: volume', 7.8956835209e-4, () =>
        refined(cells => solidOf(torusMesh(0.1, 0.02, cells)).volume, 32),
      ),
      tabulated('its area', 0.0789568352, () => refined(cells => areaOf(torusMesh(0.1, 0.02, cells)), 32)),
    ],
  },
];
