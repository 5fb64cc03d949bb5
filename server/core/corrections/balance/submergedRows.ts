import type { Boat } from '../../boat/boat.ts';
import type { Bodies } from '../../bodies/assemble.ts';
import { capacityOf } from '../../bodies/tankWater.ts';
import { heelwards, trimwards, UPRIGHT } from '../../conditions/attitude.ts';
import { ballastWater } from '../../conditions/ballastWater.ts';
import { sharedLoad } from '../../conditions/load.ts';
import { along } from '../../conditions/tensor.ts';
import { addScaled, scale, subtract, type Vec3 } from '../../geometry/form/vector.ts';
import type { Slot } from '../room/slots.ts';
import { priceOfMiss, stretchesAbove, stretchesOff } from './price.ts';
import type { Aim, BalanceRow, Band, RowName } from './row.ts';
import type { Margins } from './surfacedRows.ts';

/** Ballast water of a level boat at one fill: its moment, how the next kilogram lies, what its free surfaces cost. */
interface BallastAt {
  /** kg. */
  readonly mass: number;
  /** kg·m. */
  readonly moment: Vec3;
  /** Where the next kilogram of it goes, m. */
  readonly next: Vec3;
  /** ρ·i in heel and in trim, kg·m. */
  readonly heelLoss: number;
  readonly trimLoss: number;
}

/** Step in fill for the derivative of the water's moment. */
const FILL_STEP = 1e-4;

/** The fill that the rows are drawn up for must lie in the tank: for a boat that is not neutral yet, its middle. */
export function referenceFill(bodies: Bodies, added = 0): number {
  const capacity = capacityOf(bodies.tanks);
  const ballast = bodies.density * bodies.volume - bodies.mass - added;
  const fill = ballast / (bodies.density * capacity);
  return fill > 0 && fill < 1 ? fill : 0.6;
}

/**
 * The balances of the boat hanging level and neutral. The tanks take up what is missing in mass, so a piece counts with
 * its arm from where the next kilogram of ballast lies; the fill itself must stay within its range. `part` (0..1) of each
 * limit may be used up. Rows are linear about `fill`.
 */
export function submergedRows(
  boat: Boat,
  bodies: Bodies,
  fill: number,
  { part, open }: Margins,
): readonly BalanceRow[] {
  const { density } = bodies;
  const limits = boat.limits.submerged;
  const capacity = density * capacityOf(bodies.tanks);
  const water = ballastAt(bodies, fill);
  const ballast = density * bodies.volume - bodies.mass;
  const lift = scale(bodies.volumeMoment, density);
  const displacement = density * bodies.volume;
  // What the water's moment would be at the boat's own neutral ballast, along the tangent at `fill`.
  const waterMoment = addScaled(water.moment, water.next, ballast - water.mass);
  const missing = subtract(subtract(lift, bodies.massMoment), waterMoment);
  const net = (slot: Slot) => (slot.bay.inside === null ? 1 - density / slot.density : 1);
  const least = limits.bg * displacement;
  const trimStiffness = Math.max(missing[2] - water.trimLoss, least, 1e-9 * displacement);
  const heelStiffness = Math.max(missing[2] - water.heelLoss, least, 1e-9 * displacement);
  const [low, high] = limits.fill;
  const missed = priceOfMiss(bodies.mass);
  const aim = (name: RowName, value: number, limit: number, slack = part * limit): Aim => {
    const off = stretchesOff(limit, slack, open[name] ?? null, missed);
    return { value, slack, off };
  };
  const floor = (name: RowName, left: number): Band => {
    const near = stretchesAbove(least, open[name] ?? null, missed);
    return { least: least - left, most: Number.POSITIVE_INFINITY, near };
  };
  const room = ((high - low) / 2) * capacity;
  const lowering = (slot: Slot) => ({
    perMass: -net(slot) * (slot.height - water.next[2]),
    perAft: 0,
    perStarboard: 0,
  });
  return [
    {
      name: 'submerged trim',
      measure: 'moment',
      axis: 'along',
      wanted: aim('submerged trim', missing[0], trimStiffness * limits.trim),
      effectOf: slot => ({
        perMass: net(slot) * (slot.station[0] - water.next[0]),
        perAft: net(slot),
        perStarboard: 0,
      }),
    },
    {
      name: 'submerged heel',
      measure: 'moment',
      axis: 'across',
      wanted: aim('submerged heel', missing[1], heelStiffness * limits.heel),
      effectOf: slot => ({
        perMass: net(slot) * (slot.offset[0] - water.next[1]),
        perAft: 0,
        perStarboard: net(slot),
      }),
    },
    {
      name: 'neutral fill',
      measure: 'mass',
      axis: null,
      // The tank's limits are wide: of them a tenth of what of the others is kept in hand in any case.
      wanted: aim('neutral fill', ballast - ((low + high) / 2) * capacity, room, room * (1 - (1 - part) / 10)),
      effectOf: slot => ({ perMass: net(slot), perAft: 0, perStarboard: 0 }),
    },
    {
      name: 'submerged stiffness in trim',
      measure: 'moment',
      axis: null,
      wanted: floor('submerged stiffness in trim', missing[2] - water.trimLoss),
      effectOf: lowering,
    },
    {
      name: 'submerged stiffness in heel',
      measure: 'moment',
      axis: null,
      wanted: floor('submerged stiffness in heel', missing[2] - water.heelLoss),
      effectOf: lowering,
    },
  ];
}

function ballastAt(bodies: Bodies, fill: number): BallastAt {
  const here = waterOf(bodies, fill);
  const low = waterOf(bodies, Math.max(0, fill - FILL_STEP));
  const high = waterOf(bodies, Math.min(1, fill + FILL_STEP));
  const step = high.mass - low.mass;
  return {
    ...here,
    next: step > 0 ? scale(subtract(high.moment, low.moment), 1 / step) : [0, 0, 0],
  };
}

function waterOf(bodies: Bodies, fill: number): Omit<BallastAt, 'next'> {
  const { density, tanks } = bodies;
  const { mass, moment, surface } = ballastWater(sharedLoad(tanks, fill), UPRIGHT, density);
  const loss = (direction: Vec3) => along(surface, direction, direction);
  return {
    mass,
    moment,
    heelLoss: loss(heelwards(UPRIGHT)),
    trimLoss: loss(trimwards(UPRIGHT)),
  };
}
