import type { Boat } from '../boat/boat.ts';
import type { Bodies } from '../bodies/assemble.ts';
import { capacityOf } from '../bodies/tankWater.ts';
import { heelwards, trimwards, upFor } from '../conditions/attitude.ts';
import { type EnergyState, energyAt } from '../conditions/energy.ts';
import { loadedBoat, sunkBoat } from '../conditions/load.ts';
import { SUBMERGED, SURFACED, submergedOf } from '../conditions/loadingCondition.ts';
import { GOOD_FILL } from '../conditions/tankSizing.ts';
import { along, centralTensor } from '../conditions/tensor.ts';
import { allowedIn } from '../figures/allowed.ts';
import { paintedTrim } from '../figures/offWaterline.ts';
import { addImmersed, emptyImmersion, type Immersion } from '../geometry/cut/immersion.ts';
import { add, addScaled, dot, scale, subtract, type Vec3 } from '../geometry/form/vector.ts';

/**
 * What a boat still lacks to float on its painted waterline and to hang neutral under water: of one half entered it is the
 * rest of the boat, of a finished one next to nothing. SI, boat axes. What is wanted is taken to lie in the dry, where it
 * displaces nothing.
 */
export interface StillWanted {
  /** Mass of the water that the painted boat pushes aside, kg: so much it must weigh. */
  readonly displacement: number;
  /** Still wanted aboard, kg; negative: so much is too much. */
  readonly mass: number;
  /** Where its centre must lie, m, at its greatest height; null where no place in the hull's length does it. */
  readonly centre: Vec3 | null;
  /** Its centre may lie no higher than this over the baseline, m, for the stability that is asked; null where it does not matter. */
  readonly highest: number | null;
  /** How far the centre of mass of what is aboard has to move, were the mass right, m. */
  readonly shift: Vec3;
  readonly tank: TankWanted;
}

/** The ballast of the boat once it floats on its painted waterline. */
export interface TankWanted {
  /** Water that takes it down to neutral, m3: as much as stands out of the water before; of a boat that stays light, less by that. */
  readonly water: number;
  /** The fill at which it is to hang neutral, 0..1. */
  readonly fill: number;
  /** What its tanks should hold together for that, m3, and what they do. */
  readonly capacity: number;
  readonly held: number;
  /** How light it is to be with them full, kg, of a boat that is held under; null for one that hangs neutral. */
  readonly light: readonly [least: number, most: number] | null;
  /** What there is will do, within what is asked. */
  readonly isRight: boolean;
  /** Where the ballast's centre must lie for the boat to stay level, m; null where nothing stands out of the water. */
  readonly centre: Vec3 | null;
}

/** Less of a boat's displacement than this (relative) is within what a builder leaves to the last piece of lead. */
const NOTHING = 1e-3;

/** What is still wanted; null for a boat that has no painted waterline, or nothing that reaches the water at it. */
export function wantedOf(boat: Boat, bodies: Bodies): StillWanted | null {
  const { waterline, length } = boat;
  if (!waterline || length <= 0) return null;
  const up = upFor(paintedTrim(waterline, length), 0);
  const level = dot(up, [0, 0, waterline.bow]);
  const painted = emptyImmersion();
  addImmersed(bodies.hull, up, level, painted);
  if (!(painted.volume > 0)) return null;
  // Wholly under water: only what is in the tanks is of use here, and the hull need not be cut for it.
  const now = energyAt(sunkBoat(bodies), up);
  const displacement = bodies.density * painted.volume;
  const mass = displacement - now.totalMass;
  const lacking = subtract(scale(momentOf(painted), bodies.density), now.totalMoment);
  const shift = subtract(scale(momentOf(painted), 1 / painted.volume), centreOf(now.totalMoment, now.totalMass));
  const bound = mass > NOTHING * displacement ? highestFor(boat, bodies, { now, painted, up }) : null;
  // Above all that there is no height is too great.
  const highest = bound === null || bound > bodies.hull.extent(up)[1] ? null : bound;
  const height = highest ?? dot(up, scale(momentOf(painted), 1 / painted.volume));
  const at = placeFor(up, scale(lacking, 1 / mass), height);
  const isInHull = Math.abs(mass) > NOTHING * displacement && at[0] >= 0 && at[0] <= length;
  return {
    displacement,
    mass,
    centre: isInHull ? at : null,
    highest,
    shift,
    tank: tankFor(boat, bodies, { painted, left: now.totalMass - bodies.mass }),
  };
}

