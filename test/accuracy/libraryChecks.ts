import { addImmersed, emptyImmersion } from '../../server/core/geometry/cut/immersion.ts';
import { solidOf } from '../../server/core/geometry/cut/solids.ts';
import type { Form, Polyhedron, Revolved } from '../../server/core/geometry/form/form.ts';
import { subtract, type Vec3 } from '../../server/core/geometry/form/vector.ts';
import type { Section } from './check.ts';
import { between, randomFrom } from './random.ts';
import { latheOf, randomDirection, randomMotion, randomSolid, SOLID_KINDS } from './randomSolids.ts';
import { loadSolidLibrary, type SolidLibrary } from './solidLibrary.ts';

const FLAT_SOLIDS = 160;
const ROUND_SOLIDS = 40;
const SEED = 20260;

/** Worst differences of a run of solids: volume over the whole volume; centroid in m, weighed by the part cut off. */
interface Worst {
  volume: number;
  centroid: number;
}

function ours(form: Form, n: Vec3, h: number): { readonly volume: number; readonly centroid: Vec3 } {
  const sums = emptyImmersion();
  addImmersed(solidOf(form), n, h, sums);
  return { volume: sums.volume, centroid: [sums.mx, sums.my, sums.mz].map(m => m / sums.volume) as unknown as Vec3 };
}

/** A plane in any direction, anywhere across the solid. */
function randomPlane(form: Form, random: () => number): { readonly n: Vec3; readonly h: number } {
  const n = randomDirection(random);
  const [lowest, highest] = solidOf(form).extent(n);
  return { n, h: between(random, lowest, highest) };
}

/** The same facets on both sides. */
function compareFlat(library: SolidLibrary): Worst {
  const random = randomFrom(SEED);
  const worst: Worst = { volume: 0, centroid: 0 };
  for (let i = 0; i < FLAT_SOLIDS; i++) {
    const form = randomSolid(SOLID_KINDS[i % SOLID_KINDS.length]!, random);
    const whole = solidOf(form).volume;
    const { n, h } = randomPlane(form, random);
    const mine = ours(form, n, h);
    const theirs = library.below(form, n, h);
    const apart = Math.hypot(...subtract(mine.centroid, theirs.centroid));
    worst.volume = Math.max(worst.volume, Math.abs(mine.volume - theirs.volume) / whole);
    worst.centroid = Math.max(worst.centroid, (apart * mine.volume) / whole);
  }
  return worst;
}

/** The true body of revolution on our side; 64, 128 and 256 facets, taken to the limit, on the library's. */
function compareRound(library: SolidLibrary): number {
  const random = randomFrom(SEED + 1);
  let worst = 0;
  for (let i = 0; i < ROUND_SOLIDS; i++) {
    const points = 2 + Math.floor(between(random, 0, 4));
    const profile = Array.from(
      { length: points },
      (_, j) => [0.06 * j + between(random, 0, 0.03), between(random, 0.01, 0.05)] as const,
    );
    const move = randomMotion(random);
    const origin = move([0, 0, 0]);
    const form: Revolved = { shape: 'revolved', origin, axis: subtract(move([0, 0, 1]), origin), profile };
    const { n, h } = randomPlane(form, random);
    const [coarse, middle, fine] = [64, 128, 256].map(
      sides => library.below(facetted(profile, sides, move), n, h).volume,
    );
    const limit = (64 * fine! - 20 * middle! + coarse!) / 45;
    worst = Math.max(worst, Math.abs(ours(form, n, h).volume - limit) / solidOf(form).volume);
  }
  return worst;
}

function facetted(profile: Revolved['profile'], sides: number, move: (p: Vec3) => Vec3): Polyhedron {
  const { points, faces } = latheOf(profile, sides);
  return {
    shape: 'polyhedron',
    vertices: Float64Array.from(points.flatMap(p => move(p))),
    faces: Uint32Array.from(faces.flat()),
  };
}

/** Immersed volumes and centroids of random solids at random tilts against the library. */
export async function librarySection(): Promise<Section> {
  const library = await loadSolidLibrary();
  const flat = compareFlat(library);
  const round = compareRound(library);
  const shared = { source: 'solid modelling', known: 'computed', expected: 0 } as const;
  return {
    title: 'Random solids against a solid modelling library',
    about:
      'Any tilt, any level; boxes, prisms over star-shaped outlines, frusta of 16 to 63 facets, rings. The library rounds its meshes to single precision and drops corners that lie in a face.',
    checks: [
      {
        ...shared,
        what: `volume below, worst of ${FLAT_SOLIDS} solids of flat faces, over the whole volume`,
        unit: '',
        within: { absolute: 2e-8 },
        got: () => flat.volume,
      },
      {
        ...shared,
        what: `centroid below, worst of ${FLAT_SOLIDS}, times the share cut off`,
        unit: 'm',
        within: { absolute: 2e-8 },
        got: () => flat.centroid,
      },
      {
        ...shared,
        what: `volume below, worst of ${ROUND_SOLIDS} bodies of revolution against facets in the limit, over the whole volume`,
        unit: '',
        within: { absolute: 1e-5 },
        got: () => round,
      },
    ],
  };
}
