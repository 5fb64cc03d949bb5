import { boundsOf } from '../../server/core/geometry/cut/solids.ts';
import type { Ball, Polyhedron, Revolved } from '../../server/core/geometry/form/form.ts';
import { add, cross, dot, scale, unit, type Vec3 } from '../../server/core/geometry/form/vector.ts';

/**
 * What water does to a body under a plane `n·p = h`, with d = h - n·p the depth: `depthSum` is the integral of d over the
 * wet part (m4; times density and gravity it is the energy of the water pushed up), `volume` the wet part.
 *
 * By the divergence theorem both come from the outer surface alone, without closing the cut: the field -n·d²/2 has
 * divergence d, so depthSum = -∮ (n·N) d²/2 dA over the wet surface, and volume = -∮ (n·N) d dA. Depth is linear over a
 * triangle, so each triangle is exact. The program goes another way: it closes the cut and sums moments.
 */
interface Pressed {
  depthSum: number;
  volume: number;
}

/** A single body. */
export type Single = Ball | Polyhedron | Revolved;

export interface PressedBody {
  under(n: Vec3, h: number): Pressed;
}

/** Facets round a body of revolution: the waterline is within two micrometres a centimetre of radius. */
const FACETS = 160;

export function pressedSolid(form: Single): PressedBody {
  if (form.shape === 'ball') return pressedBall(form);
  return overTriangles(trianglesOf(form), (sums, mean, n, area) => {
    const rising = n[0] * area[0] + n[1] * area[1] + n[2] * area[2];
    sums.depthSum -= (rising * mean.square) / 2;
    sums.volume -= rising * mean.depth;
  });
}

/** A thin wall over the surface of a form, `volume` of it in all, spread by area. */
export function pressedWall(form: Revolved, volume: number): PressedBody {
  const triangles = trianglesOf(form, false);
  const whole = triangles.reduce((sum, triangle) => sum + Math.hypot(...areaOf(triangle)), 0);
  const thickness = volume / whole;
  return overTriangles(triangles, (sums, mean, _, area) => {
    const amount = thickness * Math.hypot(area[0], area[1], area[2]);
    sums.depthSum += amount * mean.depth;
    sums.volume += amount * mean.wet;
  });
}

/** Visits each triangle with its means and its area as a vector along its outward normal. */
function overTriangles(
  triangles: readonly Triangle[],
  visit: (sums: Pressed, mean: Means, n: Vec3, area: Vec3) => void,
): PressedBody {
  const corners = Float64Array.from(triangles.flat(2));
  const areas = triangles.map(areaOf);
  return {
    under(n, h) {
      const sums = { depthSum: 0, volume: 0 };
      const depth = (k: number): number => h - n[0] * corners[k]! - n[1] * corners[k + 1]! - n[2] * corners[k + 2]!;
      for (let i = 0; i < areas.length; i++) {
        const [a, b, c] = [depth(9 * i), depth(9 * i + 3), depth(9 * i + 6)];
        if (a > 0 || b > 0 || c > 0) visit(sums, meansOver(a, b, c), n, areas[i]!);
      }
      return sums;
    },
  };
}

const areaOf = ([a, b, c]: Triangle): Vec3 => scale(cross(sub(b, a), sub(c, a)), 0.5);

/** Spherical segment up to t over the centre: volume π(2R³/3 + R²t - t³/3), moment about the centre -π(R² - t²)²/4. */
function pressedBall({ centre, radius }: Ball): PressedBody {
  return {
    under(n, h) {
      const depth = h - dot(n, centre);
      const t = Math.min(Math.max(depth, -radius), radius);
      const volume = Math.PI * ((2 * radius ** 3) / 3 + radius ** 2 * t - t ** 3 / 3);
      return { volume, depthSum: volume * depth + (Math.PI * (radius ** 2 - t ** 2) ** 2) / 4 };
    },
  };
}

/** Over a triangle: its wet share, and the means over all of it of depth and of its square, nought where dry. */
interface Means {
  readonly wet: number;
  readonly depth: number;
  readonly square: number;
}