const momentOf = ({ mx, my, mz }: Immersion): Vec3 => [mx, my, mz];

/** Of nothing it is the origin. */
const centreOf = (moment: Vec3, mass: number): Vec3 => (mass > 0 ? scale(moment, 1 / mass) : [0, 0, 0]);

/** The point beside the vertical as `moment` has it (m), and at this height along it. */
function placeFor(up: Vec3, moment: Vec3, height: number): Vec3 {
  const [fore, side] = [trimwards(up), heelwards(up)];
  return add(scale(up, height), add(scale(fore, dot(moment, fore)), scale(side, dot(moment, side))));
}

interface Held {
  readonly now: EnergyState;
  readonly painted: Immersion;
  readonly up: Vec3;
}

/**
 * How high the centre of what is wanted may lie: on the surface G is to lie the metacentric height asked for under M, and
 * submerged so far under B as is asked there, once the tanks' water may move. m above the baseline.
 */
function highestFor(boat: Boat, bodies: Bodies, { now, painted, up }: Held): number {
  const { density, volume, volumeMoment, tanks } = bodies;
  const displacement = density * painted.volume;
  const mass = displacement - now.totalMass;
  const aboard = dot(up, now.totalMoment);
  const side = heelwards(up);
  const surfaces = along(centralTensor(painted, density), side, side) - along(now.freeSurface, side, side);
  const metacentre = dot(up, momentOf(painted)) / painted.volume + surfaces / displacement;
  const afloat = (displacement * (metacentre - allowedIn('gm', SURFACED, boat).least) - aboard) / mass;
  const capacity = capacityOf(tanks);
  const ballast = volume - painted.volume;
  if (capacity <= 0) return afloat;
  const laden = energyAt(loadedBoat(bodies, Math.min(ballast / capacity, 1), 'submerged'), up);
  const moving = Math.max(...[side, trimwards(up)].map(way => along(laden.freeSurface, way, way)));
  const whole = density * volume;
  const asked = dot(up, volumeMoment) / volume - allowedIn('bgLeast', SUBMERGED, boat).least;
  const under = (whole * asked - moving - dot(up, laden.totalMoment)) / mass;
  return Math.min(afloat, under);
}

function tankFor(
  boat: Boat,
  { volume, volumeMoment, density, tanks }: Bodies,
  of: { painted: Immersion; left: number },
): TankWanted {
  const { painted, left } = of;
  const out = volume - painted.volume;
  // What is left in the tanks on the surface is ballast too.
  const needed = out + left / density;
  const held = capacityOf(tanks);
  const under = submergedOf(boat);
  const isHeld = under.loading.kind === 'held';
  const { least, most } = allowedIn(isHeld ? 'reserve' : 'fill', under, boat);
  const water = isHeld ? Math.max(0, needed - (least + most) / 2 / density) : needed;
  const fill = isHeld ? 1 : Math.min(Math.max(GOOD_FILL, least), most);
  const lightness = density * (needed - held);
  return {
    water,
    fill,
    light: isHeld ? [least, most] : null,
    isRight: isHeld ? lightness >= least && lightness <= most : needed <= most * held && needed >= least * held,
    capacity: water / fill,
    held,
    centre: out > 1e-6 * volume ? scale(addScaled(volumeMoment, momentOf(painted), -1), 1 / out) : null,
  };
}
