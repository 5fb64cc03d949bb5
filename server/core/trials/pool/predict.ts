import type { Boat } from '../../boat/boat.ts';
import { hullTop } from '../../boat/checkTrials.ts';
import type { Reading, Shift, SupportReading, Trial } from '../../boat/trial.ts';
import type { Bodies, BodyCache } from '../../bodies/assemble.ts';
import { shareFills } from '../../bodies/tankWater.ts';
import { type FloatingState, fillOf } from '../../conditions/float.ts';
import { type StateFigure as Figure, heelAngle, trimAngle, waterAt } from '../../conditions/readings.ts';
import { add } from '../../geometry/form/vector.ts';
import type { FloatedBoat } from '../../uncertainty/floatBoat.ts';
import { dayBodies, levelInTank, tankOf } from './dayBoat.ts';
import { floatForTrial, floatShifted } from './floatTrial.ts';

/** A weight too much, kg, and its moment about the origin, kg·m. */
export type ExtraLoad = readonly [mass: number, x: number, y: number, z: number];
export const NO_LOAD: ExtraLoad = [0, 0, 0, 0];

/** The same bodies with a load more. */
export const laden = (bodies: Bodies, [mass, ...moment]: ExtraLoad): Bodies =>
  mass === 0 && moment.every(part => part === 0)
    ? bodies
    : { ...bodies, mass: bodies.mass + mass, massMoment: add(bodies.massMoment, moment) };

/** How a boat would have lain in a trial: at first, and after each shift of an inclining weight. */
export interface FloatedTrial {
  readonly rest: FloatedBoat;
  readonly shifted: readonly (FloatedBoat | null)[];
}

/** Lays a boat as it lay in a trial, with a load more than its file has. */
export function floatTrial(boat: Boat, trial: Trial, cache: BodyCache, more: ExtraLoad = NO_LOAD): FloatedTrial | null {
  const rest = floatForTrial(laden(dayBodies(boat, trial, cache), more), trial);
  return rest && { rest, shifted: trial.shifts.map(shift => floatShifted(rest, momentOf(shift))) };
}

const momentOf = ({ mass, moved }: Shift): number => mass.value * moved.value;

/** One reading off a boat that is laid, SI. */
export function shownBy({ rest, shifted }: FloatedTrial, reading: Reading, boat: Boat): number | null {
  const figure = figureOf(reading, boat);
  if (reading.of !== 'tilt') return figure?.(rest.floating) ?? null;
  const over = shifted[reading.shift];
  return over && figure ? figure(over.floating) - figure(rest.floating) : null;
}

/** How a reading is taken off a boat as it lies; of a tilt, the heel before or after. Null where the boat has no such thing. */
export function figureOf(reading: Reading, boat: Boat): Figure | null {
  switch (reading.of) {
    case 'mark':
      return waterAt(reading.station);
    case 'freeboard': {
      const top = hullTop(boat, reading.station, reading.top);
      const water = waterAt(reading.station);
      return top === null ? null : floating => top - water(floating);
    }
    case 'trim':
      return trimAngle;
    case 'heel':
    case 'tilt':
      return heelAngle;
    case 'fill':
      return fillOf;
    case 'water':
      return ({ water }) => water;
    case 'level':
      return levelFigure(reading.tank);
    case 'scale':
      return supportFigure(reading, ({ state }) => [state.totalMass, state.totalMoment[0]]);
    case 'hook':
      return supportFigure(reading, ({ state, density }) => [
        state.totalMass - density * state.immersed.volume,
        state.slope[0],
      ]);
    case 'balance':
      return ({ state }) => state.totalMoment[0] / state.totalMass;
  }
}

/**
 * What one support carries of a level boat, kg: all of it, or by the moment about the other support (statics of a beam on
 * two supports). `load`: kg, and its moment about the bow tip, kg·m.
 */
const supportFigure =
  ({ pair }: SupportReading, load: (floating: FloatingState) => readonly [weight: number, moment: number]): Figure =>
  floating => {
    const [weight, moment] = load(floating);
    return pair ? (moment - weight * pair.other) / (pair.station - pair.other) : weight;
  };

const levelFigure =
  (name: string | null): Figure =>
  (floating: FloatingState) => {
    const body = tankOf(name, floating.tanks);
    if (!body) return 0;
    const fill = shareFills(floating.tanks, fillOf(floating))[floating.tanks.indexOf(body)]!;
    return levelInTank(body, fill, floating.state.up);
  };
