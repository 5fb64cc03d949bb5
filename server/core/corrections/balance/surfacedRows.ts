import type { Boat } from '../../boat/boat.ts';
import type { Bodies } from '../../bodies/assemble.ts';
import { heelwards, trimwards, upFor } from '../../conditions/attitude.ts';
import { ballastWater } from '../../conditions/ballastWater.ts';
import { type Loading, loadIn } from '../../conditions/float.ts';
import type { LoadingCondition } from '../../conditions/loadingCondition.ts';
import type { Surfaced } from '../../conditions/surfaced.ts';
import { along, centralTensor } from '../../conditions/tensor.ts';
import { allowedIn } from '../../figures/allowed.ts';
import { paintedTrim } from '../../figures/offWaterline.ts';
import { addImmersed, emptyImmersion } from '../../geometry/cut/immersion.ts';
import { add, dot, scale, subtract, type Vec3 } from '../../geometry/form/vector.ts';
import type { Slot } from '../room/slots.ts';
import { type OpenLoads, openOf } from './open.ts';
import { priceOfMiss, stretchesAbove, stretchesOff } from './price.ts';
import type { Aim, BalancedFigure, BalanceRow } from './row.ts';
import type { WetShare } from './wetShare.ts';

/** The surface that the boat shall float at, and the point that moments are counted from (its centre of flotation). */
export interface Target {
  readonly condition: LoadingCondition;
  readonly up: Vec3;
  readonly level: number;
  readonly about: Vec3;
}

/** How much of each limit may be used up, 0..1, and what is left open of each balance. */
export interface Margins {
  readonly part: number;
  readonly open: OpenLoads;
}

/**
 * The painted waterline, upright; where no draft is asked the boat aims for level at the draft that it has. Null for a boat
 * that does not float and has no painted waterline either.
 */
export function targetSurface(boat: Boat, condition: LoadingCondition, now: Surfaced): Target | null {
  const { waterline, length } = boat;
  const up = upFor(paintedTrim(waterline, length), 0);
  const isAsked = Number.isFinite(allowedIn('draft', condition, boat).most);
  const painted = waterline ? (waterline.bow + waterline.stern) / 2 : null;
  const own = now.status === 'afloat' ? now.attitude.draft : painted;
  const draft = isAsked ? (painted ?? own) : own;
  if (draft === null) return null;
  const level = dot(up, [length / 2, 0, draft]);
  const centre = now.status === 'afloat' ? now.centreOfFlotation : null;
  return { condition, up, level, about: centre ?? [length / 2, 0, draft] };
}

/** The boat held at a surface: what its weight and buoyancy lack of each other, and how stiff it is there. */
interface Held {
  /** kg. */
  readonly buoyancy: number;
  readonly missing: number;
  /** kg/m. */
  readonly massPerImmersion: number;
  /** Moments missing about the target's own point, kg·m: adding weight there neither trims nor heels. */
  readonly arms: Vec3;
  /** kg·m, tank water moving. */
  readonly trimStiffness: number;
  readonly heelStiffness: number;
}

function heldAt({ up, level, about }: Target, bodies: Bodies, loading: Loading): Held {
  const { density } = bodies;
  const water = ballastWater(loadIn(bodies, loading), up, density);
  const hull = emptyImmersion();
  addImmersed(bodies.hull, up, level, hull);
  const moment = add(bodies.massMoment, water.moment);
  const waterplane = centralTensor(hull, density);
  const buoyancy = density * hull.volume;
  const lift = scale([hull.mx, hull.my, hull.mz] as Vec3, density);
  const missing = buoyancy - (bodies.mass + water.mass);
  const righting = dot(up, subtract(lift, moment));
  const stiffness = (direction: Vec3) =>
    along(waterplane, direction, direction) + righting - along(water.surface, direction, direction);
  return {
    buoyancy,
    missing,
    massPerImmersion: density * hull.area,
    arms: subtract(subtract(lift, moment), scale(about, missing)),
    trimStiffness: stiffness(trimwards(up)),
    heelStiffness: stiffness(heelwards(up)),
  };
}

