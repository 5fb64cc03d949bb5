import type { Boat, Part } from '../../boat/boat.ts';
import { boundsOf } from '../../geometry/cut/solids.ts';
import { asFiled, type BoatToTrim } from './boatToTrim.ts';
import { markOf, shifted } from './shift.ts';

/** An open stretch of what a shift may be, m; aft or to starboard positive. */
interface Stretch {
  readonly least: number;
  readonly most: number;
}

/** A part that may be put elsewhere in its compartment, and how far. */
export interface Mover {
  readonly part: Part;
  readonly along: Stretch;
  readonly across: Stretch;
}

/** A part of the file that is put somewhere else. */
export interface Move {
  readonly part: Part;
  /** The same part where it then is. */
  readonly moved: Part;
  /** m, aft and to starboard positive. */
  readonly along: number;
  readonly across: number;
}

/** A pair stays the same to either side. */
const NOWHERE: Stretch = { least: 0, most: 0 };

/** Lighter things are not worth moving: a share of the boat's mass. */
const HEAVY = 0.02;

/**
 * What may be moved: first what the file frees, then equipment that says nothing and that its form does not tie. Never what
 * says `fixed: true`; lead and foam only when they are freed. Light things before heavy ones. How far goes by the places in
 * the file: what trials make of those, fractions of a millimetre, puts nothing in the way of anything.
 */
export function findMovers(boatToTrim: Pick<BoatToTrim, 'boat' | 'filed' | 'bodies'>): readonly Mover[] {
  const { boat, filed, bodies } = boatToTrim;
  return boat.payload
    .filter(part => part.inside !== null && part.written && !part.pinned && part.mass > HEAVY * bodies.mass)
    .filter(part => !part.fixed || (!isBallast(part) && !isTied(part, boat)))
    .sort((a, b) => Number(a.fixed) - Number(b.fixed) || a.mass - b.mass)
    .map(part => {
      const written = asFiled(part, boatToTrim);
      return {
        part,
        along: roomFor(written, filed, 0),
        across: part.written?.isPaired ? NOWHERE : roomFor(written, filed, 1),
      };
    })
    .filter(({ along, across }) => along.most - along.least > 0 || across.most - across.least > 0);
}

/** What a correction moves, with how far it may go. */
export const moversOf = (
  { moves }: { readonly moves: readonly Move[] },
  boatToTrim: Pick<BoatToTrim, 'boat' | 'filed' | 'bodies'>,
): readonly Mover[] => findMovers(boatToTrim).filter(({ part }) => moves.some(move => move.part.name === part.name));

/** To the marks of the tape that its place is written by; null when it then stays where it is. */
export function moveOf(
  { part, along, across }: Mover,
  [aft, right]: readonly [number, number],
  boat: Boat,
): Move | null {
  const [x, y] = [onMark(aft, along, markOf(part, 0, boat.units)), onMark(right, across, markOf(part, 1, boat.units))];
  return x === 0 && y === 0 ? null : { part, moved: shifted(part, x, y), along: x, across: y };
}

/** Lead and foam by their material, or by their name where that is all that the file says. */
export const isBallast = ({ material, name }: Part): boolean =>
  material === 'lead' ||
  material === 'lead shot' ||
  material === 'foam' ||
  (material === null && /\b(lead|ballast|foam)\b/i.test(name));

function onMark(shift: number, { least, most }: Stretch, step: number): number {
  const [first, last] = [Math.ceil(least / step - 1e-9), Math.floor(most / step + 1e-9)];
  const marks = Math.min(Math.max(Math.round(shift / step), first), last);
  return marks === 0 ? 0 : marks * step;
}

/** Ends nearer together than this touch, and axes nearer are one line, m (common practice, no source). */
const TOUCH = 0.002;

/** What lies where the drive and the steering have it, by its name: no form tells a shaft from another rod. */
const DRIVEN = /\b(shaft|propeller|prop|screw|rudder|planes?|stern tube)\b/i;
const DRIVING = /\b(motor|drive|gear|gearbox)\b/i;

/** On the shaft line: the shaft, what it turns, and what turns it where the file has a shaft. */
const isOfDrive = ({ name }: Part, { payload }: Boat): boolean =>
  DRIVEN.test(name) || (DRIVING.test(name) && payload.some(other => DRIVEN.test(other.name)));

/**
 * Tied by its form: it goes through an end of its compartment, or is coupled end to end on one line with something else, as a
 * motor with its shaft.
 */
function isTied(part: Part, boat: Boat): boolean {
  const home = boat.compartments.find(({ name }) => name === part.inside);
  if (!home || isOfDrive(part, boat)) return true;
  if (part.from[0] === part.to[0]) return false;
  const { from, to } = boundsOf(home.form);
  if (part.from[0] < from[0] + 1e-6 || part.to[0] > to[0] - 1e-6) return true;
  return boat.payload.some(other => {
    if (other === part || other.from[0] === other.to[0]) return false;
    const gap = Math.min(Math.abs(other.from[0] - part.to[0]), Math.abs(part.from[0] - other.to[0]));
    const isInLine = ([1, 2] as const).every(axis => Math.abs(middle(other, axis) - middle(part, axis)) < TOUCH);
    return gap < TOUCH && isInLine;
  });
}

const middle = ({ from, to }: Part, axis: 1 | 2): number => (from[axis] + to[axis]) / 2;

/** How far the part can go along an axis before it meets its compartment's end or a neighbour in the same room. */
function roomFor(part: Part, boat: Boat, axis: 0 | 1): Stretch {
  const home = boat.compartments.find(compartment => compartment.name === part.inside);
  if (!home) return { least: 0, most: 0 };
  const room = boundsOf(home.form);
  const others = ([0, 1, 2] as const).filter(other => other !== axis);
  const neighbours = boat.payload.filter(
    other =>
      other !== part &&
      other.inside === part.inside &&
      others.every(o => mayMeet(other, part, o)) &&
      !sharePoint(other, part, axis),
  );
  const behind = neighbours.filter(other => other.to[axis] <= part.from[axis]).map(other => other.to[axis]);
  const ahead = neighbours.filter(other => other.from[axis] >= part.to[axis]).map(other => other.from[axis]);
  const tanks =
    axis === 0 ? boat.tanks.filter(tank => tank.inside === part.inside).map(tank => boundsOf(tank.form)) : [];
  const tanksBehind = tanks.filter(tank => tank.to[0] <= part.from[0]).map(tank => tank.to[0]);
  const tanksAhead = tanks.filter(tank => tank.from[0] >= part.to[0]).map(tank => tank.from[0]);
  return {
    least: Math.max(room.from[axis], ...behind, ...tanksBehind) - part.from[axis],
    most: Math.min(room.to[axis], ...ahead, ...tanksAhead) - part.to[axis],
  };
}

/** Whether they meet when seen along the other axes; a thing whose size there nobody wrote down may be of any size. */
const mayMeet = (a: Part, b: Part, axis: 0 | 1 | 2): boolean =>
  a.from[axis] === a.to[axis] ||
  b.from[axis] === b.to[axis] ||
  (a.from[axis] < b.to[axis] && a.to[axis] > b.from[axis]);

/** Written at the same place, sizes unknown: they pass each other some other way already. */
const sharePoint = (a: Part, b: Part, axis: 0 | 1): boolean =>
  (a.from[axis] === a.to[axis] || b.from[axis] === b.to[axis]) &&
  a.from[axis] <= b.to[axis] &&
  a.to[axis] >= b.from[axis];
