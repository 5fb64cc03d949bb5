import type { Bay, Entry } from '../boat/boat.ts';
import type { BoatSource } from '../boat/source.ts';
import { keepLast, once, onceInSteps } from '../geometry/shapes/once.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { finish, type Steps } from '../steps/steps.ts';
import { againstHullSteps } from './againstHull.ts';
import type { Conflict } from './conflict.ts';
import { type Blockage, bayInFree, blockageOf } from './freeBays.ts';
import { type Hull, hullOf } from './hull.ts';
import { stickingOut } from './inCompartment.ts';
import { type Arranging, type KeptMisfits, type Misfits, misfitsAlike } from './misfits.ts';
import { type Occupant, occupantSteps, occupantsOf } from './occupant.ts';
import { movedAft } from './otherOrigin.ts';
import { sharedRoomOf } from './sharedRoom.ts';

/**
 * What was found between the things of a boat, kept as long as both stay as they are: a keystroke changes one of them, and
 * only that one is held against the others anew.
 */
export interface Neighbours {
  readonly shapes: Shapes;
  occupantsOf(source: BoatSource): readonly Occupant[];
  /** The same in steps. */
  occupantSteps(source: BoatSource): Steps<readonly Occupant[]>;
  hullOf(things: readonly Occupant[], length: number | null): Hull;
  againstHull(thing: Occupant, hull: Hull): Conflict | null;
  /** The same in steps: the hull is cut where the thing lies, and every place of it held against that. */
  againstHullSteps(thing: Occupant, hull: Hull): Steps<Conflict | null>;
  stickingOut(thing: Occupant, home: Occupant): Conflict | null;
  sharedRoomOf(one: Occupant, two: Occupant): Conflict | null;
  /** What is found of how things lie; of such as lie alike it is found once. */
  misfitsOf(arranging: Arranging, find: () => Steps<Misfits>): Steps<Misfits>;
  /** A thing where it would lie so much further aft, m. */
  movedAft(thing: Occupant, by: number): Occupant;
  /** The bays of a boat by the room that is free in them, as `bayInFree` cuts each; the same list where all are free. */
  freeBays(source: BoatSource): readonly Bay[];
  /** The same in steps. */
  freeBaySteps(source: BoatSource): Steps<readonly Bay[]>;
}

/** Hulls that are remembered: the boat by its file, and as the trials have it, each before and after the last keystroke. */
const HULLS = 4;

/** Arrangements that are remembered: as the file is, and as it would be with a mend or a part moved. */
const LAST_MISFITS = 2;

/** Places of a thing that are remembered: one for each origin that it may have been counted from. */
const MOVES = 4;

interface KnownHull {
  readonly things: readonly Occupant[];
  readonly length: number | null;
  readonly hull: Hull;
}

interface KnownBay extends Blockage {
  readonly free: Bay;
}

export function createNeighbours(shapes: Shapes): Neighbours {
  const occupants = new WeakMap<Entry, Occupant>();
  const hulls: KnownHull[] = [];
  const misfits: KeptMisfits[] = [];
  const bays = new WeakMap<Bay, KnownBay>();
  const moved = new WeakMap<Occupant, Map<number, Occupant>>();
  const hullConflicts = pairs<Hull>();
  const homeConflicts = pairs<Occupant>();
  const roomConflicts = pairs<Occupant>();
  const allOf = (source: BoatSource) => occupantsOf(source, shapes, occupants);
  const hullOfThings = (things: readonly Occupant[], length: number | null): Hull => {
    const ofHull = things.filter(({ kind }) => kind === 'shell' || kind === 'compartment');
    const known = hulls.find(each => each.length === length && sameThings(each.things, ofHull));
    if (known) return known.hull;
    const hull = hullOf(ofHull, length, shapes);
    hulls.unshift({ things: ofHull, length, hull });
    hulls.splice(HULLS);
    return hull;
  };
  function* freeBaySteps(source: BoatSource): Steps<readonly Bay[]> {
    const written = source.boat.bays;
    if (written.length === 0) return written;
    const things = allOf(source);
    const hull = hullOfThings(things, source.boat.length);
    const free: Bay[] = [];
    for (const bay of written) {
      const blockage = blockageOf(bay, things, hull);
      const known = bays.get(bay);
      const isSame = known?.hull === hull && sameThings(known.inTheWay, blockage.inTheWay);
      const cut = isSame ? known.free : yield* bayInFree(bay, blockage, shapes);
      if (!isSame) bays.set(bay, { ...blockage, free: cut });
      free.push(cut);
    }
    return free.every((bay, i) => bay === written[i]) ? written : free;
  }
  const againstHullOnce = (thing: Occupant, hull: Hull): Steps<Conflict | null> =>
    hullConflicts.ofSteps(thing, hull, () => againstHullSteps(thing, hull, shapes));
  return {
    shapes,
    occupantsOf: allOf,
    occupantSteps: source => occupantSteps(source, shapes, occupants),
    hullOf: hullOfThings,
    againstHull: (thing, hull) => finish(againstHullOnce(thing, hull)),
    againstHullSteps: againstHullOnce,
    stickingOut: (thing, home) => homeConflicts.of(thing, home, () => stickingOut(thing, home, shapes)),
    sharedRoomOf: (one, two) => roomConflicts.of(one, two, () => sharedRoomOf(one, two, shapes)),
    *misfitsOf(arranging, find) {
      const known = misfits.map(kept => misfitsAlike(arranging, kept)).find(found => found !== null);
      const found = known ?? (yield* find());
      misfits.unshift({ ...arranging, ...found });
      misfits.splice(LAST_MISFITS);
      return found;
    },
    movedAft: (thing, by) => {
      const known = once(moved, thing, () => new Map<number, Occupant>());
      const there = known.get(by) ?? movedAft(thing, by);
      keepLast(known, by, there, MOVES);
      return there;
    },
    freeBays: source => finish(freeBaySteps(source)),
    freeBaySteps,
  };
}

const sameThings = (some: readonly Occupant[], others: readonly Occupant[]): boolean =>
  some.length === others.length && some.every((thing, i) => thing === others[i]);

/** Conflicts of a thing with another, each found once. */
function pairs<Other extends object>() {
  const known = new WeakMap<Occupant, WeakMap<Other, { readonly conflict: Conflict | null }>>();
  const knownOf = (thing: Occupant) =>
    once(known, thing, () => new WeakMap<Other, { readonly conflict: Conflict | null }>());
  return {
    of: (thing: Occupant, other: Other, find: () => Conflict | null): Conflict | null =>
      once(knownOf(thing), other, () => ({ conflict: find() })).conflict,
    *ofSteps(thing: Occupant, other: Other, find: () => Steps<Conflict | null>): Steps<Conflict | null> {
      const found = yield* onceInSteps(knownOf(thing), other, function* () {
        return { conflict: yield* find() };
      });
      return found.conflict;
    },
  };
}
