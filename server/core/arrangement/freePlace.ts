import type { BoatSource } from '../boat/source.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import type { Hull } from './hull.ts';
import type { Neighbours } from './neighbours.ts';
import { FITTED, type Occupant } from './occupant.ts';

/** A thing that is not in the boat yet. m, boat axes. */
export interface Newcomer {
  readonly kind: 'compartment' | 'tank' | 'part' | 'bay';
  /** The compartment that it shall lie in; null for the flooded hull. */
  readonly inside: string | null;
  /** Where it would lie if all were free; in an axis of which only the middle is told, that middle twice. */
  readonly bounds: Bounds;
  /** A tube along the boat of that height, or the block itself. */
  readonly isRound: boolean;
  /** Lead is beaten and foam is cut to the run of the hull. */
  readonly isFitted: boolean;
}

/** The marks of a tape next to a station and to a height, m, boat axes. */
export interface Marks {
  readonly station: (metres: number) => number;
  readonly height: (metres: number) => number;
}

/** How long it may become where there is less room, as shares of what was wanted. */
const SHARES = [1, 0.75, 0.5, 0.3];
/** What a length cut off and a height put elsewhere count for, against a station put elsewhere. */
const CUT = 1.5;
const UP = { inCompartment: 12, inHull: 6 };
/** Places along the room and up that are tried. */
const STATIONS = 30;
const HEIGHTS = 8;
/** Room left before and behind a thing of which only the middle is told, and before and behind the others, m (common practice, no source). */
const HALF_UNKNOWN = 0.01;
const CLEAR = 0.002;
/** A foot of lead or foam is put so much higher at most, as a share of the hull’s height. */
const RISE = 0.5;

/**
 * Where a new thing may lie: the place next to the wanted one where the arrangement finds nothing wrong with it. In a
 * compartment first at a station that nobody else has. Null where the room is not known or has no such place.
 */
export function freePlace(wanted: Newcomer, source: BoatSource, neighbours: Neighbours, marks: Marks): Bounds | null {
  const things = neighbours.occupantsOf(source);
  const home = things.find(({ kind, entry }) => kind === 'compartment' && entry.name === wanted.inside);
  const hull = neighbours.hullOf(things, source.boat.length > 0 ? source.boat.length : null);
  const room = roomOf(wanted, home, hull);
  if (room === null) return null;
  const others = things.filter(thing => isBeside(thing, wanted));
  const places = placesFor(wanted, room, marks);
  for (const axes of home ? IN_A_COMPARTMENT : IN_THE_HULL) {
    const clear = places.filter(bounds => others.every(other => isApart(bounds, other, axes)));
    const found = thinned(clear, home ? TRIED.inCompartment : TRIED.inHull).find(bounds =>
      isFree(occupantAt(wanted, bounds, neighbours.shapes), { home, hull, others, neighbours }),
    );
    if (found) return found;
  }
  return null;
}

/** Axes along one of which it stands clear of every other; none where only what the arrangement sees counts. */
type Clear = readonly (0 | 1 | 2)[];
const IN_A_COMPARTMENT: readonly Clear[] = [[0], [0, 1, 2], []];
const IN_THE_HULL: readonly Clear[] = [[0, 1, 2], []];

/** So many places are tried in full, the nearest of them one by one: somebody waits for it. */
const TRIED = { inCompartment: 48, inHull: 96 };
const thinned = (places: readonly Bounds[], tried: number): readonly Bounds[] => {
  const every = Math.max(1, Math.ceil(places.length / (tried / 2)));
  return places.filter((_, i) => i < tried / 2 || i % every === 0);
};

interface Around {
  readonly home: Occupant | undefined;
  readonly hull: Hull;
  readonly others: readonly Occupant[];
  readonly neighbours: Neighbours;
}