/** For depths a, b, c at the corners, one of them positive at least. */
function meansOver(a: number, b: number, c: number): Means {
  const count = (a > 0 ? 1 : 0) + (b > 0 ? 1 : 0) + (c > 0 ? 1 : 0);
  const depth = (a + b + c) / 3;
  const square = (a * a + b * b + c * c + a * b + b * c + c * a) / 6;
  if (count === 3) return { wet: 1, depth, square };
  // The corner alone on its side has a triangle of its own, with depth nought along its third side.
  const alone = count === 1 ? Math.max(a, b, c) : Math.min(a, b, c);
  const [one, other] = alone === a ? [b, c] : alone === b ? [a, c] : [a, b];
  const share = alone ** 2 / ((alone - one) * (alone - other));
  const own = { depth: (share * alone) / 3, square: (share * alone ** 2) / 6 };
  if (count === 1) return { wet: share, ...own };
  return { wet: 1 - share, depth: depth - own.depth, square: square - own.square };
}

type Triangle = readonly [Vec3, Vec3, Vec3];
const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

function trianglesOf(form: Exclude<Single, Ball>, endsClosed = true): readonly Triangle[] {
  if (form.shape === 'revolved') return facetsOf(form, endsClosed);
  const { vertices, faces } = form;
  const point = (vertex: number): Vec3 => [vertices[3 * vertex]!, vertices[3 * vertex + 1]!, vertices[3 * vertex + 2]!];
  return Array.from({ length: faces.length / 3 }, (_, i) => [
    point(faces[3 * i]!),
    point(faces[3 * i + 1]!),
    point(faces[3 * i + 2]!),
  ]);
}

/** Facets whose polygon has the circle's area (a wall's: its circumference), so that volumes are those of the true body. */
function facetsOf({ origin, axis, profile }: Revolved, endsClosed: boolean): readonly Triangle[] {
  const part = (2 * Math.PI) / FACETS;
  const out = endsClosed ? Math.sqrt(part / Math.sin(part)) : part / 2 / Math.sin(part / 2);
  const across = unit(cross(axis, Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]));
  const third = cross(axis, across);
  const at = (s: number, radius: number, i: number): Vec3 => {
    const [y, z] = [out * radius * Math.cos(part * i), out * radius * Math.sin(part * i)];
    return add(add(add(origin, scale(axis, s)), scale(across, y)), scale(third, z));
  };
  const outline = endsClosed ? [[profile[0]![0], 0] as const, ...profile, [profile.at(-1)![0], 0] as const] : profile;
  return outline.slice(1).flatMap(([s1, r1], k) => {
    const [s0, r0] = outline[k]!;
    return Array.from({ length: FACETS }, (_, i): readonly Triangle[] => {
      const [a, b, c, d] = [at(s0, r0, i), at(s0, r0, i + 1), at(s1, r1, i + 1), at(s1, r1, i)];
      return [
        [a, b, c],
        [a, c, d],
      ];
    }).flat();
  });
}

/**
 * `n·moment` of `volume` of water lying level in a space: the greatest over levels h of h·volume - depthSum(h). Flat at
 * its top, so that a level found to 1e-8 is good for all digits.
 */
export function waterHeight(space: PressedBody, form: Single, volume: number, n: Vec3): number {
  const { from, to } = boundsOf(form);
  const middle = dot(n, scale(add(from, to), 0.5));
  const reach = Math.hypot(...sub(to, from)) / 2;
  let [low, high] = [middle - reach, middle + reach];
  let [under, over] = [-volume, space.under(n, high).volume - volume];
  // False position, halving the weight of an end that stays (Illinois).
  for (let i = 0; i < 100 && high - low > 1e-13; i++) {
    const level = (low * over - high * under) / (over - under);
    const miss = space.under(n, level).volume - volume;
    if (Math.abs(miss) < 1e-8 * volume) return level * volume - space.under(n, level).depthSum;
    if (miss < 0) {
      low = level;
      under = miss;
      over /= 2;
    } else {
      high = level;
      over = miss;
      under /= 2;
    }
  }
  const level = (low + high) / 2;
  return level * volume - space.under(n, level).depthSum;
}
