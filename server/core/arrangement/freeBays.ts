import type { Bay, Tank } from '../boat/boat.ts';
import { TAPE } from '../boat/placed.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import type { Steps } from '../steps/steps.ts';
import type { Hull } from './hull.ts';
import type { Occupant } from './occupant.ts';

/** What is in the way in a bay, and the bay as a thing among the others. */
export interface Blockage {
  readonly hull: Hull;
  readonly home: Occupant | undefined;
  readonly lies: Occupant;
  /** Other compartments and tanks that share its box. */
  readonly inTheWay: readonly Occupant[];
}

export function blockageOf(bay: Bay, occupants: readonly Occupant[], hull: Hull): Blockage {
  const lies = occupants.find(({ entry }) => entry === bay)!;
  const inTheWay = occupants.filter(
    ({ kind, entry, form, inside, bounds }) =>
      (kind === 'compartment' || (kind === 'tank' && (entry as Tank).kind !== 'bladder')) &&
      form !== null &&
      inside === lies.inside &&
      ([0, 1, 2] as const).every(
        axis => bounds.from[axis] < lies.bounds.to[axis] && bounds.to[axis] > lies.bounds.from[axis],
      ),
  );
  const home = occupants.find(({ kind, entry }) => kind === 'compartment' && entry.name === lies.inside);
  return { hull, home, lies, inTheWay };
}

/**
 * A bay by the room that is free in it: inside the hull or its compartment, and outside of other compartments and of
 * tanks. One that is free as it is written stays the same; one that has no free room is of no size.
 */
export function* bayInFree(bay: Bay, blockage: Blockage, shapes: Shapes): Steps<Bay> {
  const isFree = freedom(blockage, shapes);
  if (gridOf(bay, LOOKED_AT).every(plane => plane.every(row => row.every(isFree)))) return bay;
  yield;
  return { ...bay, ...(yield* largestFree(bay, isFree)) };
}

/** Places along each axis: of a first look, and where there is something in the way. */
const LOOKED_AT = [9, 3, 3] as const;
const DIVIDED = [49, 9, 9] as const;

/** Whether a place in a bay is free. */
function freedom({ hull, home, lies, inTheWay }: Blockage, shapes: Shapes): (place: Vec3) => boolean {
  const { length, keel, outside } = hull;
  const depths = inTheWay.map(({ form }) => shapes.depthIn(form!));
  const depthAtHome = home?.form ? shapes.depthIn(home.form) : null;
  const isWithin = depthAtHome
    ? (place: Vec3) => depthAtHome(place) >= -lies.fitted
    : ([x, y, z]: Vec3) =>
        x >= -TAPE &&
        (length === null || x <= length + TAPE) &&
        z >= keel - TAPE &&
        (outside([x, y, z]) ?? 0) <= lies.fitted;
  return place => isWithin(place) && depths.every(depth => depth(place) <= TAPE);
}

type Counts = readonly [number, number, number];

const marksOf = ({ from, to }: Bounds, counts: Counts): readonly (readonly number[])[] =>
  counts.map((count, axis) =>
    Array.from({ length: count }, (_, i) => from[axis]! + ((to[axis]! - from[axis]!) * i) / (count - 1)),
  );

/** Places in a box by height, offset and station. */
function gridOf(room: Bounds, counts: Counts): readonly (readonly (readonly Vec3[])[])[] {
  const [stations, offsets, heights] = marksOf(room, counts);
  return heights!.map(z => offsets!.map(y => stations!.map((x): Vec3 => [x, y, z])));
}

/** The largest block between places of the grid of which all are free; of no size where there is none. */
function* largestFree(room: Bounds, isFree: (place: Vec3) => boolean): Steps<Bounds> {
  const free: (readonly (readonly boolean[])[])[] = [];
  for (const plane of gridOf(room, DIVIDED)) {
    free.push(plane.map(row => row.map(isFree)));
    yield;
  }
  const [stations, offsets, heights] = marksOf(room, DIVIDED);
  let best: Bounds = { from: room.from, to: room.from };
  let most = 0;
  for (let low = 0; low < heights!.length; low++) {
    for (let port = 0; port < offsets!.length; port++) {
      for (let high = low + 1; high < heights!.length; high++) {
        for (let starboard = port + 1; starboard < offsets!.length; starboard++) {
          const across = (offsets![starboard]! - offsets![port]!) * (heights![high]! - heights![low]!);
          const run = longestRun(stations!.length, i => {
            for (let k = low; k <= high; k++)
              for (let j = port; j <= starboard; j++) if (!free[k]![j]![i]) return false;
            return true;
          });
          const volume = across * (stations![run[1]]! - stations![run[0]]!);
          if (volume <= most) continue;
          most = volume;
          best = {
            from: [stations![run[0]]!, offsets![port]!, heights![low]!],
            to: [stations![run[1]]!, offsets![starboard]!, heights![high]!],
          };
        }
      }
    }
  }
  return best;
}

/** First and last of the most in a row that are free; the same twice where no two are. */
function longestRun(count: number, isFree: (i: number) => boolean): readonly [number, number] {
  let best: readonly [number, number] = [0, 0];
  let start = -1;
  for (let i = 0; i < count; i++) {
    if (!isFree(i)) start = -1;
    else {
      if (start < 0) start = i;
      if (i - start > best[1] - best[0]) best = [start, i];
    }
  }
  return best;
}
