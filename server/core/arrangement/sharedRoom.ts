import type { Tank } from '../boat/boat.ts';
import { TAPE } from '../boat/placed.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import type { Intrusion } from '../geometry/shapes/intrusion.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { type Conflict, PERHAPS, SURE } from './conflict.ts';
import { hasExtent, type Occupant, placesOn } from './occupant.ts';

/** Things that other things stand in or on, by their names: a tray with a receiver on it. */
const HOLDER =
  /\b(trays?|rack|frame|holder|housing|box|case|mount(ing)?s?|bed|cradle|plate|board|bulkheads?|assembly|module|unit|skid|former|ribs?|rails?|carrier|shelf|deck|floor|foam|filler)\b/i;

/** Two things that take up the same room; null where they do not, where nothing is known of that, or where it may be so. */
export function sharedRoomOf(one: Occupant, two: Occupant, shapes: Shapes): Conflict | null {
  if (!mayShareRoom(one, two)) return null;
  const found = intrusionBetween(one, two, shapes);
  if (!found || found.by <= TAPE) return null;
  const axis = wayApart(one.bounds, two.bounds);
  const sigma = Math.max(TAPE / 2, Math.hypot(one.sigma[axis], two.sigma[axis]));
  const ratio = found.by / sigma;
  if (!(ratio > PERHAPS)) return null;
  const [of, other] = likelier(one, two);
  const code = one.kind === 'compartment' && two.kind === 'compartment' ? 'compartments-overlap' : 'same-room';
  // In a dry room a part may well stand in or on another, which is then no more than its outline.
  const isNested = one.inside !== null && one.kind === 'part' && two.kind === 'part' && isAround(one, two);
  if (isNested && (HOLDER.test(one.entry.name) || HOLDER.test(two.entry.name))) return null;
  const known = isNested ? Math.min(ratio, SURE) : ratio;
  return { code, of, with: other, by: found.by, ratio: known, axis, where: '', station: found.at[0] };
}

/**
 * A thing that others may be in the way of. A bag lies in whatever room there is: its form says how much it holds, and about
 * where; and of a mass at a point nothing is said.
 */
export const takesRoom = (thing: Occupant): boolean =>
  thing.kind !== 'shell' && !thing.goesThrough && hasExtent(thing) && !isBag(thing);

/** Two things that may be found to take up the same room; of others nothing is looked at. */
export const mayShareRoom = (one: Occupant, two: Occupant): boolean =>
  takesRoom(one) && takesRoom(two) && mayMeet(one, two);

/** Two things that touch and must not take up the same room: of one compartment, or both in the water. */
export function mayMeet(one: Occupant, two: Occupant): boolean {
  // Pieces are put where a bay is free; what lies in it already takes that from it.
  const withPart = one.kind === 'part' || two.kind === 'part';
  const withBay = one.kind === 'bay' || two.kind === 'bay';
  return one.inside === two.inside && !(withPart && withBay) && touch(one.bounds, two.bounds);
}

function intrusionBetween(one: Occupant, two: Occupant, shapes: Shapes): Intrusion | null {
  if (one.form && two.form) return shapes.intrusionOf(one.form, two.form);
  const [known, other] = one.form ? [one, two] : [two, one];
  // Of two whose forms nobody knows nothing is said.
  if (!known.form) return null;
  const depth = shapes.depthIn(known.form);
  let deepest: Intrusion | null = null;
  for (const at of placesOn(other, shapes)) {
    const by = depth(at);
    if (by > (deepest?.by ?? 0)) deepest = { by, at };
  }
  return deepest;
}

const isBag = ({ kind, entry }: Occupant): boolean => kind === 'tank' && (entry as Tank).kind === 'bladder';

const touch = (a: Bounds, b: Bounds): boolean =>
  ([0, 1, 2] as const).every(axis => a.from[axis] <= b.to[axis] && a.to[axis] >= b.from[axis]);

const isAround = (one: Occupant, two: Occupant): boolean =>
  isIn(one.bounds, two.bounds) || isIn(two.bounds, one.bounds);

const isIn = (a: Bounds, b: Bounds): boolean =>
  ([0, 1, 2] as const).every(axis => a.from[axis] >= b.from[axis] - TAPE && a.to[axis] <= b.to[axis] + TAPE);

/** The axis along which the lesser of the two reaches least of its own size into the other; along the boat before across it. */
function wayApart(a: Bounds, b: Bounds): 0 | 1 | 2 {
  const shares = ([0, 1, 2] as const).map(axis => {
    const shared = Math.min(a.to[axis], b.to[axis]) - Math.max(a.from[axis], b.from[axis]);
    const size = Math.min(a.to[axis] - a.from[axis], b.to[axis] - b.from[axis]);
    return size > 0 ? Math.min(1, shared / size) : 1;
  });
  return shares.indexOf(Math.min(...shares)) as 0 | 1 | 2;
}

const RANK: Readonly<Record<Occupant['kind'], number>> = { bay: 0, part: 1, tank: 2, compartment: 3, shell: 4 };

/** First the one that more likely lies wrong: what is put in, before what it is put in; of two alike the lesser, then the later. */
function likelier(one: Occupant, two: Occupant): readonly [Occupant, Occupant] {
  const first =
    RANK[one.kind] - RANK[two.kind] ||
    one.size - two.size ||
    Number(two.entry.path.at(-1)) - Number(one.entry.path.at(-1));
  return first <= 0 ? [one, two] : [two, one];
}
