import type { Bodies } from '../bodies/assemble.ts';
import { joinLoads, loadTank, loadVolume, shareFills, type TankBody, type TankLoad } from '../bodies/tankWater.ts';
import { add, scale } from '../geometry/form/vector.ts';
import type { Afloat } from './energy.ts';

/** Each tank at the fill that it keeps on the surface. */
export const ownLoad = (tanks: readonly TankBody[]): TankLoad =>
  joinLoads(tanks.map(body => loadTank(body, body.tank.fill)));

/** The tanks filled together to `fill` of all their capacity, each by its share. */
export function sharedLoad(tanks: readonly TankBody[], fill: number): TankLoad {
  const fills = shareFills(tanks, fill);
  return joinLoads(tanks.map((body, i) => loadTank(body, fills[i] ?? 0)));
}

/** The boat with each tank at the fill it keeps on the surface. */
export const surfacedBoat = (bodies: Bodies): Afloat => boatWith(bodies, ownLoad(bodies.tanks), 'afloat');

/** The same held under water, whether it would stay there or not. */
export const sunkBoat = (bodies: Bodies): Afloat => boatWith(bodies, ownLoad(bodies.tanks), 'submerged');

/** The boat with its tanks filled together to `fill` of all their capacity, each by its share. */
export const loadedBoat = (bodies: Bodies, fill: number, where: 'afloat' | 'submerged'): Afloat =>
  boatWith(bodies, sharedLoad(bodies.tanks, fill), where);

function boatWith(bodies: Bodies, load: TankLoad, where: 'afloat' | 'submerged'): Afloat {
  return {
    density: bodies.density,
    mass: bodies.mass + bodies.density * load.stillVolume,
    massMoment: add(bodies.massMoment, scale(load.stillMoment, bodies.density)),
    free: load.free,
    hull: bodies.hull,
    submerged: where === 'submerged',
  };
}

/** Mass of everything with its tank water, kg. */
export const totalMassOf = (boat: Afloat): number =>
  boat.mass + boat.density * loadVolume({ free: boat.free, stillVolume: 0, stillMoment: [0, 0, 0] });
