import type { FileUnits } from '../../../../schema/units.ts';
import type { Boat, Part } from '../../boat/boat.ts';
import { assembleBodies } from '../../bodies/assemble.ts';
import { floatSubmerged } from '../../conditions/submerged.ts';
import { floatSurfaced } from '../../conditions/surfaced.ts';
import { boundsOf } from '../../geometry/cut/solids.ts';
import { judgeSubmerged } from '../../judges/judgeSubmerged.ts';
import { judgeSurfaced } from '../../judges/judgeSurfaced.ts';
import type { Steps } from '../../steps/steps.ts';
import { tapeStep, tapeText } from '../../wording/numbers.ts';
import type { Aim, Row } from '../balance/program.ts';
import type { Correction } from '../correction.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { placeChanges, shifted, tapeOf } from '../room/shift.ts';
import { breaksLimit } from '../search/realise.ts';
import { BOTH, titleOf } from '../words/correctionTitle.ts';

/** Lighter things are not worth moving: a share of the boat's mass. */
const HEAVY = 0.02;

/** An open stretch of what a shift may be, m; aft or to starboard positive. */
interface Stretch {
  readonly least: number;
  readonly most: number;
}

/**
 * Moves of one heavy thing inside a compartment that bring both conditions within their limits and cost nothing: the
 * shortest first. What a thing weighs does not change, so only trim and heel can be mended so.
 */
export function* proposeMoves(boatToTrim: BoatToTrim, rows: readonly Row[]): Steps<readonly Correction[]> {
  const { boat, bodies } = boatToTrim;
  const heavy = boat.payload.filter(part => part.inside !== null && part.written && part.mass > HEAVY * bodies.mass);
  const moves: Move[] = [];
  for (const part of heavy) {
    const move = moveOf(part, boatToTrim, rows);
    if (move) moves.push(move);
    yield;
  }
  return moves.sort((a, b) => a.distance - b.distance).map(({ correction }) => correction);
}

interface Move {
  readonly correction: Correction;
  readonly distance: number;
}

function moveOf(part: Part, boatToTrim: BoatToTrim, rows: readonly Row[]): Move | null {
  const { boat } = boatToTrim;
  const [alongTape, acrossTape] = [tapeOf(part, 0, boat.units), tapeOf(part, 1, boat.units)];
  const along = shiftFor(part, rows, ['surfaced trim', 'submerged trim'], roomFor(part, boat, 0), alongTape);
  const across = shiftFor(part, rows, ['surfaced heel', 'submerged heel'], roomFor(part, boat, 1), acrossTape);
  if (along === null || across === null || (along === 0 && across === 0)) return null;
  const moved = shifted(part, along, across);
  const corrected: Boat = { ...boat, payload: boat.payload.map(other => (other === part ? moved : other)) };
  const bodies = assembleBodies(corrected, boatToTrim.cache);
  const surfaced = floatSurfaced(bodies, boat.length);
  const submerged = floatSubmerged(bodies);
  const left = [...judgeSurfaced(corrected, surfaced), ...judgeSubmerged(corrected, submerged)];
  if (left.some(breaksLimit)) return null;
  const way = [
    ...(along === 0 ? [] : [`${tapeText(Math.abs(along), alongTape)} ${along > 0 ? 'aft' : 'forward'}`]),
    ...(across === 0 ? [] : [`${tapeText(Math.abs(across), acrossTape)} to ${across > 0 ? 'starboard' : 'port'}`]),
  ];
  const title = titleOf([`Move “${part.name}” ${way.join(' and ')}`], BOTH);
  const changes = placeChanges(part, moved, boat.units);
  const correction: Correction = {
    title,
    condition: 'both',
    pieces: [],
    parts: [],
    entries: [],
    changes,
    boat: corrected,
    surfaced,
    submerged,
    left: [],
    note: null,
  };
  return { correction, distance: Math.hypot(along, across) };
}

/** The shift (m) on the tape's marks that suits every aim, as near to their middle as the room allows; null for none. */
function shiftFor(
  part: Part,
  rows: readonly Row[],
  names: readonly string[],
  room: Stretch,
  tape: FileUnits,
): number | null {
  const aims = rows.filter(row => names.includes(row.name)).map(row => row.wanted as Aim);
  if (aims.every(aim => Math.abs(aim.value) <= aim.slack)) return 0;
  const least = Math.max(room.least, ...aims.map(aim => (aim.value - aim.slack) / part.mass));
  const most = Math.min(room.most, ...aims.map(aim => (aim.value + aim.slack) / part.mass));
  const step = tapeStep(tape);
  const first = Math.ceil(least / step);
  const last = Math.floor(most / step);
  return first <= last ? Math.round((first + last) / 2) * step : null;
}

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
