import type { Boat } from '../../boat/boat.ts';
import type { Bodies } from '../../bodies/assemble.ts';
import { capacityOf } from '../../bodies/tankWater.ts';
import { heelwards, trimwards, UPRIGHT } from '../../conditions/attitude.ts';
import { ballastWater } from '../../conditions/ballastWater.ts';
import { sharedLoad } from '../../conditions/load.ts';
import type { LoadingCondition } from '../../conditions/loadingCondition.ts';
import { along } from '../../conditions/tensor.ts';
import { allowedIn } from '../../figures/allowed.ts';
import { addScaled, scale, subtract, type Vec3 } from '../../geometry/form/vector.ts';
import type { Slot } from '../room/slots.ts';
import { openOf } from './open.ts';
import { priceOfMiss, stretchesAbove, stretchesOff } from './price.ts';
import type { Aim, BalancedFigure, BalanceRow } from './row.ts';
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

/** The boat hanging level: what its moments lack of balance, and how stiff it is. */
interface Hanging {
  readonly water: BallastAt;
  /** What it takes to be neutral, kg. */
  readonly ballast: number;
  /** kg. */
  readonly displacement: number;
  /** kg·m. */
  readonly missing: Vec3;
}

function hangingAt(bodies: Bodies, fill: number, isHeld: boolean): Hanging {
  const { density } = bodies;
  const water = isHeld ? fullOf(bodies) : ballastAt(bodies, fill);
  const displacement = density * bodies.volume;
  const ballast = displacement - bodies.mass;
  const lift = scale(bodies.volumeMoment, density);
  // What the water's moment would be at the boat's own neutral ballast, along the tangent at `fill`.
  const waterMoment = addScaled(water.moment, water.next, ballast - water.mass);
  return { water, ballast, displacement, missing: subtract(subtract(lift, bodies.massMoment), waterMoment) };
}

/**
 * The balances of the boat hanging level and neutral. The tanks take up what is missing in mass, so a piece counts with
 * its arm from where the next kilogram of ballast lies; the fill itself must stay within its range. `part` (0..1) of each
 * limit may be used up. Rows are linear about `fill`.
 */
export function submergedRows(
  boat: Boat,
  bodies: Bodies,
  { condition, fill }: { readonly condition: LoadingCondition; readonly fill: number },
  { part, open }: Margins,
): readonly BalanceRow[] {
  const isHeld = condition.loading.kind === 'held';
  const { water, ballast, displacement, missing } = hangingAt(bodies, fill, isHeld);
  const asked = (figure: string) => allowedIn(figure, condition, boat);
  const net = (slot: Slot) => (slot.bay.inside === null ? 1 - bodies.density / slot.density : 1);
  const leastBg = asked('bgLeast').least;
  const least = Number.isFinite(leastBg) ? leastBg * displacement : 0;
  const stiffness = (loss: number) => Math.max(missing[2] - loss, least, 1e-9 * displacement);
  const missed = priceOfMiss(bodies.mass);
  const aim = (figure: BalancedFigure, value: number, limit: number, slack = part * limit): Aim => {
    const off = stretchesOff(limit, slack, openOf(open, { condition, figure }), missed);
    return { value, slack, off };
  };
  const fills = asked('fill');
  const capacity = bodies.density * capacityOf(bodies.tanks);
  const room = ((fills.most - fills.least) / 2) * capacity;
  const floor = (figure: BalancedFigure, loss: number): BalanceRow => ({
    condition,
    figure,
    measure: 'moment',
    axis: null,
    wanted: {
      least: least - (missing[2] - loss),
      most: Number.POSITIVE_INFINITY,
      near: stretchesAbove(least, openOf(open, { condition, figure }), missed),
    },
    effectOf: slot => ({ perMass: -net(slot) * (slot.height - water.next[2]), perAft: 0, perStarboard: 0 }),
  });
  const balance = (figure: 'trim' | 'heel', axis: 'along' | 'across', loss: number): BalanceRow => {
    const k = axis === 'along' ? 0 : 1;
    return {
      condition,
      figure,
      measure: 'moment',
      axis,
      wanted: aim(figure, missing[k], stiffness(loss) * asked(figure).most),
      effectOf: slot => ({
        perMass: net(slot) * ((k === 0 ? slot.station : slot.offset)[0] - water.next[k]),
        perAft: k === 0 ? net(slot) : 0,
        perStarboard: k === 1 ? net(slot) : 0,
      }),
    };
  };
  const ofTank: BalanceRow = {
    condition,
    figure: 'fill',
    measure: 'mass',
    axis: null,
    // The tank's limits are wide: of them a tenth of what of the others is kept in hand in any case.
    wanted: aim('fill', ballast - ((fills.least + fills.most) / 2) * capacity, room, room * (1 - (1 - part) / 10)),
    effectOf: slot => ({ perMass: net(slot), perAft: 0, perStarboard: 0 }),
  };
  const reserve = asked('reserve');
  const between = (reserve.most - reserve.least) / 2;
  const ofReserve: BalanceRow = {
    condition,
    figure: 'reserve',
    measure: 'mass',
    axis: null,
    wanted: aim('reserve', ballast - water.mass - reserve.least - between, between),
    effectOf: slot => ({ perMass: net(slot), perAft: 0, perStarboard: 0 }),
  };
  const isAsked = (figure: string): boolean => Number.isFinite(asked(figure).most);
  return [
    ...(isAsked('trim') ? [balance('trim', 'along', water.trimLoss)] : []),
    ...(isAsked('heel') ? [balance('heel', 'across', water.heelLoss)] : []),
    ...(isAsked('fill') ? [ofTank] : []),
    ...(isAsked('reserve') ? [ofReserve] : []),
    floor('bgEffectiveLongitudinal', water.trimLoss),
    floor('bgEffective', water.heelLoss),
  ];
}

/** Full tanks, nothing of whose water runs; what comes aboard then is taken off what holds the boat down, where it is lifted. */
const fullOf = (bodies: Bodies): BallastAt => ({
  ...waterOf(bodies, 1),
  next: scale(bodies.volumeMoment, 1 / bodies.volume),
});

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
