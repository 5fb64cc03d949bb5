import type { PartEntry } from '../../../../schema/hull.ts';
import { samePath } from '../../../../schema/path.ts';
import type { Boat, Part } from '../../boat/boat.ts';
import type { Source } from '../../boat/source.ts';
import type { Former, TankReading, Trial } from '../../boat/trial.ts';
import { assembleBodies, type Bodies, type BodyCache } from '../../bodies/assemble.ts';
import { capacityOf, shareFills, type TankBody } from '../../bodies/tankWater.ts';
import { addImmersed, emptyImmersion } from '../../geometry/cut/immersion.ts';
import { levelFor } from '../../geometry/cut/levelCut.ts';
import type { Vec3 } from '../../geometry/form/vector.ts';

/** The boat as it was on the day of a trial: with the pieces that were on board, as they were, and in the water of that day. */
export function dayBoat(boat: Boat, trial: Trial): Boat {
  if (isAsFiled(trial)) return boat;
  const payload = dayPayload(boat.payload, trial, {
    partOf: part => part,
    asWas: ({ entry }) => entry,
  });
  return { ...boat, payload, water: trial.water ?? boat.water };
}

/** Nothing was other than the file has it. */
export const isAsFiled = ({ aboard, without, formerly, pool }: Trial): boolean =>
  aboard.length === 0 && without.length === 0 && formerly.length === 0 && pool === null;

/** Was on board that day, as far as the trial tells. */
export const isOnBoard = ({ name, path }: Pick<Part, 'name' | 'path'>, { without, formerly }: Trial): boolean =>
  !without.includes(name) && !formerly.some(was => was.part === null && samePath(was.path, path));

/** Parts, or what else stands for them. */
interface Carried<P> {
  readonly partOf: (one: P) => Part;
  readonly asWas: (was: Source<PartEntry, Part>) => P;
}

/** What was carried on the day: the file's entries, each as it was; those that are ashore now; then the day's own pieces. */
export function dayPayload<P>(filed: readonly P[], trial: Trial, { partOf, asWas }: Carried<P>): readonly P[] {
  const isFiled = (was: Former) => filed.some(one => samePath(partOf(one).path, was.path));
  const onBoard = filed.flatMap(one => {
    if (!isOnBoard(partOf(one), trial)) return [];
    const was = trial.formerly.find(({ path }) => samePath(path, partOf(one).path))?.part;
    return [was ? asWas(was) : one];
  });
  const ashoreNow = trial.formerly.flatMap(was =>
    was.part && !isFiled(was) && isOnBoard(was.part.entry, trial) ? [asWas(was.part)] : [],
  );
  return [...onBoard, ...ashoreNow, ...trial.aboard.map(asWas)];
}

/** The bodies of the boat on that day, with what was read to be left in the tanks. */
export function dayBodies(boat: Boat, trial: Trial, cache: BodyCache): Bodies {
  const bodies = assembleBodies(dayBoat(boat, trial), cache);
  if (trial.left === null) return bodies;
  const fills = fillsRead(trial.left, bodies.tanks);
  const tanks = bodies.tanks.map((body, i) => ({ ...body, tank: { ...body.tank, fill: fills[i] ?? 0 } }));
  return { ...bodies, tanks };
}

/** The tank that a level was read in. */
export const tankOf = (named: string | null, tanks: readonly TankBody[]): TankBody | undefined =>
  named === null ? tanks[0] : tanks.find(({ tank }) => tank.name === named);

/** The fill of every tank by a reading of a boat on an even keel, 0..1; a level tells only of the tank it was read in. */
export function fillsRead(reading: TankReading, tanks: readonly TankBody[]): readonly number[] {
  if (reading.of === 'fill') return shareFills(tanks, reading.value);
  if (reading.of === 'water') return shareFills(tanks, reading.value / capacityOf(tanks));
  const read = tankOf(reading.tank, tanks);
  return tanks.map(body => (body === read ? fillAtLevel(body, reading.value) : body.tank.fill));
}

const LEVEL: Vec3 = [0, 0, 1];

/** Part of a tank that is full when its water stands `depth` m above its lowest point, the boat on an even keel. */
function fillAtLevel({ whole, capacity }: TankBody, depth: number): number {
  const sums = emptyImmersion();
  addImmersed(whole, LEVEL, whole.extent(LEVEL)[0] + depth, sums);
  return sums.volume / capacity;
}

/**
 * Height of a tank's water above its lowest point, m, square to the baseline at the middle of the tank's length on its
 * own centre line, with the boat lying so that `up` is up. Cells between bulkheads and pistons are passed over: the
 * water is taken as one level.
 */
export function levelInTank({ whole, capacity }: TankBody, fill: number, up: Vec3): number {
  const level = levelFor(whole, up, fill * capacity);
  const [fore, aft] = whole.extent([1, 0, 0]);
  const [port, starboard] = whole.extent([0, 1, 0]);
  const height = (level - (up[0] * (fore + aft)) / 2 - (up[1] * (port + starboard)) / 2) / up[2];
  return height - whole.extent(LEVEL)[0];
}
