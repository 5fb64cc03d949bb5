import type { Tank } from '../boat/boat.ts';
import type { Cuttable, Immersion } from '../geometry/cut/immersion.ts';
import { fillTo } from '../geometry/cut/levelCut.ts';
import { scaledTo } from '../geometry/cut/scaled.ts';
import { boundsOf, sliceForeAft, solidOf } from '../geometry/cut/solids.ts';
import { add, scale, type Vec3 } from '../geometry/form/vector.ts';

/** A ballast tank as the hydrostatics see it. */
export interface TankBody {
  readonly tank: Tank;
  /** Inside volume, m3. */
  readonly capacity: number;
  readonly whole: Cuttable;
  /** Spaces whose water keeps a level surface of its own; empty for a piston or a bladder. */
  readonly cells: readonly Cuttable[];
}

/** Water that is free to move: it stays level, parallel to the surface outside. */
export interface FreeWater {
  readonly space: Cuttable;
  /** m3. */
  readonly volume: number;
}

/** Ballast water in one tank: what moves, and what does not. */
export interface TankLoad {
  readonly free: readonly FreeWater[];
  /** First moment of the water that holds still, m4, and its volume, m3. */
  readonly stillVolume: number;
  readonly stillMoment: Vec3;
}

const AFT: Vec3 = [1, 0, 0];
const FORWARD: Vec3 = [-1, 0, 0];

/** A tank, and the space in it as a solid: by its form, and so much as it holds. */
export function tankBody(tank: Tank, form: Cuttable): TankBody {
  const whole = scaledTo(form, tank.capacity);
  const hasSurface = tank.kind === 'sealed' || tank.kind === 'vented';
  return { tank, capacity: whole.volume, whole, cells: hasSurface ? cellsOf(tank, whole) : [] };
}

/** Each of a pair or a row keeps its water to itself. */
function cellsOf(tank: Tank, whole: Cuttable): readonly Cuttable[] {
  const { form, copies } = tank;
  if (copies === 1 || form.shape !== 'compound') return cellsOfOne(tank, whole);
  return form.parts.flatMap(part => {
    const one: Tank = { ...tank, form: part, copies: 1, capacity: tank.capacity / copies };
    return cellsOfOne(one, scaledTo(solidOf(part), one.capacity));
  });
}

function cellsOfOne(tank: Tank, whole: Cuttable): readonly Cuttable[] {
  if (tank.cells <= 1) return [whole];
  const { from, to } = boundsOf(tank.form);
  const step = (to[0] - from[0]) / tank.cells;
  const slices = Array.from({ length: tank.cells }, (_, i) =>
    sliceForeAft(tank.form, from[0] + i * step, from[0] + (i + 1) * step),
  );
  const cells = slices.flatMap(form => (form ? [solidOf(form)] : []));
  const share = whole.volume / cells.reduce((sum, { volume }) => sum + volume, 0);
  // Where nothing was measured the slices make up the whole but for rounding.
  return Math.abs(share - 1) < 1e-9 ? cells : cells.map(cell => scaledTo(cell, share * cell.volume));
}

/** The water in a tank filled to `fraction` (0..1) of its capacity. */
export function loadTank(body: TankBody, fraction: number): TankLoad {
  const volume = Math.min(Math.max(fraction, 0), 1) * body.capacity;
  if (volume <= 0) return { free: [], stillVolume: 0, stillMoment: [0, 0, 0] };
  if (fraction >= 1) return { free: [], stillVolume: body.capacity, stillMoment: body.whole.moment };
  if (body.cells.length > 0) {
    const free = body.cells.map(space => ({ space, volume: fraction * space.volume }));
    return { free, stillVolume: 0, stillMoment: [0, 0, 0] };
  }
  const stillMoment =
    body.tank.kind === 'piston' ? pistonMoment(body, volume) : scale(body.whole.moment, volume / body.capacity);
  return { free: [], stillVolume: volume, stillMoment };
}

/** A piston's water fills the form square to the boat's length, from one end on. */
function pistonMoment(body: TankBody, volume: number): Vec3 {
  const towards = body.tank.fillsFrom === 'forward' ? AFT : FORWARD;
  const { sums } = fillTo(body.whole, towards, volume);
  return [sums.mx, sums.my, sums.mz];
}

/** Free water lying level under the up direction `n`: its sums, waterplane and all. */
export const settle = (water: FreeWater, n: Vec3): Immersion => fillTo(water.space, n, water.volume).sums;

/** All loads as one. */
export function joinLoads(loads: readonly TankLoad[]): TankLoad {
  return {
    free: loads.flatMap(load => load.free),
    stillVolume: loads.reduce((sum, load) => sum + load.stillVolume, 0),
    stillMoment: loads.reduce<Vec3>((sum, load) => add(sum, load.stillMoment), [0, 0, 0]),
  };
}

/** Volume of all the water in a load, m3. */
export const loadVolume = (load: TankLoad): number =>
  load.free.reduce((sum, water) => sum + water.volume, load.stillVolume);

/** What all tanks together hold, m3. */
export const capacityOf = (bodies: readonly TankBody[]): number => bodies.reduce((sum, body) => sum + body.capacity, 0);

/**
 * The fill of each tank when all together are filled to `fill` of their whole capacity. Tanks fill together by fraction;
 * one with a share of 2 fills twice as fast as one of 1, until it is full. More than all hold, or less than nothing, is taken
 * for full or empty.
 */
export function shareFills(bodies: readonly TankBody[], fill: number): readonly number[] {
  const wanted = fill * capacityOf(bodies);
  const volumeAt = (progress: number) =>
    bodies.reduce((sum, { tank, capacity }) => sum + capacity * Math.min(1, progress * tank.share), 0);
  // Volume grows in straight pieces between the points where a tank gets full.
  const corners = [0, ...bodies.map(({ tank }) => 1 / tank.share).sort((a, b) => a - b)];
  const next = corners.findIndex(corner => volumeAt(corner) >= wanted);
  if (next <= 0) return bodies.map(() => (next === 0 ? 0 : 1));
  const [from, to] = [corners[next - 1]!, corners[next]!];
  const [least, most] = [volumeAt(from), volumeAt(to)];
  const progress = most > least ? from + ((to - from) * (wanted - least)) / (most - least) : to;
  return bodies.map(({ tank }) => Math.min(1, progress * tank.share));
}
