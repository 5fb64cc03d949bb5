import type { Boat } from '../boat/boat.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Finding } from '../findings/finding.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { againstHull } from './againstHull.ts';
import { type Blame, blamesOf } from './blame.ts';
import { checkAboard, type Visitors } from './checkAboard.ts';
import { type Conflict, isSure } from './conflict.ts';
import { findingOf } from './findingOf.ts';
import { type Hull, hullOf } from './hull.ts';
import { stickingOut } from './inCompartment.ts';
import { type Occupant, occupantsOf } from './occupant.ts';
import { originMend, otherOrigins, readFrom } from './otherOrigin.ts';
import { perhapsInside } from './perhapsInside.ts';
import { sharedRoomOf } from './sharedRoom.ts';

/** What is left out of the check: what a fault elsewhere in the file leaves in uncertainty. */
export interface Doubts {
  /** Of this thing not all is known. */
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
export function checkArrangement(
  source: BoatSource,
  shapes: Shapes,
  doubts: Doubts,
  visitors: readonly Visitors[],
): readonly Finding[] {
  const { boat } = source;
  const things = occupantsOf(source, shapes).filter(thing => !doubts.isDoubtful(thing));
  const inside = perhapsInside(boat, shapes);
  const known = hullOf(things, doubts.hasLength ? boat.length : null, shapes);
  const hull: Hull = doubts.lacksShells ? { ...known, outside: () => null } : known;
  const lone = things.filter(({ entry }) => !inside.has(entry));
  const world: World = { things: lone, hull, shapes };
  const conflicts = allConflicts(world);
  const blames = blamesOf(conflicts, things, hull);
  return [
    ...inside.values(),
    ...findingsOf(blames, world, boat),
    ...visitors.flatMap(each => checkAboard(each, { source, things: lone, hull, shapes })),
  ];
}

interface World {
  readonly things: readonly Occupant[];
  readonly hull: Hull;
  readonly shapes: Shapes;
}

function allConflicts({ things, hull, shapes }: World): readonly Conflict[] {
  const conflicts: (Conflict | null)[] = things.map(thing => againstHull(thing, hull, shapes));
  const homes = new Map(things.filter(({ kind }) => kind === 'compartment').map(home => [home.entry.name, home]));
  const sorted = [...things].sort((a, b) => a.bounds.from[0] - b.bounds.from[0]);
  for (const [i, thing] of sorted.entries()) {
    const home = thing.inside === null ? undefined : homes.get(thing.inside);
    if (home) conflicts.push(stickingOut(thing, home, shapes));
    // Ends: those that begin aft of its end cannot meet it.
    for (let k = i + 1; k < sorted.length && sorted[k]!.bounds.from[0] <= thing.bounds.to[0]; k++) {
      conflicts.push(sharedRoomOf(thing, sorted[k]!, shapes));
    }
  }
  return conflicts.filter(conflict => conflict !== null);
}

/** A thing would fit, if it lay elsewhere. */
function fits(thing: Occupant, { things, hull, shapes }: World): boolean {
  if (againstHull(thing, hull, shapes)) return false;
  const others = things.filter(({ entry }) => entry !== thing.entry);
  const home = others.find(({ kind, entry }) => kind === 'compartment' && entry.name === thing.inside);
  if (home && stickingOut(thing, home, shapes)) return false;
  return !others.some(other => sharedRoomOf(thing, other, shapes));
}

function findingsOf(blames: readonly Blame[], world: World, boat: Boat): readonly Finding[] {
  const { length } = world.hull;
  // Which origin would mend which thing: only for things that surely lie wrong, by themselves or with what they lie in.
  const suspects = new Set(blames.flatMap(({ conflicts }) => conflicts.filter(isSure).map(({ of }) => of)));
  const settled: World = { ...world, things: world.things.filter(thing => !suspects.has(thing) || isHome(thing)) };
  const counting = length === null ? null : { length, units: boat.units };
  const mended = otherOrigins(boat.units).map(origin => ({
    origin,
    things: [...suspects].filter(thing => {
      const there = counting && readFrom(origin, thing, counting);
      return there !== null && fits(there, settled);
    }),
  }));
  return blames.map(blame => {
    const own = blame.conflicts.map(({ of }) => of);
    const mends = mended.flatMap(({ origin, things }) => {
      const [one] = things.filter(thing => own.includes(thing));
      if (!one || !counting) return [];
      const alone = one === blame.of ? [originMend(origin, [one], counting)] : [];
      return things.length > 1 ? [...alone, originMend(origin, things, counting)] : alone;
    });
    return findingOf(blame, { mends, length, boat, things: world.things, shapes: world.shapes });
  });
}

const isHome = ({ kind }: Occupant): boolean => kind === 'compartment';
