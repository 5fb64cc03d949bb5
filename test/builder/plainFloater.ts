import type { Boat, Tank } from '../../server/core/boat/boat.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { minimise } from '../accuracy/nelderMead.ts';
import type { Afloat, Floater, Hanging } from './figures.ts';
import {
  addUnder,
  lengthsOf,
  momentOf,
  type PlainBody,
  plainSolid,
  plainWall,
  reachOf,
  type Under,
  volumeOf,
} from './plainBody.ts';

/*
 * The other way of floating: the potential energy of boat, tank water and the water round about, figured by slices and
 * brought to its least by a simplex search that knows nothing of boats. Stiffness is the energy's second difference.
 */

interface PlainBoat {
  readonly density: number;
  /** Without tank water, kg and kg·m. */
  readonly mass: number;
  readonly moment: Vec3;
  readonly hull: PlainBody;
  readonly tanks: readonly PlainTank[];
}

interface PlainTank {
  readonly tank: Tank;
  readonly whole: PlainBody;
  readonly capacity: number;
  /** With a free surface each; none in a piston tank or a bladder. */
  readonly cells: readonly PlainBody[];
}

/** Floats and hangs a boat; G of each entry is taken as the boat has it. */
export const floatPlainly: Floater = boat => {
  const plain = plainBoat(boat);
  return { afloat: afloatOf(plain, boat.length), hanging: hangingOf(plain) };
};

function plainBoat(boat: Boat): PlainBoat {
  const weights = [...boat.shells, ...boat.compartments, ...boat.payload];
  const along = (axis: 0 | 1 | 2) => weights.reduce((sum, { mass, centroid }) => sum + mass * centroid[axis], 0);
  return {
    density: boat.water.density,
    mass: weights.reduce((sum, { mass }) => sum + mass, 0),
    moment: [along(0), along(1), along(2)],
    hull: [
      ...boat.shells.flatMap(({ form, volume }) => plainWall(form, volume)),
      ...boat.compartments.flatMap(({ form }) => plainSolid(form)),
      ...boat.tanks.flatMap(({ form, inside }) => (inside === null ? plainSolid(form) : [])),
      ...boat.payload.flatMap(({ form, inside }) => (inside === null && form ? plainSolid(form) : [])),
    ],
    tanks: boat.tanks.map(tank => {
      const whole = plainSolid(tank.form);
      const [from, to] = lengthsOf(tank.form);
      const step = (to - from) / tank.cells;
      const cells = Array.from({ length: tank.cells }, (_, i) =>
        plainSolid(tank.form, [from + i * step, from + (i + 1) * step]),
      );
      const hasSurface = tank.kind === 'sealed' || tank.kind === 'vented';
      return { tank, whole, capacity: volumeOf(whole), cells: hasSurface ? cells : [] };
    }),
  };
}

/** Lowest energies and levels of water in a space: the height under n·p below which there is so much of it. */
function levelOf(body: PlainBody, n: Vec3, volume: number): { readonly level: number; readonly depth: number } {
  let [low, high] = reachOf(body, n);
  let [atLow, atHigh] = [-volume, volumeOf(body) - volume];
  const sums: Under = { volume: 0, depth: 0 };
  let level = low;
  // The Illinois rule: false position, the end that stays counted half (Dowell & Jarratt 1971, from memory).
  for (let step = 0, last = 0; step < 60; step++) {
    level = (low * atHigh - high * atLow) / (atHigh - atLow);
    sums.volume = 0;
    sums.depth = 0;
    addUnder(body, n, level, sums);
    const over = sums.volume - volume;
    if (Math.abs(over) <= 1e-11 * volume) break;
    if (over < 0) {
      [low, atLow] = [level, over];
      if (last < 0) atHigh /= 2;
      last = -1;
    } else {
      [high, atHigh] = [level, over];
      if (last > 0) atLow /= 2;
      last = 1;
    }
  }
  return { level, depth: sums.depth };
}

/** Everything that weighs, tank water at a fill for each tank. */
interface Loaded {
  readonly mass: number;
  /** Moment of what weighs along n, kg·m: with the tank water as it lies then. */
  readonly along: (n: Vec3) => number;
}

function loaded({ density, mass, moment, tanks }: PlainBoat, fills: readonly number[]): Loaded {
  const still = tanks.map((tank, i) => stillMoment(tank, fills[i]!));
  const free = tanks.flatMap(({ cells }, i) =>
    fills[i]! > 0 && fills[i]! < 1 ? cells.map(cell => ({ cell, volume: fills[i]! * volumeOf(cell) })) : [],
  );
  const fixed = still.reduce((sum, add) => plus(sum, add, density), moment);
  return {
    mass: tanks.reduce((sum, { capacity }, i) => sum + density * fills[i]! * capacity, mass),
    along: n =>
      free.reduce(
        (sum, { cell, volume }) => {
          const { level, depth } = levelOf(cell, n, volume);
          return sum + density * (volume * level - depth);
        },
        dot(n, fixed),
      ),
  };
}

