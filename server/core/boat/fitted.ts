import type { Form, Revolved } from '../geometry/form/form.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { lengthText } from '../wording/numbers.ts';
import { centreOf, type Extents, type Placed } from './placed.ts';
import { placeBall } from './placingRound.ts';
import type { Setting } from './readingContext.ts';

/**
 * A thing of which only volume (m3) and middle are known: a ball, and where a ball would stick out of what the thing lies
 * in, a round bar along the boat that does not. Where nothing of that volume fits there it stays a ball, and the finding
 * that it sticks out is right.
 */
export function placeByVolume(extents: Extents, volume: number, setting: Setting): Placed {
  const ball = placeBall(extents, Math.cbrt((6 * volume) / Math.PI), false);
  const { inside, around } = setting;
  if (inside === undefined) return ball;
  const centre = centreOf(extents);
  const room = around.roomsOf(inside).find(form => liesIn(centre, form, setting));
  if (!room) return ball;
  const bar = barIn(room, centre, volume, setting);
  if (!bar) return ball;
  const { radius, half } = bar;
  const from: Vec3 = [centre[0] - half, centre[1] - radius, centre[2] - radius];
  const to: Vec3 = [centre[0] + half, centre[1] + radius, centre[2] + radius];
  const { units } = around;
  return {
    form: {
      shape: 'revolved',
      origin: [from[0], centre[1], centre[2]],
      axis: [1, 0, 0],
      profile: [
        [0, radius],
        [2 * half, radius],
      ],
    },
    centre,
    from,
    to,
    measured: false,
    solved: [],
    words: [
      `taken as a round of ${lengthText(2 * radius, units)}, ${lengthText(2 * half, units)} long, which fits where it lies`,
    ],
  };
}

function liesIn(point: Vec3, form: Form, { around }: Setting): boolean {
  const { from, to } = around.shapes.boundsOf(form);
  return ([0, 1, 2] as const).every(axis => from[axis] < point[axis] && point[axis] < to[axis]);
}

interface Bar {
  readonly radius: number;
  /** Half its length, m. */
  readonly half: number;
}

/** Null where a ball fits, or nothing does. */
function barIn(room: Form, centre: Vec3, volume: number, setting: Setting): Bar | null {
  const ball = Math.cbrt((3 * volume) / (4 * Math.PI));
  const { from, to } = setting.around.shapes.boundsOf(room);
  const along = Math.min(centre[0] - from[0], to[0] - centre[0]);
  const freeFor = (half: number) => clearance(room, centre, half, setting);
  if (ball <= along && ball <= freeFor(ball)) return null;
  // As stout as there is room for: a cylinder as long as it is broad, else thinner and longer, else a disk.
  let half = Math.min(along, Math.cbrt(volume / (2 * Math.PI)));
  for (let step = 0; step < STEPS; step++) {
    const radius = Math.sqrt(volume / (2 * Math.PI * half));
    const free = freeFor(half);
    if (radius <= free) return { radius, half };
    if (!(free > 0) || half >= along) return null;
    half = Math.min(along, Math.max(half * LONGER, volume / (2 * Math.PI * free * free)));
  }
  return null;
}

/** A bar that does not fit is tried so much longer. */
const LONGER = 1.05;
const STEPS = 100;

/** How far the room reaches round a fore-and-aft line through a point, over so much of its length either way, m. */
function clearance(room: Form, [x, y, z]: Vec3, half: number, setting: Setting): number {
  if (room.shape === 'compound') {
    const parts = room.parts.filter(part => liesIn([x, y, z], part, setting));
    return Math.max(0, ...parts.map(part => within(part, [x, y, z], half, setting)));
  }
  return within(room, [x, y, z], half, setting);
}

function within(form: Form, [x, y, z]: Vec3, half: number, { around }: Setting): number {
  if (form.shape === 'revolved' && Math.abs(form.axis[0]) === 1) {
    const aside = Math.hypot(y - form.origin[1], z - form.origin[2]);
    return leastRadius(form, x - half, x + half) - aside;
  }
  const { from, to } = around.shapes.boundsOf(form);
  if (x - half < from[0] || x + half > to[0]) return 0;
  return Math.min(y - from[1], to[1] - y, z - from[2], to[2] - z);
}

/** The least radius of a fore-and-aft body of revolution between two stations; nothing past its ends. */
function leastRadius({ profile, origin, axis }: Revolved, from: number, to: number): number {
  const points = profile.map(([s, radius]) => [origin[0] + s * axis[0], radius] as const);
  const rising = axis[0] > 0 ? points : [...points].reverse();
  if (from < rising[0]![0] || to > rising.at(-1)![0]) return 0;
  const inside = rising.filter(([s]) => s >= from && s <= to).map(([, radius]) => radius);
  return Math.min(radiusAt(rising, from), radiusAt(rising, to), ...inside);
}

function radiusAt(points: readonly (readonly [s: number, radius: number])[], at: number): number {
  const next = Math.max(
    1,
    points.findIndex(([s]) => s >= at),
  );
  const [[s0, r0], [s1, r1]] = [points[next - 1]!, points[next]!];
  return s1 > s0 ? r0 + ((r1 - r0) * (at - s0)) / (s1 - s0) : Math.min(r0, r1);
}
