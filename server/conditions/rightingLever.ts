import { dot, type Vec3 } from '../geometry/vector.ts';
import { type Afloat, curvature, type EnergyState, energyAt } from './energy.ts';

/** The boat held at a heel, free to sink and trim. */
export interface LeverPoint {
  /** rad, positive to starboard; beyond 90° on the way to keel up. */
  readonly heel: number;
  /** Trim that it takes up there, rad, positive bow up. */
  readonly trim: number;
  /** Righting lever, m: positive turns it back from starboard. */
  readonly lever: number;
}

export interface RightingCurve {
  /** From 180° to port to 180° to starboard. */
  readonly points: readonly LeverPoint[];
  /** Heels between which the boat comes back to its rest, rad, the first to port; null when it does not stay upright at all. */
  readonly range: readonly [port: number, starboard: number] | null;
}

const STEP = Math.PI / 36;
const STEPS_A_SIDE = 36;
const TRIM_SETTLED = 1e-9;

/** The righting lever over all heels, and the range of stability about the rest nearest to upright. */
export function rightingCurve(boat: Afloat): RightingCurve {
  const starboard = sideOf(boat, 1);
  const port = sideOf(boat, -1).slice(1).reverse();
  const points = [...port, ...starboard];
  return { points, range: rangeOf(points, boat) };
}

function sideOf(boat: Afloat, side: 1 | -1): readonly LeverPoint[] {
  const points: LeverPoint[] = [];
  let trim = 0;
  let level: number | undefined;
  for (let i = 0; i <= STEPS_A_SIDE; i++) {
    const heel = side * i * STEP;
    const held = holdAtHeel(boat, heel, trim, level);
    trim = held.trim;
    level = Number.isFinite(held.state.level) ? held.state.level : undefined;
    points.push({ heel, trim, lever: leverAt(held.state, heel) });
  }
  return points;
}

/** Up for a heel about the boat's own axis and a trim after it. */
const upAt = (heel: number, trim: number): Vec3 => [
  -Math.sin(trim),
  -Math.cos(trim) * Math.sin(heel),
  Math.cos(trim) * Math.cos(heel),
];

/** The trim of least energy at a held heel: Newton, guarded by the energy. */
function holdAtHeel(
  boat: Afloat,
  heel: number,
  startTrim: number,
  guess: number | undefined,
): { readonly trim: number; readonly state: EnergyState } {
  let trim = startTrim;
  let state = energyAt(boat, upAt(heel, trim), guess);
  let longest = 0.3;
  for (let i = 0; i < 40; i++) {
    const towards: Vec3 = [-Math.cos(trim), Math.sin(trim) * Math.sin(heel), -Math.sin(trim) * Math.cos(heel)];
    const slope = dot(state.slope, towards);
    const stiffness = Math.abs(curvature(state, towards, towards));
    const wanted = stiffness > 0 ? -slope / stiffness : -Math.sign(slope) * longest;
    const step = Math.max(-longest, Math.min(longest, wanted));
    if (Math.abs(step) < TRIM_SETTLED || Math.abs(trim + step) > 1.5) break;
    const next = energyAt(boat, upAt(heel, trim + step), state.level);
    if (next.energy <= state.energy + 1e-14 * Math.abs(state.energy)) {
      trim += step;
      state = next;
    } else {
      longest = Math.abs(step) / 4;
    }
  }
  return { trim, state };
}

/** dE/d(heel) over the displacement, m. */
const leverAt = (state: EnergyState, heel: number): number =>
  dot(state.slope, [0, -Math.cos(heel), -Math.sin(heel)]) / state.totalMass;

/** Where the lever changes sign on either side of the upright rest. */
function rangeOf(points: readonly LeverPoint[], boat: Afloat): readonly [number, number] | null {
  const rests = crossings(points, boat).filter(crossing => crossing.isRest);
  const rest = rests.reduce<Crossing | null>(
    (nearest, next) => (!nearest || Math.abs(next.heel) < Math.abs(nearest.heel) ? next : nearest),
    null,
  );
  if (!rest || Math.abs(rest.heel) > Math.PI / 2) return null;
  const edges = crossings(points, boat).filter(crossing => !crossing.isRest);
  const starboard = edges.filter(edge => edge.heel > rest.heel).map(edge => edge.heel);
  const port = edges.filter(edge => edge.heel < rest.heel).map(edge => edge.heel);
  return [port.length > 0 ? Math.max(...port) : -Math.PI, starboard.length > 0 ? Math.min(...starboard) : Math.PI];
}

interface Crossing {
  readonly heel: number;
  /** The lever rises through nothing: the boat comes back. */
  readonly isRest: boolean;
}

function crossings(points: readonly LeverPoint[], boat: Afloat): readonly Crossing[] {
  return points.slice(1).flatMap((point, i) => {
    const before = points[i]!;
    if (before.lever < 0 === point.lever < 0) return [];
    return [{ heel: zeroBetween(before, point, boat), isRest: point.lever >= 0 }];
  });
}

/** The heel of no lever between two points, by bisection and false position in turn. */
function zeroBetween(a: LeverPoint, b: LeverPoint, boat: Afloat): number {
  let [low, high] = [a, b];
  for (let i = 0; i < 40 && high.heel - low.heel > 1e-6; i++) {
    const chord = low.heel - (low.lever * (high.heel - low.heel)) / (high.lever - low.lever);
    const heel = i % 2 === 0 ? chord : (low.heel + high.heel) / 2;
    const held = holdAtHeel(boat, heel, low.trim, undefined);
    const point = { heel, trim: held.trim, lever: leverAt(held.state, heel) };
    if (point.lever === 0) return heel;
    if (point.lever < 0 === low.lever < 0) low = point;
    else high = point;
  }
  return (low.heel + high.heel) / 2;
}
