import type { Boat } from '../../boat/boat.ts';
import type { Bodies } from '../../bodies/assemble.ts';
import { capacityOf, settle } from '../../bodies/tankWater.ts';
import { heelwards, trimwards, UPRIGHT } from '../../conditions/attitude.ts';
import { along, centralTensor } from '../../conditions/energy.ts';
import { sharedLoad } from '../../conditions/load.ts';
import { addScaled, scale, subtract, type Vec3 } from '../../geometry/form/vector.ts';
import type { Slot } from '../room/slots.ts';
import type { Row } from './program.ts';

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
export function submergedRows(boat: Boat, bodies: Bodies, fill: number, part: number): readonly Row[] {
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
  const margin = ((1 - part) * (high - low)) / 20;
  const lowering = (slot: Slot) => ({
    perMass: -net(slot) * (slot.height - water.next[2]),
    perAft: 0,
    perStarboard: 0,
  });
  return [
    {
      name: 'submerged trim',
      measure: 'moment',
      wanted: { value: missing[0], slack: part * trimStiffness * limits.trim },
      effectOf: slot => ({
        perMass: net(slot) * (slot.station[0] - water.next[0]),
        perAft: net(slot),
        perStarboard: 0,
      }),
    },
    {
      name: 'submerged heel',
      measure: 'moment',
      wanted: { value: missing[1], slack: part * heelStiffness * limits.heel },
      effectOf: slot => ({
        perMass: net(slot) * (slot.offset[0] - water.next[1]),
        perAft: 0,
        perStarboard: net(slot),
      }),
    },
    {
      name: 'neutral fill',
      measure: 'mass',
      wanted: { least: ballast - (high - margin) * capacity, most: ballast - (low + margin) * capacity },
      effectOf: slot => ({ perMass: net(slot), perAft: 0, perStarboard: 0 }),
    },
    {
      name: 'submerged stiffness in trim',
      measure: 'moment',
      wanted: { least: least - (missing[2] - water.trimLoss), most: Number.POSITIVE_INFINITY },
      effectOf: lowering,
    },
    {
      name: 'submerged stiffness in heel',
      measure: 'moment',
      wanted: { least: least - (missing[2] - water.heelLoss), most: Number.POSITIVE_INFINITY },
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
  const load = sharedLoad(tanks, fill);
  let mass = density * load.stillVolume;
  let moment = scale(load.stillMoment, density);
  let heelLoss = 0;
  let trimLoss = 0;
  for (const free of load.free) {
    const sums = settle(free, UPRIGHT);
    mass += density * sums.volume;
    moment = addScaled(moment, [sums.mx, sums.my, sums.mz], density);
    const tensor = centralTensor(sums, density);
    heelLoss += along(tensor, heelwards(UPRIGHT), heelwards(UPRIGHT));
    trimLoss += along(tensor, trimwards(UPRIGHT), trimwards(UPRIGHT));
  }
  return { mass, moment, heelLoss, trimLoss };
}
