import type { Boat, Part } from '../boat/boat.ts';
import type { Bodies } from '../bodies/assemble.ts';
import { settle } from '../bodies/tankWater.ts';
import { heelwards, trimwards, upFor } from '../conditions/attitude.ts';
import { along, type Tensor } from '../conditions/energy.ts';
import { hullOf } from '../conditions/hull.ts';
import { surfacedBoat } from '../conditions/load.ts';
import type { SurfacedAfloat } from '../conditions/surfaced.ts';
import { paintedTrim } from '../findings/trim.ts';
import { boxForm } from '../geometry/box.ts';
import { addImmersed, emptyImmersion } from '../geometry/immersion.ts';
import { solidOf } from '../geometry/solids.ts';
import { addScaled, dot, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Lever } from './levers.ts';
import type { Effect, Need } from './program.ts';

/** The surface that the boat shall float at, and the point that moments are counted from (its centre of flotation). */
export interface Target {
  readonly up: Vec3;
  readonly level: number;
  readonly about: Vec3;
}

/** What is missing at the target surface, and what one limit is worth in mass and moments there. */
export interface Shortfall {
  /** Mass (kg) and moments (kg·m) to add, net of buoyancy, for the boat to lie exactly at the target. */
  readonly mass: number;
  readonly aft: number;
  readonly starboard: number;
  /** What the limits of draft, trim and heel allow either way. */
  readonly allowed: { readonly mass: number; readonly aft: number; readonly starboard: number };
}

/** The painted waterline, upright; a boat without one aims for level at the draft that it has. */
export function targetSurface(boat: Boat, now: SurfacedAfloat): Target {
  const { waterline, length } = boat;
  const up = upFor(paintedTrim(waterline, length), 0);
  const draft = waterline ? (waterline.bow + waterline.stern) / 2 : now.attitude.draft;
  const level = dot(up, [length / 2, 0, draft]);
  return { up, level, about: now.centreOfFlotation ?? [length / 2, 0, draft] };
}

/** Weight and buoyancy of the boat held at the target surface: the difference is what a correction must bring. */
export function shortfallAt(target: Target, boat: Boat, bodies: Bodies): Shortfall {
  const { up, level } = target;
  const afloat = surfacedBoat(bodies);
  const hull = emptyImmersion();
  addImmersed(hullOf(bodies), up, level, hull);
  let mass = afloat.mass;
  let moment = afloat.massMoment;
  for (const water of afloat.free) {
    const sums = settle(water, up);
    mass += bodies.density * sums.volume;
    moment = addScaled(moment, [sums.mx, sums.my, sums.mz], bodies.density);
  }
  const buoyancy = bodies.density * hull.volume;
  const lift = scale([hull.mx, hull.my, hull.mz] as Vec3, bodies.density);
  const missing = buoyancy - mass;
  // Moments about the target's own point: adding weight there neither trims nor heels.
  const arms = subtract(subtract(lift, moment), scale(target.about, missing));
  const waterplane: Tensor = {
    xx: hull.xx - (hull.ax * hull.ax) / (hull.area || 1),
    xy: hull.xy - (hull.ax * hull.ay) / (hull.area || 1),
    xz: hull.xz - (hull.ax * hull.az) / (hull.area || 1),
    yy: hull.yy - (hull.ay * hull.ay) / (hull.area || 1),
    yz: hull.yz - (hull.ay * hull.az) / (hull.area || 1),
    zz: hull.zz - (hull.az * hull.az) / (hull.area || 1),
  };
  const stiffness = (direction: Vec3) =>
    Math.abs(bodies.density * along(waterplane, direction, direction) + dot(up, subtract(lift, moment)));
  const limits = boat.limits.surfaced;
  return {
    mass: missing,
    aft: arms[0],
    starboard: arms[1],
    allowed: {
      mass: boat.waterline ? bodies.density * hull.area * limits.draft : buoyancy,
      aft: stiffness(trimwards(up)) * limits.trim,
      starboard: stiffness(heelwards(up)) * limits.heel,
    },
  };
}

/** The shortfall as aims; each limit is used only to a part (0..1) so that the boat does not end on its edge. */
export function needWithin({ mass, aft, starboard, allowed }: Shortfall, part: number): Need {
  return {
    mass: { value: mass, slack: part * allowed.mass },
    aft: { value: aft, slack: part * allowed.aft },
    starboard: { value: starboard, slack: part * allowed.starboard },
  };
}

/** What a kilogram in the lever's room does at the target surface, figured for a short piece in its middle. */
export function effectOf(lever: Lever, target: Target, waterDensity: number): Effect {
  const x = (lever.station[0] + lever.station[1]) / 2;
  const y = (lever.offset[0] + lever.offset[1]) / 2;
  const half = Math.min(0.005, (lever.station[1] - lever.station[0]) / 2);
  const from: Vec3 = [x - half, y - lever.breadth / 2, lever.height - lever.depth / 2];
  const to: Vec3 = [x + half, y + lever.breadth / 2, lever.height + lever.depth / 2];
  const perKilogram = lever.bay.inside === null ? 1 - (wetShare(from, to, target) * waterDensity) / lever.density : 1;
  return { lever, perKilogram, station: target.about[0], offset: target.about[1] };
}

/** The same for a piece that has been laid: what its entry does there, per kilogram. */
export function effectOfPart(lever: Lever, part: Part, target: Target, waterDensity: number): Effect {
  const wet = part.inside === null ? wetShare(part.from, part.to, target) * part.volume : 0;
  return {
    lever,
    perKilogram: 1 - (wet * waterDensity) / part.mass,
    station: target.about[0],
    offset: target.about[1],
  };
}

/** The immersed share of a box, 0..1. */
function wetShare(from: Vec3, to: Vec3, target: Target): number {
  const body = solidOf(boxForm(from, to));
  const sums = emptyImmersion();
  addImmersed(body, target.up, target.level, sums);
  return sums.volume / body.volume;
}
