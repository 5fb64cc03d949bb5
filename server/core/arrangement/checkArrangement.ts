import type { Boat } from '../boat/boat.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Finding } from '../findings/finding.ts';
import { pacer, type Steps } from '../steps/steps.ts';
import { type Blame, blamesOf } from './blame.ts';
import { checkAboard, type Visitors } from './checkAboard.ts';
import { type Conflict, isSure } from './conflict.ts';
import { effortBetween, effortWithin, type Held, heldSoFar } from './effort.ts';
import { findingOf } from './findingOf.ts';
import type { Hull } from './hull.ts';
import type { Misfits } from './misfits.ts';
import type { Neighbours } from './neighbours.ts';
import type { Occupant } from './occupant.ts';
import { originMend, otherOrigins, type StationOrigin, shiftFrom } from './otherOrigin.ts';
import { perhapsInside } from './perhapsInside.ts';
import { mayMeet, mayShareRoom, takesRoom } from './sharedRoom.ts';

/** What is left out of the check: what a fault elsewhere in the file leaves in uncertainty. */
export interface Doubts {
  /** Of some thing not all is known, and of which. */
  readonly isAnyDoubtful: boolean;
  readonly isDoubtful: (thing: Occupant) => boolean;
  /** The file says the hull’s length. */
  readonly hasLength: boolean;
  /** Some shell could not be read. */
  readonly lacksShells: boolean;
}

/**
 * Whatever has a known place, against the hull, its compartment and its neighbours, by its true form and with the
 * tolerances of its place and sizes. One finding for all that one wrong figure accounts for. What is carried at times only is
 * held against all that by itself.
 */
export function* checkArrangement(
  source: BoatSource,
  neighbours: Neighbours,
  doubts: Doubts,
  visitors: readonly Visitors[],
): Steps<readonly Finding[]> {
  const { boat } = source;
  const all = yield* neighbours.occupantSteps(source);
  yield;
  const things = doubts.isAnyDoubtful ? all.filter(thing => !doubts.isDoubtful(thing)) : all;
  const known = neighbours.hullOf(things, doubts.hasLength ? boat.length : null);
  const hull: Hull = doubts.lacksShells ? { ...known, outside: () => null } : known;
  const find = () => misfitsOf(boat, things, hull, neighbours);
  // What is doubtful is not among the things, and may have changed.
  const { findings, hidden } = yield* things === all
    ? neighbours.misfitsOf({ things, hull, units: boat.units }, find)
    : find();
  const coming = visitors.filter(({ aboard }) => aboard.length > 0);
  if (coming.length === 0) return findings;
  const lone = things.filter(({ entry }) => !hidden.has(entry));
  const ofComing: Finding[] = [];
  for (const each of coming) {
    yield;
    ofComing.push(...(yield* checkAboard(each, { source, things: lone, hull, neighbours })));
  }
  return [...findings, ...ofComing];
}

function* misfitsOf(boat: Boat, things: readonly Occupant[], hull: Hull, neighbours: Neighbours): Steps<Misfits> {
  const inside = yield* perhapsInside(boat, neighbours.shapes);
  const hidden = new Set(inside.keys());
  const lone = things.filter(({ entry }) => !hidden.has(entry));
  const world: World = { things: lone, hull, neighbours, held: heldSoFar() };
  yield;
  const { conflicts, stoppedAt } = yield* allConflicts(world);
  yield;
  const blames = blamesOf(conflicts, things, hull);
  // A compartment that is out of place itself may well lie elsewhere than round the thing.
  const wrong = new Set(blames.flatMap(({ of }) => (of ? [of.entry.name] : [])));
  const told = [...inside.values()].flatMap(({ home, finding }) => (wrong.has(home) ? [] : [finding]));
  const untold = stoppedAt ? [notAllTold(stoppedAt)] : [];
  return { conflicts, hidden, findings: [...told, ...(yield* findingsOf(blames, world, boat)), ...untold] };
}

interface World {
  readonly things: readonly Occupant[];
  readonly hull: Hull;
  readonly neighbours: Neighbours;
  readonly held: Held;
}

/** What lies where it cannot. */
interface Conflicts {
  readonly conflicts: readonly Conflict[];
  readonly stoppedAt: StoppedAt | null;
}

/** The first thing that is no longer held against something, and nothing after it is. */
interface StoppedAt {
  readonly thing: Occupant;
  readonly against: 'the hull' | 'its compartment' | 'its neighbours';
}

/** So many things that share room are told: no boat has as many. */
const MOST_SHARING = 1000;
/** So many findings are put into words in one step. */
const TOLD = 10;

