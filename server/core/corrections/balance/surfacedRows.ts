import type { Boat } from '../../boat/boat.ts';
import type { Bodies } from '../../bodies/assemble.ts';
import { settle } from '../../bodies/tankWater.ts';
import { heelwards, trimwards, upFor } from '../../conditions/attitude.ts';
import { along, centralTensor } from '../../conditions/energy.ts';
import { surfacedBoat } from '../../conditions/load.ts';
import type { SurfacedAfloat } from '../../conditions/surfaced.ts';
import { paintedTrim } from '../../figures/offWaterline.ts';
import { addImmersed, emptyImmersion } from '../../geometry/cut/immersion.ts';
import { addScaled, dot, scale, subtract, type Vec3 } from '../../geometry/form/vector.ts';
import type { Slot } from '../room/slots.ts';
import type { Row } from './program.ts';
import type { WetShare } from './wetShare.ts';

/** The surface that the boat shall float at, and the point that moments are counted from (its centre of flotation). */
export interface Target {
  readonly up: Vec3;
  readonly level: number;
  readonly about: Vec3;
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
 * each limit may be used up, so that the boat does not end on its edge.
 */
export function surfacedRows(boat: Boat, bodies: Bodies, target: Target, part: number, wet: WetShare): readonly Row[] {
  const { up, level, about } = target;
  const limits = boat.limits.surfaced;
  const afloat = surfacedBoat(bodies);
  const hull = emptyImmersion();
  addImmersed(bodies.hull, up, level, hull);
  let mass = afloat.mass;
  let moment = afloat.massMoment;
  const waterplane = centralTensor(hull, bodies.density);
  let freeSurface = 0;
  for (const water of afloat.free) {
    const sums = settle(water, up);
    mass += bodies.density * sums.volume;
    moment = addScaled(moment, [sums.mx, sums.my, sums.mz], bodies.density);
    freeSurface += along(centralTensor(sums, bodies.density), heelwards(up), heelwards(up));
  }
  const buoyancy = bodies.density * hull.volume;
  const lift = scale([hull.mx, hull.my, hull.mz] as Vec3, bodies.density);
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
    const net = slot.bay.inside === null ? 1 - (wet.surfaced(slot, target) * bodies.density) / slot.density : 1;
    netOf.set(slot, net);
    return net;
  };
  const heelStiffness = stiffness(heelwards(up));
  return [
    {
      name: 'surfaced draft',
      measure: 'mass',
      wanted: { value: missing, slack: part * (boat.waterline ? bodies.density * hull.area * limits.draft : buoyancy) },
      effectOf: slot => ({ perMass: perKilogram(slot), perAft: 0, perStarboard: 0 }),
    },
    {
      name: 'surfaced trim',
      measure: 'moment',
      wanted: { value: arms[0], slack: part * stiffness(trimwards(up)) * limits.trim },
      effectOf: slot => {
        const k = perKilogram(slot);
        return { perMass: k * (slot.station[0] - about[0]), perAft: k, perStarboard: 0 };
      },
    },
    {
      name: 'surfaced heel',
      measure: 'moment',
      wanted: { value: arms[1], slack: part * heelStiffness * limits.heel },
      effectOf: slot => {
        const k = perKilogram(slot);
        return { perMass: k * (slot.offset[0] - about[1]), perAft: 0, perStarboard: k };
      },
    },
    {
      name: 'surfaced metacentric height',
      measure: 'moment',
      wanted: { least: buoyancy * limits.gm - (heelStiffness - freeSurface), most: Number.POSITIVE_INFINITY },
      effectOf: slot => ({ perMass: -perKilogram(slot) * slot.height, perAft: 0, perStarboard: 0 }),
    },
  ];
}
