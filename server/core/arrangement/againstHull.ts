import { TAPE } from '../boat/placed.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { pacer, type Steps } from '../steps/steps.ts';
import { type Conflict, PERHAPS, TOWARDS } from './conflict.ts';
import type { Hull } from './hull.ts';
import { type Occupant, placesOn } from './occupant.ts';

/** What stands outside by its name may reach past the hull by this share of its length. */
const REACH = 0.1;

/** A thing against the hull’s length, its keel and the outer form of its shells: the worst of what it does there, or null. */
export function* againstHullSteps(thing: Occupant, hull: Hull, shapes: Shapes): Steps<Conflict | null> {
  if (thing.outside === 'said') return null;
  return pastTheEnds(thing, hull) ?? belowKeel(thing, hull) ?? (yield* outOfShells(thing, hull, shapes));
}

/** Past the bow tip or the stern. */
function pastTheEnds(thing: Occupant, { length }: Hull): Conflict | null {
  if (length === null) return null;
  const { from, to } = thing.bounds;
  const [ahead, astern] = [-from[0], to[0] - length];
  const by = Math.max(ahead, astern) - freeReach(thing, length);
  const where = TOWARDS[0][ahead > astern ? 0 : 1];
  const station = ahead > astern ? from[0] : to[0];
  const past = Math.max(ahead, astern);
  return conflict({ code: 'beyond-hull', of: thing, by: past, sigma: thing.sigma[0], axis: 0, where, station }, by);
}

/** How far past the hull it may reach, m. */
const freeReach = ({ outside }: Occupant, length: number | null): number => (outside ? REACH * (length ?? 0) : 0);

function belowKeel(thing: Occupant, { keel, length, own }: Hull): Conflict | null {
  // Also where it is tried elsewhere than it lies.
  const isHull = own.some(({ entry }) => entry === thing.entry);
  const below = (isHull ? 0 : keel) - thing.bounds.from[2];
  const by = below - freeReach(thing, length);
  const station = (thing.bounds.from[0] + thing.bounds.to[0]) / 2;
  const sigma = Math.max(thing.sigma[2], TAPE);
  return conflict({ code: 'below-keel', of: thing, by: below, sigma, axis: 2, where: 'below', station }, by);
}

/** It is held against the sections of the hull: what lies in a compartment is held against that; shells are the hull themselves. */
const isCut = ({ kind, outside, inside }: Occupant): boolean =>
  kind !== 'shell' && !outside && (inside === null || kind === 'compartment');

/** Places of a thing that are looked at in a step. */
const PLACES = 30;

/** Out of the outer form of the shells, at stations where there is one; what is meant to stand there may. */
function* outOfShells(thing: Occupant, { own, outside }: Hull, shapes: Shapes): Steps<Conflict | null> {
  if (!isCut(thing)) return null;
  const [first] = own;
  const across = Math.max(thing.sigma[1], thing.sigma[2], TAPE / 2);
  const sigma = Math.hypot(across, Math.max(0, ...own.map(shell => Math.max(shell.sigma[1], shell.sigma[2]))));
  const places = placesOn(thing, shapes);
  // The hull is cut at each station once, and that takes long.
  for (const station of new Set(places.map(([x]) => x))) {
    yield;
    outside([station, 0, 0]);
  }
  const isDue = pacer(PLACES);
  let worst: { readonly by: number; readonly sure: number; readonly at: Vec3 } | null = null;
  for (const at of places) {
    if (isDue(1)) yield;
    const by = outside(at);
    if (by === null || by <= (worst?.by ?? TAPE)) continue;
    const [x, y, z] = at;
    const aside = [-2, 2].map(share => outside([x + share * thing.sigma[0], y, z]) ?? by);
    worst = { by, sure: Math.min(by, ...aside), at };
  }
  if (!worst || !first) return null;
  const { at, by, sure } = worst;
  const [axis, where] = wayOut(at, by, place => outside(place) ?? 0);
  const found = { code: 'outside-hull', of: thing, by, sigma, axis, where, station: at[0] } as const;
  return conflict(found, sure - thing.fitted, first);
}

/** How far a place is looked aside, m. */
const ASIDE = 1e-4;

/** The axis and the way along which a place lies further and further outside. */
export function wayOut(
  at: Vec3,
  by: number,
  outside: (place: Vec3) => number,
  axes: readonly (0 | 1 | 2)[] = [1, 2],
): readonly [axis: 0 | 1 | 2, where: string] {
  const ways = axes.flatMap(axis =>
    ([-1, 1] as const).map(side => {
      const place: [number, number, number] = [at[0], at[1], at[2]];
      place[axis] += side * ASIDE;
      return { axis, side, grows: outside(place) - by };
    }),
  );
  const { axis, side } = ways.reduce((most, way) => (way.grows > most.grows ? way : most));
  return [axis, TOWARDS[axis][side < 0 ? 0 : 1]];
}

type Found = Omit<Conflict, 'ratio' | 'with'> & { readonly sigma: number };

/** A conflict, where what is beyond doubt of it is more than its uncertainty. */
function conflict({ sigma, ...found }: Found, beyond: number, other: Occupant | null = null): Conflict | null {
  if (!(beyond > TAPE)) return null;
  const ratio = sigma > 0 ? beyond / sigma : Infinity;
  return ratio > PERHAPS ? { ...found, ratio, with: other } : null;
}