function* allConflicts(world: World): Steps<Conflicts> {
  const { things, neighbours, held } = world;
  const conflicts: (Conflict | null)[] = [];
  for (const thing of things) {
    if (held.isOver()) return { conflicts: found(conflicts), stoppedAt: { thing, against: 'the hull' } };
    conflicts.push(yield* withHull(thing, world));
  }
  const homes = homesIn(things);
  for (const thing of things) {
    if (held.isOver()) return { conflicts: found(conflicts), stoppedAt: { thing, against: 'its compartment' } };
    conflicts.push(yield* withHome(thing, homes, world));
  }
  const sorted = things.filter(takesRoom).sort((a, b) => a.bounds.from[0] - b.bounds.from[0]);
  let sharing = 0;
  let stoppedAt: StoppedAt | null = null;
  for (const [i, thing] of sorted.entries()) {
    if (held.isOver() || sharing > MOST_SHARING) {
      stoppedAt = { thing, against: 'its neighbours' };
      break;
    }
    // Ends: those that begin aft of its end cannot meet it.
    for (let k = i + 1; k < sorted.length && sorted[k]!.bounds.from[0] <= thing.bounds.to[0]; k++) {
      const other = sorted[k]!;
      if (!mayMeet(thing, other)) continue;
      const conflict = neighbours.sharedRoomOf(thing, other);
      conflicts.push(conflict);
      if (held.add(effortBetween(thing, other, neighbours.shapes))) yield;
      sharing += Number(conflict !== null);
    }
  }
  return { conflicts: found(conflicts), stoppedAt };
}

const found = (conflicts: readonly (Conflict | null)[]): readonly Conflict[] =>
  conflicts.filter(conflict => conflict !== null);

const homesIn = (things: readonly Occupant[]): ReadonlyMap<string, Occupant> =>
  new Map(things.filter(isHome).map(home => [home.entry.name, home]));

function* withHull(thing: Occupant, { hull, neighbours, held }: World): Steps<Conflict | null> {
  const conflict = yield* neighbours.againstHullSteps(thing, hull);
  if (held.add(effortWithin(thing))) yield;
  return conflict;
}

/** With the compartment that it says it lies in. */
function* withHome(
  thing: Occupant,
  homes: ReadonlyMap<string, Occupant>,
  { neighbours, held }: World,
): Steps<Conflict | null> {
  const home = thing.inside === null ? undefined : homes.get(thing.inside);
  if (!home) return null;
  const conflict = neighbours.stickingOut(thing, home);
  if (held.add(effortWithin(thing))) yield;
  return conflict;
}

const notAllTold = ({ thing: { entry }, against }: StoppedAt): Finding => ({
  code: 'room-not-all-told',
  severity: 'information',
  about: 'file',
  message:
    against === 'its neighbours'
      ? `So many things lie in each other’s room that “${entry.name}”, and what begins aft of it, is not held against its neighbours. Set right what is told of the others: the rest is looked at then.`
      : `There are so many things, each of a row counted, that “${entry.name}”, and what comes after it, is not held against ${against}, and nothing against its neighbours. Write down as one block what lies in long rows.`,
  place: { on: 'entry', path: entry.path },
});

/** A thing would fit, if it lay elsewhere; it does not where nothing more is looked at. */
function* fits(thing: Occupant, world: World): Steps<boolean> {
  const { things, neighbours, held } = world;
  if (held.isOver()) return false;
  const others = things.filter(({ entry }) => entry !== thing.entry);
  if (yield* withHull(thing, world)) return false;
  if (yield* withHome(thing, homesIn(others), world)) return false;
  for (const other of others) {
    // Of most of them it is far away: nothing has to be found out, nor remembered.
    if (!mayShareRoom(thing, other)) continue;
    if (neighbours.sharedRoomOf(thing, other)) return false;
    if (held.add(effortBetween(thing, other, neighbours.shapes))) yield;
    if (held.isOver()) return false;
  }
  return true;
}

function* findingsOf(blames: readonly Blame[], world: World, boat: Boat): Steps<readonly Finding[]> {
  const { length } = world.hull;
  // Which origin would mend which thing: only for things that surely lie wrong, by themselves or with what they lie in.
  const suspects = new Set(blames.flatMap(({ conflicts }) => conflicts.filter(isSure).map(({ of }) => of)));
  const settled: World = { ...world, things: world.things.filter(thing => !suspects.has(thing) || isHome(thing)) };
  const counting = length === null ? null : { length, units: boat.units };
  const isDue = pacer(TOLD);
  const mended: { readonly origin: StationOrigin; readonly things: readonly Occupant[] }[] = [];
  for (const origin of otherOrigins(boat.units)) {
    const fitting: Occupant[] = [];
    for (const thing of suspects) {
      const by = counting && shiftFrom(origin, thing, counting);
      if (by === null) continue;
      yield;
      if (yield* fits(world.neighbours.movedAft(thing, by), settled)) fitting.push(thing);
    }
    mended.push({ origin, things: fitting });
  }
  const findings: Finding[] = [];
  for (const blame of blames) {
    if (isDue(1)) yield;
    const own = blame.conflicts.map(({ of }) => of);
    const mends = mended.flatMap(({ origin, things }) => {
      const [one] = things.filter(thing => own.includes(thing));
      if (!one || !counting) return [];
      const alone = one === blame.of ? [originMend(origin, [one], counting)] : [];
      return things.length > 1 ? [...alone, originMend(origin, things, counting)] : alone;
    });
    findings.push(findingOf(blame, { mends, length, boat, things: world.things, shapes: world.neighbours.shapes }));
  }
  return findings;
}

const isHome = ({ kind }: Occupant): boolean => kind === 'compartment';
