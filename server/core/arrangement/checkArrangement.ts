import type { Boat } from '../boat/boat.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Finding } from '../findings/finding.ts';
import { BLOCK_CORNERS } from '../geometry/form/box.ts';
import type { Form } from '../geometry/form/form.ts';
import { pacer, type Steps } from '../steps/steps.ts';
import { type Blame, blamesOf } from './blame.ts';
import { checkAboard, type Visitors } from './checkAboard.ts';
import { type Conflict, isSure } from './conflict.ts';
import { findingOf } from './findingOf.ts';
import type { Hull } from './hull.ts';
import type { Misfits } from './misfits.ts';
import type { Neighbours } from './neighbours.ts';
import type { Occupant } from './occupant.ts';
import { originMend, otherOrigins, type StationOrigin, shiftFrom } from './otherOrigin.ts';
import { perhapsInside } from './perhapsInside.ts';
import { mayMeet, takesRoom } from './sharedRoom.ts';

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
  const all = neighbours.occupantsOf(source);
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
  const world: World = { things: things.filter(({ entry }) => !hidden.has(entry)), hull, neighbours };
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
}

/** What lies where it cannot; `stoppedAt` is the first thing that is no longer held against its neighbours. */
interface Conflicts {
  readonly conflicts: readonly Conflict[];
  readonly stoppedAt: Occupant | null;
}

/**
 * So much is held against each other, two plain blocks being one, and so many things that share room are told: no boat has
 * as many.
 */
const MOST_HELD = 50_000;
const MOST_SHARING = 1000;
/** Any other form takes so many times as long, and a mesh longer with its triangles. */
const NOT_PLAIN = 50;
const TRIANGLES = 20;
/** So much of that is done in one step, and so many findings are put into words. */
const STEP = 200;
const TOLD = 10;

function* allConflicts({ things, hull, neighbours }: World): Steps<Conflicts> {
  const isDue = pacer(STEP);
  const conflicts: (Conflict | null)[] = [];
  for (const thing of things) {
    conflicts.push(yield* neighbours.againstHullSteps(thing, hull));
    if (isDue(effortOf(thing.form))) yield;
  }
  const homes = new Map(things.filter(({ kind }) => kind === 'compartment').map(home => [home.entry.name, home]));
  for (const thing of things) {
    const home = thing.inside === null ? undefined : homes.get(thing.inside);
    if (home) conflicts.push(neighbours.stickingOut(thing, home));
    if (home && isDue(effortOf(thing.form))) yield;
  }
  const sorted = things.filter(takesRoom).sort((a, b) => a.bounds.from[0] - b.bounds.from[0]);
  let [held, sharing] = [0, 0];
  let stoppedAt: Occupant | null = null;
  for (const [i, thing] of sorted.entries()) {
    if (held > MOST_HELD || sharing > MOST_SHARING) {
      stoppedAt = thing;
      break;
    }
    // Ends: those that begin aft of its end cannot meet it.
    for (let k = i + 1; k < sorted.length && sorted[k]!.bounds.from[0] <= thing.bounds.to[0]; k++) {
      const other = sorted[k]!;
      if (!mayMeet(thing, other)) continue;
      const conflict = neighbours.sharedRoomOf(thing, other);
      conflicts.push(conflict);
      const effort = Math.max(effortOf(thing.form), effortOf(other.form));
      held += effort;
      if (isDue(effort)) yield;
      sharing += Number(conflict !== null);
    }
  }
  return { conflicts: conflicts.filter(conflict => conflict !== null), stoppedAt };
}

/** How long a form takes to be held against another, a block or room without a form being one. */
function effortOf(form: Form | null): number {
  if (form === null) return 1;
  if (form.shape === 'compound') return Math.max(NOT_PLAIN, ...form.parts.map(effortOf));
  if (form.shape !== 'polyhedron') return NOT_PLAIN;
  const { length } = form.faces;
  return length === BLOCK_CORNERS.length ? 1 : NOT_PLAIN + length / 3 / TRIANGLES;
}

const notAllTold = ({ entry }: Occupant): Finding => ({
  code: 'room-not-all-told',
  severity: 'information',
  about: 'file',
  message: `So many things lie in each other’s room that “${entry.name}”, and what begins aft of it, is not held against its neighbours. Set right what is told of the others: the rest is looked at then.`,
  place: { on: 'entry', path: entry.path },
});

/** A thing would fit, if it lay elsewhere. */
function fits(thing: Occupant, { things, hull, neighbours }: World): boolean {
  if (neighbours.againstHull(thing, hull)) return false;
  const others = things.filter(({ entry }) => entry !== thing.entry);
  const home = others.find(({ kind, entry }) => kind === 'compartment' && entry.name === thing.inside);
  if (home && neighbours.stickingOut(thing, home)) return false;
  // Of most of them it is far away: nothing has to be found out, nor remembered.
  return !others.some(other => mayMeet(thing, other) && neighbours.sharedRoomOf(thing, other));
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
      if (fits(world.neighbours.movedAft(thing, by), settled)) fitting.push(thing);
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