/** How far stations and heights may be tried; null where that is not known. */
function roomOf({ inside, bounds }: Newcomer, home: Occupant | undefined, { length, own }: Hull): Bounds | null {
  if (inside !== null) return home?.form ? home.bounds : null;
  if (length === null || own.length === 0) return null;
  const [low, high] = [
    Math.min(...own.map(each => each.bounds.from[2])),
    Math.max(...own.map(each => each.bounds.to[2])),
  ];
  return {
    from: [0, bounds.from[1], low],
    to: [length, bounds.to[1], low + (high - low) * (bounds.from[2] < (low + high) / 2 ? RISE : 1)],
  };
}

/** What must not be where the newcomer is; lead lies in a bay, and a new bay where there is nothing yet. */
const isBeside = ({ kind, inside }: Occupant, wanted: Newcomer): boolean =>
  kind !== 'shell' && inside === wanted.inside && !(kind === 'bay' && wanted.kind === 'part');

/** Boxes of every length, the nearest to the wanted place first; to be put higher or cut shorter counts as being far. */
function placesFor({ bounds: { from, to }, inside }: Newcomer, room: Bounds, marks: Marks): readonly Bounds[] {
  const up = inside === null ? UP.inHull : UP.inCompartment;
  const tall = to[2] - from[2];
  const spread = (first: number, last: number, count: number): readonly number[] =>
    last < first ? [] : Array.from({ length: count + 1 }, (_, i) => first + ((last - first) * i) / count);
  const heights = [from[2], ...spread(room.from[2], room.to[2] - tall, HEIGHTS)];
  const all = (to[0] > from[0] ? SHARES : [1]).flatMap(share => {
    const long = (to[0] - from[0]) * share;
    const cut = CUT * (to[0] - from[0] - long);
    return [from[0], ...spread(room.from[0], room.to[0] - long, STATIONS)].flatMap(x =>
      heights.map(z => ({ x, z, long, away: cut + Math.abs(x - from[0]) + up * Math.abs(z - from[2]) })),
    );
  });
  return all
    .sort((a, b) => a.away - b.away)
    .map(({ x, z, long }) => {
      const low = marks.height(z);
      return {
        from: [marks.station(x), from[1], low],
        to: [marks.station(x + long), to[1], tall > 0 ? marks.height(low + tall) : low],
      };
    });
}

/** Nothing of the other lies between its ends along all of these axes. */
function isApart({ from, to }: Bounds, { bounds }: Occupant, axes: Clear): boolean {
  if (axes.length === 0) return true;
  const half = bounds.from[0] === bounds.to[0] ? HALF_UNKNOWN : CLEAR;
  return axes.some(axis => {
    const clear = axis === 0 ? half : 0;
    return to[axis] < bounds.from[axis] - clear || from[axis] > bounds.to[axis] + clear;
  });
}

const isFree = (thing: Occupant, { home, hull, others, neighbours }: Around): boolean =>
  neighbours.againstHull(thing, hull) === null &&
  (!home || neighbours.stickingOut(thing, home) === null) &&
  others.every(other => neighbours.sharedRoomOf(thing, other) === null);

function occupantAt({ kind, inside, isRound, isFitted }: Newcomer, bounds: Bounds, shapes: Shapes): Occupant {
  const { from, to } = bounds;
  const isWhole = ([0, 1, 2] as const).every(axis => from[axis] < to[axis]);
  const form = !isWhole ? null : isRound ? tubeOf(bounds) : shapes.blockOf(bounds);
  const entry = { path: [], name: '', form };
  return {
    kind,
    entry,
    inside,
    form,
    bounds,
    sigma: [0, 0, 0],
    size: 0,
    outside: null,
    goesThrough: false,
    fitted: isFitted ? FITTED : 0,
    checked: null,
  };
}

const tubeOf = ({ from, to }: Bounds): Form => ({
  shape: 'revolved',
  origin: [from[0], (from[1] + to[1]) / 2, (from[2] + to[2]) / 2],
  axis: [1, 0, 0],
  profile: [
    [0, (to[2] - from[2]) / 2],
    [to[0] - from[0], (to[2] - from[2]) / 2],
  ],
});