/** First moment of water that does not move, m4. */
function stillMoment({ tank, whole, capacity, cells }: PlainTank, fill: number): Vec3 {
  const all = momentOf(whole);
  if (fill >= 1 || (cells.length === 0 && tank.kind === 'bladder')) return times(all, fill);
  if (cells.length > 0 || fill <= 0) return [0, 0, 0];
  const [from, to] = lengthsOf(tank.form);
  const part = (share: number): PlainBody =>
    tank.fillsFrom === 'forward'
      ? plainSolid(tank.form, [from, from + share * (to - from)])
      : plainSolid(tank.form, [to - share * (to - from), to]);
  let [low, high] = [0, 1];
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (volumeOf(part(middle)) < fill * capacity) low = middle;
    else high = middle;
  }
  return momentOf(part(high));
}

/** Up by trim and heel, rad. */
const upFor = (trim: number, heel: number): Vec3 => unit([-Math.tan(trim), -Math.tan(heel), 1]);

const FAR = (80 / 180) * Math.PI;

function afloatOf(boat: PlainBoat, length: number): Afloat | null {
  const load = loaded(
    boat,
    boat.tanks.map(({ tank }) => tank.fill),
  );
  const { density, hull } = boat;
  if (load.mass >= density * volumeOf(hull)) return null;
  const sums: Under = { volume: 0, depth: 0 };
  const energy = ([height, trim, heel]: readonly number[]): number => {
    if (Math.abs(trim!) > FAR || Math.abs(heel!) > FAR) return Number.MAX_VALUE;
    const n = upFor(trim!, heel!);
    const h = n[0] * (length / 2) + n[2] * height!;
    sums.volume = 0;
    sums.depth = 0;
    addUnder(hull, n, h, sums);
    return load.along(n) - load.mass * h + density * sums.depth;
  };
  const start = levelOf(hull, [0, 0, 1], load.mass / density).level;
  const [draft, trim, heel] = minimise(energy, [start, 0, 0], [0.004, 0.01, 0.03]) as [number, number, number];
  if (Math.hypot(trim, heel) > FAR - 0.1) return null;
  const settled = (n: Vec3): number => {
    const { level, depth } = levelOf(hull, n, load.mass / density);
    return load.along(n) - load.mass * level + density * depth;
  };
  return { draft, trim, heel, gm: bendOf(settled, upFor(trim, heel), 1) / load.mass };
}

function hangingOf(boat: PlainBoat): Hanging | null {
  const { density, hull, tanks } = boat;
  const ballast = density * volumeOf(hull) - boat.mass;
  const capacity = tanks.reduce((sum, tank) => sum + tank.capacity, 0);
  const fill = ballast / (density * capacity);
  if (!(fill >= 0 && fill <= 1)) return null;
  const load = loaded(
    boat,
    tanks.map(() => fill),
  );
  const buoyancy = momentOf(hull);
  const energy = (n: Vec3): number => load.along(n) - density * dot(n, buoyancy);
  const by = ([trim, heel]: readonly number[]): number =>
    Math.abs(trim!) > FAR || Math.abs(heel!) > FAR ? Number.MAX_VALUE : energy(upFor(trim!, heel!));
  const [trim, heel] = minimise(by, [0, 0], [0.03, 0.03]) as [number, number];
  const stable = leastBend(energy, [0, 0, 1]) > 0;
  const judged: Vec3 = stable ? upFor(trim, heel) : [0, 0, 1];
  const left = Math.min(bendOf(energy, judged, 0), bendOf(energy, judged, 1));
  return { fill, trim, heel, bg: -energy(judged) / load.mass, bgLeft: left / load.mass, stable };
}

/** rad. */
const STEP = 2e-3;

/** Second difference of an energy when up turns within the plane of itself and another direction. */
function bendAlong(energy: (n: Vec3) => number, up: Vec3, way: Vec3): number {
  const at = (angle: number) => energy(plus(times(up, Math.cos(angle)), way, Math.sin(angle)));
  return (at(STEP) - 2 * at(0) + at(-STEP)) / STEP ** 2;
}

/** In trim (0) or heel (1): about the boat's own athwart and fore-and-aft axes. */
const bendOf = (energy: (n: Vec3) => number, up: Vec3, axis: 0 | 1): number =>
  bendAlong(energy, up, axis === 0 ? unit(cross(up, [0, 1, 0])) : unit(cross([1, 0, 0], up)));

function leastBend(energy: (n: Vec3) => number, up: Vec3): number {
  const [trims, heels] = [unit(cross(up, [0, 1, 0])), unit(cross([1, 0, 0], up))];
  const [a, b] = [bendAlong(energy, up, trims), bendAlong(energy, up, heels)];
  const c = bendAlong(energy, up, unit(plus(trims, heels, 1))) - (a + b) / 2;
  return (a + b) / 2 - Math.hypot((a - b) / 2, c);
}

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const times = (a: Vec3, f: number): Vec3 => [f * a[0], f * a[1], f * a[2]];
const plus = (a: Vec3, b: Vec3, f: number): Vec3 => [a[0] + f * b[0], a[1] + f * b[1], a[2] + f * b[2]];
const unit = (a: Vec3): Vec3 => times(a, 1 / Math.sqrt(dot(a, a)));
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