/**
 * Weight and buoyancy of the boat held at the target surface: the difference is what pieces must bring. `part` (0..1) of
 * each limit may be used up, so that the boat does not end on its edge; how far inside it is best to be hangs on what is
 * left `open` of each figure. None where the target surface cuts no hull: a weight more or less would not bring it there.
 */
export function surfacedRows(
  boat: Boat,
  bodies: Bodies,
  target: Target,
  { part, open }: Margins,
  wet: WetShare,
): readonly BalanceRow[] {
  const { condition, about, up, level } = target;
  const held = heldAt(target, bodies, condition.loading);
  if (!(held.massPerImmersion > 0)) return [];
  const perKilogram = weightInWater(bodies.density, target, wet);
  const missed = priceOfMiss(bodies.mass);
  const asked = (figure: BalancedFigure) => allowedIn(figure, condition, boat);
  const aim = (figure: BalancedFigure, value: number, perUnit: number): Aim => {
    const limit = perUnit * asked(figure).most;
    const off = stretchesOff(limit, part * limit, openOf(open, { condition, figure }), missed);
    return { value, slack: part * limit, off };
  };
  const free: Aim = { value: held.missing, slack: held.buoyancy, off: [{ size: held.buoyancy, price: 0 }] };
  const leastGm = held.buoyancy * asked('gm').least;
  // Once it is right it is as stiff as is asked: a boat that lies over now says nothing of how far a weight will tilt it.
  const stiff = (stiffness: number) => Math.max(stiffness, leastGm, 1e-9 * held.buoyancy);
  const rows: readonly BalanceRow[] = [
    {
      condition,
      figure: 'draft',
      measure: 'mass',
      axis: null,
      wanted:
        boat.waterline && Number.isFinite(asked('draft').most)
          ? aim('draft', held.missing, held.massPerImmersion)
          : free,
      effectOf: slot => ({ perMass: perKilogram(slot), perAft: 0, perStarboard: 0 }),
    },
    {
      condition,
      figure: 'trim',
      measure: 'moment',
      axis: 'along',
      wanted: aim('trim', held.arms[0], stiff(held.trimStiffness)),
      effectOf: slot => {
        const k = perKilogram(slot);
        return { perMass: k * (slot.station[0] - about[0]), perAft: k, perStarboard: 0 };
      },
    },
    {
      condition,
      figure: 'heel',
      measure: 'moment',
      axis: 'across',
      wanted: aim('heel', held.arms[1], stiff(held.heelStiffness)),
      effectOf: slot => {
        const k = perKilogram(slot);
        return { perMass: k * (slot.offset[0] - about[1]), perAft: 0, perStarboard: k };
      },
    },
    {
      condition,
      figure: 'gm',
      measure: 'moment',
      axis: null,
      wanted: {
        least: leastGm - (held.heelStiffness - held.missing * level),
        most: Number.POSITIVE_INFINITY,
        near: stretchesAbove(leastGm, openOf(open, { condition, figure: 'gm' }), missed),
      },
      // What weighs more than the target asks sinks the boat deeper, and is borne up at the surface.
      effectOf: slot => {
        const k = perKilogram(slot);
        const corner: Vec3 = [slot.station[0], slot.offset[0], slot.height];
        return { perMass: k * (level - dot(up, corner)), perAft: -k * up[0], perStarboard: 0 };
      },
    },
  ];
  return rows.filter(({ figure }) => figure === 'draft' || isBound(asked(figure)));
}

const isBound = ({ least, most }: { readonly least: number; readonly most: number }): boolean =>
  Number.isFinite(least) || Number.isFinite(most);

/** What a kilogram of a slot's piece weighs in the water that it lies in; cut once, for every row asks for it. */
function weightInWater(density: number, target: Target, wet: WetShare): (slot: Slot) => number {
  const netOf = new Map<Slot, number>();
  return slot => {
    const known = netOf.get(slot);
    if (known !== undefined) return known;
    const net = slot.bay.inside === null ? 1 - (wet.surfaced(slot, target) * density) / slot.density : 1;
    netOf.set(slot, net);
    return net;
  };
}
