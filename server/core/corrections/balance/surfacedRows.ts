import type { Boat } from '../../boat/boat.ts';
import type { Bodies } from '../../bodies/assemble.ts';
import { heelwards, trimwards, upFor } from '../../conditions/attitude.ts';
import { ballastWater } from '../../conditions/ballastWater.ts';
import { ownLoad } from '../../conditions/load.ts';
import type { SurfacedAfloat } from '../../conditions/surfaced.ts';
import { along, centralTensor } from '../../conditions/tensor.ts';
import { paintedTrim } from '../../figures/offWaterline.ts';
import { addImmersed, emptyImmersion } from '../../geometry/cut/immersion.ts';
import { add, dot, scale, subtract, type Vec3 } from '../../geometry/form/vector.ts';
import type { Slot } from '../room/slots.ts';
import type { OpenLoads } from './open.ts';
import { priceOfMiss, stretchesAbove, stretchesOff } from './price.ts';
import type { Aim, BalanceRow, RowName } from './row.ts';
import type { WetShare } from './wetShare.ts';

/** The surface that the boat shall float at, and the point that moments are counted from (its centre of flotation). */
export interface Target {
  readonly up: Vec3;
  readonly level: number;
  readonly about: Vec3;
}

/** How much of each limit may be used up, 0..1, and what is left open of each balance. */
export interface Margins {
  readonly part: number;
  readonly open: OpenLoads;
}

/** The painted waterline, upright; a boat without one aims for level at the draft that it has. */
export function targetSurface(boat: Boat, now: SurfacedAfloat): Target {
  const { waterline, length } = boat;
  const up = upFor(paintedTrim(waterline, length), 0);
  const draft = waterline ? (waterline.bow + waterline.stern) / 2 : now.attitude.draft;
  const level = dot(up, [length / 2, 0, draft]);
  return { up, level, about: now.centreOfFlotation ?? [length / 2, 0, draft] };
}

/**
 * Weight and buoyancy of the boat held at the target surface: the difference is what pieces must bring. `part` (0..1) of
 * each limit may be used up, so that the boat does not end on its edge; how far inside it is best to be hangs on what is
 * left `open` of each figure.
 */
export function surfacedRows(
  boat: Boat,
  bodies: Bodies,
  target: Target,
  { part, open }: Margins,
  wet: WetShare,
): readonly BalanceRow[] {
  const { up, level, about } = target;
  const limits = boat.limits.surfaced;
  const { density } = bodies;
  const water = ballastWater(ownLoad(bodies.tanks), up, density);
  const hull = emptyImmersion();
  addImmersed(bodies.hull, up, level, hull);
  const mass = bodies.mass + water.mass;
  const moment = add(bodies.massMoment, water.moment);
  const waterplane = centralTensor(hull, density);
  const freeSurface = along(water.surface, heelwards(up), heelwards(up));
  const buoyancy = density * hull.volume;
  const lift = scale([hull.mx, hull.my, hull.mz] as Vec3, density);
  const missing = buoyancy - mass;
  // Moments about the target's own point: adding weight there neither trims nor heels.
  const arms = subtract(subtract(lift, moment), scale(about, missing));
  const righting = dot(up, subtract(lift, moment));
  const stiffness = (direction: Vec3) => Math.max(along(waterplane, direction, direction) + righting, 1e-9 * buoyancy);
  const netOf = new Map<Slot, number>();
  /** What a kilogram of the piece weighs in the water that it lies in; cut once, for every row asks for it. */
  const perKilogram = (slot: Slot): number => {
    const known = netOf.get(slot);
    if (known !== undefined) return known;
    const net = slot.bay.inside === null ? 1 - (wet.surfaced(slot, target) * density) / slot.density : 1;
    netOf.set(slot, net);
    return net;
  };
  const heelStiffness = stiffness(heelwards(up));
  const missed = priceOfMiss(bodies.mass);
  const aim = (name: RowName, value: number, limit: number): Aim => {
    const off = stretchesOff(limit, part * limit, open[name] ?? null, missed);
    return { value, slack: part * limit, off };
  };
  const draftLimit = bodies.density * hull.area * limits.draft;
  const leastGm = buoyancy * limits.gm;
  return [
    {
      name: 'surfaced draft',
      measure: 'mass',
      axis: null,
      wanted: boat.waterline
        ? aim('surfaced draft', missing, draftLimit)
        : { value: missing, slack: buoyancy, off: [{ size: buoyancy, price: 0 }] },
      effectOf: slot => ({ perMass: perKilogram(slot), perAft: 0, perStarboard: 0 }),
    },
    {
      name: 'surfaced trim',
      measure: 'moment',
      axis: 'along',
      wanted: aim('surfaced trim', arms[0], stiffness(trimwards(up)) * limits.trim),
      effectOf: slot => {
        const k = perKilogram(slot);
        return { perMass: k * (slot.station[0] - about[0]), perAft: k, perStarboard: 0 };
      },
    },
    {
      name: 'surfaced heel',
      measure: 'moment',
      axis: 'across',
      wanted: aim('surfaced heel', arms[1], heelStiffness * limits.heel),
      effectOf: slot => {
        const k = perKilogram(slot);
        return { perMass: k * (slot.offset[0] - about[1]), perAft: 0, perStarboard: k };
      },
    },
    {
      name: 'surfaced metacentric height',
      measure: 'moment',
      axis: null,
      wanted: {
        least: leastGm - (heelStiffness - freeSurface),
        most: Number.POSITIVE_INFINITY,
        near: stretchesAbove(leastGm, open['surfaced metacentric height'] ?? null, missed),
      },
      effectOf: slot => ({ perMass: -perKilogram(slot) * slot.height, perAft: 0, perStarboard: 0 }),
    },
  ];
}
